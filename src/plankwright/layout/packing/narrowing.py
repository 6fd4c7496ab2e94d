"""All patterns that a solution of some cost can use at all, and the choice among them.

Let prices and rents prove that no solution costs less than a bound. In a solution that costs the bound and a
gap, add up for each stick its cost and its rent, less the prices of the pieces that it gives: that is the gap
at most, and no part of it is below nothing. So no single pattern is farther off than the gap: often only
hundreds are left of millions, and a search for whole numbers among them settles the matter.
"""

from collections.abc import Iterator, Sequence

import highspy
import numpy as np
import numpy.typing as npt

from plankwright.layout.packing.columns import SCALE, Columns, Cut, Proof
from plankwright.layout.packing.effort import Work
from plankwright.layout.packing.kinds import Assortment, Pattern
from plankwright.layout.packing.solver import proved_impossible, quiet_solver, whole_numbers

_MOST_PATTERNS = 10_000
"""Among more patterns than this a search for whole numbers is hopeless."""

_MOST_STEPS = 400_000
"""So many steps are taken to list them, before it is given up."""

_MOST_CELLS = 2**23
"""The tables that guide the listing are no larger than this."""

_STEP_WORK, _CELL_WORK = 1.5e-6, 6e-9
"""A step of the listing, and a cell of its tables, as measured once. [s]"""


def can_narrow(columns: Columns) -> bool:
    """Say whether patterns can be listed: where lengths are exact, none too fine, and nothing is kept."""
    assortment = columns.assortment
    cells = len(assortment.needs) * (max(assortment.rooms, default=0) // assortment.unit + 1)
    return assortment.exact and assortment.keeps_nothing() and not columns.wood_free and cells <= _MOST_CELLS


def narrowed(columns: Columns, cost: int, work: Work) -> list[tuple[int, Pattern]] | None:
    """List every pattern that a solution can use which serves each need just once for a cost at most.

    Parameters
    ----------
    columns
        Its best proof tells which those are.
    cost
        [nm²]
    work
        May be used up.

    Returns
    -------
    list or None
        (kind of stick, pattern); nothing when there are too many.
    """
    assortment, proof = columns.assortment, columns.proof
    gap = cost * SCALE // columns.unit + 1 - proof.scaled
    listing = _Listing(assortment, proof, work)
    found: list[tuple[int, Pattern]] = []
    for stick, wood in enumerate(assortment.sticks):
        least = wood.cost * SCALE // columns.unit + proof.rents[stick] - gap
        for pattern in listing.patterns(stick, least):
            found.append((stick, pattern))
            if len(found) > _MOST_PATTERNS:
                return None
        if listing.given_up:
            return None
    return found


class _Listing:
    """Patterns of a stick whose prices add up to so much at least.

    Parameters
    ----------
    assortment, proof
        What can be cut, at which prices.
    work
        May be used up.
    """

    def __init__(self, assortment: Assortment, proof: Proof, work: Work) -> None:
        self._assortment, self._prices, self._work = assortment, proof.prices, work
        self._steps = _MOST_STEPS
        self.given_up = False

    def patterns(self, stick: int, least: int) -> Iterator[Pattern]:
        """Give every pattern of a stick that is worth so much."""
        unit = self._assortment.unit
        needs = [need for need in range(len(self._assortment.needs)) if self._assortment.fits(need, stick)]
        needs.sort(key=lambda need: -self._assortment.sizes[need])
        sizes = [self._assortment.sizes[need] // unit for need in needs]
        room = self._assortment.rooms[stick] // unit
        most = [
            min(self._assortment.needs[need].count, room // size)
            for need, size in zip(needs, sizes, strict=True)
        ]
        tables = self._tables(needs, sizes, most, room)
        chosen: list[tuple[int, int]] = []

        def deeper(at: int, room: int, lacking: int) -> Iterator[Pattern]:
            if lacking <= 0:
                yield tuple(sorted(chosen))
            for place in range(at, len(needs)):
                self._steps -= 1
                if self._steps < 0:
                    self.given_up = True
                if self.given_up or tables[place][room] < lacking:
                    return
                for count in range(min(most[place], room // sizes[place]), 0, -1):
                    chosen.append((needs[place], count))
                    worth = count * self._prices[needs[place]]
                    yield from deeper(place + 1, room - count * sizes[place], lacking - worth)
                    chosen.pop()

        before = self._steps
        yield from (pattern for pattern in deeper(0, room, least) if pattern)
        self._work.spend((before - self._steps) * _STEP_WORK)
        self.given_up |= self._work.over

    def _tables(
        self, needs: Sequence[int], sizes: Sequence[int], most: Sequence[int], room: int
    ) -> list[npt.NDArray[np.int64]]:
        """Give, for each need and room, the most that it and those after it can be worth there."""
        tables = [np.zeros(room + 1, dtype=np.int64)]
        for need, size, count in reversed(list(zip(needs, sizes, most, strict=True))):
            price, beyond = self._prices[need], tables[-1]
            table = beyond.copy()
            for copies in range(1, count + 1):
                with_it = beyond[: room + 1 - copies * size] + copies * price
                np.maximum(table[copies * size :], with_it, out=table[copies * size :])
            tables.append(table)
            self._work.spend(_CELL_WORK * count * room)
        return tables[::-1]


def chosen(
    columns: Columns, patterns: Sequence[tuple[int, Pattern]], cost: int, seed: int, work: Work
) -> list[Cut] | None:
    """Choose among patterns so that each need is served just once, for a cost at most.

    Parameters
    ----------
    columns
        What can be cut.
    patterns
        (kind of stick, pattern).
    cost
        [nm²]
    seed
        For the solver.
    work
        May be used up.

    Returns
    -------
    list of Cut or None
        Empty when there is no choice, as far as the arithmetic of the solver goes; nothing when that was not
        settled.
    """
    assortment, infinity = columns.assortment, highspy.kHighsInf
    solver = quiet_solver()
    for need in assortment.needs:
        solver.addRow(float(need.count), float(need.count), 0, np.empty(0, np.int32), np.empty(0))
    for wood in assortment.sticks:
        solver.addRow(-infinity, float(wood.count), 0, np.empty(0, np.int32), np.empty(0))
    solver.addRow(-infinity, cost / columns.unit, 0, np.empty(0, np.int32), np.empty(0))
    first = len(assortment.needs)
    for stick, pattern in patterns:
        price = assortment.sticks[stick].cost / columns.unit
        rows = [*(need for need, _ in pattern), first + stick, first + len(assortment.sticks)]
        entries = [*(float(count) for _, count in pattern), 1.0, price]
        solver.addCol(0.0, 0.0, infinity, len(rows), np.array(rows, np.int32), np.array(entries))
    kind = int(highspy.HighsVarType.kInteger)
    places = np.arange(len(patterns), dtype=np.int32)
    solver.changeColsIntegrality(len(places), places, np.full(len(places), kind, dtype=np.uint8))
    values = whole_numbers(solver, seed, work) if patterns else []
    if not values:
        return [] if not patterns or proved_impossible(solver) else None
    return [
        Cut(stick, pattern, round(value))
        for (stick, pattern), value in zip(patterns, values, strict=True)
        if value > 0.5  # noqa: PLR2004 - nearest whole number
    ]
