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
from plankwright.layout.whole.programme import Programme
from plankwright.layout.whole.question import Question
from plankwright.layout.whole.reading import read_plan
from plankwright.layout.whole.rounding import whole_cuts, whole_ways
from plankwright.measure import Nm

_SOLVE_WORK = 3.0
"""Seconds of a common machine for each deterministic second of the solver."""

_ROUNDS = 6
"""How often further ways and cuts are asked for when the numbers of courses are given."""


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
        How many numbers of courses are looked at for each cover.
    chance
        Gives the seeds of the solvers.
    over
        Whether to stop.

    Yields
    ------
    Cover
        Each made from numbers of courses that no other was made from.
    """
    question = Question(strips, sticks, stack, grid)
    programme, counting = Programme(question), Counting(question)
    if math.isinf(programme.grow()):
        return
    counting.learn(programme)
    found: list[tuple[float, Counts]] = []
    reported = 0.0
    while not over():
        fresh = 0
        while fresh < tries and not over():
            counts = counting.cheapest(chance.randrange(2**31))
            if counts is None:
                break
            fresh += 1
            programme.spent += _SOLVE_WORK * counts.work
            programme.hold(counts.courses)
            found.append((programme.grow(_ROUNDS), counts))
            counting.tried(counts.courses)
            if math.isfinite(found[-1][0]):
                counting.learn(programme)
        if not found:
            return
        best = min(range(len(found)), key=lambda number: found[number][0])
        _, counts = found.pop(best)
        cover = settled(Question(strips, sticks, placed(question, counts, chance), grid), chance, over)
        yield Cover(cover.plan, programme.spent - reported + cover.spent)
        reported = programme.spent


def settled(question: Question, chance: random.Random, over: Callable[[], bool]) -> Cover:
    """Choose ways and cuts for courses that stay in their places.

    Parameters
    ----------
    question
        What is asked; all its courses stay.
    chance, over
        As for all covers.
    """
    programme = Programme(question)
    programme.grow()
    ways = whole_ways(programme, over)
    sawn = whole_cuts(programme, chance.randrange(2**31), over)
    return Cover(read_plan(question, ways, sawn), programme.spent)
