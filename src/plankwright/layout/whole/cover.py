"""Cover the whole surface at once: which courses, which ways along their runs, which cuts of which sticks."""

import itertools
import math
import random
from collections.abc import Callable, Iterator, Sequence

from plankwright.layout.plan import Plan
from plankwright.layout.rows import Stack
from plankwright.layout.whole.carrying import carry_over
from plankwright.layout.whole.counting import Counting, Counts
from plankwright.layout.whole.narrowing import narrowed
from plankwright.layout.whole.placing import placed
from plankwright.layout.whole.prices import COVERED, COVERING
from plankwright.layout.whole.programme import NOTHING, Programme
from plankwright.layout.whole.question import Question
from plankwright.layout.whole.reading import read_plan
from plankwright.layout.whole.rounding import dived_ways, whole_cuts, whole_together, whole_ways

_ORDERS = 3
"""In so many orders courses are tried at the most."""

_HARDLY_DEARER = 1.02
"""An order is good when covering costs no more than this times what it costs in any."""

_MORE = 2
"""So many more numbers of courses are looked at once some leave no more bare than any must."""

_DEARER, _SPENT = 1.05, 0.96
"""Heights are too few when covering with them costs more than this times what it costs with all, and more
than this share of all the wood."""

_KNOWN, _IN_USE = 0.02, 0.0
"""Ways and cuts that would raise the price by no more than these shares are taken over where there are
fewer heights, and where courses are put in order."""

_LITTLE = 0.01
"""So much of the surface is little to leave bare."""

_WORK, _MENDING_WORK = 2.0, 1.0
"""How long whole ways and cuts are sought for all courses, and for a few. [deterministic seconds]"""


class Covering:
    """The search for ways to cover the surface, one after another.

    Parameters
    ----------
    question
        What is asked.
    tries
        How many numbers of courses are looked at for each choice of heights at the most.
    chance
        Gives the seeds of the solvers.
    over
        Whether to stop.

    Attributes
    ----------
    spent
        Work done. [s]
    """

    def __init__(
        self, question: Question, *, tries: int, chance: random.Random, over: Callable[[], bool]
    ) -> None:
        self._tries, self._chance, self._over = tries, chance, over
        self._every = Programme(question)
        possible = math.isfinite(self._every.grow(roughly=True))
        self.spent = self._every.spent
        self._short = self._every.bare_area() >= NOTHING
        self._stacks = self._few_heights() if possible else []
        self._numbers: list[_Numbers] = []
        self._tried = 0
        self._in_vain: Programme | None = None

    @property
    def hopeless(self) -> bool:
        """Whether there is nothing more to try: courses that all keep their places are tried once."""
        return not self._stacks and (not self._numbers or self._every.question.stack.fixed)

    def whole(self) -> Plan | None:
        """Try once more, with other courses or in another order, to leave nothing bare.

        Returns
        -------
        Plan or None
            Its courses; those that leave little bare where even parts of boards leave something bare.
        """
        numbers = self._next()
        if numbers is None:
            return None
        programme = self._in_order(numbers)
        before = programme.spent
        plan = (
            _mostly_covered(programme, self._chance, self._over) if self._short else self._chosen(programme)
        )
        if plan is None and (self._in_vain is None or programme.price < self._in_vain.price):
            self._in_vain = programme
        self.spent += programme.spent - before
        return plan

    def nearly(self) -> Plan | None:
        """Leave little bare with the most promising of those courses that were tried in vain.

        Returns
        -------
        Plan or None
            Its courses; nothing where none were tried in vain.
        """
        programme, self._in_vain = self._in_vain, None
        if programme is None:
            return None
        before = programme.spent
        plan = self._chosen(programme, _LITTLE * programme.area)
        if plan is None:
            ways = dived_ways(programme, self._over)
            cuts = whole_cuts(programme, self._chance.randrange(2**31), self._over)
            plan = read_plan(programme.question, ways, cuts)
        self.spent += programme.spent - before
        return plan

    def _chosen(self, programme: Programme, bare: float = 0.0) -> Plan | None:
        """Choose ways and cuts together that leave no more bare than that. [square steps]"""
        if programme.bare_area() >= bare + NOTHING:
            return None
        chosen = whole_together(programme, _WORK, self._chance.randrange(2**31), self._over, bare=bare)
        return None if chosen is None else read_plan(programme.question, *chosen)

    def _few_heights(self) -> list[Stack]:
        """Give the choices of heights that are tried, each for the first time, in turn; at last all heights.

        Where parts of boards leave something bare, wood is short, and every height may help.
        """
        every = self._every.question.stack
        if self._short:
            return [every]
        return list(dict.fromkeys((*narrowed(self._every), every)))

    def _next(self) -> "_Numbers | None":
        """Give the numbers of courses whose turn it is: of each choice of heights once, then over again."""
        while self._stacks:
            numbers = self._begun(self._stacks.pop(0))
            if numbers is not None:
                self._numbers.append(numbers)
                return numbers
        self._tried += 1
        return self._numbers[(self._tried - 1) % len(self._numbers)] if self._numbers else None

    def _begun(self, stack: Stack) -> "_Numbers | None":
        """Look for numbers of courses of some heights; nothing where those are much dearer than any."""
        every, programme = self._every.question, self._every
        before = programme.spent
        if stack != every.stack:
            programme, before = Programme(Question(every.strips, every.sticks, stack, every.grid)), 0.0
            carry_over(self._every, programme, _KNOWN)
        price = programme.grow()
        self.spent += programme.spent - before
        if price > max(_DEARER * self._every.price, _SPENT * every.wood_area / programme.unit):
            return None
        if self._over():
            return None
        counting = Counting(programme)
        seeds = (self._chance.randrange(2**31) for _ in itertools.count())
        known = sorted(_looked_at(counting, seeds, self._tries, self._over), key=lambda counts: counts.price)
        self.spent += counting.spent
        return _Numbers(programme, known) if known else None

    def _in_order(self, numbers: "_Numbers") -> Programme:
        """Put courses in an order in which covering costs little more than it need, and solve that."""
        question, counts, tried = numbers.programme.question, numbers.next(), list[Programme]()
        while len(tried) < _ORDERS and not (tried and self._over()):
            fixed = placed(question, counts, self._chance)
            programme = Programme(Question(question.strips, question.sticks, fixed, question.grid))
            carry_over(tried[-1] if tried else numbers.programme, programme, _IN_USE)
            tried.append(programme)
            dear = programme.grow() > _HARDLY_DEARER * counts.price
            self.spent += programme.spent
            if not dear or question.stack.fixed:
                break
        return min(tried, key=lambda programme: programme.price)


class _Numbers:
    """Numbers of courses, the cheapest first, and all of them again once each was given."""

    def __init__(self, programme: Programme, known: Sequence[Counts]) -> None:
        self.programme, self._known = programme, known
        self._given = 0

    def next(self) -> Counts:
        """Give the next."""
        self._given += 1
        return self._known[(self._given - 1) % len(self._known)]


def _mostly_covered(programme: Programme, chance: random.Random, over: Callable[[], bool]) -> Plan:
    """Choose ways and cuts for courses where even parts of boards leave something bare."""
    ways = whole_ways(programme, chance.randrange(2**31), over)
    return read_plan(programme.question, ways, whole_cuts(programme, chance.randrange(2**31), over))


def _looked_at(
    counting: Counting, seeds: Iterator[int], tries: int, over: Callable[[], bool]
) -> Iterator[Counts]:
    """Look at so many numbers at the most, and at a few more once some leave no more bare than any must."""
    left = tries
    for counts in counting.sets(seeds):
        yield counts
        left -= 1
        if counts.bare < counting.bare + NOTHING:
            left = min(left, _MORE)
        if not left or over():
            return


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
    plan = None
    if programme.bare_area() < NOTHING:
        chosen = whole_together(programme, _MENDING_WORK, chance.randrange(2**31), over)
        plan = None if chosen is None else read_plan(question, *chosen)
    elif joints is None:
        plan = _mostly_covered(programme, chance, over)
    return plan, programme.spent
