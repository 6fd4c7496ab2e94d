"""What no layout gets round: the linear programme that finds prices, patterns made as they are asked for.

It is written out with numbered constraints in docs/how-it-works.md.
"""

from collections.abc import Callable
from fractions import Fraction

import highspy
import numpy as np

from plankwright.layout.bound_cutter import Pattern
from plankwright.layout.bound_market import AREA_SCALE, Goal, Market, Outcome, Prices
from plankwright.layout.silent import SilentHighs

_LENGTH = 1e8
"""Unit of lengths in the programme, so that its numbers are near one. [nm]"""

_PRICE = 1e9
"""Unit of prices in the programme, in the market's own."""

_SHORT = 10.0
"""What it costs to leave a line uncovered, by the unit of height: more than what most lines cost."""

_ROUNDS = {Goal.JOINTS: 30, Goal.WOOD: 12}
"""How often patterns are asked for at most."""

_NEAR = Fraction(1005, 1000)
"""How near a bound on wood comes to the best that any prices prove, as a ratio."""

_NEGLIGIBLE = 1e-7

_WORK, _STEP_WORK = 3.0, 1.7e-8
"""Looking for prices takes no longer than this, where each step of the solver takes so much for each column,
as measured once; ordinary walls take less than half a second. [s]"""


class Programme:
    """The least of a goal, by mixtures of patterns and of ways along each run.

    Parameters
    ----------
    market
        What is asked and given.
    stopped
        Asked now and then; once it says yes, what is proven so far is given.
    """

    def __init__(self, market: Market, stopped: Callable[[], bool] = lambda: False) -> None:
        self.market, self._stopped = market, stopped
        self._work = _WORK
        self.patterns: dict[tuple[int, Pattern], int] = {}
        self.shorts: list[int] = []
        self.one_end_more: list[int] = []
        self.columns = 0
        self.goal = Goal.COVER
        self.highs = SilentHighs()
        self.highs.setOptionValue("output_flag", False)  # noqa: FBT003 - the solver's own way
        self.highs.setOptionValue("threads", 1)
        self.highs.cbSimplexInterrupt += self._ask_whether_stopped
        self._add_rows()
        self._add_ways()
        self._add_exchanges()
        for wood in range(len(market.wood)):
            for pattern in self._even_patterns(wood):
                self._add_pattern(wood, pattern)

    def too_little(self) -> bool:
        """Say whether it is proven that the wood does not cover every line."""
        if self.market.hopeless:
            return True
        self._aim(Goal.COVER)
        while self._solve() > _NEGLIGIBLE:
            outcome = self._outcome()
            if outcome.least > 0:
                return True
            if self._over or not self._add(outcome):
                break
        return False

    def least(self, goal: Goal) -> Fraction:
        """Give what no cover beats: that many joints in sight, or that much wood spent. [nm²]"""
        self._aim(goal)
        best = Fraction(0)
        for _ in range(0 if self._over else _ROUNDS[goal]):
            # No prices prove more than what the programme still costs.
            most = self._solve() * _PRICE * _LENGTH / goal.unit
            outcome = self._outcome()
            best = max(best, outcome.least)
            enough = -(-best // 1) if goal is Goal.JOINTS else best * _NEAR
            if self._over or enough >= most - _NEGLIGIBLE or not self._add(outcome):
                break
        return best

    def _add_rows(self) -> None:
        """(1) Each line leads on, (2) items come from wood, (3) no more wood than there is, (4) nor area."""
        market = self.market
        self.first_place: list[int] = []
        rows: list[tuple[float, float]] = []
        for graph in market.graphs:
            self.first_place.append(len(rows))
            rows.append((graph.height / _LENGTH,) * 2)
            rows += [(0.0, 0.0)] * (graph.places - 2)
        self.first_item = len(rows)
        rows += [(-highspy.kHighsInf, 0.0)] * len(market.items)
        self.first_wood = len(rows)
        rows += [(-highspy.kHighsInf, wood.height / _LENGTH) for wood in market.wood]
        self.area = len(rows)
        there = sum(wood.height * room for wood, room in zip(market.wood, market.rooms, strict=True))
        asked = sum(graph.height * market.wood_needed(graph.run) for graph in market.graphs)
        rows.append((-highspy.kHighsInf, (there - asked) / _LENGTH**2))
        for least, most in rows:
            self.highs.addRow(least, most, 0, np.array([], dtype=np.int32), np.array([]))

    def _add_ways(self) -> None:
        market = self.market
        each = market.kerf_beyond_gap() / _LENGTH
        for graph, first in zip(market.graphs, self.first_place, strict=True):
            for arc in graph.arcs:
                entries = {first + arc.start: 1.0, self.area: each}
                if arc.stop < graph.places - 1:
                    entries[first + arc.stop] = -1.0
                if arc.item is not None:
                    entries[self.first_item + arc.item] = 1.0
                self._add_column(0.0, entries)
            needed = market.wood_needed(graph.run) / _LENGTH
            self.shorts.append(self._add_column(_SHORT, {first: 1.0, self.area: -needed}))

    def _add_exchanges(self) -> None:
        """Let a piece serve for a shorter one, or for one with another number of ends in sight.

        Patterns could do all that by themselves; so there need not be one for each item.
        """
        items = self.market.items
        order = sorted(range(len(items)), key=lambda number: items[number].length)
        longest: dict[int, int] = {}
        for number in order:
            ends = items[number].ends_in_sight
            longest[ends] = longest.get(ends, number)
            for other in (ends - 1, ends, ends + 1):
                shorter = longest.get(other, number)
                if shorter != number:
                    entries = {self.first_item + number: 1.0, self.first_item + shorter: -1.0}
                    column = self._add_column(0.0, entries)
                    if other > ends:
                        self.one_end_more.append(column)
            longest[ends] = number

    def _even_patterns(self, wood: int) -> list[Pattern]:
        """Give patterns of one item as often as it fits, the longest for each number."""
        market = self.market
        room = market.rooms[wood] // market.step
        patterns = []
        for ends in range(3):
            sizes = sorted(
                (market.sizes[number], number)
                for number, item in enumerate(market.items)
                if item.ends_in_sight == ends
            )
            most = room // sizes[0][0] if sizes else 0
            for count in range(1, most + 1):
                longest = max(place for place in sizes if place[0] * count <= room)
                patterns.append((longest[1],) * count)
        return patterns

    def _add(self, outcome: Outcome) -> bool:
        """Add the patterns of an outcome and say whether any is new."""
        before = self.columns
        for wood, pattern in enumerate(outcome.patterns):
            self._add_pattern(wood, pattern)
        return self.columns > before

    def _add_pattern(self, wood: int, pattern: Pattern) -> None:
        if not pattern or (wood, pattern) in self.patterns:
            return
        entries = {self.first_wood + wood: 1.0}
        for item in pattern:
            entries[self.first_item + item] = entries.get(self.first_item + item, 0.0) - 1.0
        self.patterns[wood, pattern] = self._add_column(self._cost(wood, pattern), entries)

    def _cost(self, wood: int, pattern: Pattern) -> float:
        return self.market.cost(self.goal, self.market.wood[wood], pattern) / _PRICE

    def _add_column(self, cost: float, entries: dict[int, float]) -> int:
        rows, values = np.array(list(entries), dtype=np.int32), np.array(list(entries.values()))
        self.highs.addCol(cost, 0.0, highspy.kHighsInf, len(entries), rows, values)
        self.columns += 1
        return self.columns - 1

    def _aim(self, goal: Goal) -> None:
        self.goal = goal
        columns = np.array([*self.patterns.values()], dtype=np.int32)
        costs = np.array([self._cost(wood, pattern) for wood, pattern in self.patterns])
        self.highs.changeColsCost(len(columns), columns, costs)
        end = max((self.market.end_cost(goal, wood) for wood in self.market.wood), default=0) / _PRICE
        for column in self.one_end_more:
            self.highs.changeColCost(column, end)
        short = 2 * _SHORT * max((graph.run.length for graph in self.market.graphs), default=0) / _LENGTH
        for column in self.shorts:
            self.highs.changeColCost(column, short if goal is Goal.WOOD else _SHORT)

    @property
    def _over(self) -> bool:
        """Whether no more work may be done; prices that were found before the end prove something, too."""
        return self._work <= 0 or self._stopped()

    def _solve(self) -> float:
        a_step = _STEP_WORK * max(1, self.columns)
        self.highs.setOptionValue("simplex_iteration_limit", 1 + int(max(0.0, self._work) / a_step))
        self.highs.run()
        self._work -= a_step * max(0, self.highs.getInfo().simplex_iteration_count)
        return float(self.highs.getObjectiveValue())

    def _ask_whether_stopped(self, event: highspy.highs.HighsCallbackEvent) -> None:
        if self._stopped():
            event.interrupt()

    def _outcome(self) -> Outcome:
        duals = self.highs.getSolution().row_dual
        items = tuple(max(0, round(-dual * _PRICE)) for dual in duals[self.first_item : self.first_wood])
        area = max(0, round(-duals[self.area] * _PRICE / _LENGTH * AREA_SCALE))
        return self.market.outcome(Prices(items, area), self.goal)
