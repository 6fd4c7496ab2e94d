"""A finished plan made to look better at no cost: not a joint, not a square inch of wood more."""

import random
from collections.abc import Callable, Sequence

from plankwright.layout.look.eye import Eye
from plankwright.layout.look.moves import Moves
from plankwright.layout.look.places import Changes, Places
from plankwright.layout.look.wood import Wood
from plankwright.layout.plan import Plan, PlannedCourse, Stick
from plankwright.layout.strips import Strips
from plankwright.model import Job

_MOVES_A_PIECE = 60
"""So many moves are tried for each piece at the most."""

_MOVE_WORK = 4e-4
"""Seconds of a common machine that a move takes, as measured once."""

_LOOKED_BACK = 40
"""A move is taken when the plan then looks no worse than now, or than it did so many moves ago: so the search
gets out of plans that no single move makes better (late acceptance hill-climbing, Burke and Bykov, European
Journal of Operational Research 258, 2017, told from memory)."""


def dress(
    job: Job,
    strips: Strips,
    stock: Sequence[Stick],
    faces: Sequence[int],
    plan: Plan,
    chance: random.Random,
    *,
    work: float,
    over: Callable[[], bool] = lambda: False,
) -> Plan:
    """Make a plan look better without making it worse in anything that is measured.

    Parameters
    ----------
    job
        For the boards and the rules.
    strips, stock
        The surface and the wood that it may use.
    faces
        Face area of each board of the tally, as the search counts it. [nm²]
    plan
        A plan that keeps every rule.
    chance
        The only source of chance: the same plan and the same state give the same.
    work
        How much of it may be done, in seconds of a common machine. [s]
    over
        Asked often; once it answers yes, the best so far is given.

    Returns
    -------
    Plan
        As much of it bare, no more joints in sight, no more wood spent.
    """
    if not any(course.pieces for course in plan) or any(stick.endless for stick in stock):
        return plan
    dressing = _Dressing(job, strips, stock, faces, plan, chance)
    most = _MOVES_A_PIECE * sum(len(course.pieces) for course in plan)
    for _ in range(min(most, int(work / _MOVE_WORK))):
        if not dressing.best_fault or over():
            break
        dressing.step()
    return dressing.best


class _Dressing:
    """A plan in front of the mirror."""

    def __init__(
        self,
        job: Job,
        strips: Strips,
        stock: Sequence[Stick],
        faces: Sequence[int],
        plan: Plan,
        chance: random.Random,
    ) -> None:
        self._eye, self._places = Eye(strips, job.boards), Places(strips)
        self._wood = Wood(job, stock, faces, plan)
        self._moves = Moves(strips, self._eye, self._wood, chance)
        self._plan: list[PlannedCourse] = list(plan)
        self._faults = [self._fault_of(number) for number in range(len(plan))]
        self._spent: tuple[int, ...] = (0, 0, 0)
        self.best, self.best_fault = plan, sum(self._faults)
        self._past = [self.best_fault] * _LOOKED_BACK
        self._turn = 0

    def step(self) -> None:
        """Try one move."""
        self._turn += 1
        changes = self._moves.draw(self._plan)
        if changes is not None and self._places.allow(self._plan, changes):
            self._judge(changes)
        self._past[self._turn % _LOOKED_BACK] = sum(self._faults)

    def _judge(self, changes: Changes) -> None:
        """Take a move if it costs nothing and looks no worse than now, or than a while ago."""
        cut = self._wood.changed([self._plan[number] for number in changes], changes.values())
        more = self._wood.more_spent(cut)
        spent = tuple(now + some for now, some in zip(self._spent, more, strict=True))
        if max(spent) > 0:
            return
        before, faults = list(self._plan), list(self._faults)
        fault = sum(faults)
        for number, course in changes.items():
            self._plan[number] = course
        for number in self._looked_at_with(changes):
            self._faults[number] = self._fault_of(number)
        now = sum(self._faults)
        if now > max(fault, self._past[self._turn % _LOOKED_BACK]):
            self._plan, self._faults = before, faults
            return
        self._wood.take(cut)
        self._spent = spent
        if now < self.best_fault:
            self.best, self.best_fault = tuple(self._plan), now

    def _looked_at_with(self, changes: Changes) -> list[int]:
        """Give the courses that are looked at together with what was changed."""
        last = len(self._plan) - 1
        return sorted({min(each, last) for number in changes for each in range(number, number + 3)})

    def _fault_of(self, number: int) -> int:
        return self._eye.looks_at_course(self._plan, number).fault
