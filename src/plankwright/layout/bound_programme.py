"""What no layout gets round: the linear programme that finds prices, patterns made as they are asked for."""

from fractions import Fraction

import highspy
import numpy as np

from plankwright.layout.bound_prices import AREA_SCALE, SCALE, Market, Pattern, Prices

_LENGTH = 1e8
"""Unit of lengths in the programme, so that its numbers are near one. [nm]"""

_PRICE = SCALE / _LENGTH
"""Unit of prices in the programme, in `1 / SCALE`."""

_ROUNDS = 40
"""How often patterns are asked for at most."""

_SHORT = 100.0
"""What it costs to leave a line uncovered while joints are counted, by the unit of height."""

_NEGLIGIBLE = 1e-7


class Programme:
    """The least joints for lines of all kinds, as the mixture of patterns and of ways along each run.

    Parameters
    ----------
    market
        What is asked and given.
    """

    def __init__(self, market: Market) -> None:
        self.market = market
        self.known: set[tuple[int, Pattern]] = set()
        self.costs: list[float] = []
        self.highs = highspy.Highs()
        self.highs.setOptionValue("output_flag", False)  # noqa: FBT003 - the solver's own way
        self.highs.setOptionValue("threads", 1)
        self.highs.setOptionValue("random_seed", 0)
        self.columns = 0
        self.joints = 0.0
        self.shorts: list[int] = []
        self._rows()
        self._arcs()
        for wood in range(len(market.wood)):
            for pattern in self._even_patterns(wood):
                self._add_pattern(wood, pattern)

    def too_little(self) -> bool:
        """Say whether it is proven that the wood does not cover every line."""
        self._set_costs(short=1.0, joints=0.0)
        for _ in range(_ROUNDS):
            values = self._solve()
            if sum(values[short] for short in self.shorts) <= _NEGLIGIBLE:
                return False
            outcome = self.market.outcome(self._prices(), joints_cost=False)
            if outcome.joints > 0:
                return True
            if not self._add(outcome.patterns):
                return False
        return False

    def least_joints(self) -> Fraction:
        """Give a number of joints in sight that no cover beats."""
        self._set_costs(short=_SHORT, joints=1.0)
        best = Fraction(0)
        for _ in range(_ROUNDS):
            self._solve()
            # No prices prove more than what the programme still costs.
            most = self.highs.getObjectiveValue()
            outcome = self.market.outcome(self._prices(), joints_cost=True)
            best = max(best, outcome.joints)
            if -(-best // 1) >= most - _NEGLIGIBLE or not self._add(outcome.patterns):
                break
        return best

    def _rows(self) -> None:
        """(1) each line leads on, (2) items come from wood, (3) no more wood than there is, (4) nor area."""
        market = self.market
        self.first_place = []
        row = 0
        for graph in market.graphs:
            self.first_place.append(row)
            for place in range(graph.places - 1):
                ask = graph.height / _LENGTH if place == 0 else 0.0
                self._add_row(ask, ask)
                row += 1
        self.first_item = row
        for _ in market.items:
            self._add_row(-highspy.kHighsInf, 0.0)
        self.first_wood = self.first_item + len(market.items)
        for height in market.heights:
            self._add_row(-highspy.kHighsInf, height / _LENGTH)
        self.area = self.first_wood + len(market.wood)
        there = sum(height * room for height, room in zip(market.heights, market.rooms, strict=True))
        asked = sum(graph.height * market.wood_needed(graph.run) for graph in market.graphs)
        self._add_row(-highspy.kHighsInf, (there - asked) / _LENGTH**2)

    def _add_row(self, least: float, most: float) -> None:
        self.highs.addRow(least, most, 0, np.array([], dtype=np.int32), np.array([], dtype=np.float64))

    def _arcs(self) -> None:
        market = self.market
        each = max(0, market.kerf - market.gap) / _LENGTH
        for graph, first in zip(market.graphs, self.first_place, strict=True):
            for arc in graph.arcs:
                entries = {first + arc.start: 1.0, self.area: each}
                if arc.stop < graph.places - 1:
                    entries[first + arc.stop] = -1.0
                if arc.item is not None:
                    entries[self.first_item + arc.item] = 1.0
                self._add_column(0.0, entries)
            self.shorts.append(self.columns)
            self._add_column(1.0, {first: 1.0, self.area: -market.wood_needed(graph.run) / _LENGTH})

    def _even_patterns(self, wood: int) -> list[Pattern]:
        """Give patterns of one item as often as it fits, the longest for each number."""
        market = self.market
        room = market.rooms[wood] // market.step
        patterns = []
        for ends in range(3):
            sizes = sorted(
                ((item.length + market.kerf) // market.step, number)
                for number, item in enumerate(market.items)
                if item.ends_in_sight == ends
            )
            most = room // sizes[0][0] if sizes else 0
            for count in range(1, most + 1):
                fitting = [number for size, number in sizes if size * count <= room]
                patterns.append((fitting[-1],) * count)
        return patterns

    def _add_pattern(self, wood: int, pattern: Pattern) -> None:
        if not pattern or (wood, pattern) in self.known:
            return
        self.known.add((wood, pattern))
        entries = {self.first_wood + wood: 1.0}
        for item in pattern:
            entries[self.first_item + item] = entries.get(self.first_item + item, 0.0) - 1.0
        ends = sum(self.market.items[item].ends_in_sight for item in pattern)
        cost = ends * self.market.end_cost(self.market.wood[wood]) / _PRICE
        self.costs[self.columns :] = [cost]
        self._add_column(cost * self.joints, entries)

    def _add(self, patterns: tuple[Pattern, ...]) -> bool:
        before = self.columns
        for wood, pattern in enumerate(patterns):
            self._add_pattern(wood, pattern)
        return self.columns > before

    def _add_column(self, cost: float, entries: dict[int, float]) -> None:
        if len(self.costs) == self.columns:
            self.costs.append(0.0)
        rows = np.array(list(entries), dtype=np.int32)
        self.highs.addCol(cost, 0.0, highspy.kHighsInf, len(entries), rows, np.array(list(entries.values())))
        self.columns += 1

    def _set_costs(self, *, short: float, joints: float) -> None:
        self.joints = joints
        costs = np.array([cost * joints for cost in self.costs])
        costs[self.shorts] = short
        self.highs.changeColsCost(self.columns, np.arange(self.columns, dtype=np.int32), costs)

    def _solve(self) -> list[float]:
        self.highs.run()
        return list(self.highs.getSolution().col_value)

    def _prices(self) -> Prices:
        duals = self.highs.getSolution().row_dual
        items = [max(0, round(-dual * _PRICE)) for dual in duals[self.first_item : self.first_wood]]
        area = max(0, round(-duals[self.area] * _PRICE / _LENGTH * AREA_SCALE))
        return Prices(tuple(items), area)
