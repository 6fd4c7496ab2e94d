"""Living through losses: what is laid out anew is checked, and ends in time."""

from dataclasses import replace

import pytest

from at_stake import at_stake, does_not_heed, gives_up, one_long_board, twins
from in_progress import begun_job, begun_layout, happened, marked
from plankwright.errors import LayoutRefusedError
from plankwright.layout.break_proof import Outcome, Trial
from plankwright.layout.result import Watch
from plankwright.workshop.live_through import live_through


def test_as_many_twins_as_are_spare_can_be_lost() -> None:
    """Whichever they are; that no layout of one board covers two courses is proven."""
    for lost in ("A", "B", "spare-1", "spare-2"), ("spare-3", "B", "A", "spare-1"):
        trial = Trial(lost=(*lost, "spare-3"))
        assert live_through(at_stake(twins(3)), trial, Watch()) == Outcome(survived=3, proven=True)


def test_a_board_that_nothing_is_like_cannot_be_lost() -> None:
    """The others can."""
    stake = at_stake(one_long_board())
    assert live_through(stake, Trial(lost=("long",)), Watch()) == Outcome(survived=0, proven=True)
    assert live_through(stake, Trial(lost=("left", "right")), Watch()) == Outcome(survived=2)


def test_what_nothing_is_cut_from_is_lost_without_another_layout() -> None:
    """Nobody is asked for one."""
    stake = replace(at_stake(twins(2)), again=gives_up)
    assert live_through(stake, Trial(lost=("spare-1", "spare-2")), Watch()) == Outcome(survived=2)
    assert live_through(stake, Trial(lost=("spare-1", "A")), Watch()) == Outcome(survived=1)


def test_that_nothing_was_found_is_no_proof() -> None:
    """When there was a spare board, and it was not looked for."""
    stake = replace(at_stake(twins(1)), again=gives_up)
    assert live_through(stake, Trial(lost=("A",)), Watch()) == Outcome(survived=0, proven=False)


def test_a_layout_that_does_not_do_without_the_lost_board_is_our_fault() -> None:
    """The checker finds it."""
    stake = replace(at_stake(twins(1)), again=does_not_heed)
    with pytest.raises(LayoutRefusedError, match="is lost"):
        live_through(stake, Trial(lost=("A",)), Watch())


def test_when_it_is_stopped_nothing_is_learnt() -> None:
    """That no layout was found means nothing then."""
    stake = replace(at_stake(twins(3)), again=gives_up)
    outcome = live_through(stake, Trial(lost=("spare-1", "A", "B")), Watch(stopped=lambda: True))
    assert outcome == Outcome(survived=1, stopped=True)


def test_in_a_job_in_progress_what_hangs_is_not_lost() -> None:
    """One course hangs; C can be lost, as the wide board stands in, and the wide one then can not."""
    standing = marked(happened("hung", "1")).standing
    stake = at_stake((begun_job(), begun_layout()), standing)
    assert live_through(stake, Trial(lost=("C",)), Watch()) == Outcome(survived=1)
    outcome = live_through(stake, Trial(lost=("C", "D", "wide", "B", "long")), Watch())
    assert 0 < outcome.survived < 5
    assert not outcome.proven
