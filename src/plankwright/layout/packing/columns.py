"""Column generation over cutting patterns: a linear programme, its certified bound, and whole sticks from it.

With x[p] sticks cut by pattern p and u[i] needs of kind i left bare,

    minimise    sum of cost[p] x[p] + sum of bare[i] u[i]
    subject to  sum over p of count[i, p] x[p] + u[i] >= needs[i]   for each kind of need i
                sum over p of kind c of x[p] <= sticks[c]           for each kind of stick c

Whatever whole prices y[i], none above bare[i], are put on the needs, no solution costs less than
sum of needs[i] y[i] - sum of sticks[c] max(0, worthiest[c](y) - cost[c]). That bound is computed in integers,
so no rounding inside the solver can make it wrong.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import highspy
import numpy as np

from plankwright.layout.packing.patterns import Assortment, Pattern
from plankwright.layout.silent import SilentHighs

_SCALE = 2**36
"""Prices are whole multiples of the dearest stick (or need, where sticks cost nothing) over this."""

_NOTHING = 1e-9
"""A pattern that would save less is not worth taking in; in dearest sticks."""

_SAFETY_S = 300.0
"""A whole-number search that hangs is ended after so long; steps of work end it in any normal case. [s]"""


@dataclass(slots=True)
class Work:
    """How much may still be done.

    Parameters
    ----------
    left
        Steps of work: rounds of pricing, or times that the whole-number search looks up. [steps]
    stopped
        Asked now and then; true once the user wants no more.
    """

    left: int
    stopped: Callable[[], bool]

    def half(self) -> "Work":
        """Set half of what is left apart, to be spent or lost."""
        part = self.left // 2
        self.left -= part
        return Work(part, self.stopped)

    def spend(self) -> bool:
        """Take one step, if there is one left."""
        if self.left <= 0 or self.stopped():
            return False
        self.left -= 1
        return True


@dataclass(frozen=True, slots=True)
class Mixture:
    """How often each pattern is used where parts of sticks count.

    Parameters
    ----------
    uses
        Of each column.
    cost
        [nm²]
    """

    uses: tuple[float, ...]
    cost: float


@dataclass(frozen=True, slots=True)
class Cut:
    """Sticks that are cut alike.

    Parameters
    ----------
    stick
        Their kind.
    pattern
        What each gives.
    count
        How many. [sticks]
    """

    stick: int
    pattern: Pattern
    count: int


class Columns:
    """The linear programme of the patterns found so far.

    Parameters
    ----------
    assortment
        What can be cut.
    stick_costs, bare_costs
        Of a stick of each kind, and of a need of each kind left bare; whole numbers. [nm²]
    """

    def __init__(self, assortment: Assortment, stick_costs: Sequence[int], bare_costs: Sequence[int]) -> None:
        self.assortment = assortment
        self.stick_costs, self.bare_costs = tuple(stick_costs), tuple(bare_costs)
        self.unit = max(stick_costs, default=0) or max(bare_costs, default=0) or 1
        self.columns: list[tuple[int, Pattern]] = []
        self.bound = 0
        self._known: set[tuple[int, Pattern]] = set()
        self._solver = _quiet()
        infinity = highspy.kHighsInf
        for need in assortment.needs:
            self._solver.addRow(float(need.count), infinity, 0, np.empty(0, np.int32), np.empty(0))
        for stick in assortment.sticks:
            self._solver.addRow(-infinity, float(stick.count), 0, np.empty(0, np.int32), np.empty(0))
        for row, cost in enumerate(bare_costs):
            self._solver.addCol(cost / self.unit, 0.0, infinity, 1, np.array([row], np.int32), np.ones(1))

    def add(self, stick: int, pattern: Pattern) -> bool:
        """Take in a pattern, unless it is known."""
        if not pattern or (stick, pattern) in self._known:
            return False
        self._known.add((stick, pattern))
        self.columns.append((stick, pattern))
        rows = [need for need, _ in pattern] + [len(self.bare_costs) + stick]
        counts = [float(count) for _, count in pattern] + [1.0]
        self._solver.addCol(
            self.stick_costs[stick] / self.unit,
            0.0,
            highspy.kHighsInf,
            len(rows),
            np.array(rows, np.int32),
            np.array(counts),
        )
        return True

    def limit(self, needs: Sequence[int], sticks: Sequence[int]) -> None:
        """Set how many needs there are still to serve, and how many sticks are left."""
        for row, count in enumerate(needs):
            self._solver.changeRowBounds(row, float(count), highspy.kHighsInf)
        for row, count in enumerate(sticks, start=len(needs)):
            self._solver.changeRowBounds(row, -highspy.kHighsInf, float(count))

    def generate(self, needs: Sequence[int], sticks: Sequence[int], work: Work) -> Mixture:
        """Find patterns until none would help, and give the best mixture of all.

        The bound is raised when these are all the needs and all the sticks.
        """
        self.limit(needs, sticks)
        whole = [need.count for need in self.assortment.needs] == list(needs)
        while True:
            _run(self._solver)
            solution = self._solver.getSolution()
            uses = tuple(solution.col_value)[len(needs) :]
            mixture = Mixture(uses, self._solver.getObjectiveValue() * self.unit)
            duals = solution.row_dual
            if not work.spend():
                return mixture
            prices = self._prices(duals[: len(needs)])
            worthiest = self.assortment.worthiest(prices, needs)
            if whole:
                self._raise_bound(prices, worthiest.worths)
            found = False
            for stick, pattern in enumerate(worthiest.patterns):
                rent = max(0.0, -duals[len(needs) + stick])
                worth = sum(prices[need] * count for need, count in pattern) / _SCALE
                if sticks[stick] and worth > self.stick_costs[stick] / self.unit + rent + _NOTHING:
                    found |= self.add(stick, pattern)
            if not found:
                return mixture

    def _prices(self, duals: Sequence[float]) -> list[int]:
        return [
            max(0, min(int(dual * _SCALE), cost * _SCALE // self.unit))
            for dual, cost in zip(duals, self.bare_costs, strict=True)
        ]

    def _raise_bound(self, prices: Sequence[int], worths: Sequence[int]) -> None:
        needs = sum(need.count * price for need, price in zip(self.assortment.needs, prices, strict=True))
        profit = sum(
            stick.count * max(0, worth * self.unit - cost * _SCALE)
            for stick, worth, cost in zip(self.assortment.sticks, worths, self.stick_costs, strict=True)
        )
        self.bound = max(self.bound, -((profit - needs * self.unit) // _SCALE))

    def whole(self, seed: int, work: Work) -> list[Cut]:
        """Choose whole numbers of the patterns at hand.

        Parameters
        ----------
        seed
            For the solver.
        work
            May be used up.
        """
        first = len(self.bare_costs)
        self.limit(
            [need.count for need in self.assortment.needs], [stick.count for stick in self.assortment.sticks]
        )
        solver = _quiet()
        solver.passModel(self._solver.getLp())
        places = np.arange(first, first + len(self.columns), dtype=np.int32)
        kind = int(highspy.HighsVarType.kInteger)
        solver.changeColsIntegrality(len(places), places, np.full(len(places), kind, dtype=np.uint8))
        step = math.gcd(*self.stick_costs, *self.bare_costs)
        for option, value in (
            ("mip_rel_gap", 0.0),
            ("mip_abs_gap", max(1e-6, 0.999 * step / self.unit)),  # Costs differ by whole steps.
            ("random_seed", seed % 2**31),
            ("time_limit", _SAFETY_S),
        ):
            solver.setOptionValue(option, value)

        def watch(event: highspy.highs.HighsCallbackEvent) -> None:
            if not work.spend():
                event.interrupt()

        solver.cbMipInterrupt += watch
        _run(solver)
        if solver.getInfo().primal_solution_status != int(highspy.SolutionStatus.kSolutionStatusFeasible):
            return []
        values = list(solver.getSolution().col_value)[first:]
        return [
            Cut(stick, pattern, round(value))
            for (stick, pattern), value in zip(self.columns, values, strict=True)
            if value > 0.5  # noqa: PLR2004 - nearest whole number
        ]


def _quiet() -> highspy.Highs:
    solver = SilentHighs()
    solver.setOptionValue("threads", 1)
    solver.setOptionValue("dual_feasibility_tolerance", _NOTHING)
    return solver


def _run(solver: highspy.Highs) -> None:
    """Let the solver work; that it cannot read what we hand it is our fault."""
    if solver.run() is highspy.HighsStatus.kError:
        raise RuntimeError(f"the solver gave up: {solver.modelStatusToString(solver.getModelStatus())}")
