"""A search as a screen shows it, and the best of one that ended early."""

from dataclasses import replace
from datetime import datetime

import pytest

from builders import layout, wall
from kept_jobs import work_after
from plankwright.layout.result import Verdict
from plankwright.model import NOTHING_DONE, Bound, Framing, Layout, MarkKind
from plankwright.workshop.jobs.kept import KeptSearch, Made, RefusedError
from plankwright.workshop.jobs.see_search import best_of, running_for
from village import small_job, small_layout, spoilt_layout


def search(best: Layout | None = None, made: Made = Made.SEARCHED) -> KeptSearch:
    """Give a search that began at noon."""
    return KeptSearch(job_id="x", made=made, effort="glance", best=best, begun_at="2024-05-04T12:00:00+00:00")


@pytest.mark.parametrize(
    ("now", "words"),
    [
        ("2024-05-04T12:00:00+00:00", "0 s"),
        ("2024-05-04T12:00:59.9+00:00", "59 s"),
        ("2024-05-04T14:03:05+02:00", "3 min 5 s"),
        ("2024-05-04T11:00:00+00:00", "0 s"),
    ],
)
def test_how_long_a_search_runs_is_told_as_on_a_watch(now: str, words: str) -> None:
    """A clock that was set back in the meantime is no matter."""
    assert running_for(search(), datetime.fromisoformat(now)) == words


def test_the_best_so_far_is_a_layout_to_work_by() -> None:
    """With an answer that says it was stopped, made as the search was to make it."""
    found = best_of(small_job(), search(small_layout()), NOTHING_DONE)
    assert found.layout.pieces == small_layout().pieces
    assert found.made is Made.SEARCHED
    assert found.answer is not None
    assert (found.answer.verdict, found.answer.stopped) == (Verdict.ENOUGH, True)


def test_a_bound_beyond_what_was_found_is_cut_down() -> None:
    """What was found can be had."""
    (laid,) = small_layout().surfaces
    high = Bound(wood_spent_nm2=2 * laid.score.wood_spent_nm2)
    found = best_of(small_job(), search(layout(replace(laid, bound=high))), NOTHING_DONE)
    assert found.layout.surfaces[0].bound.wood_spent_nm2 == laid.score.wood_spent_nm2


def test_spares_are_told_of_as_held_back() -> None:
    """As the rules ask, where nothing is done yet."""
    job = replace(small_job(), rules=replace(small_job().rules, hold_back=1))
    laid = small_layout()
    found = best_of(job, search(laid), NOTHING_DONE)
    assert found.answer is not None
    used = {piece.board_id for piece in laid.pieces}
    assert not used & set(found.answer.held_back)


def test_no_best_is_nothing_to_work_by() -> None:
    """It was ended before it had found any."""
    with pytest.raises(RefusedError, match="before it had found any layout"):
        best_of(small_job(), search(), NOTHING_DONE)


def test_a_best_of_some_surfaces_is_nothing_whole() -> None:
    """It says which it had not come to."""
    other = wall(96, 10, id="south", framing=Framing(solid=True))
    job = replace(small_job(), surfaces=(*small_job().surfaces, other))
    with pytest.raises(RefusedError, match="had not come to south yet"):
        best_of(job, search(small_layout()), NOTHING_DONE)


def test_a_best_that_breaks_a_rule_is_refused() -> None:
    """Also one that does not heed what was done since."""
    with pytest.raises(RefusedError, match="does not fit any more"):
        best_of(small_job(), search(spoilt_layout()), NOTHING_DONE)
    broke = work_after((MarkKind.LOST, "A")).standing
    with pytest.raises(RefusedError, match="does not fit any more"):
        best_of(small_job(), search(small_layout()), broke)
