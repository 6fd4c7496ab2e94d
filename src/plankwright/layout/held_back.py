"""Which boards to keep as spares when the rules ask for some."""

from collections.abc import Sequence

from plankwright.layout.capacity import UNLIMITED, Capacity
from plankwright.layout.sticks import whole_sticks
from plankwright.model import Board, Rules


def held_back(boards: Sequence[Board], rules: Rules, capacity: Capacity = UNLIMITED) -> tuple[str, ...]:
    """Choose the spares: boards of middling usable area, which stand in for most pieces and are least scarce.

    Parameters
    ----------
    boards
        The tally.
    rules
        For how many to keep, and for what of a board is usable.
    capacity
        What the saws at hand can do.

    Returns
    -------
    tuple of str
        Ids, as many as the rules ask for or the pile has.
    """
    areas = {
        board.id: sum(stick.length * stick.width for stick in whole_sticks(board, 0, rules, capacity))
        for board in boards
    }
    useful = sorted((board.id for board in boards if areas[board.id]), key=lambda name: (areas[name], name))
    count = min(rules.hold_back, len(useful))
    first = (len(useful) - count) // 2
    return tuple(useful[first : first + count])
