"""A board as a row of its table."""

from hypothesis import given, settings

from any_boards import boards
from plankwright.model import Board
from plankwright.store.board_rows import COLUMNS, board_of, row_of


@given(boards())
@settings(max_examples=50)
def test_a_row_is_read_as_the_very_board(board: Board) -> None:
    """Whatever it is."""
    row = row_of(board)
    assert tuple(row) == COLUMNS
    assert board_of(row) == board
