"""How much of a board can be hung at all."""

from collections.abc import Iterable

from plankwright.layout.offcuts import clear_runs, usable_across
from plankwright.layout.sticks import whole_sticks
from plankwright.model import Board, Rules


def usable_area(board: Board, rules: Rules) -> int:
    """Give the area of the clean clear stretches of a board, inside trims and straightened edges. [nm²]

    A stretch that shows a blemish whichever way it is turned is not counted.
    """
    return sum(stick.length * stick.width for stick in whole_sticks(board, 0, rules) if not stick.hidden_only)


def clear_area(board: Board, rules: Rules) -> int:
    """Give the area of all wood of a board that is not lost, inside trims and straightened edges. [nm²]

    However short a stretch is and whatever blemish it shows: more of the board can never hang.
    """
    total = 0
    for start, end in clear_runs(board, rules):
        near, far = usable_across(board, rules, (start, end))
        total += max(0, far - near) * (end - start)
    return total


def usable_in_all(boards: Iterable[Board], rules: Rules) -> int:
    """Give the same of all boards together. [nm²]"""
    return sum(usable_area(board, rules) for board in boards)
