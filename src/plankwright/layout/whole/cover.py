"""Cover the whole surface at once: which courses, which ways along their runs, which cuts of which sticks."""

import itertools
import math
import random
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from plankwright.layout.plan import Plan, Stick
from plankwright.layout.rows import Stack
from plankwright.layout.strips import Strips
from plankwright.layout.whole.counting import Counting, Counts
from plankwright.layout.whole.placing import placed
from plankwright.layout.whole.prices import COVERED, COVERING
from plankwright.layout.whole.programme import Programme
from plankwright.layout.whole.question import Question
from plankwright.layout.whole.reading import read_plan
from plankwright.layout.whole.rounding import dived_ways, ways_for_all, whole_cuts, whole_together, whole_ways
from plankwright.measure import Nm

_ORDERS = 3
"""In so many orders courses are tried at the most."""

_HARDLY_DEARER = 1.02
"""An order is good when covering costs no more than this times what it costs in any."""

_MORE = 2
"""So many more numbers of courses are looked at once some leave no more bare than any must."""

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
        How many numbers of courses are looked at for each cover at the most.
    chance
        Gives the seeds of the solvers.
    over
        Whether to stop.

    Yields
    ------
    Cover
        Each from numbers of courses, or in an order, that no other was made from.
    """
    numbers = _Numbers(Question(strips, sticks, stack, grid), chance, over)
    while not over():
        counts = numbers.best(tries)
        if counts is None:
            return
        programme = _in_order(numbers.question, counts, chance, over)
        plan = _settled(programme, chance, over)
        yield Cover(plan, numbers.spent + programme.spent)
        numbers.spent = 0.0


def _in_order(
    question: Question, counts: Counts, chance: random.Random, over: Callable[[], bool]
) -> Programme:
    """Put courses in an order in which covering costs little more than it need, and solve the programme."""
    tried: list[Programme] = []
    while len(tried) < _ORDERS and not (tried and over()):
        fixed = placed(question, counts, chance)
        programme = Programme(Question(question.strips, question.sticks, fixed, question.grid))
        tried.append(programme)
        if programme.grow() <= _HARDLY_DEARER * counts.price or question.stack.fixed:
            break
    best = min(tried, key=lambda programme: programme.price)
    best.spent = sum(programme.spent for programme in tried)
    return best


class _Numbers:
    """Numbers of courses, the cheapest of those looked at first."""

    def __init__(self, question: Question, chance: random.Random, over: Callable[[], bool]) -> None:
        self.question, self._over = question, over
        programme = Programme(question)
        possible = math.isfinite(programme.grow())
        self.spent = programme.spent
        self._found: list[Counts] = []
        self._counting = Counting(programme) if possible and not over() else None
        seeds = (chance.randrange(2**31) for _ in itertools.count())
        self._sets = iter(()) if self._counting is None else self._counting.sets(seeds)

    def best(self, tries: int) -> Counts | None:
        """Look at so many sets at the most; give the best that was not given yet."""
        before, left = self._worked, 0 if self._any_good else tries
        while left and not self._over():
            counts = next(self._sets, None)
            if counts is None:
                break
            self._found.append(counts)
            left = min(left - 1, _MORE) if self._any_good else left - 1
        self.spent += self._worked - before
        if not self._found:
            return None
        best = min(range(len(self._found)), key=lambda number: self._found[number].price)
        return self._found.pop(best)

    @property
    def _any_good(self) -> bool:
        """Whether a set leaves no more bare than any must, and was not given yet."""
        least = math.inf if self._counting is None else self._counting.bare
        return any(counts.bare < least + _NOTHING for counts in self._found)

    @property
    def _worked(self) -> float:
        return 0.0 if self._counting is None else self._counting.spent


def _settled(programme: Programme, chance: random.Random, over: Callable[[], bool]) -> Plan:
    """Choose ways and cuts for courses that stay in their places, as solved in parts of boards.

    Where all can be covered in parts, ways and cuts are sought together that leave nothing bare; that is
    often settled soon, one way or the other. What leaves least bare is sought only where they are not found.
    """
    whole = programme.bare_area() < _NOTHING
    chosen = whole_together(programme, chance.randrange(2**31), over) if whole else None
    if chosen is not None:
        return read_plan(programme.question, *chosen)
    ways = ways_for_all(programme, chance.randrange(2**31), over) if whole else None
    if ways is None:
        ways = dived_ways(programme, over) if whole else whole_ways(programme, chance.randrange(2**31), over)
    return read_plan(programme.question, ways, whole_cuts(programme, chance.randrange(2**31), over))


def mended(
    question: Question, chance: random.Random, over: Callable[[], bool], joints: int | None
) -> tuple[Plan | None, float]:
    """Choose ways and cuts anew for a few courses that stay in their places.

    Parameters
    ----------
    question
        What is asked; all its courses stay.
    chance, over
        As for all covers.
    joints
        How many joints in sight there may be, and nothing may be bare; any number while something is.

    Returns
    -------
    tuple
        The courses, or nothing when they were not found; and work done. [s]
    """
    programme = Programme(question, prices=COVERING if joints is None else COVERED, joints=joints)
    programme.grow()
    seed, plan = chance.randrange(2**31), None
    if programme.bare_area() < _NOTHING:
        chosen = whole_together(programme, seed, over)
        plan = None if chosen is None else read_plan(question, *chosen)
    elif joints is None:
        ways = whole_ways(programme, seed, over)
        plan = read_plan(question, ways, whole_cuts(programme, seed, over))
    return plan, programme.spent
