"""The solver starts from what is there already."""

from collections.abc import Sequence
from dataclasses import replace

import pytest
from ortools.sat.python import cp_model

from builders import board, nm, studs, wall
from choosing import Question, plain
from plankwright.layout.plan import Plan, PlannedCourse, PlannedPiece
from plankwright.layout.sticks import cut_from
from plankwright.model import JointPolicy

HALVED = wall(96, 12, framing=studs(48))
BOARDS = [board("A", 96, 6), board("B", 48, 6), board("C", 48, 6)]
RULES = plain(joints=JointPolicy.COUNT)

Way = tuple[int, float, float]


def _now(*courses: tuple[float, Sequence[Way], tuple[tuple[float, float], ...]]) -> Plan:
    """Give courses of six inches by where they begin, their pieces (board, start, end) and what is bare."""
    sticks = Question(boards=BOARDS).chooser()._model.task.sticks
    return tuple(
        PlannedCourse(
            nm(low),
            nm(low + 6),
            tuple(
                PlannedPiece(cut_from(sticks[which], 0, nm(end - start), 0, nm(6)), nm(start), nm(end))
                for which, start, end in pieces
            ),
            tuple((nm(start), nm(end)) for start, end in bare),
        )
        for low, pieces, bare in courses
    )


WHOLE = _now((0, [(0, 0, 96)], ()), (6, [(2, 0, 48), (1, 48, 96)], ()))
"""Covered, the halves not in the order that a model would list them."""

HALF = _now((0, [(0, 0, 96)], ()), (6, [(1, 0, 48)], ((48, 96),)))
"""A quarter is bare."""


def _price_of_the_hint(question: Question) -> float | None:
    """Fix what is hinted at, and give the price then; nothing when that breaks a rule."""
    model = question.chooser()._model.cp
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.fix_variables_to_their_hinted_value = True
    return solver.objective_value if solver.solve(model) == cp_model.OPTIMAL else None


@pytest.mark.parametrize("stack", [{"courses": [(0, 6), (6, 12)]}, {"heights": [6]}])
@pytest.mark.parametrize("now", [WHOLE, HALF])
def test_what_is_there_is_hinted_at_and_breaks_no_rule(now: Plan, stack: dict[str, Sequence[float]]) -> None:
    """With courses in their places, and with courses that are counted; the price is that of these pieces."""
    given = {"boards": BOARDS, "rules": RULES, "surface": HALVED, "more": {"now": now, "bare_allowed": True}}
    question = Question(**given, **stack)  # type: ignore[arg-type]
    steps, joints = 32 * 32, sum(len(course.pieces) - 1 for course in now)
    bare = sum(course.bare_area for course in now) // nm(1 / 32) ** 2
    wood = sum(BOARDS[piece.stick.board].length_nm // nm(1) for course in now for piece in course.pieces) * 6
    prices = question.prices()
    expected = (
        prices.bare * bare
        + prices.joint * joints
        + prices.wood * wood * steps
        + prices.piece * sum(len(course.pieces) for course in now)
    )
    assert _price_of_the_hint(question) == expected


def test_the_number_of_courses_is_hinted_at() -> None:
    """Two of six, whose pieces are all mates, and nothing that they give up."""
    question = Question(boards=BOARDS, rules=RULES, surface=HALVED, heights=[6], more={"now": WHOLE})
    model = question.chooser()._model
    hint = dict(zip(model.cp.proto.solution_hint.vars, model.cp.proto.solution_hint.values, strict=True))
    assert [hint[count.index] for count in model.count] == [2]
    assert [hint[given_up.index] for given_up in model.given_up.values()] == [0]


def test_a_course_of_a_kind_that_the_model_does_not_know_is_not_hinted_at() -> None:
    """There are only courses of five to choose from: the hint leaves none, which would be no layout."""
    question = Question(
        boards=BOARDS,
        rules=RULES,
        surface=HALVED,
        heights=[5],
        more={"now": WHOLE, "bare_allowed": True},
    )
    proto = question.chooser()._model.cp.proto
    assert set(proto.solution_hint.values) == {0}


def test_a_piece_is_hinted_at_once() -> None:
    """Of two lanes that a board could give it from, the first; other boards are not cut."""
    wide = [replace(each, width_start_nm=nm(12), width_end_nm=nm(12)) for each in BOARDS]
    question = Question(boards=wide, surface=HALVED, courses=[(0, 6)], more={"now": WHOLE[:1]})
    model = question.chooser()._model
    hint = dict(zip(model.cp.proto.solution_hint.vars, model.cp.proto.solution_hint.values, strict=True))
    hinted = [(piece.stick, piece.lane) for piece in model.pieces if hint[piece.chosen.index]]
    assert hinted == [(0, 0)]
