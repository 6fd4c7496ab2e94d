"""What no layout gets round: prices on lengths of wood, and what follows from them, in whole numbers.

The argument is written out in docs/how-it-works.md. Whatever the prices, what follows is valid; the linear
programme in `bound_programme` only looks for prices that prove much.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum, auto
from fractions import Fraction
from math import gcd

import numpy as np

from plankwright.layout.bound_cutter import Cutter, Numbers, Pattern
from plankwright.layout.bound_lines import ROUNDING, SHORT, LineRun, Lines, gap_allowed
from plankwright.layout.bound_wood import SHARE, Wood, wood_of
from plankwright.measure import Nm
from plankwright.model import Board, Rules

AREA_SCALE = 2**32
"""Prices of area are told in parts of a price of length by this."""

_CELLS = 8192
"""Lengths are rounded to so many steps of the longest at the most."""


class Goal(Enum):
    """What is to be kept low, and so what patterns cost."""

    COVER = auto()
    """Nothing: lines just cannot be covered for less than no cost, or there is too little wood."""
    JOINTS = auto()
    """Joints in sight."""
    WOOD = auto()
    """Wood spent. [nm²]"""

    @property
    def unit(self) -> int:
        """How many units of price, by the height of wall in nanometres, make one of what is counted."""
        return 10 if self is Goal.WOOD else 10**17


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
    """A piece as its line sees it: from a place to a later one, and the item that it takes, if any counts."""

    start: int
    stop: int
    item: int | None


@dataclass(frozen=True, slots=True)
class Graph:
    """A run, the height of the lines that have it, and the ways along it from place 0 to the last."""

    run: LineRun
    height: Nm
    places: int
    arcs: tuple[Arc, ...]


@dataclass(frozen=True, slots=True)
class Prices:
    """What an item costs, and an area; none below nothing."""

    items: tuple[int, ...]
    area: int


@dataclass(frozen=True, slots=True)
class Outcome:
    """What follows from prices: at least so much of the goal, and the worthiest pattern of each wood."""

    least: Fraction
    patterns: tuple[Pattern, ...]


class Market:
    """Lines that ask for pieces, and wood that gives them.

    Parameters
    ----------
    lines
        What is asked.
    boards, rules
        What there is.

    Attributes
    ----------
    hopeless
        Whether some line cannot be covered by pieces of the lengths that there are.
    """

    def __init__(self, lines: Lines, boards: Sequence[Board], rules: Rules) -> None:
        self.rules, self.gap = rules, gap_allowed(rules)
        # A piece that butts another is no shorter than the rules say, and one that does not covers a run.
        least = min((rules.shortest_piece_nm, *(run.length for run in lines.heights)))
        self.wood = wood_of(boards, rules, least - ROUNDING)
        kerf = max(0, rules.crosscut_kerf_nm - ROUNDING)
        self.kerf = kerf if lines.apart is None else min(kerf, lines.apart)
        # Pieces may be a rounding shorter, and boards longer, than they are said to be.
        self.rooms = tuple(
            wood.length + self.kerf + 2 * ROUNDING * (wood.length // least + 3) for wood in self.wood
        )
        self.items: list[Item] = []
        self._numbers: dict[Item, int] = {}
        self.graphs = tuple(self._graph(run, height) for run, height in lines.heights.items())
        common = gcd(*(item.length + self.kerf for item in self.items))
        self.step = max(common, -(-max(self.rooms, default=1) // _CELLS), 1)
        self.hopeless = any(_cheapest(graph, [0] * len(self.items), 0) is None for graph in self.graphs)
        self.sizes = [(item.length + self.kerf) // self.step for item in self.items]

    def _graph(self, run: LineRun, height: Nm) -> Graph:
        starts = [run.start, *(cell.right for cell in run.cells), run.end]
        stops = [run.start, *(cell.left for cell in run.cells), run.end]
        seen = [0, *(int(not cell.hidden) for cell in run.cells), 0]
        last, longest = len(starts) - 1, max(self.rooms, default=0)
        arcs = []
        for i in range(last):
            for j in range(i + 1, last + 1):
                length = max(0, stops[j] - starts[i])
                # Past an inner end the same piece may go on beyond the opening.
                whole = (i > 0 or run.first) and (j < last or run.last)
                if whole and (i, j) != (0, last):
                    length = max(length, self.rules.shortest_piece_nm)
                if length < SHORT:
                    arcs.append(Arc(i, j, None))
                elif length + self.kerf <= longest:
                    arcs.append(Arc(i, j, self._number(Item(length, seen[i] + seen[j]))))
        return Graph(run, height, last + 1, tuple(arcs))

    def _number(self, item: Item) -> int:
        if item not in self._numbers:
            self._numbers[item] = len(self.items)
            self.items.append(item)
        return self._numbers[item]

    def kerf_beyond_gap(self) -> Nm:
        """Give how much more wood each further piece of a line takes than its joint leaves open. [nm]"""
        return max(0, self.kerf - self.gap)

    def wood_needed(self, run: LineRun) -> Nm:
        """Give how much wood a line of a run takes at least, besides that for each piece. [nm]"""
        pieces = run.length // self.rules.shortest_piece_nm + 3
        return run.length + self.gap - pieces * max(0, self.gap - self.kerf)

    def cost(self, goal: Goal, wood: Wood, pattern: Pattern) -> int:
        """Give what a pattern costs by the height of wall, rounded down."""
        if goal is Goal.WOOD:
            return int(self._spent(wood, np.array([sum(self.sizes[item] for item in pattern)]))[0])
        return sum(self.items[item].ends_in_sight for item in pattern) * self.end_cost(goal, wood)

    def end_cost(self, goal: Goal, wood: Wood) -> int:
        """Give the share of a joint that each of its two pieces bears."""
        return goal.unit // (2 * wood.widest) if goal is Goal.JOINTS else 0

    def _spent(self, wood: Wood, used: Numbers) -> Numbers:
        """Give what is spent of a line that is used up to a place: all, if the rest is not worth keeping."""
        length = np.minimum(used * self.step, wood.length)
        length[length > wood.length - self.rules.shortest_piece_nm + 2 * ROUNDING] = wood.length
        return Goal.WOOD.unit * (length * wood.share // SHARE + wood.lost)

    def outcome(self, prices: Prices, goal: Goal) -> Outcome:
        """Say what follows from prices.

        Parameters
        ----------
        prices
            Any.
        goal
            What is to be kept low.

        Returns
        -------
        Outcome
            More than nothing although nothing costs anything, when the wood is too little.
        """
        asked = sum(graph.height * self._least(graph, prices) for graph in self.graphs)
        cutters: dict[int, Cutter] = {}
        patterns, given = [], 0
        for wood, room in zip(self.wood, self.rooms, strict=True):
            cost = self.end_cost(goal, wood)
            if cost not in cutters:
                cutters[cost] = self._cutter(prices, cost)
            worth, pattern = self._best(cutters[cost], goal, wood, room // self.step)
            patterns.append(pattern)
            given += wood.height * (worth * AREA_SCALE + prices.area * room)
        return Outcome(Fraction(asked - given, goal.unit * AREA_SCALE), tuple(patterns))

    def _cutter(self, prices: Prices, cost: int) -> Cutter:
        worths = [
            price - cost * item.ends_in_sight for item, price in zip(self.items, prices.items, strict=True)
        ]
        return Cutter(self.sizes, worths, max(self.rooms) // self.step)

    def _best(self, cutter: Cutter, goal: Goal, wood: Wood, room: int) -> tuple[int, Pattern]:
        if goal is not Goal.WOOD:
            return int(cutter.worth[room]), cutter.pattern(room)
        left = cutter.worth[: room + 1] - self._spent(wood, np.arange(room + 1))
        used = int(np.argmax(left))
        return (int(left[used]), cutter.pattern(used)) if left[used] > 0 else (0, ())

    def _least(self, graph: Graph, prices: Prices) -> int:
        """Give what the cheapest way along a run costs."""
        each = prices.area * self.kerf_beyond_gap()
        way = _cheapest(graph, [AREA_SCALE * price + each for price in prices.items], each)
        return (way or 0) + prices.area * self.wood_needed(graph.run)


def _cheapest(graph: Graph, items: Sequence[int], nothing: int) -> int | None:
    """Give the cost of the cheapest way along a run, if there is one, from that of each item and of none."""
    cheapest: list[int | None] = [0] + [None] * (graph.places - 1)
    for arc in graph.arcs:
        so_far = cheapest[arc.start]
        if so_far is not None:
            cost = so_far + (nothing if arc.item is None else items[arc.item])
            known = cheapest[arc.stop]
            cheapest[arc.stop] = cost if known is None else min(known, cost)
    return cheapest[-1]
