"""What becomes of each piece is told by what nobody could mistake: its wood, its place, its size."""

import pytest

from builders import board, course, job, layout, nm, piece, surface_layout, wall
from plankwright.layout.again import Change, ChangeKind, changes_between
from plankwright.model import CutPiece, HungCourse, Layout, Part, Piece, Rules, Standing

WALL = wall(96, 24)
JOB = job(WALL, [board(name, 97, 6.25) for name in "ABCD"], Rules(expansion_gap_nm=0))


def laid(*pieces: Piece) -> Layout:
    """Give a layout with a course for each piece."""
    rows = (course(number, (0, 6), one) for number, one in enumerate(pieces, start=1))
    return layout(surface_layout(WALL, *rows))


def between(before: Layout, after: Layout, standing: Standing = Standing()) -> list[Change]:  # noqa: B008 - frozen
    """Compare."""
    return list(changes_between(JOB, before, after, standing))


ONE = piece(WALL, "1a A", (0, 60), (0, 6))


@pytest.mark.parametrize(
    ("after", "kind"),
    [
        (piece(WALL, "1a A", (0, 60), (0, 6)), "same"),
        (piece(WALL, "1a A", (0, 60), (0, 6), at=(30, 0.125)), "same"),
        (piece(WALL, "1a A", (0, 60), (0.125, 6.125)), "same"),
        (piece(WALL, "1a A", (0, 60), (0.125, 6)), "other size"),
        (piece(WALL, "1a A", (0, 56), (0, 6)), "other size"),
        (piece(WALL, "1a A", (36, 96), (0, 6)), "moved"),
        (piece(WALL, "2a A", (0, 60), (12, 18)), "moved"),
        (piece(WALL, "1a B", (0, 60), (0, 6)), "other board"),
    ],
)
def test_a_piece_is_one_of_these(after: Piece, kind: str) -> None:
    """The nearest counts."""
    (change,) = between(laid(ONE), laid(after))
    assert change.kind.value == kind
    assert (change.before, change.after) == (ONE, after)
    assert change.moves_something == (kind != "same")


def test_what_is_new_and_what_is_no_longer_needed() -> None:
    """New wood in a new place, and wood that nothing takes."""
    new = piece(WALL, "1b B", (60, 96), (12, 18))
    changes = between(laid(ONE), laid(new))
    assert [change.kind for change in changes] == [ChangeKind.NEW, ChangeKind.NOT_NEEDED]


def test_a_piece_of_a_board_that_is_no_longer_in_the_tally_is_gone() -> None:
    """Nobody sawed it, but it is not there."""
    (change,) = between(laid(piece(WALL, "1a X", (0, 60), (0, 6))), laid())
    assert change.kind is ChangeKind.GONE


def test_a_shift_is_told_by_how_much() -> None:
    """Away from the start side."""
    (change,) = between(laid(ONE), laid(piece(WALL, "1a A", (0, 60), (0.25, 6.25))))
    assert change.shifted_nm == nm(0.25)


def test_what_hangs_is_left_out() -> None:
    """Nothing becomes of it any more."""
    standing = Standing(hung=(HungCourse(surface_id="wall", course=course(1, (0, 6), ONE)),), sawn=("A",))
    assert between(laid(ONE), laid(ONE), standing) == []


def test_what_is_in_hand_is_told_to_be_cut() -> None:
    """Also when no layout had it any more, and this one takes it up again."""
    standing = Standing(cut=(CutPiece(surface_id="wall", piece=ONE),), sawn=("A",))
    (change,) = between(laid(ONE), laid(ONE), standing)
    assert change.cut
    other = piece(WALL, "3a B", (0, 96), (12, 18))
    taken_up, _ = between(laid(other), laid(piece(WALL, "2a A", (0, 40), (6, 12))), standing)
    assert (taken_up.kind, taken_up.cut) == (ChangeKind.MOVED, True)
    assert [change.kind for change in between(laid(other), laid(other), standing)] == [ChangeKind.SAME]


def test_what_broke_is_gone_and_cut_anew_from_the_same_board_it_is_another() -> None:
    """Its wood is no longer there, so nobody may take the one for the other."""
    rest = Part(
        board_id="A", along_from_nm=nm(60.625), along_to_nm=nm(97), across_from_nm=0, across_to_nm=nm(6.25)
    )
    standing = Standing(left=(rest,), sawn=("A",))
    (change,) = between(laid(ONE), laid(piece(WALL, "1a A", (0, 60), (0, 6), at=(60.625, 0.125))), standing)
    assert change.kind is ChangeKind.OTHER_BOARD
    other = piece(WALL, "3a B", (60, 96), (12, 18))
    new, gone = between(laid(ONE), laid(other), standing)
    assert (new.kind, gone.kind) == (ChangeKind.NEW, ChangeKind.GONE)
