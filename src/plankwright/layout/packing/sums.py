"""What whole sticks cost: what their costs can add up to, and the cheapest that hold so much."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import gcd

from plankwright.layout.packing.kinds import Assortment
from plankwright.layout.packing.patterns import Knapsack, free, worthiest

_SUMS = 2_000_000
"""So many sums are looked at when a bound is rounded up to the next of them."""

_MOST_WORTH = 2**60
"""What everything is worth together stays below this, so that the arithmetic holds it."""


@dataclass(frozen=True, slots=True)
class Supply:
    """Some of the sticks.

    Parameters
    ----------
    cost
        What they cost together. [nm²]
    sticks
        How many of each kind.
    """

    cost: int
    sticks: tuple[int, ...]


def least_sum(parts: Sequence[tuple[int, int]], bound: int) -> int:
    """Give the least that some of the parts can add up to when they add up to a bound at least.

    Parameters
    ----------
    parts
        (size, how many).
    bound
        [size]

    Returns
    -------
    int
        Where there are too many sums to look at all of them, it may be too low, but is never below the bound.
    """
    step = gcd(*(size for size, _ in parts))
    floor = -(-bound // step)
    ceiling = floor + max(size for size, _ in parts) // step
    if ceiling > _SUMS:
        return floor * step
    sums = 1  # Bit k is set once k steps are a sum.
    for size, count in parts:
        for _ in range(min(count, ceiling * step // size)):
            sums |= (sums << size // step) & ((2 << ceiling) - 1)
    sums >>= floor
    if not sums:
        return floor * step
    return (floor + (sums & -sums).bit_length() - 1) * step


class Supplies:
    """The sticks that are worth most for each cost.

    Parameters
    ----------
    assortment
        The sticks; each must be spent whole once it is cut into.
    worths
        Of a stick of each kind, whole numbers, none below nothing.
    asked
        What those that are chosen must be worth together.

    Attributes
    ----------
    least
        The cheapest sticks that are worth so much; nothing when not even all of them are, or when there are
        too many sums.
    """

    def __init__(self, assortment: Assortment, worths: Sequence[int], asked: int) -> None:
        self._assortment = assortment
        costs = [wood.cost for wood in assortment.sticks]
        self._step = gcd(*costs)
        room = sum(wood.cost * wood.count for wood in assortment.sticks) // self._step
        self._knapsack = Knapsack(min(room, _SUMS))
        for kind, (wood, worth) in enumerate(zip(assortment.sticks, worths, strict=True)):
            self._knapsack.offer(kind, wood.cost // self._step, worth, wood.count)
        enough = self._knapsack.worth >= asked
        self.least = self._at(int(enough.argmax())) if enough.any() else None

    def within(self, cost: int) -> Supply:
        """Give the sticks that are worth most among those that cost no more. [nm²]"""
        return self._at(min(cost // self._step, len(self._knapsack.worth) - 1))

    def _at(self, room: int) -> Supply:
        sticks = [0] * len(self._assortment.sticks)
        for kind, count in self._knapsack.filling(room):
            sticks[kind] = count
        cost = sum(wood.cost * count for wood, count in zip(self._assortment.sticks, sticks, strict=True))
        return Supply(cost, tuple(sticks))


def supplies_by_size(assortment: Assortment) -> Supplies | None:
    """Look at sticks by how much of them the pieces can fill at most.

    Returns
    -------
    Supplies or None
        Its least cost no packing of every need beats; nothing where something of a stick may be kept, or
        where lengths are not exact.
    """
    if not assortment.keeps_nothing() or not assortment.exact:
        return None
    heights = [max(0, need.height - assortment.tolerance) for need in assortment.needs]
    level = gcd(*heights) or 1
    prices = [
        size // assortment.unit * (height // level)
        for size, height in zip(assortment.sizes, heights, strict=True)
    ]
    counts = [need.count for need in assortment.needs]
    asked = sum(price * count for price, count in zip(prices, counts, strict=True))
    if asked > _MOST_WORTH:
        return None
    worths = worthiest(assortment, prices, counts, free(assortment)).gains
    return Supplies(assortment, worths, asked)
