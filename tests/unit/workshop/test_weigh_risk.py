"""Weighing the risk: the known answers of small jobs, what it is asked about, and being stopped."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from typing import TypeVar

import pytest

from at_stake import MOMENT, gives_up, one_long_board, twins
from builders import rectangle
from in_progress import begun_job, begun_layout, happened, marked
from plankwright.check import recount
from plankwright.layout.again import lay_again
from plankwright.layout.break_proof import Needed
from plankwright.layout.result import Result, Watch
from plankwright.model import Job, Layout, Work
from plankwright.workshop.check_layout import FaultyLayoutError
from plankwright.workshop.go_together import BoardsMissingError, OtherLayoutError
from plankwright.workshop.mark_work import begin_work
from plankwright.workshop.weigh_risk import HowMuch, Risk, RiskWatch, Tried, weigh_risk
from plankwright.workshop.what_now import Again

Common = TypeVar("Common")
Given = TypeVar("Given")
Found = TypeVar("Found")


class Backwards:
    """Stands in for a crew: does the last first."""

    def share_out(
        self,
        work: Callable[[Common, Given, Watch], Found],
        common: Common,
        given: Sequence[Given],
        *,
        watch: Watch,
    ) -> Iterator[tuple[int, Found]]:
        """Do the work until it is stopped."""
        for place in reversed(range(len(given))):
            if watch.stopped():
                return
            yield place, work(common, given[place], watch)


def weigh(
    of: tuple[Job, Layout],
    work: Work | None = None,
    *,
    again: Again = lay_again,
    draws: int = 4,
    watch: RiskWatch | None = None,
) -> Risk:
    """Weigh the risk of a job and its layout."""
    how_much = HowMuch(effort=MOMENT, seed=5, draws=draws)
    marks = work or begin_work(of[0])
    return weigh_risk(*of, marks, crew=Backwards(), again=again, how_much=how_much, watch=watch)


def test_three_spare_twins_survive_three_losses() -> None:
    """In every draw, and no board is needed by itself."""
    risk = weigh(twins(3))
    assert risk.whole
    assert not risk.stopped
    assert risk.learnt.needed == ()
    assert risk.learnt.spared == ("A", "B")
    assert risk.learnt.survival is not None
    assert risk.learnt.survival.draws == (3, 3, 3, 3)


def test_without_spares_every_board_is_needed() -> None:
    """And no loss is survived."""
    risk = weigh(twins(0))
    assert [each.board_id for each in risk.learnt.needed] == ["A", "B"]
    assert risk.learnt.survival is not None
    assert risk.learnt.survival.most == 0


def test_the_one_board_that_is_long_enough_is_needed_and_cut_first() -> None:
    """In a draw as many losses are survived as come before it, but no more than the two spares."""
    risk = weigh(one_long_board(), draws=12)
    assert risk.learnt.needed == (Needed(board_id="long", proven=True),)
    assert [each.board_id for each in risk.order] == ["long", "left", "right"]
    assert risk.learnt.survival is not None
    assert set(risk.learnt.survival.draws) == {0, 1, 2}


def test_the_riskiest_boards_are_tried_first() -> None:
    """So that most is learnt when it is stopped: the long one, which nothing is like, is the first."""
    seen: list[Tried] = []
    watch = RiskWatch(report=seen.append, stopped=lambda: len(seen) == 3)
    risk = weigh(one_long_board(), draws=0, watch=watch)
    # The stand-in begins with the last.
    assert risk.learnt.untried == ("long",)


def test_a_layout_that_is_not_whole_has_nothing_to_lose() -> None:
    """Nothing is tried."""
    job, layout = twins(0)
    (laid,) = layout.surfaces
    bare = replace(laid, courses=laid.courses[:1], bare=(rectangle(0, 5, 96, 10),))
    risk = weigh(
        (job, replace(layout, surfaces=(replace(bare, score=recount(job, bare)),))), again=_never_asked
    )
    assert not risk.whole
    assert (risk.learnt.needed, risk.learnt.survival, risk.order) == ((), None, ())
    assert not risk.stopped


def test_when_all_is_cut_nothing_is_tried() -> None:
    """No board can be lost that it still needs."""
    work = marked(happened("hung", "1", "2", "3", "4"))
    risk = weigh((begun_job(), begun_layout()), work, again=_never_asked)
    assert risk.to_cut == ()
    assert risk.learnt.survival is None
    assert not risk.stopped


def test_no_draws_can_be_asked_for() -> None:
    """Each board alone is tried all the same."""
    risk = weigh(twins(1), draws=0)
    assert risk.learnt.spared == ("A", "B")
    assert risk.learnt.survival is None
    assert not risk.stopped


def test_what_was_learnt_before_it_was_stopped_is_given() -> None:
    """Stopped after five of six trials, which began with the last."""
    seen: list[Tried] = []
    watch = RiskWatch(report=seen.append, stopped=lambda: len(seen) == 6)
    risk = weigh(twins(3), watch=watch)
    assert risk.stopped
    assert risk.learnt.untried == ("A",)
    assert risk.learnt.spared == ("B",)
    assert risk.learnt.survival is not None
    assert [each.board_id for each in risk.order] == ["A", "B"]
    assert seen[0] == Tried(boards=0, of_boards=2, draws=0, of_draws=4)
    assert seen[-1] == Tried(boards=1, of_boards=2, draws=4, of_draws=4)


def test_a_layout_that_is_outdated_or_of_another_job_is_refused() -> None:
    """In one sentence, before anything is tried."""
    of = begun_job(), begun_layout()
    with pytest.raises(FaultyLayoutError, match="plankwright now"):
        weigh(of, marked(happened("lost", "C")), again=_never_asked)
    with pytest.raises(OtherLayoutError):
        weigh((of[0], Layout(job_name="village hall", surfaces=())), again=_never_asked)
    poor = replace(of[0], boards=of[0].boards[1:])
    with pytest.raises(BoardsMissingError, match="board A"):
        weigh((poor, of[1]), marked(happened("hung", "1")), again=_never_asked)


def test_that_nothing_was_found_is_told_as_such() -> None:
    """Not as proven."""
    risk = weigh(twins(1), again=gives_up)
    assert risk.learnt.needed == (Needed(board_id="A", proven=False), Needed(board_id="B", proven=False))


def _never_asked(*_args: object, **_more: object) -> Result:
    raise AssertionError("asked for a layout")
