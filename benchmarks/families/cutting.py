"""Lists to cut and to join whose optimum is known: boards were cut up to make them, with nothing left over.

The recipe of the first is that of Falkenauer (1996), "A hybrid grouping genetic algorithm for bin packing",
from memory: every three pieces fill a board, none of less than a quarter. The others follow from it: boards
of several lengths, in limited number, cut up whole; and pieces of which every three reach along a course.
"""

import random

from benchmarks.cutting_jobs import StockKind
from benchmarks.cutting_lists import Case, ToCut, ToJoin, equal_boards

_LENGTH = 1000
_LENGTHS = (1000, 850, 700)
"""Of boards of several lengths."""

_SPARE = 3
"""So many boards of each length are there beyond those that were cut up."""


def instance(seed: int) -> Case:
    """Make a list: of equal boards, of boards of several lengths, and of courses to be joined in turn.

    Parameters
    ----------
    seed
        The same seed gives the same list.
    """
    chance = random.Random(f"cutting {seed}")  # noqa: S311 - chance, not secrecy
    boards = chance.choice((20, 30, 40))
    kind = seed % 3
    if kind == 1:
        return _several(seed, boards, chance)
    pieces = [piece for _ in range(boards) for piece in _in_three(_LENGTH, chance)]
    if kind == 2:  # noqa: PLR2004 - the third of three
        return ToJoin(name=f"joined {seed}", pieces=tuple(pieces), length=_LENGTH, optimum=boards)
    return equal_boards(f"equal {seed}", pieces, _LENGTH, boards)


def _several(seed: int, boards: int, chance: random.Random) -> ToCut:
    """Make a list of pieces that boards of several lengths give with nothing left over; a unit costs one."""
    cut_up = [chance.choice(_LENGTHS) for _ in range(boards)]
    pieces = [piece for length in cut_up for piece in _in_three(length, chance)]
    stock = tuple(StockKind(length, cut_up.count(length) + _SPARE, length) for length in _LENGTHS)
    return ToCut(name=f"several {seed}", pieces=tuple(pieces), stock=stock, optimum=sum(cut_up))


def _in_three(length: int, chance: random.Random) -> list[int]:
    """Cut a length in three, of which none is less than a quarter."""
    first = chance.randint(length * 38 // 100, length * 49 // 100)
    second = chance.randint(length // 4, (length - first) // 2)
    return [first, second, length - first - second]
