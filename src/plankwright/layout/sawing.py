"""The order of work at the saw, board by board, that frees the pieces of a layout."""

from plankwright.layout.offcuts import offcuts, wood_spent_nm2
from plankwright.model import BoardCuts

__all__ = ["count_cuts", "offcuts", "wood_spent_nm2"]


def count_cuts(board_cuts: tuple[BoardCuts, ...]) -> int:
    """Count the passes of a saw, a notch as one."""
    return sum(len(board.cuts) for board in board_cuts)
