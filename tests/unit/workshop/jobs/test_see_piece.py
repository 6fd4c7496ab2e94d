"""One piece of a layout as a screen shows it."""

import pytest

from in_progress import begun_job, begun_layout, happened, marked
from plankwright.model import NOTHING_DONE
from plankwright.workshop.jobs.kept import NotThereError
from plankwright.workshop.jobs.see_piece import PieceInPlace, see_piece


def seen(label: str) -> PieceInPlace:
    """Look at a piece of the layout of four courses."""
    return see_piece(begun_job(), begun_layout(), NOTHING_DONE, 0, label)


def test_a_piece_shows_its_board_with_its_cuts() -> None:
    """And what else comes from that board, to go to."""
    piece = seen("2b")
    assert (piece.course, piece.board_id, piece.surface_id) == (2, "long", "wall")
    assert piece.board is not None
    assert "2b" in piece.board.drawing
    assert "4b" in piece.board.drawing
    assert [(one.surface, one.label) for one in piece.others] == [(0, "4b")]


def test_a_piece_tells_its_place_and_its_nails() -> None:
    """As the hanging sheet has them."""
    told = {one.what: one.how for one in seen("2a").todo}
    assert told["Place:"].startswith('0" to 56"')
    assert "Nails:" in told


def test_a_piece_tells_its_neighbours_and_the_joint_with_them() -> None:
    """One at its right end only."""
    piece = seen("2a")
    assert piece.before is None
    assert piece.after is not None
    assert piece.after.label == "2b"
    assert piece.after.words.endswith("the joint between them is in sight")
    assert not piece.upright
    assert (seen("1a").before, seen("1a").after) == (None, None)


def test_a_piece_that_hangs_or_is_cut_says_so() -> None:
    """Its board is shown as it was before it was sawn."""
    standing = marked(happened("hung", "1a"), happened("cut", "2a")).standing
    for label, state in (("1a", "hangs"), ("2a", "cut"), ("3a", "")):
        piece = see_piece(begun_job(), begun_layout(), standing, 0, label)
        assert piece.state == state
        assert piece.board is not None


def test_what_is_left_of_a_board_is_shown_as_it_lies_there() -> None:
    """Once its first piece is cut, the other comes from the rest."""
    standing = marked(happened("cut", "2b")).standing
    piece = see_piece(begun_job(), begun_layout(), standing, 0, "4b")
    assert piece.board is not None
    assert piece.board.id.startswith("long rest")


def test_of_a_layout_that_does_not_fit_nothing_is_told_to_cut_by() -> None:
    """Only what stands in it."""
    piece = see_piece(begun_job(), begun_layout(), NOTHING_DONE, 0, "2a", fits=False)
    assert (piece.board, piece.todo) == (None, ())
    assert piece.board_id == "B"


@pytest.mark.parametrize(("surface", "label"), [(0, "9z"), (1, "1a"), (-1, "1a")])
def test_a_piece_that_is_not_there_is_no_piece(surface: int, label: str) -> None:
    """It says which."""
    with pytest.raises(NotThereError, match=f"no piece {label}"):
        see_piece(begun_job(), begun_layout(), NOTHING_DONE, surface, label)
