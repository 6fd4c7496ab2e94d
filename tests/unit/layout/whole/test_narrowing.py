"""Which few heights are kept of many."""

from collections.abc import Collection, Mapping, Sequence
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from asking import question
from builders import board, nm, wall
from plankwright.layout.plan import PlannedCourse
from plankwright.layout.rows import fixed_stack
from plankwright.layout.whole import Question
from plankwright.layout.whole.narrowing import least_ripped, narrowed, only
from plankwright.layout.whole.programme import Programme
from plankwright.measure import Nm


def _narrowed(widths: Sequence[float], height: float) -> list[set[Nm]]:
    """Give the choices of heights for a wall as wide as the boards are long."""
    boards = [board(f"A{number}", 97, width) for number, width in enumerate(widths)]
    programme = Programme(question(boards, sorted(set(widths)), surface=wall(96, height)))
    programme.grow()
    return [set(kept) for kept in narrowed(programme)]


def _lost(covered: Mapping[int, int], kept: Collection[int]) -> float:
    return sum(
        much * (1 - max((lower for lower in kept if lower <= height), default=0) / height)
        for height, much in covered.items()
    )


@given(st.dictionaries(st.integers(1, 40), st.integers(1, 100), min_size=1, max_size=8), st.integers(1, 5))
def test_no_heights_lose_less(covered: dict[int, int], most: int) -> None:
    """Held against all there are."""
    kept = least_ripped(covered, most)
    assert len(kept) <= most
    assert set(kept) <= set(covered)
    every = (some for size in range(1, most + 1) for some in combinations(covered, min(size, len(covered))))
    assert _lost(covered, kept) == pytest.approx(min(_lost(covered, some) for some in every))


def test_nothing_is_kept_of_nothing() -> None:
    """As where all courses keep their places."""
    assert list(least_ripped({}, 3)) == []


def test_the_commonest_heights_come_first() -> None:
    """Where boards come in two widths both are kept, and nothing need be ripped."""
    (first, *_) = _narrowed((4, 4, 6), 12)
    assert first == {nm(4), nm(6)}


def test_where_each_board_has_its_own_width_the_commonest_are_not_kept() -> None:
    """They would leave most boards without a use; so heights are kept that all can be ripped down to."""
    choices = _narrowed([3 + number / 4 for number in range(12)], 50)
    assert choices
    assert all(len(kept) < 8 and min(kept) < nm(4) for kept in choices)


def test_courses_that_keep_their_places_count_where_there_are_no_others() -> None:
    """Of two that lie there, both heights."""
    asked = question([board("A", 97, 6), board("B", 97, 6)], (6,))
    courses = [PlannedCourse(nm(low), nm(high), (), ()) for low, high in ((0, 5), (5, 12))]
    stack = fixed_stack(asked.strips, courses, ())
    programme = Programme(Question(asked.strips, asked.sticks, stack, asked.grid))
    programme.grow()
    assert {nm(5), nm(7)} in [set(kept) for kept in narrowed(programme)]
    assert only(stack, ()) == stack


def test_only_some_heights_are_left_to_courses_that_are_counted() -> None:
    """Rows without any are gone."""
    stack = question([board("A", 97, 6)], (4, 6)).stack
    assert {row.heights for row in only(stack, (nm(4),)).rows} == {(nm(4),)}
    assert only(stack, ()).rows == ()
