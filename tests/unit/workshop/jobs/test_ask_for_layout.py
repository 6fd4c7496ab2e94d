"""Asking for a layout: from scratch, of what is left, around wishes."""

from dataclasses import replace

import pytest

from builders import board, wall
from kept_jobs import whole_job, work_after
from plankwright.model import Framing, Job, MarkKind
from plankwright.workshop.go_together import BoardsMissingError
from plankwright.workshop.jobs.ask_for_layout import HOW_LONG, USUAL, errand_for, read_seed
from plankwright.workshop.jobs.kept import Made, RefusedError
from plankwright.workshop.jobs.wishes import Wishes
from plankwright.workshop.lay_out import EffortError, read_effort
from village import small_job, small_layout


def test_from_scratch_nothing_is_heeded_but_the_job() -> None:
    """Neither an older layout nor wishes."""
    kept = replace(whole_job(), wishes=Wishes(without=("A",)))
    errand = errand_for(kept, small_job(), small_layout(), Made.SEARCHED, "glance", 3)
    assert (errand.job, errand.effort, errand.seed) == (small_job(), "glance", 3)
    assert errand.before is None
    assert errand.wishes.none


def test_what_is_left_is_laid_out_from_the_layout_and_the_marks() -> None:
    """Around wishes it heeds those too."""
    work, wishes = work_after((MarkKind.HUNG, "1a")), Wishes(without=("C",))
    kept = replace(whole_job(), work=work, wishes=wishes)
    errand = errand_for(kept, small_job(), small_layout(), Made.AROUND, "steady")
    assert (errand.before, errand.work, errand.wishes) == (small_layout(), work, wishes)


def test_what_is_left_is_laid_out_around_what_is_wished() -> None:
    """A board that broke is no reason to forget what was asked for."""
    errand = errand_for(whole_job(), small_job(), small_layout(), Made.AGAIN, "glance")
    assert errand.made is Made.AGAIN
    wishing = replace(whole_job(), wishes=Wishes(without=("C",)))
    errand = errand_for(wishing, small_job(), small_layout(), Made.AGAIN, "glance")
    assert (errand.made, errand.wishes) == (Made.AROUND, wishing.wishes)


def test_work_that_has_begun_is_not_laid_out_from_scratch() -> None:
    """The refusal says what to do instead, and names no command."""
    kept = replace(whole_job(), work=work_after((MarkKind.CUT, "1a")))
    with pytest.raises(RefusedError, match="what is left laid out anew instead"):
        errand_for(kept, small_job(), small_layout(), Made.SEARCHED, "glance")


def test_without_a_layout_there_is_nothing_to_go_on_from() -> None:
    """It has to be laid out from scratch first."""
    with pytest.raises(RefusedError, match="no layout to go on from"):
        errand_for(whole_job(), small_job(), None, Made.AGAIN, "glance")


@pytest.mark.parametrize(("begun", "mend"), [(False, "from scratch"), (True, "a job of its own")])
def test_a_layout_of_other_surfaces_is_nothing_to_go_on_from(begun: bool, mend: str) -> None:  # noqa: FBT001 - a case
    """What to do depends on whether anything is done already."""
    other = wall(96, 10, id="other", framing=Framing(solid=True))
    more: Job = replace(small_job(), surfaces=(*small_job().surfaces, other))
    kept = replace(whole_job(), work=work_after((MarkKind.CUT, "1a")) if begun else None)
    with pytest.raises(RefusedError, match=mend):
        errand_for(kept, more, small_layout(), Made.AGAIN, "glance")


def test_boards_that_pieces_hang_of_must_be_in_the_tally() -> None:
    """Else nobody could tell what is left of them."""
    kept = replace(whole_job(), work=work_after((MarkKind.HUNG, "1a")))
    less = replace(small_job(), boards=small_job().boards[1:])
    with pytest.raises(BoardsMissingError):
        errand_for(kept, less, small_layout(), Made.AGAIN, "glance")


def test_an_effort_must_be_one() -> None:
    """Before anything is begun."""
    with pytest.raises(EffortError):
        errand_for(whole_job(board("A", 97, 5.25)), small_job(), None, Made.SEARCHED, "for ever")


def test_every_effort_that_is_offered_is_one() -> None:
    """And so is the usual one."""
    assert [read_effort(one.effort).name for one in HOW_LONG] == [one.effort for one in HOW_LONG]
    assert USUAL in {one.effort for one in HOW_LONG}


@pytest.mark.parametrize(("text", "seed"), [("", 0), (" 12 ", 12), ("007", 7), ("999999", 999_999)])
def test_a_seed_is_a_whole_number(text: str, seed: int) -> None:
    """Nothing filled in is the first one."""
    assert read_seed(text) == seed


@pytest.mark.parametrize("text", ["seven", "-1", "1.5", "²", "1000000", "9" * 5000])
def test_anything_else_is_no_seed(text: str) -> None:
    """The refusal says what would do."""
    with pytest.raises(RefusedError, match="whole number from 0 to 999,999"):
        read_seed(text)
