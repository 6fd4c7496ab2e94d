"""The model under construction: the solver's own, and what each of its variables stands for."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass, field

from ortools.sat.python import cp_model

from plankwright.layout.choose.kinds import Kind
from plankwright.layout.choose.task import Task


@dataclass(frozen=True, slots=True)
class Candidate:
    """A piece that may be cut.

    Parameters
    ----------
    kind
        Number of the kind of course that it would hang in.
    first, last
        Numbers of the places from where to where it would reach.
    stick, lane
        Number of the stick that it would come from, and the lane of it.
    length
        Rounded up. [steps]
    chosen
        Whether it is cut, or how often from an endless stick.
    besides
        What it costs besides.
    stays
        Whether it hangs there already, and stays.
    """

    kind: int
    first: int
    last: int
    stick: int
    lane: int
    length: int
    chosen: cp_model.IntVar
    besides: int = 0
    stays: bool = False


@dataclass(slots=True)
class Model:
    """What the solver is given.

    Parameters
    ----------
    task
        What is asked.
    kinds
        The kinds of courses.
    lanes
        For each stick, into how many lanes it may be ripped.

    Attributes
    ----------
    cp
        The solver's model.
    pieces
        Every piece that may be cut.
    leaving, reaching
        Of those, the ones that begin at a place of a kind, and the ones that end there.
    count
        For each kind, how many such courses there are.
    bare
        For a kind and a place, how many of its courses are bare from there to the next place.
    given_up
        For a kind, how much of its height all its courses together lose to the closing rip. [steps]
    shims
        For a kind that stays and a place, how thick the shim is behind what hangs from there to the next,
        where one may be needed. [nm]
    in_sight
        Whose sum is the number of joints in sight.
    """

    task: Task
    kinds: tuple[Kind, ...]
    lanes: tuple[int, ...]
    cp: cp_model.CpModel = field(default_factory=cp_model.CpModel)
    pieces: list[Candidate] = field(default_factory=list)
    leaving: defaultdict[tuple[int, int], list[Candidate]] = field(default_factory=lambda: defaultdict(list))
    reaching: defaultdict[tuple[int, int], list[Candidate]] = field(default_factory=lambda: defaultdict(list))
    count: list[cp_model.IntVar] = field(default_factory=list)
    bare: dict[tuple[int, int], cp_model.IntVar] = field(default_factory=dict)
    given_up: dict[int, cp_model.IntVar] = field(default_factory=dict)
    shims: dict[tuple[int, int], cp_model.IntVar] = field(default_factory=dict)
    in_sight: list[cp_model.IntVar] = field(default_factory=list)

    def most(self, number: int) -> int:
        """Give how many courses of a kind there can be."""
        if self.kinds[number].once:
            return 1
        stack = self.task.stack
        return (stack.may_end - stack.low) // self.task.rules.narrowest_course_nm


def number_of(candidates: Iterable[Candidate]) -> cp_model.LinearExpr | int:
    """Give how many of some pieces are cut."""
    return sum(candidate.chosen for candidate in candidates)
