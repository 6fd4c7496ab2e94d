"""Which stick gives which piece, once the pieces are fixed: as much area as possible, then as little wood."""

import math
import random
from collections import defaultdict
from collections.abc import Callable, Hashable, Sequence
from dataclasses import dataclass
from typing import TypeVar

from plankwright.layout.columns import Columns, Cut, Effort
from plankwright.layout.patterns import Cutter, NeedKind, StickKind
from plankwright.layout.plan import Stick
from plankwright.layout.rounding import bare_area, dived, filled, wood_area
from plankwright.layout.sticks import cut_from
from plankwright.measure import Nm
from plankwright.model import Rules

_BARE_PRICE = 16
"""To leave the smallest need bare costs as much as so many of the largest sticks."""

_SUMS = 2_000_000
"""So many sums of areas are looked at when a bound is rounded up to the next of them."""

_DIVES = 8
"""After so many dives the patterns found are looked at together."""

_Key = TypeVar("_Key", bound=Hashable)


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
        Always valid, with bounds that hold whatever the effort.
    """
    blemished = any(stick.hidden_only for stick in sticks)
    need_members = _alike([(need.length, need.height, need.hidden and blemished) for need in needs])
    stick_members = _alike([(stick.length, stick.width, stick.hidden_only) for stick in sticks])
    cutter = Cutter(
        [NeedKind(*key, len(members)) for key, members in need_members.items()],
        [StickKind(*key, len(members)) for key, members in stick_members.items()],
        kerf=rules.crosscut_kerf_nm,
        tolerance=rules.width_tolerance_nm,
    )
    search = _Search(cutter, Effort(work, stopped), seed)
    if needs and sticks:
        search.run()
    chosen = _cut_out(
        search.best, needs, sticks, rules, list(need_members.values()), list(stick_members.values())
    )
    total = sum(need.length * need.height for need in needs)
    bare = bare_area(cutter, search.best)
    return Packing(
        chosen=chosen,
        unplaced=tuple(sorted(set(range(len(needs))) - {place for place, _ in chosen})),
        placed_nm2=total - bare,
        most_area_nm2=total - search.least_bare,
        wood_nm2=wood_area(cutter, search.best),
        least_wood_nm2=None if bare else search.least_wood,
    )


class _Search:
    """The steps of a packing, each of which may find it good enough."""

    def __init__(self, cutter: Cutter, effort: Effort, seed: int) -> None:
        self.cutter, self.effort, self.seed = cutter, effort, seed
        self.best: list[Cut] = []
        homeless = [
            need.area * need.count
            for place, need in enumerate(cutter.needs)
            if not any(cutter.fits(place, stick) for stick in range(len(cutter.sticks)))
        ]
        self.least_bare, self.least_wood = sum(homeless), 0

    def run(self) -> None:
        """Try best fit, then bound, then dive, then whole numbers, until nothing better can exist."""
        cutter = self.cutter
        for order in self._orders():
            self._keep(filled(cutter, (), order))
        areas = [need.area for need in cutter.needs]
        woods = [stick.area for stick in cutter.sticks]
        price = -(-_BARE_PRICE * max(woods) // min(areas))
        columns = Columns(cutter, woods, [price * area for area in areas])
        self._take_in(columns)
        counts = [need.count for need in cutter.needs], [stick.count for stick in cutter.sticks]
        columns.generate(*counts, self.effort)
        sticks = [(stick.area, stick.count) for stick in cutter.sticks]
        self.least_wood = _least_sum(sticks, columns.bound)
        if bare_area(cutter, self.best):
            self._bound_bare(columns, areas)
        self._improve(columns)

    def _improve(self, columns: Columns) -> None:
        """Dive again and again, and now and then choose among all patterns found so far."""
        chance, dives = random.Random(self.seed), 0  # noqa: S311 - a search, not a secret
        seen = -1
        while not self._done() and self.effort.left > 0 and not self.effort.stopped():
            dive = dived(columns, self.effort, chance if dives else None, self._price(columns))
            if dive is not None:
                self._keep(filled(self.cutter, dive, self._orders()[0]))
            dives += 1
            if dives % _DIVES == 0 and not self._done():
                self._take_in(columns)
                some = Effort(self.effort.left // 2, self.effort.stopped)
                before = some.left
                whole = columns.whole(self.seed, some)
                self.effort.left -= before - some.left
                self._keep(filled(self.cutter, whole, self._orders()[0]))
                if seen == len(columns.columns):
                    return
                seen = len(columns.columns)

    def _bound_bare(self, columns: Columns, areas: Sequence[int]) -> None:
        """Bound the area left bare: the same programme, with wood for nothing."""
        free = Columns(self.cutter, [0] * len(self.cutter.sticks), areas)
        for stick, pattern in columns.columns:
            free.add(stick, pattern)
        counts = [need.count for need in self.cutter.needs], [stick.count for stick in self.cutter.sticks]
        free.generate(*counts, self.effort)
        for stick, pattern in free.columns:
            columns.add(stick, pattern)
        needs = [(need.area, need.count) for need in self.cutter.needs]
        self.least_bare = _least_sum(needs, max(self.least_bare, free.bound))

    def _orders(self) -> tuple[Callable[[int], tuple[int, ...]], ...]:
        needs = self.cutter.needs
        return (
            lambda place: (-needs[place].height, -needs[place].length),
            lambda place: (-needs[place].length, -needs[place].height),
        )

    def _take_in(self, columns: Columns) -> None:
        for cut in self.best:
            columns.add(cut.stick, cut.pattern)

    def _cost(self, cuts: Sequence[Cut]) -> tuple[int, int]:
        return bare_area(self.cutter, cuts), wood_area(self.cutter, cuts)

    def _price(self, columns: Columns) -> int:
        bare = bare_area(self.cutter, self.best) * (columns.bare_costs[0] // self.cutter.needs[0].area)
        return bare + wood_area(self.cutter, self.best)

    def _keep(self, cuts: list[Cut]) -> None:
        if not self.best or self._cost(cuts) < self._cost(self.best):
            self.best = cuts

    def _done(self) -> bool:
        bare, wood = self._cost(self.best)
        return bare == self.least_bare and (bare > 0 or wood == self.least_wood)


def _least_sum(parts: Sequence[tuple[int, int]], bound: int) -> int:
    """Give the least that some of the parts can add up to when they add up to a bound at least.

    Each part is given with how many there are. Where there are too many sums to look at all of them, the answer
    may be too low, but is never below the bound.
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
    """Give the places of each key, in order of the keys so that the order of the input does not matter."""
    members: dict[_Key, list[int]] = defaultdict(list)
    for place, key in enumerate(keys):
        members[key].append(place)
    return members


def _cut_out(
    cuts: Sequence[Cut],
    needs: Sequence[Need],
    sticks: Sequence[Stick],
    rules: Rules,
    need_members: Sequence[Sequence[int]],
    stick_members: Sequence[Sequence[int]],
) -> tuple[tuple[int, Stick], ...]:
    """Lay the pieces of each stick one after another, the longest first, a kerf between two."""
    wanted, wood = [iter(members) for members in need_members], [iter(members) for members in stick_members]
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
