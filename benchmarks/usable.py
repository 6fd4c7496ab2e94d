"""How much of a board can be hung at all."""

from collections.abc import Iterable

from plankwright.layout.sticks import whole_sticks
from plankwright.model import Board, Rules


def usable_area(board: Board, rules: Rules) -> int:
    """Give the area of the clean clear stretches of a board, inside trims and straightened edges. [nm²]

    A stretch that shows a blemish whichever way it is turned is not counted.
    """
    return sum(stick.length * stick.width for stick in whole_sticks(board, 0, rules) if not stick.hidden_only)


def usable_in_all(boards: Iterable[Board], rules: Rules) -> int:
    """Give the same of all boards together. [nm²]"""
    return sum(usable_area(board, rules) for board in boards)
