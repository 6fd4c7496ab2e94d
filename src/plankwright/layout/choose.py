"""Choose heights, joints and boards for a stretch of courses together, with CP-SAT.

The model is written out with numbered constraints in docs/how-it-works.md. Lengths are counted in whole steps of a
grid; what wood gives is rounded down to it and what the surface asks is rounded up, so a solution always fits.
"""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass

from ortools.sat.python import cp_model

from plankwright.layout.first import joints_near, mate_groups, nail_count
from plankwright.layout.plan import Plan, PlannedCourse, PlannedPiece, Stick
from plankwright.layout.rows import Row, Stack
from plankwright.layout.sticks import cut_from
from plankwright.layout.strips import Strips
from plankwright.measure import Nm
from plankwright.model import JointPolicy


@dataclass(frozen=True, slots=True, kw_only=True)
class Prices:
    """What the search minimises: whole numbers, each per square grid step, joint, or piece.

    `new` is the price of a piece from a board that the pile does not have.
    """

    bare: int
    joint: int
    wood: int
    piece: int
    new: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """What came of a search over a stack.

    Parameters
    ----------
    cuts
        For each kind of course and height, the pieces (stick rectangle, start, end) and the bare stretches of all
        its courses together; nothing when no solution was found.
    proven
        Whether no solution of this model has a lower price.
    impossible
        Whether the model has no solution.
    bound, price
        Least possible price as far as known, and the price found.
    work
        Deterministic time used.
    """

    cuts: tuple["RowCuts", ...] | None
    proven: bool
    impossible: bool
    bound: float
    price: float
    work: float


@dataclass(frozen=True, slots=True, kw_only=True)
class RowCuts:
    """The courses of one kind and height, not yet told apart.

    Parameters
    ----------
    row
        The kind.
    height, given_up
        Height of each, and how much of it all of them together lose to the closing rip. [nm]
    count
        How many courses. [courses]
    pieces, bare
        Of all of them, in no order.
    """

    row: Row
    height: Nm
    given_up: Nm
    count: int
    pieces: tuple[PlannedPiece, ...]
    bare: tuple[tuple[Nm, Nm], ...]


@dataclass(frozen=True, slots=True)
class _Kind:
    """A kind of course at one height, filled with mates of one group."""

    row: int
    height: Nm
    sticks: tuple[int, ...]
    sight_joints: bool


@dataclass(frozen=True, slots=True)
class _Place:
    """A place in a kind of course where a piece may begin or end."""

    at: Nm
    run: int
    joint: bool
    hidden: bool


class Chooser:
    """The model of one stack.

    Parameters
    ----------
    strips
        The surface.
    sticks
        The wood that may be used.
    stack
        What to cover.
    prices
        What to minimise.
    grid
        Step of lengths. [nm]
    bare_allowed
        Whether anything may stay bare.
    lanes
        Into how many lanes a wide stick may be ripped, one or two.
    now
        The courses there already, to start from.
    first_new
        From this place in the tally on, boards are not in the pile and only thought of.
    rip_at_most
        A stick wider than its course by more than this is not considered for it, unless it has room for another
        lane; nothing to consider every stick. [nm]
    """

    def __init__(
        self,
        strips: Strips,
        sticks: Sequence[Stick],
        stack: Stack,
        *,
        prices: Prices,
        grid: Nm,
        bare_allowed: bool = True,
        rip_at_most: Nm | None = None,
        lanes: int = 2,
        now: Plan = (),
        first_new: int | None = None,
    ) -> None:
        self.first_new = first_new
        self.rip_at_most, self.most_lanes, self.now = rip_at_most, lanes, now
        self.in_use = {(piece.stick.board, course.height) for course in now for piece in course.pieces}
        self.strips, self.stack, self.prices, self.grid = strips, stack, prices, grid
        self.rules = strips.rules
        self.sticks = list(sticks)
        self.bare_allowed = bare_allowed
        self.model = cp_model.CpModel()
        self.cost: list[cp_model.LinearExprT] = []
        self._lanes()
        self.kinds = self._kinds()
        self.places = [self._places(kind) for kind in self.kinds]
        self.pieces: list[tuple[int, int, int, int, int, cp_model.IntVar]] = []
        self.at_place: dict[tuple[int, int, bool], list[cp_model.IntVar]] = defaultdict(list)
        self.wood_at: dict[tuple[int, int, bool], list[Stick]] = defaultdict(list)
        self.bare: dict[tuple[int, int], cp_model.IntVar] = {}
        self._pieces()
        self._counts()
        self._heights()
        self._wood()
        self._joints()
        self.model.minimize(sum(self.cost))
        self._hint()

    def _up(self, length: Nm) -> int:
        return -(-length // self.grid)

    def _down(self, length: Nm) -> int:
        return length // self.grid

    def _lanes(self) -> None:
        """Let a stick be ripped lengthwise where both lanes could make a course of a height in use."""
        lowest = min((height for row in self.stack.rows for height in row.heights), default=1)
        self.lowest = lowest
        enough = 2 * lowest + self.rules.rip_kerf_nm
        self.lanes = [self.most_lanes if stick.width >= enough else 1 for stick in self.sticks]

    def _kinds(self) -> list[_Kind]:
        kinds = []
        for index, row in enumerate(self.stack.rows):
            for height in row.heights:
                wide = [
                    place
                    for place, stick in enumerate(self.sticks)
                    if stick.width + self.rules.width_tolerance_nm >= height
                    and self._worth_ripping(place, height)
                ]
                if row.strip is not None:
                    kinds.append(_Kind(index, height, tuple(wide), sight_joints=True))
                    continue
                groups = mate_groups([self.sticks[place] for place in wide], self.rules)
                where = {
                    stick: place for place, stick in zip(wide, (self.sticks[p] for p in wide), strict=True)
                }
                for group in groups:
                    members = tuple(sorted(where[stick] for stick in group))
                    kinds.append(_Kind(index, height, members, sight_joints=True))
                if len(groups) > 1:
                    kinds.append(_Kind(index, height, tuple(wide), sight_joints=False))
        return kinds

    def _worth_ripping(self, place: int, height: Nm) -> bool:
        spare = self.sticks[place].width - height
        return (
            self.rip_at_most is None
            or spare <= self.rip_at_most
            or (self.sticks[place].board, height) in self.in_use
            or (self.lanes[place] > 1 and spare >= self.lowest + self.rules.rip_kerf_nm)
        )

    def _places(self, kind: _Kind) -> list[_Place]:
        places = []
        for run_index, run in enumerate(self.stack.rows[kind.row].runs):
            places.append(_Place(run.start, run_index, joint=False, hidden=False))
            places += [
                _Place(joint.at, run_index, joint=True, hidden=joint.hidden)
                for joint in run.joints
                if joint.hidden or kind.sight_joints
            ]
            places.append(_Place(run.end, run_index, joint=False, hidden=False))
        return places

    def _pieces(self) -> None:
        """(1) A variable for each piece that a lane of a stick could give to a kind of course."""
        for number, kind in enumerate(self.kinds):
            places = self.places[number]
            runs = self.stack.rows[kind.row].runs
            longest = max((self._down(self.sticks[place].length) for place in kind.sticks), default=0)
            for i, first in enumerate(places):
                nails = runs[first.run].nails
                for j in range(i + 1, len(places)):
                    last = places[j]
                    length = self._up(last.at - first.at)
                    if last.run != first.run or length > longest:
                        break
                    if (first.joint or last.joint) and (
                        last.at - first.at < self.rules.shortest_piece_nm
                        or nail_count(nails, first.at, last.at, self.rules) < self.rules.nailing_points
                    ):
                        continue
                    for stick in kind.sticks:
                        if self._down(self.sticks[stick].length) < length:
                            continue
                        if self.sticks[stick].hidden_only and not runs[first.run].hidden:
                            continue
                        for lane in range(self.lanes[stick]):
                            variable = self.model.new_bool_var("")
                            self.pieces.append((number, i, j, stick, lane, variable))
                            self.at_place[number, i, True].append(variable)
                            self.at_place[number, j, False].append(variable)
                            self.wood_at[number, i, True].append(self.sticks[stick])
                            self.wood_at[number, j, False].append(self.sticks[stick])

    def _counts(self) -> None:
        """(2) As many pieces leave a place as reach it; as many courses begin each run of a kind as there are."""
        self.count: list[cp_model.LinearExprT] = []
        for number, kind in enumerate(self.kinds):
            row = self.stack.rows[kind.row]
            most = 1 if row.strip is not None or row.first_band != row.last_band else len(self.sticks)
            alone = row.strip is not None
            count = self.model.new_constant(1) if alone else self.model.new_int_var(0, most, "")
            self.count.append(count)
            places = self.places[number]
            for place in range(len(places)):
                starts, stops = self.at_place[number, place, True], self.at_place[number, place, False]
                reaching = sum(stops) + self._bare(number, place - 1, most)
                leaving = sum(starts) + self._bare(number, place, most)
                if places[place].joint:
                    self.model.add(reaching == leaving)
                elif place + 1 < len(places) and places[place + 1].run == places[place].run:
                    self.model.add(leaving == count)
                else:
                    self.model.add(reaching == count)

    def _bare(self, number: int, place: int, most: int) -> cp_model.LinearExprT:
        """Give how many courses of a kind are bare from a place to the next."""
        places = self.places[number]
        if (
            not self.bare_allowed
            or place < 0
            or place + 1 >= len(places)
            or places[place].run != places[place + 1].run
        ):
            return 0
        if (number, place) not in self.bare:
            variable = self.model.new_int_var(0, most, "")
            self.bare[number, place] = variable
            length = self._up(places[place + 1].at - places[place].at)
            self.cost.append(self.prices.bare * length * self._up(self.kinds[number].height) * variable)
        return self.bare[number, place]

    def _heights(self) -> None:
        """(3) The courses reach every edge between two bands just as their kinds say, and fill the stretch."""
        stack = self.stack
        self.given_up: list[cp_model.LinearExprT] = []
        if stack.fixed:
            self.given_up = [0] * len(self.kinds)
            return
        total: list[cp_model.LinearExprT] = []
        slack = self._up(self.rules.narrowest_course_nm)
        for number, kind in enumerate(self.kinds):
            height = self._down(kind.height)
            most = max(0, height - slack)
            lost = self.model.new_int_var(0, most * (len(self.sticks) or 1), "")
            self.model.add(lost <= most * self.count[number])
            self.given_up.append(lost)
            total.append(height * self.count[number] - lost)
        rows = [stack.rows[kind.row] for kind in self.kinds]
        for band, edge in enumerate(stack.edges, start=1):
            rise = edge - stack.low
            under = sum(part for part, row in zip(total, rows, strict=True) if row.last_band < band)
            begun = sum(part for part, row in zip(total, rows, strict=True) if row.first_band < band)
            across = [
                count
                for count, row in zip(self.count, rows, strict=True)
                if row.first_band < band <= row.last_band
            ]
            self.model.add(under <= self._down(rise))
            self.model.add(begun >= self._up(rise))
            self.model.add(sum(across) <= 1)
        self.model.add(sum(total) >= self._up(stack.must_end - stack.low))
        self.model.add(
            sum(total) <= max(self._down(stack.may_end - stack.low), self._up(stack.must_end - stack.low))
        )

    def _wood(self) -> None:
        """(4) The pieces of a lane fit into its length, kerfs between them; two lanes fit into the width."""
        kerf = self._up(self.rules.crosscut_kerf_nm)
        by_lane: dict[tuple[int, int], list[tuple[int, int, cp_model.IntVar]]] = defaultdict(list)
        for number, i, j, stick, lane, variable in self.pieces:
            length = self._up(self.places[number][j].at - self.places[number][i].at)
            by_lane[stick, lane].append((length, number, variable))
            self._price(stick, length, number, variable)
        for (stick, _), uses in by_lane.items():
            room = self._down(self.sticks[stick].length)
            if 2 * min(length for length, _, _ in uses) + kerf > room:
                self.model.add_at_most_one(variable for _, _, variable in uses)
            else:
                self.model.add(sum((length + kerf) * variable for length, _, variable in uses) <= room + kerf)
        for stick, lanes in enumerate(self.lanes):
            if lanes > 1:
                self._two_lanes(stick, by_lane)

    def _two_lanes(
        self, stick: int, by_lane: dict[tuple[int, int], list[tuple[int, int, cp_model.IntVar]]]
    ) -> None:
        width = self._down(self.sticks[stick].width)
        kerf = self._up(self.rules.rip_kerf_nm)
        first, second = by_lane.get((stick, 0), []), by_lane.get((stick, 1), [])
        if not first or not second:
            return
        tops = []
        for uses in (first, second):
            top = self.model.new_int_var(0, width + self._up(self.rules.width_tolerance_nm), "")
            for height in {self.kinds[number].height for _, number, _ in uses}:
                some = [variable for _, number, variable in uses if self.kinds[number].height == height]
                for variable in some:
                    self.model.add(top >= self._up(height)).only_enforce_if(variable)
            tops.append(top)
        split = self.model.new_bool_var("")
        for _, _, variable in second:
            self.model.add_implication(variable, split)
        self.model.add(tops[0] + tops[1] + kerf <= width).only_enforce_if(split)

    def _price(self, stick: int, length: int, number: int, variable: cp_model.IntVar) -> None:
        """Price a piece by the wood that it takes, and what it leaves too short to use."""
        kerf = self._up(self.rules.crosscut_kerf_nm)
        room, width = self._down(self.sticks[stick].length), self._down(self.sticks[stick].width)
        taken = length + kerf if room - length >= self._up(self.rules.shortest_piece_nm) + kerf else room
        if self.lanes[stick] > 1:
            width = min(width, self._up(self.kinds[number].height + self.rules.rip_kerf_nm))
        price = self.prices.wood * taken * width + self.prices.piece
        if self.first_new is not None and self.sticks[stick].board >= self.first_new:
            price += self.prices.new
        self.cost.append(price * variable)

    def _joints(self) -> None:
        """(5) Joints in sight are priced, forbidden or staggered, and join mates."""
        policy = self.rules.joints
        self.seen: dict[tuple[int, int], cp_model.IntVar] = {}
        for number, kind in enumerate(self.kinds):
            fixed = self.stack.rows[kind.row].strip is not None
            for place, node in enumerate(self.places[number]):
                starts, stops = self.at_place[number, place, True], self.at_place[number, place, False]
                if not node.joint or node.hidden or not starts or not stops:
                    continue
                if policy is JointPolicy.NEVER:
                    self._no_joint(number, place, starts, stops)
                    continue
                if not self.bare_allowed and not fixed:
                    self.cost.extend(self.prices.joint * variable for variable in starts)
                    continue
                most = 1 if fixed else len(self.sticks)
                seen = self.model.new_int_var(0, most, "")
                count = self.count[number]
                self.model.add(seen >= sum(starts) + sum(stops) - count)
                self.cost.append(self.prices.joint * seen)
                if fixed:
                    self.seen[number, place] = seen
                    if policy is JointPolicy.STAGGER and self._too_near(kind.row, node.at):
                        self.model.add(seen == 0)
                    self._mates(number, place, seen)
        if policy is JointPolicy.STAGGER and self.stack.fixed:
            self._stagger()

    def _no_joint(
        self, number: int, place: int, starts: Sequence[cp_model.IntVar], stops: Sequence[cp_model.IntVar]
    ) -> None:
        """No piece begins where another ends: here one of the two sides is bare in every course."""
        self.model.add(sum(starts) + sum(stops) <= self.count[number])

    def _too_near(self, row: int, at: Nm) -> bool:
        """Whether a joint in a course that keeps its place would stand too near one of a course that stays."""
        strip = self.stack.rows[row].strip
        return strip is not None and any(
            abs(at - other) < self.rules.stagger_nm
            for other in joints_near(self.strips, *strip, self.stack.beside)
        )

    def _stagger(self) -> None:
        strips = [row.strip or (0, 0) for row in self.stack.rows]
        for (number, place), seen in self.seen.items():
            top = strips[self.kinds[number].row][1]
            for (other_number, other_place), other in self.seen.items():
                if strips[self.kinds[other_number].row][0] == top:
                    apart = abs(self.places[number][place].at - self.places[other_number][other_place].at)
                    if apart < self.rules.stagger_nm:
                        self.model.add(seen + other <= 1)

    def _mates(self, number: int, place: int, seen: cp_model.IntVar) -> None:
        """Pieces that butt in sight have one profile and nearly one thickness."""
        reach = max(self.rules.thickness_tolerance_nm, self.rules.shim_up_to_nm)
        sticks = [self.sticks[stick] for stick in self.kinds[number].sticks]
        profiles = sorted({(stick.profile.kind, stick.profile.reach_nm) for stick in sticks})
        base = min(stick.thickness for stick in sticks)
        spread = max(stick.thickness for stick in sticks) - base
        if len(profiles) == 1 and spread <= reach:
            return
        thickness, profile = [], []
        for side in (False, True):
            pairs = list(
                zip(self.wood_at[number, place, side], self.at_place[number, place, side], strict=True)
            )
            thickness.append(sum(self._up(wood.thickness - base) * variable for wood, variable in pairs))
            profile.append(
                sum(
                    profiles.index((wood.profile.kind, wood.profile.reach_nm)) * variable
                    for wood, variable in pairs
                )
            )
        if spread > reach:
            yes = self._is(seen)
            self.model.add(thickness[0] - thickness[1] <= self._down(reach)).only_enforce_if(yes)
            self.model.add(thickness[1] - thickness[0] <= self._down(reach)).only_enforce_if(yes)
        if len(profiles) > 1:
            self.model.add(profile[0] == profile[1]).only_enforce_if(self._is(seen))

    def _is(self, count: cp_model.IntVar) -> cp_model.IntVar:
        yes = self.model.new_bool_var("")
        self.model.add(count == 0).only_enforce_if(~yes)
        return yes

    def _hint(self) -> None:
        """Start from the courses that are there already, as far as they fit the model."""
        kinds_used = [self._kind_of(course) for course in self.now]
        wanted: dict[tuple[int, int, Nm, Nm], int] = defaultdict(int)
        for course, number in zip(self.now, kinds_used, strict=True):
            for piece in course.pieces:
                wanted[number, piece.stick.board, piece.start, piece.end] += 1
        for number, i, j, stick, _, variable in self.pieces:
            places = self.places[number]
            key = (number, self.sticks[stick].board, places[i].at, places[j].at)
            self.model.add_hint(variable, wanted[key] > 0)
            wanted[key] = max(0, wanted[key] - 1)
        for number, count in enumerate(self.count):
            if isinstance(count, cp_model.IntVar) and self.stack.rows[self.kinds[number].row].strip is None:
                self.model.add_hint(count, kinds_used.count(number))
            lost = self.given_up[number]
            if isinstance(lost, cp_model.IntVar):
                self.model.add_hint(lost, 0)
        for (number, place), variable in self.bare.items():
            here = self.places[number][place].at
            self.model.add_hint(
                variable,
                sum(
                    1
                    for course, kind in zip(self.now, kinds_used, strict=True)
                    if kind == number and any(start <= here < end for start, end in course.bare)
                ),
            )

    def _kind_of(self, course: PlannedCourse) -> int:
        """Give the kind of a course that is there already, or -1 when the model has none for it."""
        boards = {piece.stick.board for piece in course.pieces}
        edges = (self.stack.low, *self.stack.edges)
        first = sum(1 for edge in edges[1:] if edge <= course.low)
        last = sum(1 for edge in edges[1:] if edge < course.high)
        for number, kind in enumerate(self.kinds):
            row = self.stack.rows[kind.row]
            if (
                kind.height == course.height
                and (row.first_band, row.last_band) == (first, last)
                and boards <= {self.sticks[stick].board for stick in kind.sticks}
            ):
                return number
        return -1

    def solve(self, work: float, seed: int) -> Choice:
        """Run the solver for at most so much deterministic work."""
        solver = cp_model.CpSolver()
        solver.parameters.max_deterministic_time = work
        solver.parameters.random_seed = seed
        solver.parameters.num_workers = 1
        # The solver's own handler ends the process when Ctrl-C comes; ours asks whoever watches to stop.
        solver.parameters.catch_sigint_signal = False
        solver.parameters.symmetry_level = 0
        solver.parameters.cp_model_probing_level = int(__import__("os").environ.get("PB", "0"))
        solver.parameters.max_presolve_iterations = int(__import__("os").environ.get("PI", "1"))
        status = solver.solve(self.model)
        found = status in (cp_model.OPTIMAL, cp_model.FEASIBLE)
        return Choice(
            cuts=self._read(solver) if found else None,
            proven=status == cp_model.OPTIMAL,
            impossible=status == cp_model.INFEASIBLE,
            bound=solver.best_objective_bound,
            price=solver.objective_value if found else float("inf"),
            work=solver.response_proto.deterministic_time,
        )

    def _read(self, solver: cp_model.CpSolver) -> tuple[RowCuts, ...]:
        pieces: dict[int, list[PlannedPiece]] = defaultdict(list)
        taken: dict[tuple[int, int], list[tuple[int, Nm, Nm]]] = defaultdict(list)
        for number, i, j, stick, lane, variable in self.pieces:
            if solver.boolean_value(variable):
                start, end = self.places[number][i].at, self.places[number][j].at
                taken[stick, lane].append((number, start, end))
        for index, stick in enumerate(self.sticks):
            across = stick.across_from
            for lane in range(self.lanes[index]):
                along, widest = stick.along_from, 0
                for number, start, end in taken.get((index, lane), ()):
                    width = min(self.kinds[number].height, stick.across_to - across)
                    part = cut_from(stick, along, end - start, across, width)
                    pieces[number].append(PlannedPiece(part, start, end))
                    along += end - start + self.rules.crosscut_kerf_nm
                    widest = max(widest, width)
                across += widest + self.rules.rip_kerf_nm if widest else 0
        cuts = []
        for number, kind in enumerate(self.kinds):
            count = solver.value(self.count[number])
            if not count:
                continue
            bare = tuple(
                (self.places[number][place].at, self.places[number][place + 1].at)
                for (at, place), variable in self.bare.items()
                if at == number
                for _ in range(solver.value(variable))
            )
            cuts.append(
                RowCuts(
                    row=self.stack.rows[kind.row],
                    height=kind.height,
                    given_up=solver.value(self.given_up[number]) * self.grid,
                    count=count,
                    pieces=tuple(pieces[number]),
                    bare=bare,
                )
            )
        return tuple(cuts)


__all__ = ["Choice", "Chooser", "PlannedCourse", "Prices", "RowCuts"]
