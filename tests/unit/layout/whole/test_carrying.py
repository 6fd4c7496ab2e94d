"""What one programme has found, in another."""

import pytest

from asking import question
from builders import board
from plankwright.layout.plan import PlannedCourse
from plankwright.layout.rows import fixed_stack
from plankwright.layout.whole import Question
from plankwright.layout.whole.carrying import carry_over
from plankwright.layout.whole.programme import Programme

_BOARDS = [
    board("A", 60, 6),
    board("B", 36, 6),
    board("C", 48, 8),
    board("D", 50, 8),
    board("E", 97, 13),
    board("F", 97, 4),
]


def _grown(asked: Question) -> Programme:
    programme = Programme(asked)
    programme.grow()
    return programme


def test_the_same_question_has_the_same_price_before_anything_is_asked_for() -> None:
    """All that is in use is known."""
    asked = question(_BOARDS, (4, 6, 8))
    found, into = _grown(asked), Programme(asked)
    carry_over(found, into, 0.0)
    assert into.solve() == pytest.approx(found.price)


def test_ways_go_wherever_a_course_is_as_high_and_has_the_same_run() -> None:
    """Two courses of six inches in their places, and one of four that nobody has asked about."""
    asked = question(_BOARDS, (6,))
    found = _grown(asked)
    low, six = 0, asked.course_heights[0]
    courses = [PlannedCourse(low, six, (), ()), PlannedCourse(six, 2 * six, (), ())]
    placed = Question(asked.strips, asked.sticks, fixed_stack(asked.strips, courses, ()), asked.grid)
    into = Programme(placed)
    carry_over(found, into, 0.0)
    ways = {(mates, moves) for _, _, mates, moves in found.tracks}
    carried = {kind: {track[2:] for track in into.tracks if track[0] == kind} for kind in (0, 1)}
    assert carried[0] == carried[1] != set()
    assert carried[0] <= ways
    assert into.solve() == pytest.approx(found.price, rel=1e-2)


def test_cuts_lose_the_pieces_that_no_course_asks_for() -> None:
    """Of eight inches there are no courses any more."""
    found = _grown(question(_BOARDS, (4, 8)))
    asked = question(_BOARDS, (4,))
    into = Programme(asked)
    carry_over(found, into, 1.0)
    assert found.sawn
    assert into.sawn
    for wood, cut in into.sawn:
        assert sum(len(lane) for lane in cut) > 0
        assert all(
            asked.course_heights[sort.height] == asked.course_heights[0] for lane in cut for sort in lane
        )
        assert wood < len(found.question.wood)


def test_cuts_go_to_no_height_that_their_stick_is_too_narrow_for() -> None:
    """Two heights may be rounded up to the same step, with a board's width between them."""
    narrow, high = 5.8, 6.0
    boards = [board(f"N{number}", 97, narrow) for number in range(4)]
    boards += [board(f"W{number}", 97, high) for number in range(4)]
    found = _grown(question(boards, (narrow,)))
    assert found.sawn
    asked = question(boards, (high,))
    assert asked.heights.tolist() == found.question.heights.tolist()
    into = Programme(asked)
    carry_over(found, into, 1.0)
    assert not any(cut for _, cut in into.sawn)
    both = Programme(question(boards, (narrow, high)))
    carry_over(found, both, 1.0)
    assert {sort.height for _, cut in both.sawn for lane in cut for sort in lane} == {0}
