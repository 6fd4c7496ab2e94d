"""The steps of a packing: best fit, values, bounds, dives, and whole numbers of patterns."""

import random
from collections.abc import Callable, Sequence
from fractions import Fraction
from math import gcd

from plankwright.layout.packing.columns import Columns, Cut
from plankwright.layout.packing.effort import Work
from plankwright.layout.packing.kinds import Assortment, Pattern
from plankwright.layout.packing.narrowing import can_narrow, chosen, narrowed
from plankwright.layout.packing.rounding import bare_area, dived, filled, wood_spent
from plankwright.layout.packing.sums import Supplies, least_sum, supplies_by_size
from plankwright.layout.packing.values import Values

_BARE_PRICE = 16
"""To leave the smallest need bare costs as much as so many of the largest sticks."""

_DEAREST_BARE = 2**20
"""A higher price of bare area would strain the arithmetic; needs that are tiny for it are filled in last."""

_VALUE_PASSES = 10
"""So often sticks are dealt out by the value of pieces, at the most."""

_VALUES_SHARE = 0.2
"""Share of the work that this may take."""

_DIVES = 4
"""After so many dives the patterns found are looked at together."""

_FEW = 1000
"""So few patterns that can matter are looked at before those that were found."""

_NARROW_SHARE, _CHOICE_SHARE = 0.7, 0.3
"""Share of what work is left that a choice of whole numbers may take: among all patterns that can matter, and
among those found so far."""


class Search:
    """The steps of a packing; it is over as soon as nothing better can exist.

    Parameters
    ----------
    assortment
        What can be cut.
    work
        May be used up.
    seed
        For whatever is drawn by lot.

    Attributes
    ----------
    best
        The best packing so far.
    proofs
        Prices of the kinds of needs that bounds rest on. [nm²]
    found
        Cuts that came up on the way and may be of use.
    least_bare
        No packing leaves less area bare. [nm²]
    least_wood
        No packing of every need spends less wood. [nm²]
    """

    def __init__(self, assortment: Assortment, work: Work, seed: int) -> None:
        self.assortment, self.work, self.seed = assortment, work, seed
        self.chance = random.Random(seed)  # noqa: S311 - a search, not a secret
        self.best: list[Cut] = []
        self.proofs: list[list[Fraction]] = []
        self.found: list[Cut] = []
        self.least_bare = sum(
            need.area * need.count
            for place, need in enumerate(assortment.needs)
            if not any(assortment.fits(place, stick) for stick in range(len(assortment.sticks)))
        )
        self.supplies = supplies_by_size(assortment) if assortment.needs and assortment.sticks else None
        self.least_wood = 0
        if self.supplies and self.supplies.least:
            self.least_wood = self.supplies.least.cost
        self._hopeless = 0
        """Below this cost the solver has found nothing to be possible, which is no proof. [nm²]"""

    def run(self) -> None:
        """Try best fit and values, bound what can be reached, then search for it."""
        for order in self._orders():
            self._keep(filled(self.assortment, (), order))
        self._value()
        if self._done():
            return
        columns = Columns(self.assortment, [self._price() * need.area for need in self.assortment.needs])
        self._take_in(columns)
        self.found = []
        bare, wood = self._cost(self.best)
        columns.generate(
            *self._everything(),
            self.work,
            enough=self.least_wood,
            settled=None if bare else wood - self._step() + 1,
        )
        self._raise_wood(columns)
        if self._cost(self.best)[0]:
            self._bound_bare(columns)
        self._dive(columns)
        self.proofs.append(columns.prices())

    def _value(self) -> None:
        """Deal sticks out by the value of the pieces, again and again while that helps."""
        values, aside = Values(self.assortment, self.chance), self.work.share(_VALUES_SHARE)
        needs, sticks = self._everything()
        for turn in range(_VALUE_PASSES):
            if self._done() or aside.over:
                break
            bare, wood = self._cost(self.best)
            supply = self._supply(turn)
            dealt = values.deal(needs, supply or sticks, aside, None if bare else wood)
            if dealt is not None:
                self.found += dealt
                self._keep(filled(self.assortment, dealt, self._orders()[0]))
        self.work.give_back(aside)

    def _supply(self, turn: int) -> Sequence[int] | None:
        """Choose sticks beforehand every other turn where they differ, for as little as may do."""
        if turn % 2 or self.supplies is None or len(self.assortment.sticks) == 1:
            return None
        cost = self.least_wood
        for _ in range(turn // 4):
            cost = self._next_cost(cost + 1)
        return self.supplies.within(cost).sticks

    def _bound_bare(self, columns: Columns) -> None:
        """Bound what is left bare: by what is spent at least, and by the programme with wood for nothing."""
        needs = [(need.area, need.count) for need in self.assortment.needs]
        dearest = sum(wood.cost * wood.count for wood in self.assortment.sticks)
        # Whatever is spent, not all of the programme's cost can be wood.
        bare = -((dearest - columns.bound) // self._price())
        gratis = Columns(self.assortment, [need.area for need in self.assortment.needs], wood_free=True)
        for stick, pattern in columns.columns:
            gratis.add(stick, pattern)
        gratis.generate(*self._everything(), self.work)
        for stick, pattern in gratis.columns:
            columns.add(stick, pattern)
        self.least_bare = least_sum(needs, max(self.least_bare, bare, gratis.bound))
        self.proofs.append(gratis.prices())

    def _dive(self, columns: Columns) -> None:
        """Dive again and again, and now and then choose among all patterns that can matter, or were found."""
        order, dives, seen = self._orders()[0], 0, -1
        while not self._done() and (not dives or not self.work.over):
            dive = dived(columns, self.work, self.chance if dives else None, *self._goals())
            if dive is not None:
                self._keep(filled(self.assortment, dive, order))
            dives += 1
            if self._done() or (dives > 1 and dives % _DIVES):
                continue
            patterns = self._patterns(columns)
            few = patterns is not None and len(patterns) <= _FEW
            if few and self._narrow(columns, patterns):
                return
            if dives == 1:
                continue
            if seen == len(columns.columns):
                return
            seen = len(columns.columns)
            self._take_in(columns)
            aside = self.work.share(_CHOICE_SHARE)
            self._keep(filled(self.assortment, columns.whole(self.seed, aside), order))
            self.work.give_back(aside)
            if not few and not self._done() and self._narrow(columns, patterns):
                return

    def _patterns(self, columns: Columns) -> list[tuple[int, Pattern]] | None:
        """List all patterns that the next cheaper packing could use, if they can be listed."""
        bare, wood = self._cost(self.best)
        if bare or not can_narrow(columns):
            return None
        columns.generate(*self._everything(), self.work, settled=wood - self._step() + 1)
        self._raise_wood(columns)
        return narrowed(columns, self._next(), self.work)

    def _next(self) -> int:
        """Give the least cost of sticks that might hold everything. [nm²]"""
        return self._next_cost(max(self.least_wood, self._hopeless + 1))

    def _narrow(self, columns: Columns, patterns: list[tuple[int, Pattern]] | None) -> bool:
        """Choose among all patterns that a cheaper packing could use. Whether that settles it."""
        while patterns is not None and not self.work.over:
            cost = self._next()
            aside = self.work.share(_NARROW_SHARE)
            found = chosen(columns, patterns, cost, self.seed, aside)
            self.work.give_back(aside)
            if found is None:
                return False
            if found:
                self._keep(filled(self.assortment, found, self._orders()[0]))
                return True
            self._hopeless = cost
            if self._done():
                return True
            patterns = self._patterns(columns)
        return self._done()

    def _raise_wood(self, columns: Columns) -> None:
        """Raise the least wood to what follows from the prices of the programme, in whole sticks."""
        least = columns.bound
        if self.assortment.keeps_nothing():
            supplies = Supplies(self.assortment, *columns.worths())
            least = max(least, supplies.least.cost if supplies.least else 0)
        self.least_wood = max(self.least_wood, self._next_cost(least))

    def _next_cost(self, bound: int) -> int:
        """Give the least that sticks can cost that cost so much at least. [nm²]"""
        sticks = [(wood.cost, wood.count) for wood in self.assortment.sticks]
        return least_sum(sticks, bound) if sticks and self.assortment.keeps_nothing() else bound

    def _step(self) -> int:
        """Give what costs differ by at the least. [nm²]"""
        return gcd(*(wood.cost for wood in self.assortment.sticks)) if self.assortment.keeps_nothing() else 1

    def _everything(self) -> tuple[list[int], list[int]]:
        return (
            [need.count for need in self.assortment.needs],
            [stick.count for stick in self.assortment.sticks],
        )

    def _orders(self) -> tuple[Callable[[int], tuple[int, ...]], ...]:
        needs = self.assortment.needs
        return (
            lambda place: (-needs[place].height, -needs[place].length),
            lambda place: (-needs[place].length, -needs[place].height),
        )

    def _take_in(self, columns: Columns) -> None:
        for cut in (*self.best, *self.found):
            columns.add(cut.stick, cut.pattern)

    def _cost(self, cuts: Sequence[Cut]) -> tuple[int, int]:
        return bare_area(self.assortment, cuts), wood_spent(self.assortment, cuts)

    def _price(self) -> int:
        """Give the price of bare area, by the price of wood."""
        dearest = max(wood.cost for wood in self.assortment.sticks)
        smallest = min(need.area for need in self.assortment.needs)
        return min(-(-_BARE_PRICE * dearest // smallest), _DEAREST_BARE)

    def _goals(self) -> tuple[int, int]:
        """Give what the best so far costs, bare area and wood together, and the least that can be. [nm²]"""
        bare, wood = self._cost(self.best)
        least = self.least_wood if not self.least_bare else 0
        return self._price() * bare + wood, self._price() * self.least_bare + least

    def _keep(self, cuts: list[Cut]) -> None:
        if not self.best or self._cost(cuts) < self._cost(self.best):
            self.best = cuts

    def _done(self) -> bool:
        """Whether nothing better exists, as far as is known."""
        bare, wood = self._cost(self.best)
        if bare:
            return bare == self.least_bare
        return wood == self.least_wood or wood <= self._next()
