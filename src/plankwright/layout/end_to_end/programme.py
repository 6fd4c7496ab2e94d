"""The linear programme over rows of whole sticks, grown by whichever row would lower its price."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TypeAlias

import highspy
import numpy as np
import numpy.typing as npt

from plankwright.layout.silent import SilentHighs

Asked: TypeAlias = tuple[int, int]
"""Number of a row to fill, and of a set of sticks of which any two may butt in it."""

Filling: TypeAlias = tuple[int, ...]
"""Kinds of wood laid end to end, by their numbers, in rising order."""

_BARE = 50.0
"""To leave something bare costs so many times as much wood."""

_NEAR = 1e-6

_ROUNDS = 1000
"""How often further rows are asked for at most."""

_AT_ONCE, _DEARER = 6, 0.3
"""So many fillings of a row are taken in at once at most; after each, its sticks are dearer by this share of
what the row is worth, parted among them."""

_STEP_WORK = 1.3e-8
"""Seconds of a common machine that a step of the solver takes for each column, as measured once."""

_STICK_WORK, _LENGTH_WORK = 2e-5, 4e-9
"""Seconds of a common machine that asking takes for each stick, and besides for each step of length and each
count, as measured once."""

_INFINITY = highspy.kHighsInf


@dataclass(frozen=True, slots=True)
class Row:
    """Runs that are alike.

    Parameters
    ----------
    length, height
        [steps].
    count
        How many there are.
    most
        Of so many pieces it may be at the most.
    sets
        How many sets of sticks there are of which any two may butt in it.
    """

    length: int
    height: int
    count: int
    most: int
    sets: int


@dataclass(frozen=True, slots=True)
class Wood:
    """Sticks that are alike.

    Parameters
    ----------
    length, width
        [steps].
    count
        How many there are.
    serves
        The rows that they can be used in, with the numbers of the sets.
    """

    length: int
    width: int
    count: int
    serves: frozenset[Asked]


@dataclass(frozen=True, slots=True)
class Pool:
    """What is to be filled, and with what."""

    rows: tuple[Row, ...]
    wood: tuple[Wood, ...]


class Programme:
    """The least price at which rows of sticks, parts of them counting, cover the runs.

    Parameters
    ----------
    pool
        What is asked.

    Attributes
    ----------
    fillings
        Every filling of a row that is known, with its column.
    columns
        How many columns there are.
    spent
        Work done, in seconds of a common machine. [s]
    """

    def __init__(self, pool: Pool) -> None:
        self.pool = pool
        self.fillings: dict[tuple[int, Filling], int] = {}
        self.columns, self.spent = 0, 0.0
        self._solver = SilentHighs()
        self._solver.setOptionValue("threads", 1)
        self._solver.setOptionValue("output_flag", False)  # noqa: FBT003 - the solver's own way
        for row in pool.rows:
            self._solver.addRow(row.count, row.count, 0, [], [])
        for wood in pool.wood:
            self._solver.addRow(-_INFINITY, wood.count, 0, [], [])
        for number, row in enumerate(pool.rows):
            self._column(_BARE * row.length * row.height, [(number, 1.0)])

    def grow(self, rounds: int = _ROUNDS) -> float:
        """Ask for rows until none would help, or so many times at most; give the least price."""
        price = self.solve()
        for _ in range(rounds):
            if not self._ask():
                break
            price = self.solve()
        return price

    def solve(self) -> float:
        """Solve the programme as it is; the price is infinite when its bounds contradict each other."""
        self._solver.run()
        info = self._solver.getInfo()
        self.spent += _STEP_WORK * self.columns * max(0, info.simplex_iteration_count)
        if self._solver.getModelStatus() != highspy.HighsModelStatus.kOptimal:
            return float("inf")
        return float(self._solver.getObjectiveValue())

    @property
    def values(self) -> tuple[float, ...]:
        """How often each column is used."""
        return tuple(self._solver.getSolution().col_value)

    def bound(self, column: int, least: float) -> None:
        """Say how often a column is used at the least."""
        self._solver.changeColBounds(column, least, _INFINITY)

    def model(self) -> highspy.HighsLp:
        """Give the programme as the solver has it."""
        return self._solver.getLp()

    def _ask(self) -> bool:
        """Take in the cheapest filling of each row that would lower the price. Whether there are any."""
        duals = self._solver.getSolution().row_dual
        rows, wood = self.pool.rows, self.pool.wood
        costs = [
            stick.length * stick.width + max(0.0, -duals[len(rows) + number])
            for number, stick in enumerate(wood)
        ]
        found = False
        for number, row in enumerate(rows):
            for which in range(row.sets):
                for filling in self._cheap(number, which, costs, duals[number]):
                    found |= self._add(number, filling)
        return found

    def _cheap(self, number: int, which: int, costs: Sequence[float], below: float) -> Iterator[Filling]:
        """Give some fillings of a row that cost less than it is worth, of ever other sticks."""
        dearer = list(costs)
        for _ in range(_AT_ONCE):
            filling = self._cheapest(number, which, dearer)
            if not filling or sum(costs[kind] for kind in filling) >= below - _NEAR * max(1.0, abs(below)):
                return
            yield filling
            for kind in filling:
                dearer[kind] += _DEARER * below / len(filling)

    def _cheapest(self, number: int, which: int, costs: Sequence[float]) -> Filling:
        """Find the cheapest sticks that reach along a row; how many they are is minded where it must be."""
        found = self._reaching(number, which, costs, 1)
        most = self.pool.rows[number].most
        return found if len(found) <= most else self._reaching(number, which, costs, most)

    def _reaching(self, number: int, which: int, costs: Sequence[float], counted: int) -> Filling:
        """Find the cheapest sticks by dynamic programming over length, stick by stick; none where none reach.

        With more than one counted there are so many at the most; else there may be any number.
        """
        row = self.pool.rows[number]
        lengths = np.arange(row.length + 1)
        price = np.full((counted + 1, row.length + 1), np.inf)
        price[:, 0] = 0.0
        fewer = np.arange(counted) if counted > 1 else np.ones(1, dtype=np.int64)
        taken: list[tuple[int, npt.NDArray[np.bool_]]] = []
        for kind, wood in enumerate(self.pool.wood):
            if (number, which) not in wood.serves:
                continue
            before = np.maximum(lengths - wood.length, 0)
            for _ in range(min(wood.count, row.most, -(-row.length // wood.length))):
                with_one_more = price[fewer][:, before] + costs[kind]
                better = with_one_more < price[1:]
                better[:, 0] = False
                if not better.any():
                    break
                price[1:] = np.where(better, with_one_more, price[1:])
                taken.append((kind, better))
        self.spent += (_STICK_WORK + _LENGTH_WORK * price.size) * (1 + len(taken))
        if not np.isfinite(price[-1, -1]):
            return ()
        kinds, at, left = [], row.length, counted
        for kind, better in reversed(taken):
            if at and better[left - 1, at]:
                kinds.append(kind)
                at = max(0, at - self.pool.wood[kind].length)
                left -= counted > 1
        return tuple(sorted(kinds))

    def _add(self, number: int, filling: Filling) -> bool:
        """Take in a filling. Whether it is new."""
        if (number, filling) in self.fillings:
            return False
        counts, wood = Counter(filling), self.pool.wood
        cost = sum(wood[kind].length * wood[kind].width for kind in filling)
        entries = [(number, 1.0)]
        entries += [(len(self.pool.rows) + kind, float(times)) for kind, times in counts.items()]
        self.fillings[number, filling] = self._column(cost, entries)
        return True

    def _column(self, cost: float, entries: list[tuple[int, float]]) -> int:
        places = np.array([place for place, _ in entries], dtype=np.int32)
        values = np.array([value for _, value in entries])
        self._solver.addCol(cost, 0.0, _INFINITY, len(entries), places, values)
        self.columns += 1
        return self.columns - 1
