"""What covering costs, in parts of boards, and in whole ones."""

import math
import random
from dataclasses import replace

import pytest

from asking import question
from builders import board, nm, studs, wall
from choosing import WALL, plain
from plankwright.layout.butting import joints_of
from plankwright.layout.plan import PlannedCourse, PlannedPiece
from plankwright.layout.rows import fixed_stack
from plankwright.layout.whole import Question, covers, settled
from plankwright.layout.whole.counting import Counting
from plankwright.layout.whole.placing import placed
from plankwright.layout.whole.programme import Programme
from plankwright.layout.whole.rounding import whole_counts, whole_ways
from plankwright.model import JointPolicy

_AREA = 4 * 96 * 4 * 12  # Of the wall, in square quarter inches.


def _never() -> bool:
    return False


def test_boards_that_just_cover_cost_their_area() -> None:
    """And a little for each piece."""
    asked = question([board("A", 96, 6), board("B", 96, 6)], (6,))
    programme = Programme(asked)
    pieces = 2 * programme.graphs.piece
    assert programme.grow() == pytest.approx(_AREA / programme.unit + pieces)
    assert programme.bare_area() == pytest.approx(0)


def test_what_no_wood_reaches_is_bare() -> None:
    """One board for two courses."""
    programme = Programme(question([board("A", 96, 6)], (6,)))
    programme.grow()
    assert programme.bare_area() == pytest.approx(_AREA / 2)


def test_half_boards_are_not_whole_ones() -> None:
    """Three boards of four inches, at heights that add up to twelve only so."""
    boards = [board(name, 96, 4) for name in "ABC"]
    asked = question(boards, (4,))
    programme, counting = Programme(asked), Counting(asked)
    programme.grow()
    counting.learn(programme)
    counts = counting.cheapest(0)
    assert counts is not None
    assert sum(counts.courses.values()) == 3


def test_numbers_of_courses_fill_the_wall_and_are_given_once() -> None:
    """Less what is ripped off, and each from the start edge on."""
    asked = question([board(f"B{number}", 96, 6) for number in range(4)], (3, 4, 6))
    programme, counting = Programme(asked), Counting(asked)
    programme.grow()
    counting.learn(programme)
    seen = []
    while (counts := counting.cheapest(0)) is not None:
        counting.tried(counts.courses)
        height = sum(asked.height_of(kind) * courses for kind, courses in counts.courses.items())
        assert height - sum(counts.given_up.values()) == 4 * 12
        assert counts.courses not in seen
        seen.append(counts.courses)
        stack = placed(asked, counts, random.Random(0))  # noqa: S311 - chance, not secrecy
        assert stack.rows[0].strip is not None
        assert stack.rows[0].strip[0] == 0
        assert stack.may_end == nm(12)
    assert seen


def test_numbers_that_are_given_have_their_given_up_height_worked_out() -> None:
    """Three courses of five inches on a foot: three inches are ripped off; two of five never fill it."""
    asked = question([board(f"B{number}", 96, 5) for number in range(3)], (5,))
    counting = Counting(asked)
    counts = counting.cheapest(0, {0: 3})
    assert counts is not None
    assert (counts.courses, counts.given_up) == ({0: 3}, {0: 4 * 3})
    assert counting.cheapest(0, {0: 2}) is None


def test_numbers_of_courses_are_whole_where_parts_would_do() -> None:
    """In parts a course and a half of eight inches is cheapest; whole, two courses of six are."""
    asked = question([board("A", 96, 8), board("B", 96, 6), board("C", 96, 6)], (6, 8))
    programme = Programme(asked)
    programme.grow()
    counts = whole_counts(programme, 0, _never)
    assert counts is not None
    held = Programme(asked, counts)
    held.grow()
    assert held.bare_area() == pytest.approx(0)
    assert sum(asked.height_of(kind) * count for kind, count in counts.items()) >= 4 * 12


@pytest.mark.parametrize("seed", range(3))
def test_whole_ways_lead_along_each_run_once_and_leave_nothing_bare_that_need_not_be(seed: int) -> None:
    """Two courses of two boards each, whose joints must not meet: in parts either could be of any of them."""
    rules = plain(
        joints=JointPolicy.STAGGER, stagger_nm=nm(12), shortest_piece_nm=nm(20), narrowest_course_nm=nm(2)
    )
    surface = wall(96, 12, framing=studs(0.75, 24, 48, 72, 95.25))
    boards = [board("A", 48, 6), board("B", 48, 6), board("C", 72, 6), board("D", 24, 6)]
    asked = question(boards, (6,), surface=surface, rules=rules)
    programme = Programme(asked, {0: 2})
    in_parts = programme.grow()
    ways = whole_ways(programme, seed, _never)
    assert sum(ways.values()) == 2
    assert programme.solve() == pytest.approx(in_parts, rel=1e-2)
    assert programme.bare_area() == pytest.approx(0)


def test_a_programme_of_given_courses_costs_what_it_costs_where_others_could_be() -> None:
    """With the ways and cuts of both, the one that counts is held to the same numbers."""
    asked = question(
        [board("A", 96, 6), board("B", 60, 4), board("C", 48, 4), board("D", 96, 4.5), board("E", 72, 3)],
        (3, 4, 4.5, 6),
    )
    whole, counting = Programme(asked), Counting(asked)
    free = whole.grow()
    counting.learn(whole)
    for _ in range(4):
        counts = counting.cheapest(0)
        assert counts is not None
        held = Programme(asked, counts.courses)
        price = held.grow()
        whole.take_in(held)
        for kind, column in whole.counts.items():
            whole.bound(column, counts.courses.get(kind, 0), counts.courses.get(kind, 0))
        assert whole.grow() == pytest.approx(price, rel=2e-3)
        assert price >= free * (1 - 2e-3)
        for column in whole.counts.values():
            whole.bound(column, 0)
        counting.tried(counts.courses)
        counting.learn(held)


def test_joints_of_courses_that_touch_stand_apart() -> None:
    """Four boards of 48 and of 72 and 24 inches, two courses: the joints fall on two studs."""
    rules = plain(
        joints=JointPolicy.STAGGER, stagger_nm=nm(12), shortest_piece_nm=nm(20), narrowest_course_nm=nm(2)
    )
    surface = wall(96, 12, framing=studs(0.75, 24, 48, 72, 95.25))
    boards = [board("A", 48, 6), board("B", 48, 6), board("C", 72, 6), board("D", 24, 6)]
    asked = question(boards, (6,), surface=surface, rules=rules)
    cover = next(
        covers(
            asked.strips,
            asked.sticks,
            asked.stack,
            asked.grid,
            tries=1,
            chance=random.Random(0),  # noqa: S311 - chance, not secrecy
            over=_never,
        )
    )
    assert not any(course.bare for course in cover.plan)
    lower, upper = (joints_of(asked.strips, course) for course in cover.plan)
    assert {at for at, _ in lower} | {at for at, _ in upper} in ({nm(48), nm(72)}, {nm(48), nm(24)})


def test_courses_that_stay_are_covered_where_they_lie() -> None:
    """Laid out anew, in the places that they had."""
    asked = question([board("A", 96, 8), board("B", 96, 4)], (8, 4))
    cover = next(
        covers(
            asked.strips,
            asked.sticks,
            asked.stack,
            asked.grid,
            tries=1,
            chance=random.Random(0),  # noqa: S311 - chance, not secrecy
            over=_never,
        )
    )
    stays = fixed_stack(asked.strips, cover.plan, ())
    again = settled(
        Question(asked.strips, asked.sticks, stays, asked.grid),
        random.Random(1),  # noqa: S311 - chance, not secrecy
        _never,
    )
    assert [(course.low, course.high) for course in again.plan] == [
        (course.low, course.high) for course in cover.plan
    ]
    assert not any(course.bare for course in again.plan)


def test_courses_that_cannot_add_up_have_no_price() -> None:
    """No courses do not fill a wall."""
    programme = Programme(question([board("A", 96, 5)], (5,), surface=WALL))
    programme.bound(programme.counts[0], 0, 0)
    assert math.isinf(programme.solve())


def test_no_joint_stands_near_one_of_a_course_beside() -> None:
    """Two boards of 48 over a course with its joint on the middle stud: none may butt there."""
    rules = plain(
        joints=JointPolicy.STAGGER, stagger_nm=nm(12), shortest_piece_nm=nm(20), narrowest_course_nm=nm(2)
    )
    boards = [board(name, 48, 6) for name in "ABCD"]
    asked = question(boards, (6,), rules=rules)
    hung = [
        PlannedPiece(asked.sticks[number], nm(start), nm(start + 48)) for number, start in ((0, 0), (1, 48))
    ]
    below, above = (PlannedCourse(nm(low), nm(low + 6), (), ()) for low in (0, 6))
    stays = fixed_stack(asked.strips, [above], [replace(below, pieces=tuple(hung))])
    chance = random.Random(0)  # noqa: S311 - chance, not secrecy
    cover = settled(Question(asked.strips, asked.sticks[2:], stays, asked.grid), chance, _never)
    assert nm(48) not in {piece.start for piece in cover.plan[0].pieces}
    apart = fixed_stack(asked.strips, [above], ())
    cover = settled(Question(asked.strips, asked.sticks[2:], apart, asked.grid), chance, _never)
    assert [piece.start for piece in cover.plan[0].pieces] == [0, nm(48)]
