"""A job under way that lost a board: as the marks tell it, and gone on with by eye."""

from functools import cache

import pytest

from benchmarks.by_eye import go_on_by_eye
from benchmarks.families import again
from benchmarks.families.again import UnderWay
from benchmarks.instance import Instance
from benchmarks.questions.again import _moved, measure
from plankwright.check import check_layout, faults
from plankwright.layout.result import Effort
from village import small_job

SEEDS = (0, 1000)


@cache
def way(seed: int) -> UnderWay:
    """Make a job under way once for all tests."""
    return again.under_way(again.instance(seed))


@pytest.mark.parametrize("seed", SEEDS)
def test_half_the_courses_hang_and_a_needed_board_is_lost(seed: int) -> None:
    """Whole until then, with a piece on it of a course that does not hang."""
    given = way(seed)
    (laid,) = given.layout.surfaces
    hung = {row.course.number for row in given.standing.hung}
    assert hung == set(range(1, len(laid.courses) // 2 + 1))
    assert given.standing.lost == (given.lost,)
    assert given.lost not in {piece.board_id for row in given.standing.hung for piece in row.course.pieces}
    needed = {
        course.number for course in laid.courses for piece in course.pieces if piece.board_id == given.lost
    }
    assert needed
    assert not needed & hung


@pytest.mark.parametrize("seed", SEEDS)
def test_by_eye_goes_on_from_what_hangs(seed: int) -> None:
    """Without the lost board, and without breaking a rule."""
    given = way(seed)
    (laid,) = given.layout.surfaces
    half = len(laid.courses) // 2
    layout = go_on_by_eye(given.job, given.layout, half, given.lost)
    assert layout.surfaces[0].courses[:half] == laid.courses[:half]
    assert given.lost not in {piece.board_id for piece in layout.pieces}
    assert faults(check_layout(given.job, layout)) == ()


def test_what_is_measured_is_sound() -> None:
    """The search's layout has no fault, and counts of changes fit the pieces."""
    row = measure(again.instance(0), Effort(name="a moment", seconds=1.0))
    assert row["faults"] == []
    assert 0 < row["of_lost"] <= row["moved"] <= row["left"]
    assert row["eye"]["moved"] >= row["of_lost"]


def test_nothing_has_moved_in_the_same_layout() -> None:
    """And everything has where nothing is left, but what hangs."""
    given = way(0)
    assert _moved(given.layout, given.layout, set()) == 0
    bare = go_on_by_eye(given.job, given.layout, 0, "")
    first = given.layout.pieces[0].label
    assert _moved(given.layout, bare, set()) >= _moved(given.layout, bare, {first})


def test_without_a_planted_layout_there_is_nothing_to_work_by() -> None:
    """It says which instance."""
    with pytest.raises(ValueError, match="real 7"):
        again.under_way(Instance(family="real", seed=7, job=small_job()))
