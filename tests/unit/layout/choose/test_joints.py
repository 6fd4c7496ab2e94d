"""Rules (11) to (14): joints in sight."""

from typing import Any

import pytest
from ortools.sat.python import cp_model

from builders import board, nm, rectangle, studs, wall
from choosing import Question, can_cover, pieces_of, plain
from plankwright.layout.plan import PlannedCourse, PlannedPiece
from plankwright.layout.sticks import cut_from
from plankwright.model import Board, ConcealedZone, JointPolicy

NEVER = plain(joints=JointPolicy.NEVER)
STAGGER = plain(joints=JointPolicy.STAGGER, stagger_nm=nm(12))
BENCH = ConcealedZone(id="bench", place=rectangle(40, 0, 60, 6))


def _halves(count: int) -> list[Board]:
    return [board(f"A{place}", 48, 6) for place in range(count)]


def _with_joint_at(at: float, low: float, high: float) -> PlannedCourse:
    """Give a course that stays, of two pieces."""
    question = Question(boards=[board("X", 96, high - low)])
    stick = question.chooser()._model.task.sticks[0]
    pieces = tuple(
        PlannedPiece(cut_from(stick, nm(start), nm(end - start), 0, nm(high - low)), nm(start), nm(end))
        for start, end in ((0, at), (at, 96))
    )
    return PlannedCourse(nm(low), nm(high), pieces)


@pytest.mark.parametrize("courses", [{"courses": [(0, 6)]}, {"heights": [6], "span": (0, 6, 6)}])
def test_where_no_joint_may_be_in_sight_none_is(courses: dict[str, Any]) -> None:
    """(11) Two halves do not do, for a course in its place or one that is counted; one whole does."""
    assert not can_cover(_halves(2), NEVER, **courses)
    assert can_cover(_halves(2), **courses)
    assert can_cover([board("A", 96, 6)], NEVER, **courses)


def test_a_joint_behind_a_fixture_is_free() -> None:
    """(11) Over the whole height of the course: a bench that leaves a 32nd of it in sight hides nothing."""
    surface = wall(96, 12, concealed=(BENCH,), framing=studs(48))
    assert can_cover(_halves(2), NEVER, surface=surface)
    assert not can_cover(
        [board("A", 48, 7), board("B", 48, 7)], NEVER, surface=surface, courses=[(0, 6.03125)]
    )


@pytest.mark.parametrize("courses", [{"courses": [(0, 6)]}, {"heights": [6], "span": (0, 6, 6)}])
@pytest.mark.parametrize("bare_allowed", [True, False])
def test_a_joint_in_sight_is_dearer_than_any_waste_of_wood(
    courses: dict[str, Any], *, bare_allowed: bool
) -> None:
    """(12) One long board is ripped from nine inches rather than two halves that just fit be joined."""
    boards, more = [*_halves(2), board("B", 140, 9)], {"bare_allowed": bare_allowed}
    assert pieces_of(Question(boards=boards, more=more, **courses).answer()) == [(2, 0, 96)]


@pytest.mark.parametrize("courses", [{"courses": [(0, 6)]}, {"heights": [6], "span": (0, 6, 6)}])
@pytest.mark.parametrize("policy", [JointPolicy.NEVER, JointPolicy.COUNT])
def test_a_piece_beside_what_is_bare_has_no_joint(courses: dict[str, Any], policy: JointPolicy) -> None:
    """(11), (12) A board of 64 goes from the stud at 32 to the end, and pays for no joint there."""
    boards, more = [board("A", 64, 6)], {"bare_allowed": True}
    surface = wall(96, 12, framing=studs(32))
    question = Question(boards=boards, rules=plain(joints=policy), surface=surface, more=more, **courses)
    assert pieces_of(question.answer()) == [(0, 32, 96)]
    prices, model = question.prices(), question.chooser()._model.cp
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.solve(model)
    bare, wood = 32 * 32 * 6 * 32, 64 * 32 * 6 * 32
    assert solver.objective_value == prices.bare * bare + prices.wood * wood + prices.piece


@pytest.mark.parametrize(("stagger", "right"), [(24, True), (24.03125, False)])
def test_a_joint_keeps_clear_of_one_in_a_course_that_stays(stagger: float, *, right: bool) -> None:
    """(13) The course below has one at 24, and the only one here is at 48."""
    rules = plain(joints=JointPolicy.STAGGER, stagger_nm=nm(stagger))
    beside = (_with_joint_at(24, 0, 6),)
    surface = wall(96, 12, framing=studs(48))
    assert can_cover(_halves(2), rules, surface=surface, courses=[(6, 12)], beside=beside) is right


def test_a_joint_need_not_keep_clear_of_courses_that_do_not_touch_its_own() -> None:
    """(13) The course with a joint in the same place lies two further down."""
    surface = wall(96, 18, framing=studs(48))
    far, near = (_with_joint_at(48, low, low + 6) for low in (0, 6))
    assert can_cover(_halves(2), STAGGER, surface=surface, courses=[(12, 18)], beside=(far,))
    assert not can_cover(_halves(2), STAGGER, surface=surface, courses=[(12, 18)], beside=(near,))


@pytest.mark.parametrize(("stagger", "right"), [(24, True), (24.03125, False)])
def test_joints_of_touching_courses_keep_clear_of_each_other(stagger: float, *, right: bool) -> None:
    """(14) Two halves below; above a piece of 24 and one of 72."""
    rules = plain(joints=JointPolicy.STAGGER, stagger_nm=nm(stagger))
    boards = [*_halves(2), board("B", 24, 6), board("C", 72, 6)]
    surface = wall(96, 12, framing=studs(24, 48))
    assert can_cover(boards, rules, surface=surface, courses=[(0, 6), (6, 12)]) is right


def test_halves_over_halves_do_not_stagger() -> None:
    """(14) But may be counted, or hang with another course between them."""
    surface = wall(96, 18, framing=studs(48))
    assert not can_cover(_halves(4), STAGGER, surface=surface, courses=[(0, 6), (6, 12)])
    assert can_cover(_halves(4), surface=surface, courses=[(0, 6), (6, 12)])
    assert can_cover(_halves(4), STAGGER, surface=surface, courses=[(0, 6), (12, 18)])


def test_a_hidden_joint_needs_no_stagger() -> None:
    """(14) The lower of the two stands behind a bench."""
    surface = wall(96, 12, concealed=(BENCH,), framing=studs(48))
    assert can_cover(_halves(4), STAGGER, surface=surface, courses=[(0, 6), (6, 12)])
