"""Column generation over cutting patterns: a linear programme, its certified bound, and whole sticks from it.

With x[p] sticks cut by pattern p and u[i] needs of kind i left bare,

    minimise    sum of cost[p] x[p] + sum of bare[i] u[i]
    subject to  sum over p of count[i, p] x[p] + u[i] >= needs[i]   for each kind of need i
                sum over p of kind c of x[p] <= sticks[c]           for each kind of stick c

Whatever whole prices y[i], none above bare[i], are put on the needs, no solution costs less than
sum of needs[i] y[i] - sum of sticks[c] max(0, best of c), where the best of c is the most that the prices of
a pattern can come to beyond its cost. That bound is computed in integers, so no rounding inside the solver
can make it wrong.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

import highspy
import numpy as np

from plankwright.layout.packing.effort import Work, pricing_work, simplex_work
from plankwright.layout.packing.kinds import Assortment, Pattern
from plankwright.layout.packing.patterns import charged, free, worthiest
from plankwright.layout.packing.solver import quiet_solver, run_solver, whole_numbers

SCALE = 2**36
"""Prices are whole multiples of the dearest stick (or need, where sticks cost nothing) over this."""

_NOTHING = 1e-9
"""A pattern that would save less is not worth taking in; in dearest sticks."""

_STEADY = 0.8
"""New prices go this far back towards the best so far, which keeps them from swinging."""


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


@dataclass(frozen=True, slots=True)
class Proof:
    """Prices, and the bound that follows from them.

    Parameters
    ----------
    prices
        Of each kind of need.
    rents
        What a stick of each kind gains at most at these prices, none below nothing.
    scaled
        No solution costs less, in the unit of the prices.
    """

    prices: tuple[int, ...]
    rents: tuple[int, ...]
    scaled: int


@dataclass(frozen=True, slots=True)
class _Question:
    """What patterns would help: true prices of needs, rents of sticks, and how many there are of both."""

    prices: Sequence[int]
    rents: Sequence[float]
    needs: Sequence[int]
    sticks: Sequence[int]


class Columns:
    """The linear programme of the patterns found so far.

    Parameters
    ----------
    assortment
        What can be cut.
    bare_costs
        Of a need of each kind left bare; whole numbers. [nm²]
    wood_free
        Whether sticks cost nothing.

    Attributes
    ----------
    unit
        An area that costs `SCALE` in the unit of prices. [nm²]
    columns
        The patterns and the sticks that they cut.
    proof
        The best bound so far.
    """

    def __init__(self, assortment: Assortment, bare_costs: Sequence[int], *, wood_free: bool = False) -> None:
        self.assortment, self.bare_costs, self.wood_free = assortment, tuple(bare_costs), wood_free
        dearest = 0 if wood_free else max((wood.cost for wood in assortment.sticks), default=0)
        self.unit = dearest or max(bare_costs, default=0) or 1
        self._charges = free(assortment) if wood_free else charged(assortment, SCALE, self.unit)
        self.columns: list[tuple[int, Pattern]] = []
        self.proof = Proof((0,) * len(assortment.needs), (0,) * len(assortment.sticks), 0)
        self._known: set[tuple[int, Pattern]] = set()
        self._solver = quiet_solver()
        infinity = highspy.kHighsInf
        for need in assortment.needs:
            self._solver.addRow(float(need.count), infinity, 0, np.empty(0, np.int32), np.empty(0))
        for stick in assortment.sticks:
            self._solver.addRow(-infinity, float(stick.count), 0, np.empty(0, np.int32), np.empty(0))
        for row, cost in enumerate(bare_costs):
            self._solver.addCol(cost / self.unit, 0.0, infinity, 1, np.array([row], np.int32), np.ones(1))

    @property
    def bound(self) -> int:
        """No solution costs less. [nm²]"""
        return -(-self.proof.scaled * self.unit // SCALE)

    def prices(self) -> list[Fraction]:
        """Give the prices that the best proof rests on. [nm²]"""
        return [Fraction(price * self.unit, SCALE) for price in self.proof.prices]

    def worths(self) -> tuple[list[int], int]:
        """Give, by the best proof, what each stick is worth at most, and what all needs are worth."""
        worths = [charge + rent for charge, rent in zip(self._charges.whole, self.proof.rents, strict=True)]
        counts = [need.count for need in self.assortment.needs]
        asked = sum(count * price for count, price in zip(counts, self.proof.prices, strict=True))
        return worths, asked

    def cost(self, stick: int, pattern: Pattern) -> float:
        """Give the cost of a column in the unit of the programme."""
        return 0.0 if self.wood_free else self.assortment.cost(stick, pattern) / self.unit

    def add(self, stick: int, pattern: Pattern) -> bool:
        """Take in a pattern, unless it is known."""
        if not pattern or (stick, pattern) in self._known:
            return False
        self._known.add((stick, pattern))
        self.columns.append((stick, pattern))
        rows = [need for need, _ in pattern] + [len(self.bare_costs) + stick]
        counts = [float(count) for _, count in pattern] + [1.0]
        self._solver.addCol(
            self.cost(stick, pattern),
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

    def generate(
        self,
        needs: Sequence[int],
        sticks: Sequence[int],
        work: Work,
        *,
        enough: int | None = None,
        settled: int | None = None,
    ) -> Mixture:
        """Find patterns until none would help, and give the best mixture of all.

        The bound is raised when these are all the needs and all the sticks.

        Parameters
        ----------
        needs, sticks
            How many of each kind there are.
        work
            May be used up.
        enough
            A mixture that costs no more than this is good enough. [nm²]
        settled
            A bound as high as this is high enough. [nm²]
        """
        self.limit(needs, sticks)
        whole = [need.count for need in self.assortment.needs] == list(needs)
        while True:
            mixture, prices, rents = self._solved(len(needs), work)
            if work.over or (settled is not None and whole and self.bound >= settled):
                return mixture
            if enough is not None and mixture.cost <= enough + _NOTHING * self.unit:
                return mixture
            ask = _Question(prices, rents, needs, sticks)
            # In haste where that is quicker, steadily where something is known, and at last with care.
            if self.assortment.coarse_unit > self.assortment.unit and self._priced(ask, prices, work):
                continue
            steady = whole and self.proof.scaled > 0
            if steady and self._priced(ask, self._steadied(prices), work, prove=True):
                continue
            if not self._priced(ask, prices, work, prove=whole, careful=True):
                return mixture

    def _solved(self, needs: int, work: Work) -> tuple[Mixture, list[int], Sequence[float]]:
        """Solve the programme of the patterns so far: its mixture, prices of needs and rents of sticks."""
        run_solver(self._solver)
        info = self._solver.getInfo()
        work.spend(simplex_work(max(0, info.simplex_iteration_count), self._solver.getNumRow()))
        solution = self._solver.getSolution()
        uses = tuple(solution.col_value)[needs:]
        duals = list(solution.row_dual)
        prices = [
            max(0, min(int(dual * SCALE), cost * SCALE // self.unit))
            for dual, cost in zip(duals[:needs], self.bare_costs, strict=True)
        ]
        return Mixture(uses, info.objective_function_value * self.unit), prices, duals[needs:]

    def _steadied(self, prices: Sequence[int]) -> list[int]:
        return [
            int(_STEADY * best + (1 - _STEADY) * price)
            for best, price in zip(self.proof.prices, prices, strict=True)
        ]

    def _priced(
        self,
        ask: "_Question",
        prices: Sequence[int],
        work: Work,
        *,
        prove: bool = False,
        careful: bool = False,
    ) -> bool:
        """Take in the worthiest patterns at some prices that save at the true ones. Whether any did."""
        hasty = not (prove or careful)
        best = worthiest(self.assortment, prices, ask.needs, self._charges, hasty=hasty)
        work.spend(pricing_work(self.assortment, len(ask.needs), hasty=hasty))
        if prove:
            self._prove(prices, best.gains)
        found = False
        for stick, pattern in enumerate(best.patterns):
            rent = max(0.0, -ask.rents[stick])
            worth = sum(ask.prices[need] * count for need, count in pattern) / SCALE
            if ask.sticks[stick] and worth > self.cost(stick, pattern) + rent + _NOTHING:
                found |= self.add(stick, pattern)
        return found

    def _prove(self, prices: Sequence[int], gains: Sequence[int]) -> None:
        rents = tuple(max(0, gain) for gain in gains)
        asked = sum(need.count * price for need, price in zip(self.assortment.needs, prices, strict=True))
        paid = sum(wood.count * rent for wood, rent in zip(self.assortment.sticks, rents, strict=True))
        if asked - paid > self.proof.scaled:
            self.proof = Proof(tuple(prices), rents, asked - paid)

    def whole(self, seed: int, work: Work) -> list[Cut]:
        """Choose whole numbers of the patterns at hand.

        Parameters
        ----------
        seed
            For the solver.
        work
            May be used up.

        Returns
        -------
        list of Cut
            Some needs may be served more than once, some not at all; empty when nothing was found.
        """
        needs, sticks = self.assortment.needs, self.assortment.sticks
        self.limit([need.count for need in needs], [stick.count for stick in sticks])
        solver, first = quiet_solver(), len(self.bare_costs)
        solver.passModel(self._solver.getLp())
        places = np.arange(first, first + len(self.columns), dtype=np.int32)
        kind = int(highspy.HighsVarType.kInteger)
        solver.changeColsIntegrality(len(places), places, np.full(len(places), kind, dtype=np.uint8))
        costs = [] if self.wood_free else [stick.cost for stick in sticks]
        # Costs differ by whole steps when no part of a stick is kept.
        step = math.gcd(*costs, *self.bare_costs) if self.assortment.keeps_nothing() else 0
        gap = max(1e-6, 0.999 * step / self.unit)
        values = whole_numbers(solver, seed, work, gap=gap)
        return [
            Cut(stick, pattern, round(value))
            for (stick, pattern), value in zip(self.columns, values[first:], strict=False)
            if value > 0.5  # noqa: PLR2004 - nearest whole number
        ]
