"""The worthiest pattern of each kind of stick at given prices, by dynamic programming over room."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

import numpy as np
import numpy.typing as npt

from plankwright.layout.packing.kinds import Assortment, Pattern
from plankwright.measure import Nm

_EXACT = 2**62
"""Products below this are whole numbers; larger ones are rounded up a little more than need be."""


@dataclass(frozen=True, slots=True)
class Charges:
    """What cutting into sticks costs, in the unit of the prices.

    Parameters
    ----------
    whole
        Of a stick of each kind, when nothing of it is kept; rounded down.
    refunds
        For each kind, what a nanometre that is kept is worth; zero when nothing is ever kept.
    """

    whole: tuple[int, ...]
    refunds: tuple[Fraction, ...]


def free(assortment: Assortment) -> Charges:
    """Give sticks that cost nothing."""
    kinds = len(assortment.sticks)
    return Charges((0,) * kinds, (Fraction(0),) * kinds)


def charged(assortment: Assortment, scale: int, unit: int) -> Charges:
    """Give the charges for wood.

    Parameters
    ----------
    assortment
        The sticks.
    scale, unit
        An area of `unit` [nm²] costs `scale`.
    """
    nothing = assortment.keeps_nothing()
    return Charges(
        tuple(wood.cost * scale // unit for wood in assortment.sticks),
        tuple(
            Fraction(0 if nothing or wood.kept_from is None else wood.width * scale, unit)
            for wood in assortment.sticks
        ),
    )


@dataclass(frozen=True, slots=True)
class Worthiest:
    """The best that each kind of stick can give, for one set of prices.

    Parameters
    ----------
    gains
        For each kind of stick, the prices of its pieces less its charge; no pattern gains more.
    patterns
        For each kind of stick, a pattern; it gains as much where lengths are exact and nothing is kept, and
        nearly so elsewhere.
    """

    gains: tuple[int, ...]
    patterns: tuple[Pattern, ...]


def worthiest(
    assortment: Assortment,
    prices: Sequence[int],
    limits: Sequence[int],
    charges: Charges,
    *,
    hasty: bool = False,
) -> Worthiest:
    """Find the worthiest pattern of each kind of stick.

    Parameters
    ----------
    assortment
        What can be cut.
    prices
        Of each kind of need; what a pattern adds up to must stay below 2**62.
    limits
        How many of each kind a pattern may hold.
    charges
        Of each kind of stick.
    hasty
        Whether nearly the worthiest will do; then the gains prove nothing.
    """
    if hasty and assortment.coarse_unit > assortment.unit:
        gains, patterns = _fill(assortment, prices, limits, charges, assortment.coarse_unit, rounded_up=True)
        return Worthiest(tuple(gains), tuple(patterns))
    gains, patterns = _fill(assortment, prices, limits, charges, assortment.unit, rounded_up=False)
    if not assortment.exact:
        _, tighter = _fill(assortment, prices, limits, charges, assortment.unit, rounded_up=True)
        patterns = [
            pattern if assortment.room_left(stick, pattern) >= 0 else tighter[stick]
            for stick, pattern in enumerate(patterns)
        ]
    return Worthiest(tuple(gains), tuple(patterns))


def _fill(
    assortment: Assortment,
    prices: Sequence[int],
    limits: Sequence[int],
    charges: Charges,
    unit: Nm,
    *,
    rounded_up: bool,
) -> tuple[list[int], list[Pattern]]:
    """Fill every stick; rounded up, each pattern fits, and rounded down, no gain is too low."""
    gains = [0] * len(assortment.sticks)
    patterns: list[Pattern] = [()] * len(assortment.sticks)
    sizes = [-(-size // unit) if rounded_up else size // unit for size in assortment.sizes]
    for hidden_only in (False, True):
        sticks = [place for place, wood in enumerate(assortment.sticks) if wood.hidden_only is hidden_only]
        if not sticks:
            continue
        needs = [
            place
            for place, need in enumerate(assortment.needs)
            if (need.hidden or not hidden_only) and prices[place] > 0 and limits[place] > 0
        ]
        knapsack = Knapsack(max(assortment.rooms[stick] for stick in sticks) // unit)
        needs.sort(key=lambda place: assortment.needs[place].height, reverse=True)
        for stick in sorted(sticks, key=lambda place: assortment.sticks[place].width):
            widest = assortment.sticks[stick].width + assortment.tolerance
            while needs and assortment.needs[needs[-1]].height <= widest:
                need = needs.pop()
                knapsack.offer(need, sizes[need], prices[need], limits[need])
            room, gain = _best_room(assortment, knapsack, stick, charges, unit)
            gains[stick], patterns[stick] = gain, knapsack.filling(room)
    return gains, patterns


def _best_room(
    assortment: Assortment, knapsack: "Knapsack", stick: int, charges: Charges, unit: Nm
) -> tuple[int, int]:
    """Give how much room of a stick is best filled, and what is gained by that."""
    room, refund = assortment.rooms[stick] // unit, charges.refunds[stick]
    best = room, int(knapsack.worth[room]) - charges.whole[stick]
    kept_from = assortment.sticks[stick].kept_from
    if not refund or kept_from is None:
        return best
    # Used up to a cell, at most this much is kept beyond it.
    beyond = assortment.rooms[stick] - assortment.kerf
    last = (beyond - max(1, kept_from)) // unit
    if last <= 0:
        return best
    left = beyond - unit * np.arange(last + 1)
    values = knapsack.worth[: last + 1] + _refunded(left, refund) - charges.whole[stick]
    used = int(np.argmax(values[1:])) + 1
    return (used, int(values[used])) if values[used] > best[1] else best


def _refunded(left: npt.NDArray[np.int64], refund: Fraction) -> npt.NDArray[np.int64]:
    """Give what is refunded for lengths that are kept, rounded up."""
    if int(left[0]) * refund.numerator < _EXACT:
        return np.asarray(-(-left * refund.numerator // refund.denominator))
    return np.asarray(np.ceil(left * float(refund)) + 1, dtype=np.int64)


class Knapsack:
    """Dynamic programming over room, to which items are offered one kind after another.

    At any time it knows the best filling of every room up to its own, with what was offered so far.

    Parameters
    ----------
    room
        The largest room. [cells]

    Attributes
    ----------
    worth
        What the best filling of each room is worth.
    """

    def __init__(self, room: int) -> None:
        self.worth: npt.NDArray[np.int64] = np.zeros(room + 1, dtype=np.int64)
        self._stages: list[tuple[int, int, int, npt.NDArray[np.bool_]]] = []

    def offer(self, item: int, size: int, price: int, limit: int) -> None:
        """Take in up to so many of an item, by powers of two so that few steps serve many copies."""
        room = len(self.worth) - 1
        left, copies = (min(limit, room // size) if size else limit), 1
        while left > 0:
            copies = min(copies, left)
            weight, worth = size * copies, price * copies
            with_item = self.worth[: room + 1 - weight] + worth
            without = self.worth[weight:]
            self._stages.append((item, copies, weight, with_item > without))
            np.maximum(without, with_item, out=without)
            left -= copies
            copies *= 2

    def filling(self, room: int) -> Pattern:
        """Give the best filling of a room."""
        counts: dict[int, int] = {}
        for item, copies, weight, taken in reversed(self._stages):
            if room >= weight and taken[room - weight]:
                counts[item] = counts.get(item, 0) + copies
                room -= weight
        return tuple(sorted(counts.items()))
