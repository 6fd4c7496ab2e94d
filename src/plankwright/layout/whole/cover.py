"""Cover the whole surface at once: which courses, which ways along their runs, which cuts of which sticks."""

import itertools
import math
import random
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field

from plankwright.layout.plan import Plan
from plankwright.layout.rows import Stack
from plankwright.layout.whole.carrying import carry_over
from plankwright.layout.whole.counting import Counting, Counts
from plankwright.layout.whole.narrowing import narrowed, only
from plankwright.layout.whole.placing import placed
from plankwright.layout.whole.prices import COVERED, COVERING
from plankwright.layout.whole.programme import NOTHING, Programme
from plankwright.layout.whole.question import Question
from plankwright.layout.whole.reading import read_plan
from plankwright.layout.whole.rounding import dived_ways, whole_cuts, whole_together, whole_ways
from plankwright.layout.whole.sloping import Slopes
from plankwright.measure import Nm

_TRIED, _WAITING = 2, 6
"""So many orders of courses are tried, the cheapest of those that wait, before more are made; and so many
are kept waiting at the most."""

_MORE = 2
"""So many more numbers of courses are looked at once some leave no more bare than any must."""

_REDRAWN = 3
"""So often courses that keep their places are drawn anew for each choice of heights."""

_HARDLY_DEARER = 1.01
"""Those that were drawn anew, of few heights, are taken if covering costs no more than this times what it
costs with those of a first layout, of any heights."""

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
        sloping = any(row.strip is not None for row in question.stack.rows)
        self._slopes = Slopes(question) if sloping else None
        self._short = self._every.bare_area() >= NOTHING
        self._heights = self._few_heights() if possible else []
        self._choices: list[_Choice] = []
        self._waiting: list[Programme] = []
        self._due = 0
        self._in_vain: Programme | None = None

    @property
    def hopeless(self) -> bool:
        """Whether there is nothing more to try: courses that all keep their places are tried once."""
        return not (
            self._heights or self._waiting or (self._choices and not self._every.question.stack.fixed)
        )

    def whole(self) -> Plan | None:
        """Try once more, with other courses or in another order, to leave nothing bare.

        Returns
        -------
        Plan or None
            Its courses; those that leave little bare where even parts of boards leave something bare.
        """
        if not self._due or not self._waiting:
            self._put_in_order()
        if not self._waiting:
            return None
        self._due -= 1
        programme = self._waiting.pop(0)
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

    def _few_heights(self) -> list[tuple[Nm, ...]]:
        """Give the choices of heights that are tried, each for the first time, in turn; at last all heights.

        Where parts of boards leave something bare, wood is short, and every height may help.
        """
        every = self._every.question.course_heights
        if self._short:
            return [every]
        return list(dict.fromkeys((*narrowed(self._every), every)))

    def _put_in_order(self) -> None:
        """Put more courses in order: of the next choice of heights, or once all had their turn, of one again.

        What such numbers of courses cost at best says little of what they cost in order, and that much of
        whether they can be had whole. So several are put in order for each that is tried, the cheapest first.
        """
        begun: list[_Numbers] = []
        while self._heights and not begun and not self._over():
            begun = self._begun(self._heights.pop(0))
        again = self._choices and not self._every.question.stack.fixed
        if not begun and again and not self._over():
            begun = self._again(min(self._choices, key=lambda choice: choice.turns))
        for numbers in begun:
            if self._waiting and self._over():
                break
            self._waiting.append(self._in_order(numbers))
        self._waiting = sorted(self._waiting, key=lambda programme: programme.price)[:_WAITING]
        self._due = min(_TRIED, len(begun))

    def _begun(self, heights: tuple[Nm, ...]) -> "list[_Numbers]":
        """Look for numbers of courses of some heights; for none where those are much dearer than any."""
        every = self._every.question
        programme = self._grown(heights)
        if programme.price > max(_DEARER * self._every.price, _SPENT * every.wood_area / programme.unit):
            return []
        if self._over():
            return []
        counting = Counting(programme)
        sets = counting.sets(self._chance.randrange(2**31) for _ in itertools.count())
        choice = _Choice(programme, counting, sets)
        choice.known += _looked_at(choice, self._tries, self._over)
        self.spent += counting.spent
        if choice.known:
            self._choices.append(choice)
        return list(choice.known)

    def _again(self, choice: "_Choice") -> "list[_Numbers]":
        """Give further numbers of courses of a choice of heights, or those put in order least often."""
        choice.turns += 1
        before = choice.counting.spent
        further = [_Numbers(choice.programme, counts) for counts in itertools.islice(choice.sets, _TRIED)]
        self.spent += choice.counting.spent - before
        choice.known += further
        return further or [min(choice.known, key=lambda numbers: (numbers.drawn, numbers.price))]

    def _grown(self, heights: tuple[Nm, ...]) -> Programme:
        """Give the programme of courses of some heights, as solved; those with a place are drawn anew."""
        every = self._every.question
        if heights == every.course_heights:
            before = self._every.spent
            self._every.grow()
            self.spent += self._every.spent - before
            return self._every
        known = only(every.stack, heights)
        if self._slopes is None:
            return self._grown_over(known, self._every)
        as_known = latest = self._grown_over(known, self._every, roughly=True)
        drawn = list[Programme]()
        for _ in range(_REDRAWN):
            before = self._slopes.spent
            stack = self._slopes.redrawn(latest, heights)
            self.spent += self._slopes.spent - before
            if stack is None or self._over():
                break
            latest = self._grown_over(stack, latest, roughly=True)
            drawn.append(latest)
        best = min(drawn, key=lambda programme: programme.price, default=as_known)
        if best.price > _HARDLY_DEARER * as_known.price:
            best = as_known
        before = best.spent
        best.grow()
        self.spent += best.spent - before
        return best

    def _grown_over(self, stack: Stack, known: Programme, *, roughly: bool = False) -> Programme:
        """Give the programme of some courses, as solved, begun with the ways and cuts of another."""
        every = self._every.question
        programme = Programme(Question(every.strips, every.sticks, stack, every.grid))
        carry_over(known, programme, _KNOWN)
        programme.grow(roughly=roughly)
        self.spent += programme.spent
        return programme

    def _in_order(self, numbers: "_Numbers") -> Programme:
        """Put courses in an order drawn by lot, and solve that."""
        question = numbers.programme.question
        fixed = placed(question, numbers.counts, self._chance)
        programme = Programme(Question(question.strips, question.sticks, fixed, question.grid))
        carry_over(numbers.programme, programme, _IN_USE)
        numbers.drawn += 1
        numbers.price = min(numbers.price, programme.grow())
        self.spent += programme.spent
        return programme


@dataclass(slots=True)
class _Numbers:
    """Numbers of courses, from which programme, how often put in order, and the least price in order."""

    programme: Programme
    counts: Counts
    drawn: int = 0
    price: float = math.inf


@dataclass(slots=True)
class _Choice:
    """A choice of heights: its programme, where numbers of courses come from, those known, and its turns."""

    programme: Programme
    counting: Counting
    sets: Iterator[Counts]
    known: list[_Numbers] = field(default_factory=list)
    turns: int = 0


def _mostly_covered(programme: Programme, chance: random.Random, over: Callable[[], bool]) -> Plan:
    """Choose ways and cuts for courses where even parts of boards leave something bare."""
    ways = whole_ways(programme, chance.randrange(2**31), over)
    return read_plan(programme.question, ways, whole_cuts(programme, chance.randrange(2**31), over))


def _looked_at(choice: _Choice, tries: int, over: Callable[[], bool]) -> Iterator[_Numbers]:
    """Look at so many numbers at the most, and at a few more once some leave no more bare than any must."""
    left = tries
    for counts in choice.sets:
        yield _Numbers(choice.programme, counts)
        left -= 1
        if counts.bare < choice.counting.bare + NOTHING:
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
