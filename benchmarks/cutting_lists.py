"""What is known of cutting-stock questions: the lists of lengths, and their optima."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TypeAlias

from benchmarks.cutting_jobs import StockKind


@dataclass(frozen=True, slots=True, kw_only=True)
class ToCut:
    """Pieces to be cut from stock that costs as little as can be.

    Parameters
    ----------
    name
        Of the instance.
    pieces
        Lengths to cut.
    stock
        What there is.
    optimum
        The least cost.
    """

    name: str
    pieces: tuple[int, ...]
    stock: tuple[StockKind, ...]
    optimum: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ToJoin:
    """Pieces to be joined to a length as often as can be.

    Parameters
    ----------
    name
        Of the instance.
    pieces
        Lengths that there are.
    length
        To be reached.
    optimum
        How often at the most.
    """

    name: str
    pieces: tuple[int, ...]
    length: int
    optimum: int


Case: TypeAlias = ToCut | ToJoin


def equal_boards(name: str, pieces: Sequence[int], length: int, optimum: int) -> ToCut:
    """Ask for as few boards of one length as can be, of as many as the simplest rule takes.

    The rule is first fit, the longest first: there is enough then, and how few will do is not given away.
    """
    stock = StockKind(length, first_fit(pieces, length), 1)
    return ToCut(name=name, pieces=tuple(pieces), stock=(stock,), optimum=optimum)


def first_fit(pieces: Sequence[int], length: int) -> int:
    """Give how many boards it takes when each piece, longest first, comes of the first with room for it."""
    rooms: list[int] = []
    for piece in sorted(pieces, reverse=True):
        place = next((number for number, room in enumerate(rooms) if room >= piece), None)
        if place is None:
            rooms.append(length - piece)
        else:
            rooms[place] -= piece
    return len(rooms)
