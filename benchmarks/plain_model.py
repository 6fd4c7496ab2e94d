"""The plain model: one question to CP-SAT about the whole wall, as somebody new to it would write it.

A choice for each piece that any stick could give: from which place of which course to which other place. A
course is as high as some board is wide; what lies behind openings, under slopes and behind fixtures follows.
It knows nothing of kinds of courses, of patterns or of neighbourhoods, and starts from a bare wall.
"""

import time
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from ortools.sat.python import cp_model

from benchmarks.plain_cutting import Chosen, cut, nothing
from benchmarks.plain_wall import STEP, Arc, Item, PlainWall
from plankwright.layout.capacity import capacity_of
from plankwright.layout.plan import Plan, Stick
from plankwright.layout.sticks import whole_sticks
from plankwright.layout.strips import Strips
from plankwright.layout.writing import write_surface
from plankwright.model import Bound, Job, JointPolicy, Layout

WORKERS = 2
_BARE, _JOINT = 1000, 20_000
"""Prices: of a step of bare wall along a course, and of a joint in sight."""


def lay_plainly(job: Job, limit_s: float) -> Layout:
    """Lay out a job of one surface with the plain model.

    Parameters
    ----------
    job
        A wall, level or with a gable.
    limit_s
        For writing the model and solving it, with two workers. [s]

    Returns
    -------
    Layout
        Not yet checked. All bare when nothing was found in time.
    """
    until = time.monotonic() + limit_s
    (surface,) = job.surfaces
    capacity = capacity_of(job)
    strips = Strips(surface, job.rules, capacity)
    sticks = [
        stick
        for place, board in enumerate(job.boards)
        for stick in whole_sticks(board, place, job.rules, capacity)
        if not stick.hidden_only
    ]
    model = _Model(strips, sticks)
    plan = model.solve(max(0.1, until - time.monotonic()))
    return Layout(job_name=job.name, surfaces=(write_surface(job, strips, plan, Bound()),), effort="plain")


def _common(values: Iterable[int]) -> int:
    """Give the commonest of some values, or 0 when there is none."""
    ((value, _),) = Counter(values).most_common(1) or ((0, 0),)
    return value


@dataclass(frozen=True, slots=True)
class _Course:
    """The variables of a course."""

    low: cp_model.LinearExpr
    height: cp_model.IntVar
    there: cp_model.IntVar
    thinnest: cp_model.IntVar
    lost: cp_model.IntVar


_Key = tuple[int, int, int, int]
"""Course, item, first and last place of a piece."""


class _Model:
    """The model of one wall."""

    def __init__(self, strips: Strips, sticks: Sequence[Stick]) -> None:
        self.strips, self.sticks, self.rules = strips, sticks, strips.rules
        self.wall = PlainWall(strips)
        self.cp = cp_model.CpModel()
        self.least = -(-self.rules.narrowest_course_nm // STEP)
        self.kerf = -(-self.rules.crosscut_kerf_nm // STEP)
        self.rip = -(-self.rules.rip_kerf_nm // STEP)
        self.items = list(self._items())
        self.courses = self._courses()
        self.pieces: dict[_Key, cp_model.IntVar] = {}
        self.starting: defaultdict[tuple[int, int], list[cp_model.IntVar]] = defaultdict(list)
        self.ending: defaultdict[tuple[int, int], list[cp_model.IntVar]] = defaultdict(list)
        self.costs: list[cp_model.LinearExprT] = []
        self._pieces()
        self._openings()
        self._joints()

    def solve(self, limit_s: float) -> Plan:
        """Give the best plan found in time; all of the wall bare when there is none. [s]"""
        self.cp.minimize(sum(self.costs))
        solver = cp_model.CpSolver()
        solver.parameters.num_workers = WORKERS
        solver.parameters.max_time_in_seconds = limit_s
        # Left to itself the presolve of such a model takes all the time there is.
        solver.parameters.max_presolve_iterations = 1
        solver.parameters.cp_model_probing_level = 0
        if solver.solve(self.cp) not in {cp_model.OPTIMAL, cp_model.FEASIBLE}:
            return nothing(self.strips)
        chosen: defaultdict[int, list[Chosen]] = defaultdict(list)
        for (row, item, first, last), piece in self.pieces.items():
            if solver.boolean_value(piece):
                chosen[row].append((first, last, item))
        heights = [solver.value(course.height) for course in self.courses]
        return cut(self.wall, self.sticks, self.items, heights, chosen)

    def _items(self) -> Iterator[Item]:
        for number, stick in enumerate(self.sticks):
            length, width = stick.length // STEP, stick.width // STEP
            for lane in range(2 if width >= 2 * self.least + self.rip else 1):
                yield Item(number, lane, length, width)

    def _courses(self) -> list[_Course]:
        """Stack courses; those that are not there are last and have no height.

        A course is as high as some stick is wide; only the last one is ripped to whatever closes the wall.
        """
        widest = max((item.width for item in self.items), default=self.least)
        usual = min((item.width for item in self.items if item.width >= self.least), default=self.least)
        widths = cp_model.Domain.from_values([0, *(item.width for item in self.items)])
        courses: list[_Course] = []
        closings: list[cp_model.IntVar] = []
        low = cp_model.LinearExpr.sum([])
        for _ in range(-(-self.wall.height // usual) + 1):
            height = self.cp.new_int_var(0, widest, "")
            there = self.cp.new_bool_var("")
            self.cp.add(height >= self.least).only_enforce_if(there)
            self.cp.add(height == 0).only_enforce_if(~there)
            closing = self.cp.new_bool_var("")
            self.cp.add_linear_expression_in_domain(height, widths).only_enforce_if(~closing)
            if courses:
                self.cp.add_implication(there, courses[-1].there)
                self.cp.add_implication(there, ~closings[-1])
            closings.append(closing)
            thickest = max((stick.thickness for stick in self.sticks), default=0)
            thinnest = self.cp.new_int_var(0, thickest, "")
            courses.append(_Course(low, height, there, thinnest, self._lost(low)))
            low = low + height
        self.cp.add(low == self.wall.height)
        self._hint(courses, closings)
        return courses

    def _hint(self, courses: Sequence[_Course], closings: Sequence[cp_model.IntVar]) -> None:
        """Let the solver start from courses of one width and a bare wall, or it may find no way to begin."""
        left = self.wall.height
        usual = max(_common(item.width for item in self.items if item.width >= self.least), self.least)
        for course, closing in zip(courses, closings, strict=True):
            last = left < usual + self.least
            height = left if last else usual
            self.cp.add_hint(course.height, height)
            self.cp.add_hint(course.there, height > 0)
            self.cp.add_hint(closing, last and height > 0)
            left -= height

    def _lost(self, low: cp_model.LinearExpr) -> cp_model.IntVar:
        """Give what a course that begins at some height loses at either end under a gable. [steps]"""
        if self.wall.slope is None:
            return self.cp.new_constant(0)
        eaves, rise, run = self.wall.slope
        lost = self.cp.new_int_var(0, run, "")
        under = self.cp.new_int_var(-self.wall.height * run, self.wall.height * run, "")
        self.cp.add(rise * under <= run * (low - eaves))
        self.cp.add(rise * (under + 1) > run * (low - eaves))
        self.cp.add_max_equality(lost, [under, 0])
        return lost

    def _pieces(self) -> None:
        """Every piece that there may be, and what a stick can give."""
        tolerance = self.rules.thickness_tolerance_nm
        heights: list[cp_model.IntVar] = []
        for number, item in enumerate(self.items):
            arcs = list(self.wall.arcs(item.length * STEP))
            thickness = self.sticks[item.stick].thickness
            taken: list[cp_model.LinearExprT] = []
            lane = self.cp.new_int_var(0, item.width, "")
            used = self.cp.new_bool_var("")
            self.cp.add_hint(used, 0)
            heights.append(lane)
            for row, course in enumerate(self.courses):
                here = self.cp.new_bool_var("")
                self.cp.add_hint(here, 0)
                self.cp.add_implication(here, course.there)
                self.cp.add_implication(here, used)
                self.cp.add(lane >= course.height).only_enforce_if(here)
                # All pieces of a course match: simpler than to compare those that butt.
                self.cp.add(course.thinnest <= thickness).only_enforce_if(here)
                self.cp.add(course.thinnest >= thickness - tolerance).only_enforce_if(here)
                chosen = [self._piece(row, number, arc) for arc in arcs]
                self.cp.add(sum(chosen) <= here)
                taken += [(arc.length + self.kerf) * piece for arc, piece in zip(arcs, chosen, strict=True)]
                if self.wall.slope is not None:
                    taken += [-1 * spared for spared in self._spared(row, zip(arcs, chosen, strict=True))]
            self.cp.add(sum(taken) <= item.length + self.kerf)
            if item.lane:
                self.cp.add(heights[-2] + lane + self.rip * used <= item.width)

    def _piece(self, row: int, number: int, arc: Arc) -> cp_model.IntVar:
        piece = self.cp.new_bool_var("")
        self.cp.add_hint(piece, 0)
        self.pieces[row, number, arc.first, arc.last] = piece
        self.starting[row, arc.first].append(piece)
        self.ending[row, arc.last].append(piece)
        return piece

    def _spared(self, row: int, pieces: Iterable[tuple[Arc, cp_model.IntVar]]) -> Iterator[cp_model.IntVar]:
        """Give by how much less than its ways a stick must reach, since they end under slopes. [steps]"""
        last, given = len(self.wall.nodes) - 1, list(pieces)
        lost = self.courses[row].lost
        for ending in (
            [piece for arc, piece in given if arc.first == 0],
            [piece for arc, piece in given if arc.last == last],
        ):
            spared = self.cp.new_int_var(0, self.wall.width, "")
            self.cp.add(spared <= lost)
            self.cp.add(spared <= self.wall.width * sum(ending))
            yield spared

    def _openings(self) -> None:
        """Ways along each course: pieces, bare stretches, and openings that it lies within the height of."""
        nodes, last = self.wall.nodes, len(self.wall.nodes) - 1
        for row, course in enumerate(self.courses):
            within = [self._within(course, number) for number in range(len(self.strips.holes))]
            bare = [self.cp.new_bool_var("") for _ in range(last)]
            for place, node in enumerate(nodes):
                pieces_in, pieces_out = sum(self.ending[row, place]), sum(self.starting[row, place])
                ways_in = pieces_in + (bare[place - 1] if place else 0)
                ways_out = pieces_out + (bare[place] if place < last else 0)
                if node.opening is not None:
                    beyond, _ = within[node.opening]
                    self.cp.add(pieces_in + pieces_out <= beyond)
                    if node.at == self.strips.holes[node.opening].left:
                        ways_out += beyond
                    else:
                        ways_in += beyond
                if place == 0:
                    self.cp.add(ways_out == course.there)
                elif place == last:
                    self.cp.add(ways_in == course.there)
                else:
                    self.cp.add(ways_in == ways_out)
                for hole, (_, clear) in zip(self.strips.holes, within, strict=True):
                    if hole.left < node.at < hole.right:
                        self.cp.add(pieces_in + pieces_out <= 2 * clear)
                if self.wall.slope is not None and node.joint:
                    inwards = min(node.at - nodes[0].at, nodes[-1].at - node.at) // STEP
                    outside = self.cp.new_bool_var("")
                    self.cp.add(course.lost <= inwards - 16).only_enforce_if(~outside)
                    self.cp.add(pieces_in + pieces_out <= 2 * (1 - outside))
            self.costs += [
                _BARE * ((nodes[place + 1].at - nodes[place].at) // STEP) * stretch
                for place, stretch in enumerate(bare)
            ]

    def _within(self, course: _Course, number: int) -> tuple[cp_model.IntVar, cp_model.LinearExpr]:
        """Give whether a course lies within the height of an opening, and whether it keeps clear of it."""
        hole, must = self.strips.holes[number], self.strips.must_holes[number]
        start, high = self.strips.start, course.low + course.height
        within, under, over, below, above = (self.cp.new_bool_var("") for _ in range(5))
        self.cp.add_exactly_one(within, under, over, below, above)
        self.cp.add(course.low >= -(-(must.low - start) // STEP)).only_enforce_if(within)
        self.cp.add(high <= (must.high - start) // STEP).only_enforce_if(within)
        self.cp.add(high <= (hole.low - start) // STEP).only_enforce_if(under)
        self.cp.add(course.low >= -(-(hole.high - start) // STEP)).only_enforce_if(over)
        self.cp.add(course.low < -(-(must.low - start) // STEP)).only_enforce_if(below)
        self.cp.add(high > (must.high - start) // STEP).only_enforce_if(above)
        self.cp.add_implication(within, course.there)
        return within, under + over

    def _joints(self) -> None:
        """Joints: hidden behind a fixture, or counted and kept apart, or none."""
        seen: dict[tuple[int, int], cp_model.IntVar] = {}
        zones = [
            [self._behind(course, zone) for zone in range(len(self.strips.zones))] for course in self.courses
        ]
        for row, _ in enumerate(self.courses):
            for place, node in enumerate(self.wall.nodes):
                if not node.joint:
                    continue
                ends = sum(self.ending[row, place]) + sum(self.starting[row, place])
                hidden = sum(
                    behind
                    for zone, behind in zip(self.strips.zones, zones[row], strict=True)
                    if zone.left <= node.at <= zone.right
                )
                if self.rules.joints is JointPolicy.NEVER:
                    self.cp.add(ends <= 1 + hidden)
                    continue
                seen[row, place] = self.cp.new_bool_var("")
                self.cp.add(ends <= 1 + hidden + seen[row, place])
                self.costs.append(_JOINT * seen[row, place])
        if self.rules.joints is JointPolicy.STAGGER:
            for (row, place), joint in seen.items():
                for (other, there), above in seen.items():
                    apart = abs(self.wall.nodes[place].at - self.wall.nodes[there].at)
                    if other == row + 1 and apart < self.rules.stagger_nm:
                        self.cp.add_at_most_one(joint, above)

    def _behind(self, course: _Course, number: int) -> cp_model.IntVar:
        zone, start = self.strips.zones[number], self.strips.start
        behind = self.cp.new_bool_var("")
        self.cp.add(course.low >= -(-(zone.low - start) // STEP)).only_enforce_if(behind)
        self.cp.add(course.low + course.height <= (zone.high - start) // STEP).only_enforce_if(behind)
        return behind
