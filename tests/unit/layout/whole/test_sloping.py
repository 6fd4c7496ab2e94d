"""Courses under a gable, drawn anew by what programmes say that they cost."""

import random
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

import pytest

from asking import RULES, STEP
from builders import board, nm, outline, studs, wall
from choosing import sticks_of
from plankwright.layout.plan import PlannedCourse
from plankwright.layout.rows import fixed_stack, free_stack
from plankwright.layout.strips import Strips
from plankwright.layout.whole import Covering, Question
from plankwright.layout.whole.programme import Programme
from plankwright.layout.whole.sloping import Slopes
from plankwright.measure import Nm

EAVES, TOP = 24, 40
GABLE = wall(
    96,
    TOP,
    outline=outline((0, 0), (96, 0), (96, EAVES), (48, TOP), (0, EAVES)),
    framing=studs(*range(8, 96, 8)),
)
BOARDS = [
    *(board(f"A{number}", 98, 4) for number in range(6)),
    *(board(f"B{number}", 98, 6) for number in range(4)),
]
HEIGHTS = (nm(4), nm(6))


def _question(*odd: float) -> Question:
    """Ask for the gable in courses of four and six inches, and of odd heights where it slopes."""
    strips = Strips(GABLE, RULES)
    at, above = nm(EAVES) - nm(2), list[PlannedCourse]()
    for height in odd:
        above.append(PlannedCourse(at, at + nm(height), (), ()))
        at += nm(height)
    assert at == strips.must_end
    free = free_stack(strips, HEIGHTS, (strips.start, above[0].low, above[0].low), ())
    stack = replace(free, rows=(*free.rows, *fixed_stack(strips, above, ()).rows))
    return Question(strips, sticks_of(BOARDS, RULES), stack, STEP)


def _as_solved(asked: Question) -> Programme:
    programme = Programme(asked)
    programme.grow()
    return programme


def _tilings(slopes: Slopes, low: Nm, heights: tuple[Nm, ...]) -> Iterator[tuple[tuple[Nm, Nm], ...]]:
    """Give every row of courses from a place to the top."""
    strips = slopes.strips
    for height in heights:
        high = min(low + height, strips.may_end)
        if high - low < RULES.narrowest_course_nm:
            continue
        if high >= strips.must_end:
            yield ((low, high),)
        elif strips.may_end - high >= RULES.narrowest_course_nm:
            yield from (((low, high), *rest) for rest in _tilings(slopes, high, heights))


def test_the_new_courses_reach_from_the_level_part_to_the_top() -> None:
    """They are of the heights asked for, but for the last, and what is counted ends where they begin."""
    asked = _question(5, 5, 5, 3)
    stack = Slopes(asked).redrawn(_as_solved(asked), HEIGHTS)
    assert stack is not None
    strips = [row.strip for row in stack.rows if row.strip is not None]
    assert stack.must_end == stack.may_end == strips[0][0]
    assert nm(EAVES) - nm(6) <= strips[0][0] <= nm(EAVES)
    assert all(below[1] == above[0] for below, above in pairwise(strips))
    assert strips[-1][1] == asked.strips.must_end
    assert {high - low for low, high in strips[:-1]} <= set(HEIGHTS)
    counted = [row for row in stack.rows if row.strip is None]
    assert counted
    assert all(set(row.heights) <= set(HEIGHTS) for row in counted)


def test_no_others_are_cheaper_at_the_prices_learnt() -> None:
    """Held against all there are, from every place where the counted courses may end."""
    asked = _question(5, 5, 5, 3)
    slopes = Slopes(asked)
    stack = slopes.redrawn(_as_solved(asked), HEIGHTS)
    assert stack is not None

    def price(courses: tuple[tuple[Nm, Nm], ...]) -> float:
        above = sum(
            slopes._price(low, min((height for height in HEIGHTS if height >= high - low), default=nm(6)))
            for low, high in courses[:-1]
        )
        return above + dict(slopes._starts())[courses[0][0]]

    def last(courses: tuple[tuple[Nm, Nm], ...]) -> float:
        low = courses[-1][0]
        return min(
            slopes._price(low, height)
            for height in HEIGHTS
            if min(low + height, asked.strips.may_end) == courses[-1][1]
        )

    every = [
        price(courses) + last(courses)
        for start, _ in slopes._starts()
        for courses in _tilings(slopes, start, HEIGHTS)
    ]
    found = tuple(row.strip for row in stack.rows if row.strip is not None)
    assert len(every) > 20
    assert price(found) + last(found) == pytest.approx(min(every))


def test_prices_are_the_mean_of_those_of_all_programmes() -> None:
    """The latest counts for half."""
    first, second = _question(5, 5, 5, 3), _question(3, 5, 4, 6)
    alone, other, both = Slopes(first), Slopes(first), Slopes(first)
    alone.redrawn(_as_solved(first), HEIGHTS)
    other.redrawn(_as_solved(second), HEIGHTS)
    both.redrawn(_as_solved(first), HEIGHTS)
    both.redrawn(_as_solved(second), HEIGHTS)
    for height in HEIGHTS:
        mean = (alone._prices[height] + other._prices[height]) / 2
        assert both._prices[height] == pytest.approx(mean)
    assert both._counted == pytest.approx((alone._counted + other._counted) / 2)
    assert both.spent > alone.spent > 0


def test_without_heights_nothing_is_drawn() -> None:
    """Nor where none fits."""
    asked = _question(5, 5, 5, 3)
    assert Slopes(asked).redrawn(_as_solved(asked), ()) is None


def test_odd_heights_under_a_gable_give_way_to_those_of_the_boards() -> None:
    """A cover has just four and six inches, and one course that is ripped to end at the top."""
    chance = random.Random(0)  # noqa: S311 - chance, not secrecy
    covering = Covering(_question(5, 5, 5, 3), tries=2, chance=chance, over=lambda: False)
    plan = covering.whole()
    assert plan is not None
    assert not any(course.bare for course in plan)
    assert all(below.high == above.low for below, above in pairwise(plan))
    odd = [course for course in plan if course.height not in HEIGHTS]
    assert len(odd) <= 1
    assert covering.whole() is not None


def test_a_triangle_is_drawn_from_its_foot() -> None:
    """Where nothing is level all courses are drawn anew, and none is counted."""
    surface = wall(96, 20, outline=outline((0, 0), (96, 0), (48, 20)), framing=studs(*range(8, 96, 8)))
    strips = Strips(surface, RULES)
    assert strips.level_until(strips.start) == strips.start
    courses = [PlannedCourse(nm(low), nm(low + 5), (), ()) for low in range(0, 20, 5)]
    asked = Question(strips, sticks_of(BOARDS, RULES), fixed_stack(strips, courses, ()), STEP)
    stack = Slopes(asked).redrawn(_as_solved(asked), HEIGHTS)
    assert stack is not None
    assert stack.fixed
    assert (stack.low, stack.may_end) == (0, strips.may_end)
    assert {row.heights[0] for row in stack.rows[:-1]} <= set(HEIGHTS)
