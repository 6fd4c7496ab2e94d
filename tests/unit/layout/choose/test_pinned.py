"""Pieces that stay are counted with, and nothing is asked of them; others may cost more, or be barred."""

from dataclasses import replace

import pytest

from builders import board, nm
from choosing import PLAIN, Question, pieces_of, plain, sticks_of
from plankwright.layout.choose import Choice, Chooser
from plankwright.layout.plan import PlannedCourse, PlannedPiece, Stick
from plankwright.layout.rows import Pinned, Row, Stack
from plankwright.layout.sticks import cut_from
from plankwright.measure import Nm
from plankwright.model import Board, JointPolicy, Rules


def choose(
    boards: list[Board],
    pinned: tuple[float, float],
    *,
    rules: Rules = PLAIN,
    shim: Nm | None = None,
    upper: bool = False,
) -> Choice:
    """Cover a course of which the first board has a piece that stays; with a course above when asked to."""
    courses = [(0, 6), (6, 12)] if upper else [(0, 6)]
    question = Question(boards=boards, rules=rules, courses=courses)
    first, *others = sticks_of(boards, PLAIN)
    start, end = (nm(place) for place in pinned)
    piece = PlannedPiece(cut_from(first, 0, end - start, 0, nm(6)), start, end)
    stack = question.stack
    rows = (replace(stack.rows[0], pinned=(Pinned(piece, shim),)), *stack.rows[1:])
    chooser = Chooser(
        question.strips,
        [*others, piece.stick],
        replace(stack, rows=rows),
        prices=question.prices(),
        grid=nm(1 / 32),
        bare_allowed=False,
    )
    return chooser.solve(5.0, 0)


def test_what_stays_is_built_on() -> None:
    """Another board covers the rest, and the piece comes back as it is."""
    choice = choose([board("A", 40, 6), board("B", 48, 6)], (0, 48))
    assert pieces_of(choice) == [(0, 0, 48), (1, 48, 96)]


def test_several_pieces_of_a_course_may_stay() -> None:
    """The solver starts from what is there already, and those are no choice."""
    boards = [board("A", 24, 6), board("B", 24, 6), board("C", 48, 6)]
    question = Question(boards=boards, courses=[(0, 6)])
    sticks = sticks_of(boards, PLAIN)
    places = [(nm(0), nm(24)), (nm(24), nm(48))]
    staying = [PlannedPiece(stick, *place) for stick, place in zip(sticks, places, strict=False)]
    (row,) = question.stack.rows
    now = PlannedCourse(0, nm(6), tuple(staying), ((nm(48), nm(96)),))
    chooser = Chooser(
        question.strips,
        sticks,
        replace(question.stack, rows=(replace(row, pinned=tuple(map(Pinned, staying))),)),
        prices=question.prices(),
        grid=nm(1 / 32),
        bare_allowed=False,
        now=(now,),
    )
    assert pieces_of(chooser.solve(5.0, 0)) == [(0, 0, 24), (1, 24, 48), (2, 48, 96)]


def test_a_malformed_model_is_no_answer() -> None:
    """It raises: that it found nothing would not be true."""
    chooser = Question(boards=[board("A", 96, 6)], courses=[(0, 6)]).chooser()
    for piece in chooser.pieces:
        chooser._model.cp.add_hint(piece.chosen, 1)
    with pytest.raises(ValueError, match="duplicate"):
        chooser.solve(5.0, 0)


def test_nothing_covers_what_stays() -> None:
    """A board that is as long as the whole course is of no use in one piece."""
    choice = choose([board("A", 48, 6), board("B", 96, 6)], (48, 96))
    assert pieces_of(choice) == [(0, 48, 96), (1, 0, 48)]


def test_nothing_is_asked_of_what_stays() -> None:
    """It may be shorter than the shortest piece, and of a board narrower than its course."""
    rules = plain(shortest_piece_nm=nm(36))
    assert choose([board("A", 24, 5), board("B", 72, 6)], (0, 24), rules=rules).cuts is not None
    assert choose([board("A", 96, 6), board("B", 24, 6)], (0, 72), rules=rules).impossible


def test_a_joint_with_what_stays_is_judged() -> None:
    """In sight, where none may be, and the boards must match."""
    boards = [board("A", 48, 6), board("B", 48, 6)]
    assert choose(boards, (0, 48)).cuts is not None
    assert choose(boards, (0, 48), rules=plain(joints=JointPolicy.NEVER)).impossible
    thick = replace(boards[1], thickness_nm=nm(1))
    assert choose([boards[0], thick], (0, 48)).impossible


@pytest.mark.parametrize(("shim", "fits"), [(None, True), (0, False), (nm(0.25), True)])
def test_a_shim_behind_what_hangs_cannot_be_chosen_any_more(shim: Nm | None, *, fits: bool) -> None:
    """Behind a piece that is still to be hung it can."""
    boards = [board("A", 48, 6), board("B", 48, 6, thickness_nm=nm(1))]
    choice = choose(boards, (0, 48), rules=plain(shim_up_to_nm=nm(0.25)), shim=shim)
    assert (choice.cuts is not None) == fits


def test_a_course_above_keeps_its_joints_apart_from_what_stays() -> None:
    """By the stagger."""
    rules = plain(joints=JointPolicy.STAGGER, stagger_nm=nm(12), crosscut_kerf_nm=nm(1))
    boards = [board("A", 48, 6), *(board(f"B{place}", 48, 6) for place in range(3))]
    assert choose(boards, (0, 48), rules=rules, upper=True).impossible
    longer = [*boards, board("C", 72, 6)]
    assert choose(longer, (0, 48), rules=rules, upper=True).cuts is not None


def test_terms_make_a_piece_dear_or_bar_it() -> None:
    """The dearer board is left, and a board barred from a place leaves it uncovered."""
    boards = [board("A", 96, 6), board("B", 96, 6)]
    question = Question(boards=boards, courses=[(0, 6)])

    def dear(_row: Row, _start: Nm, _end: Nm, stick: Stick) -> int:
        return 1000 if stick.board == 0 else 0

    def barred(_row: Row, start: Nm, _end: Nm, _stick: Stick) -> int | None:
        return None if start == 0 else 0

    assert pieces_of(replace(question, more={"terms": dear}).answer()) == [(1, 0, 96)]
    assert replace(question, more={"terms": barred}).answer().impossible


def test_a_row_keeps_what_it_is_told() -> None:
    """Nothing stays unless it is said."""
    stack: Stack = Question(boards=[]).stack
    assert all(row.pinned == () for row in stack.rows)
