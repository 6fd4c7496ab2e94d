"""What is done of a surface: what hangs, and what is cut and has only to be hung."""

from builders import nm
from in_progress import begun_job, begun_layout, happened, marked
from plankwright.layout.done import NOTHING, Done, done_on
from plankwright.model import Standing
from plankwright.workshop.mark_work import Happened

(LAID,) = begun_layout().surfaces


def done(*events: Happened) -> Done:
    """Give what is done of the wall after some events."""
    return done_on(begun_job(), LAID, marked(*events).standing)


def test_what_hangs_is_told_as_it_does_and_not_as_cut() -> None:
    """Also where it was cut before."""
    told = done(happened("cut", "1", "2a"), happened("hung", "1"))
    assert list(told.hung) == ["1a"]
    assert told.cut == {"2a"}


def test_a_piece_that_is_cut_again_is_not_ready() -> None:
    """It was cut too long."""
    assert done(happened("miscut", "4b", length_nm=nm(90))).cut == frozenset()


def test_before_anything_is_marked_nothing_is_done() -> None:
    """As on the maps of a new layout."""
    assert done_on(begun_job(), LAID, Standing()) is NOTHING
