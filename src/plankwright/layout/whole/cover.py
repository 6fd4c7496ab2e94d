"""Cover the whole surface at once: which courses, which ways along their runs, which cuts of which sticks."""

import math
import random
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from plankwright.layout.plan import Plan, Stick
from plankwright.layout.rows import Stack
from plankwright.layout.strips import Strips
from plankwright.layout.whole.counting import Counting, Counts
from plankwright.layout.whole.placing import placed
from plankwright.layout.whole.programme import COVERING, Prices, Programme
from plankwright.layout.whole.question import Question
from plankwright.layout.whole.reading import read_plan
from plankwright.layout.whole.rounding import whole_counts, whole_cuts, whole_ways
from plankwright.measure import Nm

_SOLVE_WORK = 3.0
"""Seconds of a common machine for each deterministic second of the solver."""

_ROUNDS = 3
"""How often further ways and cuts are asked for before numbers of courses are sought once more."""

_NOTHING = 1.0
"""Less than this is not bare. [square steps]"""


@dataclass(frozen=True, slots=True)
class Cover:
    """A way to cover the surface.

    Parameters
    ----------
    plan
        Its courses.
    spent
        Work done since the last one. [s]
    """

    plan: Plan
    spent: float


def covers(
    strips: Strips,
    sticks: Sequence[Stick],
    stack: Stack,
    grid: Nm,
    *,
    tries: int,
    chance: random.Random,
    over: Callable[[], bool],
) -> Iterator[Cover]:
    """Find ways to cover the surface, one after another.

    Parameters
    ----------
    strips, sticks, stack, grid
        As a `Question` has them.
    tries
        How many further numbers of courses are looked at for each cover at the most, until parts of boards
        leave nothing bare.
    chance
        Gives the seeds of the solvers.
    over
        Whether to stop.

    Yields
    ------
    Cover
        Each made from numbers of courses that no other was made from.
    """
    numbers = _Numbers(Question(strips, sticks, stack, grid), chance, over)
    while not over():
        counts = numbers.best(tries)
        if counts is None:
            return
        fixed = placed(numbers.question, counts, chance)
        cover = settled(Question(strips, sticks, fixed, grid), chance, over)
        yield Cover(cover.plan, numbers.spent + cover.spent)
        numbers.spent = 0.0


class _Numbers:
    """Numbers of courses, looked at one set after another.

    First as whole numbers in the programme itself, by the ways and cuts that are known; where that finds
    none, or leaves something bare, by what the programme said of prices.
    """

    def __init__(self, question: Question, chance: random.Random, over: Callable[[], bool]) -> None:
        self.question, self.chance, self.over = question, chance, over
        self.programme, self.counting = Programme(question), Counting(question)
        self.possible = math.isfinite(self.programme.grow())
        self.spent = self.programme.spent
        self._found: list[tuple[float, Counts]] = []
        if self.possible:
            self.counting.learn(self.programme)

    def best(self, tries: int) -> Counts | None:
        """Look at so many sets, until one leaves nothing bare; give the best that was not given yet."""
        ways = [self._in_programme, *[self._by_prices] * tries]
        for way in ways if self.possible else ():
            counts = None if self.over() else way()
            if counts is not None and self._look_at(counts):
                break
        if not self._found:
            return None
        best = min(range(len(self._found)), key=lambda number: self._found[number][0])
        return self._found.pop(best)[1]

    def _in_programme(self) -> Counts | None:
        before = self.programme.spent
        self.programme.grow(_ROUNDS)
        whole = whole_counts(self.programme, self.chance.randrange(2**31), self.over)
        self.spent += self.programme.spent - before
        return None if whole is None else self.counting.cheapest(0, whole)

    def _by_prices(self) -> Counts | None:
        return self.counting.cheapest(self.chance.randrange(2**31))

    def _look_at(self, counts: Counts) -> bool:
        """Whether parts of boards leave nothing bare."""
        held = Programme(self.question, counts.courses)
        self._found.append((held.grow(), counts))
        self.counting.tried(counts.courses)
        self.counting.learn(held)
        self.programme.take_in(held)
        self.spent += _SOLVE_WORK * counts.work + held.spent
        return held.bare_area() < _NOTHING


def settled(
    question: Question, chance: random.Random, over: Callable[[], bool], prices: Prices = COVERING
) -> Cover:
    """Choose ways and cuts for courses that stay in their places.

    Parameters
    ----------
    question
        What is asked; all its courses stay.
    chance, over
        As for all covers.
    prices
        Of what is bare and of joints.
    """
    programme = Programme(question, prices=prices)
    programme.grow()
    ways = whole_ways(programme, chance.randrange(2**31), over)
    sawn = whole_cuts(programme, chance.randrange(2**31), over)
    return Cover(read_plan(question, ways, sawn), programme.spent)
