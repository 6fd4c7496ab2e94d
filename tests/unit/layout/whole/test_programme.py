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


def test_what_is_said_of_prices_is_never_too_much() -> None:
    """Whatever courses the programme is held to, what was learnt elsewhere puts them no dearer."""
    asked = question(
        [board("A", 96, 6), board("B", 60, 4), board("C", 48, 4), board("D", 96, 4.5), board("E", 72, 3)],
        (3, 4, 4.5, 6),
    )
    programme, counting = Programme(asked), Counting(asked)
    programme.grow()
    counting.learn(programme)
    for _ in range(6):
        counts = counting.cheapest(0)
        if counts is None:
            break
        programme.hold(counts.courses)
        price = programme.grow()
        for said in counting._said:
            least = said.constant + sum(said.each[kind] * n for kind, n in counts.courses.items())
            assert least <= price + 1e-3 * abs(price)
        counting.tried(counts.courses)
        counting.learn(programme)


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
    programme.hold({0: 0})
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
