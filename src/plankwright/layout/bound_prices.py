"""What no layout gets round: prices on lengths of wood, and what follows from them, in whole numbers.

The argument is written out in docs/how-it-works.md. Whatever the prices, the bound is valid; the linear
programme in `bound_programme` only looks for prices that make it high.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import gcd

import numpy as np
import numpy.typing as npt

from plankwright.layout.bound_lines import ROUNDING, LineRun, Lines, gap_allowed
from plankwright.layout.bound_wood import Wood, wood_of
from plankwright.measure import Nm
from plankwright.model import Board, Rules

SCALE = 10**17
"""Prices are whole multiples of one joint divided by this. [nm]"""

AREA_SCALE = 2**32
"""Prices of area are whole multiples of `1 / (SCALE * AREA_SCALE)`."""

_CELLS = 8192
"""Lengths are rounded to so many steps of the longest at the most."""

_SHORTEST_PRICED: Nm = 10_000_000
"""What is shorter than this is not counted as taking any wood."""

Pattern = tuple[int, ...]
"""How lines of a kind are cut: an item for each piece."""


@dataclass(frozen=True, slots=True)
class Item:
    """A piece as its board sees it.

    Parameters
    ----------
    length
        It is no shorter. [nm]
    ends_in_sight
        How many of its ends are at joints in sight.
    """

    length: Nm
    ends_in_sight: int


@dataclass(frozen=True, slots=True)
class Arc:
    """A piece as its line sees it: from a place to a place, and which item it takes, if any is counted."""

    start: int
    stop: int
    item: int | None


@dataclass(frozen=True, slots=True)
class Graph:
    """A run: its arcs lead from place 0 to the last, each to a later place."""

    run: LineRun
    height: Nm
    places: int
    arcs: tuple[Arc, ...]


@dataclass(frozen=True, slots=True)
class Prices:
    """What an item costs, in `1 / SCALE`, and area, in `1 / (SCALE * AREA_SCALE)`; none below nothing."""

    items: tuple[int, ...]
    area: int


@dataclass(frozen=True, slots=True)
class Outcome:
    """What follows from prices: so many joints at least, and the worthiest pattern of each kind of wood."""

    joints: Fraction
    patterns: tuple[Pattern, ...]


class Market:
    """Lines that ask for pieces, and wood that gives them.

    Parameters
    ----------
    lines
        What is asked.
    boards, rules
        What there is.
    """

    def __init__(self, lines: Lines, boards: Sequence[Board], rules: Rules) -> None:
        self.rules = rules
        self.items: list[Item] = []
        self._numbers: dict[Item, int] = {}
        self.graphs = tuple(self._graph(run, height) for run, height in lines.heights.items())
        # A piece that butts another is no shorter than the rules say, and one that does not covers a run.
        least = min((rules.shortest_piece_nm, *(graph.run.length for graph in self.graphs)))
        kerf = max(0, rules.crosscut_kerf_nm - ROUNDING)
        self.kerf = kerf if lines.apart is None else min(kerf, lines.apart)
        self.gap = gap_allowed(rules)
        found = wood_of(boards, rules, least - ROUNDING)
        self.wood = tuple(sorted(found))
        self.heights = tuple(found[wood] for wood in self.wood)
        # Pieces may be a rounding shorter, and boards longer, than they are said to be.
        self.rooms = tuple(
            wood.length + self.kerf + 2 * ROUNDING * (wood.length // least + 3) for wood in self.wood
        )
        self.step = self._step()

    def _graph(self, run: LineRun, height: Nm) -> Graph:
        starts = [run.start, *(cell.right for cell in run.cells), run.end]
        stops = [run.start, *(cell.left for cell in run.cells), run.end]
        seen = [0, *(int(not cell.hidden) for cell in run.cells), 0]
        last = len(starts) - 1
        arcs = []
        for i in range(last):
            for j in range(i + 1, last + 1):
                length = max(0, stops[j] - starts[i])
                joined = (i > 0 or run.first) and (j < last or run.last) and (i, j) != (0, last)
                if joined:
                    length = max(length, self.rules.shortest_piece_nm)
                arcs.append(Arc(i, j, self._number(Item(length, seen[i] + seen[j]))))
        return Graph(run, height, last + 1, tuple(arcs))

    def _number(self, item: Item) -> int | None:
        if item.length < _SHORTEST_PRICED:
            return None
        if item not in self._numbers:
            self._numbers[item] = len(self.items)
            self.items.append(item)
        return self._numbers[item]

    def _step(self) -> Nm:
        common = 0
        for item in self.items:
            common = gcd(common, item.length + self.kerf)
        return max(common, -(-max(self.rooms, default=1) // _CELLS), 1)

    def end_cost(self, wood: Wood) -> int:
        """Give the share of a joint that each of its two pieces bears, by height of wall, rounded down."""
        return SCALE // (2 * wood.widest)

    def outcome(self, prices: Prices, *, joints_cost: bool) -> Outcome:
        """Say what follows from prices.

        Parameters
        ----------
        prices
            Any.
        joints_cost
            Whether joints in sight are counted; if not, more than nothing proves that the wood is too little.
        """
        asked = sum(graph.height * self._least(graph, prices) for graph in self.graphs)
        tables: dict[Nm, _Cutter] = {}
        patterns, given = [], 0
        for wood, height, room in zip(self.wood, self.heights, self.rooms, strict=True):
            if wood.widest not in tables:
                cost = self.end_cost(wood) if joints_cost else 0
                worths = [
                    price - cost * item.ends_in_sight
                    for item, price in zip(self.items, prices.items, strict=True)
                ]
                sizes = [(item.length + self.kerf) // self.step for item in self.items]
                tables[wood.widest] = _Cutter(sizes, worths, max(self.rooms) // self.step)
            worth, pattern = tables[wood.widest].best(room // self.step)
            patterns.append(pattern)
            given += height * (worth * AREA_SCALE + prices.area * room)
        return Outcome(Fraction(asked - given, SCALE * AREA_SCALE), tuple(patterns))

    def _least(self, graph: Graph, prices: Prices) -> int:
        """Give what the cheapest way along a run costs."""
        each = prices.area * max(0, self.kerf - self.gap)
        cheapest: list[int | None] = [0] + [None] * (graph.places - 1)
        for arc in graph.arcs:
            so_far = cheapest[arc.start]
            if so_far is not None:
                cost = so_far + each + (0 if arc.item is None else prices.items[arc.item] * AREA_SCALE)
                known = cheapest[arc.stop]
                cheapest[arc.stop] = cost if known is None else min(known, cost)
        return (cheapest[-1] or 0) + prices.area * self.wood_needed(graph.run)

    def wood_needed(self, run: LineRun) -> Nm:
        """Give how much wood a line of a run takes at least, what kerfs take beyond gaps left out. [nm]"""
        pieces = run.length // self.rules.shortest_piece_nm + 3
        return run.length + self.gap - pieces * max(0, self.gap - self.kerf)


class _Cutter:
    """The worthiest way to cut a line of any length, for items of given sizes and worths."""

    def __init__(self, sizes: Sequence[int], worths: Sequence[int], room: int) -> None:
        best: list[tuple[int, int, int]] = []
        for size, worth, item in sorted(
            (size, -worth, item) for item, (size, worth) in enumerate(zip(sizes, worths, strict=True))
        ):
            if -worth > (best[-1][1] if best else 0) and size <= room:
                best.append((size, -worth, item))
        self.items = best
        self.worth: npt.NDArray[np.int64] = np.zeros(room + 1, dtype=np.int64)
        self.last = np.full(room + 1, -1, dtype=np.int64)
        self.at = np.zeros(room + 1, dtype=np.int64)
        if best:
            self._fill(best[0][0], room)

    def _fill(self, block: int, room: int) -> None:
        """Fill the table by blocks no longer than the shortest item, so that each needs earlier ones only."""
        for start in range(block, room + 1, block):
            stop = min(start + block, room + 1)
            value = self.worth[start:stop]
            for place, (size, worth, _) in enumerate(self.items):
                if size >= stop:
                    break
                low = max(start, size)
                with_it = self.worth[low - size : stop - size] + worth
                better = with_it > value[low - start :]
                value[low - start :][better] = with_it[better]
                self.last[low:stop][better] = place
            before = self.worth[start - 1]
            top = np.maximum.accumulate(np.maximum(value, before))
            places = np.arange(start, stop)
            fresh = value > np.concatenate(([before], top[:-1]))
            self.at[start:stop] = np.maximum.accumulate(np.where(fresh, places, self.at[start - 1]))
            self.worth[start:stop] = top

    def best(self, room: int) -> tuple[int, Pattern]:
        """Give the worth of the best pattern of a line, and the pattern."""
        pattern = []
        place = int(self.at[room])
        while place:
            size, _, item = self.items[self.last[place]]
            pattern.append(item)
            place = int(self.at[place - size])
        return int(self.worth[room]), tuple(sorted(pattern))
