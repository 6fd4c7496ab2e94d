"""Stick after stick by the worth of pieces, which rises where they went with much waste.

This is the sequential value correction of Mukhacheva and others, as told by Belov and Scheithauer (2007),
"Setup and open-stacks minimization in one-dimensional stock cutting", from memory: each stick takes the
worthiest pattern of what is left; then the worth of its pieces moves towards what they would have to be worth
to pay for the waste beside them.
"""

import random
from collections.abc import Sequence

from plankwright.layout.packing.columns import Cut
from plankwright.layout.packing.effort import Work, pricing_work
from plankwright.layout.packing.kinds import Assortment, Pattern
from plankwright.layout.packing.patterns import free, worthiest

_POWER = 1.02
"""A larger piece is worth a little more than its size, so that small ones are left for the last sticks."""

_LEAST_SHARE, _MOST_SHARE = 0.2, 0.8
"""How far a worth moves: a share between these, by lot, and less the more such pieces are still to cut."""

_SCALE = 2.0**40
"""Worth of all needs together."""


class Values:
    """What pieces are worth, corrected from one stick to the next.

    Parameters
    ----------
    assortment
        What can be cut.
    chance
        Draws how far worths move.
    """

    def __init__(self, assortment: Assortment, chance: random.Random) -> None:
        self._assortment, self._chance = assortment, chance
        areas = [(need.length + assortment.kerf) * need.height for need in assortment.needs]
        largest = max(areas, default=1)
        self._usual = [(area / largest) ** _POWER for area in areas]
        self._worths = list(self._usual)
        self._free = free(assortment)

    def deal(
        self, needs: Sequence[int], sticks: Sequence[int], work: Work, too_dear: int | None = None
    ) -> list[Cut] | None:
        """Cut one stick after another until no need is left, or none can be served.

        Parameters
        ----------
        needs, sticks
            How many of each kind there are.
        work
            May be used up; then what was cut so far is given.
        too_dear
            It is given up once the wood costs no less than this. [nm²]

        Returns
        -------
        list of Cut or None
            One a stick.
        """
        left, unused, cuts, spent = list(needs), list(sticks), [], 0
        while any(left) and not work.over:
            chosen = self._last(left, unused) or self._worthiest(left, unused, work)
            if chosen is None:
                break
            stick, pattern = chosen
            spent += self._assortment.cost(stick, pattern)
            if too_dear is not None and spent + self._least_for(left, pattern) >= too_dear:
                return None
            unused[stick] -= 1
            for need, count in pattern:
                left[need] -= count
            self._correct(stick, pattern, left)
            cuts.append(Cut(stick, pattern, 1))
        return cuts

    def _last(self, left: Sequence[int], unused: Sequence[int]) -> tuple[int, Pattern] | None:
        """Give the cheapest stick that takes all that is left, if one does."""
        pattern = tuple((need, count) for need, count in enumerate(left) if count)
        takes = [
            (self._assortment.cost(stick, pattern), stick)
            for stick, count in enumerate(unused)
            if count
            and self._assortment.room_left(stick, pattern) >= 0
            and all(self._assortment.fits(need, stick) for need, _ in pattern)
        ]
        return (min(takes)[1], pattern) if takes else None

    def _worthiest(
        self, left: Sequence[int], unused: Sequence[int], work: Work
    ) -> tuple[int, Pattern] | None:
        """Give the stick whose pattern is worth most for its cost."""
        total = sum(worth * count for worth, count in zip(self._worths, left, strict=True))
        prices = [
            max(1, round(worth * _SCALE / total)) if count else 0
            for worth, count in zip(self._worths, left, strict=True)
        ]
        found = worthiest(self._assortment, prices, left, self._free, hasty=True)
        work.spend(pricing_work(self._assortment, sum(1 for count in left if count), hasty=True))
        best: tuple[float, int] | None = None
        for stick, pattern in enumerate(found.patterns):
            if unused[stick] and pattern:
                worth = sum(prices[need] * count for need, count in pattern)
                ratio = worth / self._assortment.cost(stick, pattern)
                if best is None or ratio > best[0]:
                    best = ratio, stick
        return (best[1], found.patterns[best[1]]) if best else None

    def _least_for(self, left: Sequence[int], pattern: Pattern) -> int:
        """Bound from below what the needs beyond a pattern will cost. [nm²]"""
        rest = list(left)
        for need, count in pattern:
            rest[need] -= count
        tolerance = self._assortment.tolerance
        return sum(
            need.length * max(0, need.height - tolerance) * count
            for need, count in zip(self._assortment.needs, rest, strict=True)
        )

    def _correct(self, stick: int, pattern: Pattern, left: Sequence[int]) -> None:
        room = self._assortment.rooms[stick]
        paid = room / (room - self._assortment.room_left(stick, pattern))
        for need, count in pattern:
            share = self._chance.uniform(_LEAST_SHARE, _MOST_SHARE) * count / (2 * count + left[need])
            self._worths[need] += share * (self._usual[need] * paid - self._worths[need])
