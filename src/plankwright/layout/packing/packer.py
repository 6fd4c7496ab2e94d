"""Which stick gives which piece, once the pieces are fixed: as much area as possible, then as little wood."""

import math
import random
from collections import defaultdict
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TypeVar

from plankwright.layout.packing.columns import Columns, Cut, Work
from plankwright.layout.packing.patterns import Assortment, NeedKind, StickKind
from plankwright.layout.packing.rounding import bare_area, dived, filled, wood_area
from plankwright.layout.plan import Stick
from plankwright.layout.sticks import cut_from
from plankwright.measure import Nm
from plankwright.model import Rules

_BARE_PRICE = 16
"""To leave the smallest need bare costs as much as so many of the largest sticks."""

_DEAREST_BARE = 2**20
"""A higher price of bare area would strain the arithmetic; needs that are tiny for it are filled in last."""

_SUMS = 2_000_000
"""So many sums of areas are looked at when a bound is rounded up to the next of them."""

_DIVES = 8
"""After so many dives the patterns found are looked at together."""

_Key = TypeVar("_Key", bound=tuple[int, ...])


@dataclass(frozen=True, slots=True)
class Need:
    """A piece to be cut.

    Parameters
    ----------
    length
        Along the board. [nm]
    height
        Face width; a stick may be narrower by the width tolerance. [nm]
    hidden
        Whether a fixture hides all of it, so that a stick with a blemish will do.
    """

    length: Nm
    height: Nm
    hidden: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Packing:
    """Which piece is cut where, and how much better it could be.

    Parameters
    ----------
    chosen
        (place of a need, the rectangle of wood that it is cut from), in order of the needs.
    unplaced
        Places of the needs that found no wood.
    placed_nm2
        Area of the needs that are placed. [nm²]
    most_area_nm2
        No choice of sticks places more. [nm²]
    wood_nm2
        Area of the sticks that are cut into. [nm²]
    least_wood_nm2
        No choice of sticks places every need with less; nothing when not all are placed. [nm²]
    """

    chosen: tuple[tuple[int, Stick], ...]
    unplaced: tuple[int, ...]
    placed_nm2: int
    most_area_nm2: int
    wood_nm2: int
    least_wood_nm2: int | None

    @property
    def proven(self) -> bool:
        """Whether no choice places more area, nor everything with less wood."""
        return self.placed_nm2 == self.most_area_nm2 and self.least_wood_nm2 in {None, self.wood_nm2}


def pack(
    needs: Sequence[Need],
    sticks: Sequence[Stick],
    rules: Rules,
    *,
    work: int,
    seed: int,
    stopped: Callable[[], bool] = lambda: False,
) -> Packing:
    """Cut pieces of given sizes from sticks, one after another along each stick.

    Parameters
    ----------
    needs
        The pieces.
    sticks
        The wood; no two of them overlap.
    rules
        For the crosscut kerf and the width tolerance.
    work
        How much to do at most. The same work and seed give the same packing. [steps]
    seed
        For the solver.
    stopped
        Asked now and then; true once the user wants no more. The best so far is given.

    Returns
    -------
    Packing
        Always valid, with bounds that hold whatever the work.
    """
    blemished = any(stick.hidden_only for stick in sticks)
    need_members = _alike([(need.length, need.height, need.hidden and blemished) for need in needs])
    stick_members = _alike([(stick.length, stick.width, stick.hidden_only) for stick in sticks])
    assortment = Assortment(
        [NeedKind(*key, len(members)) for key, members in need_members.items()],
        [StickKind(*key, len(members)) for key, members in stick_members.items()],
        kerf=rules.crosscut_kerf_nm,
        tolerance=rules.width_tolerance_nm,
    )
    search = _Search(assortment, Work(work, stopped), seed)
    if needs and sticks:
        search.run()
    members = list(need_members.values()), list(stick_members.values())
    chosen = _cut_out(search.best, needs, sticks, rules, members)
    total = sum(need.length * need.height for need in needs)
    bare = bare_area(assortment, search.best)
    return Packing(
        chosen=chosen,
        unplaced=tuple(sorted(set(range(len(needs))) - {place for place, _ in chosen})),
        placed_nm2=total - bare,
        most_area_nm2=total - search.least_bare,
        wood_nm2=wood_area(assortment, search.best),
        least_wood_nm2=None if bare else search.least_wood,
    )


class _Search:
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
    least_bare
        No packing leaves less area bare. [nm²]
    least_wood
        No packing of every need spends less wood. [nm²]
    """

    def __init__(self, assortment: Assortment, work: Work, seed: int) -> None:
        self.assortment, self.work, self.seed = assortment, work, seed
        self.best: list[Cut] = []
        self.least_bare = sum(
            need.area * need.count
            for place, need in enumerate(assortment.needs)
            if not any(assortment.fits(place, stick) for stick in range(len(assortment.sticks)))
        )
        self.least_wood = 0

    def run(self) -> None:
        """Try best fit, bound what can be reached, then dive for it."""
        for order in self._orders():
            self._keep(filled(self.assortment, (), order))
        needs = [(need.area, need.count) for need in self.assortment.needs]
        sticks = [(stick.area, stick.count) for stick in self.assortment.sticks]
        dearest, smallest = max(area for area, _ in sticks), min(area for area, _ in needs)
        self.price = min(-(-_BARE_PRICE * dearest // smallest), _DEAREST_BARE)
        columns = Columns(
            self.assortment, [area for area, _ in sticks], [self.price * area for area, _ in needs]
        )
        self._take_in(columns)
        columns.generate(*self._everything(), self.work)
        self.least_wood = _least_sum(sticks, columns.bound)
        if self._cost(self.best)[0]:
            # Whatever is spent, not all of the programme's cost can be wood.
            bare = -((sum(area * count for area, count in sticks) - columns.bound) // self.price)
            self.least_bare = _least_sum(needs, max(self.least_bare, bare, self._least_bare(columns)))
        self._dive(columns)

    def _least_bare(self, columns: Columns) -> int:
        """Bound the area left bare: the same programme, with wood for nothing. [nm²]"""
        free = Columns(
            self.assortment,
            [0] * len(self.assortment.sticks),
            [need.area for need in self.assortment.needs],
        )
        for stick, pattern in columns.columns:
            free.add(stick, pattern)
        free.generate(*self._everything(), self.work)
        for stick, pattern in free.columns:
            columns.add(stick, pattern)
        return free.bound

    def _dive(self, columns: Columns) -> None:
        """Dive again and again, and now and then choose among all patterns found so far."""
        chance = random.Random(self.seed)  # noqa: S311 - a search, not a secret
        order, dives, seen = self._orders()[0], 0, -1
        while not (self._done() or self.work.stopped() or (dives and self.work.left <= 0)):
            dive = dived(columns, self.work, chance if dives else None, self._price())
            if dive is not None:
                self._keep(filled(self.assortment, dive, order))
            dives += 1
            if dives % _DIVES or self._done():
                continue
            if seen == len(columns.columns):
                return
            seen = len(columns.columns)
            self._take_in(columns)
            self._keep(filled(self.assortment, columns.whole(self.seed, self.work.half()), order))

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
        for cut in self.best:
            columns.add(cut.stick, cut.pattern)

    def _cost(self, cuts: Sequence[Cut]) -> tuple[int, int]:
        return bare_area(self.assortment, cuts), wood_area(self.assortment, cuts)

    def _price(self) -> int:
        bare, wood = self._cost(self.best)
        return self.price * bare + wood

    def _keep(self, cuts: list[Cut]) -> None:
        if not self.best or self._cost(cuts) < self._cost(self.best):
            self.best = cuts

    def _done(self) -> bool:
        bare, wood = self._cost(self.best)
        return bare == self.least_bare and (bare > 0 or wood == self.least_wood)


def _least_sum(parts: Sequence[tuple[int, int]], bound: int) -> int:
    """Give the least that some of the parts can add up to when they add up to a bound at least.

    Each part is given with how many there are. Where there are too many sums to look at all of them, the
    answer may be too low, but is never below the bound.
    """
    step = math.gcd(*(size for size, _ in parts))
    floor = -(-bound // step)
    ceiling = floor + max(size for size, _ in parts) // step
    if ceiling > _SUMS:
        return floor * step
    sums = 1  # Bit k is set once k steps are a sum.
    for size, count in parts:
        for _ in range(min(count, ceiling * step // size)):
            sums |= (sums << size // step) & ((2 << ceiling) - 1)
    sums >>= floor
    return (floor + (sums & -sums).bit_length() - 1) * step


def _alike(keys: Sequence[_Key]) -> dict[_Key, list[int]]:
    """Give the places of each key, in order of the keys, so that the order of the input hardly matters."""
    members: dict[_Key, list[int]] = defaultdict(list)
    for place, key in enumerate(keys):
        members[key].append(place)
    return {key: members[key] for key in sorted(members)}


def _cut_out(
    cuts: Sequence[Cut],
    needs: Sequence[Need],
    sticks: Sequence[Stick],
    rules: Rules,
    members: tuple[Sequence[Sequence[int]], Sequence[Sequence[int]]],
) -> tuple[tuple[int, Stick], ...]:
    """Lay the pieces of each stick one after another, the longest first, a kerf between two."""
    wanted, wood = ([iter(places) for places in kinds] for kinds in members)
    chosen = []
    for cut in cuts:
        stick = sticks[next(wood[cut.stick])]
        places = [next(wanted[kind]) for kind, count in cut.pattern for _ in range(count)]
        along = stick.along_from
        for place in sorted(places, key=lambda place: (-needs[place].length, place)):
            need = needs[place]
            width = min(need.height, stick.width)
            chosen.append((place, cut_from(stick, along, need.length, stick.across_from, width)))
            along += need.length + rules.crosscut_kerf_nm
    return tuple(sorted(chosen, key=lambda choice: choice[0]))
