"""The whole surface as a question: which courses could be hung, and which wood there is, in whole steps.

What wood gives is rounded down to the grid and what the surface asks is rounded up, as in `choose`.
"""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from plankwright.layout.butting import can_butt, mate_groups, reaches_barred
from plankwright.layout.plan import Stick
from plankwright.layout.rows import Row, Stack
from plankwright.layout.runs import Run
from plankwright.layout.strips import Strips
from plankwright.layout.whole.rips import Rips
from plankwright.measure import Nm
from plankwright.model import JointPolicy


class Sort(NamedTuple):
    """What a piece is, wherever it hangs.

    Parameters
    ----------
    mates
        Number of the set of sticks that it may come from.
    hidden
        Whether a fixture hides all of it, so that a stick with a blemish will do.
    height, length
        Numbers of its height and of its length.
    """

    mates: int
    hidden: bool
    height: int
    length: int


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of course at one height: the numbers of its row and of its height."""

    row: int
    height: int


@dataclass(frozen=True, slots=True)
class Arc:
    """A piece that a run could have.

    Parameters
    ----------
    first, last
        Numbers of the places from where to where it reaches.
    length
        Number of its length.
    hidden
        Whether a fixture hides all of it.
    """

    first: int
    last: int
    length: int
    hidden: bool


@dataclass(frozen=True, slots=True)
class Graph:
    """A run as places and the pieces that may lie between them.

    Parameters
    ----------
    run
        The run.
    places
        Where it begins, where joints may fall, where it ends. [nm]
    in_sight
        For each place, whether a joint there would be seen.
    arcs
        In order of their first places.
    """

    run: Run
    places: tuple[Nm, ...]
    in_sight: tuple[bool, ...]
    arcs: tuple[Arc, ...]


@dataclass(frozen=True, slots=True)
class Wood:
    """Sticks that are alike.

    Parameters
    ----------
    sticks
        They themselves.
    length, width
        Rounded down. [steps]
    room
        How much of sizes (length and kerf) a lane of it holds. [units]
    mates
        Numbers of the sets of mates that they belong to.
    heights
        Numbers of the heights that one piece can be made to out of the whole width.
    """

    sticks: tuple[Stick, ...]
    length: int
    width: int
    room: int
    mates: tuple[int, ...]
    heights: tuple[int, ...]

    @property
    def blemished(self) -> bool:
        """Whether a fixture must hide what comes of it."""
        return self.sticks[0].hidden_only

    @property
    def area(self) -> int:
        """Of one stick. [square steps]"""
        return self.length * self.width


_ROOMS = 2000
"""Lengths are measured in units such that the longest stick has no more of them, if need be rounded up."""


class Question:
    """What is asked of the wood, and what there is of it.

    Parameters
    ----------
    strips, sticks, stack
        The surface, the wood and the courses that could cover it. Rows with a place of their own are hung
        once each; the others are counted.
    grid
        Step of lengths. [nm]

    Attributes
    ----------
    heights, lengths
        Every height of a course and every length of a piece, in rising order. [steps]
    kinds
        Every row at every height that it may take.
    graphs
        For each row, its runs.
    wood
        The sticks, like with like.
    sets
        How many sets of mates there are.
    loose
        Number of the set of all wood, which may have joints out of sight only; nothing if all are mates.
    sizes
        For each length, how much of a stick's room it takes with its kerf. [units]
    """

    def __init__(self, strips: Strips, sticks: Sequence[Stick], stack: Stack, grid: Nm) -> None:
        self.strips, self.sticks, self.stack, self.grid = strips, tuple(sticks), stack, grid
        self.rules = strips.rules
        groups = mate_groups(self.sticks, self.rules)
        self.loose = len(groups) if len(groups) > 1 else None
        self.sets = len(groups) + (self.loose is not None)
        self.course_heights = tuple(sorted({height for row in stack.rows for height in row.heights}))
        self.heights = np.array([self.up(height) for height in self.course_heights], dtype=np.int64)
        self.kinds = tuple(
            Kind(number, self.course_heights.index(height))
            for number, row in enumerate(stack.rows)
            for height in row.heights
        )
        longest = max(self.down(stick.length) for stick in self.sticks)
        asked = {
            self.up(end - start)
            for row in stack.rows
            for run in row.runs
            for start, end in self._pieces(run)
            if self.up(end - start) <= longest
        }
        self.lengths = np.array(sorted(asked), dtype=np.int64)
        self.kerf, self.rip_kerf = self.up(self.rules.crosscut_kerf_nm), self.up(self.rules.rip_kerf_nm)
        self._unit = self._unit_of(longest)
        self.sizes = -(-(self.lengths + self.kerf) // self._unit)
        self.graphs = tuple(tuple(map(self._graph, row.runs)) for row in stack.rows)
        self.wood = tuple(self._wood(groups))

    def up(self, length: Nm) -> int:
        """Round what is asked for up to the grid. [steps]"""
        return -(-length // self.grid)

    def down(self, length: Nm) -> int:
        """Round what is given down to the grid. [steps]"""
        return length // self.grid

    def row_of(self, kind: int) -> Row:
        """Give the row of a kind."""
        return self.stack.rows[self.kinds[kind].row]

    def height_of(self, kind: int) -> int:
        """Give the height of a kind, as it adds up. [steps]"""
        return self.down(self.course_heights[self.kinds[kind].height])

    def area(self, sort: Sort) -> int:
        """Give the area of a piece. [square steps]"""
        return int(self.heights[sort.height] * self.lengths[sort.length])

    @property
    def narrowest(self) -> int:
        """The narrowest course. [steps]"""
        return self.up(self.rules.narrowest_course_nm)

    @cached_property
    def most(self) -> int:
        """How many courses of a kind there can be at the most."""
        return max(1, (self.stack.may_end - self.stack.low) // self.rules.narrowest_course_nm)

    @cached_property
    def wood_area(self) -> int:
        """Area of all sticks. [square steps]"""
        return sum(wood.area * len(wood.sticks) for wood in self.wood)

    @cached_property
    def rips(self) -> Rips:
        """Lanes that sticks can be ripped into."""
        return Rips(self.heights.tolist(), self.course_heights, self.rip_kerf)

    def _unit_of(self, longest: int) -> int:
        sizes = [int(length) + self.kerf for length in self.lengths]
        common = int(np.gcd.reduce(sizes)) if sizes else 1
        return max(common, -(-longest // _ROOMS)) if longest > _ROOMS * common else common

    def _places(self, run: Run) -> tuple[tuple[Nm, bool], ...]:
        seen = self.rules.joints is not JointPolicy.NEVER
        joints = [(joint.at, not joint.hidden) for joint in run.joints if joint.hidden or seen]
        return ((run.start, False), *joints, (run.end, False))

    def _pieces(self, run: Run) -> Iterator[tuple[Nm, Nm]]:
        places = [at for at, _ in self._places(run)]
        for number, start in enumerate(places):
            for end in places[number + 1 :]:
                alone = (start, end) == (run.start, run.end)
                if reaches_barred(start, end, run.barred):
                    continue
                if alone or can_butt(start, end, run.nails, self.rules):
                    yield start, end

    def _graph(self, run: Run) -> Graph:
        places = self._places(run)
        number_at = {at: number for number, (at, _) in enumerate(places)}
        number_of = {int(length): number for number, length in enumerate(self.lengths)}
        arcs = tuple(
            Arc(number_at[start], number_at[end], number_of[self.up(end - start)], run.hides(start, end))
            for start, end in self._pieces(run)
            if self.up(end - start) in number_of
        )
        return Graph(run, tuple(at for at, _ in places), tuple(seen for _, seen in places), arcs)

    def _wood(self, groups: Sequence[Sequence[Stick]]) -> Iterator[Wood]:
        mates: dict[Stick, list[int]] = defaultdict(list)
        for number, group in enumerate(groups):
            for stick in group:
                mates[stick].append(number)
        alike: dict[tuple[object, ...], list[Stick]] = defaultdict(list)
        for stick in self.sticks:
            key = self.down(stick.length), self.down(stick.width), tuple(mates[stick])
            alike[(*key, stick.hidden_only, stick.widest_rip)].append(stick)
        for sticks in alike.values():
            first = sticks[0]
            sets = (*mates[first], *(() if self.loose is None else (self.loose,)))
            tolerance = self.rules.width_tolerance_nm
            yield Wood(
                tuple(sticks),
                self.down(first.length),
                self.down(first.width),
                (self.down(first.length) + self.kerf) // self._unit,
                sets,
                tuple(
                    number
                    for number, height in enumerate(self.course_heights)
                    if first.makes(height, tolerance)
                ),
            )


Floats = npt.NDArray[np.float64]
