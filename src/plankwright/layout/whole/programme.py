"""The linear programme over ways along runs and cuts of sticks, grown by whichever would lower its price.

It is written out in docs/how-it-works.md; the numbers in the docstrings are those of its rules.
"""

from collections import defaultdict
from collections.abc import Collection, Mapping, Sequence
from itertools import product
from typing import TypeAlias

import highspy
import numpy as np

from plankwright.layout.butting import joints_near
from plankwright.layout.silent import SilentHighs
from plankwright.layout.whole.cutting import Cut, Cutting, Offers
from plankwright.layout.whole.exchanges import exchanges
from plankwright.layout.whole.prices import COVERING, Prices
from plankwright.layout.whole.question import Floats, Question, Sort
from plankwright.layout.whole.ways import Graphs, Moves, Way, Ways, sorts_of
from plankwright.model import JointPolicy

Track: TypeAlias = tuple[int, int, int, Moves]
"""A way in its place: number of the kind, of the run, of the set of mates, and the moves."""

Sawn: TypeAlias = tuple[int, Cut]
"""A cut in its place: number of the wood, and the cut."""

_PIECES_A_JOINT = 50
"""So many pieces cost as much as a joint in sight."""

_ROUNDS = 60
"""How often further ways and cuts are asked for at most."""

_IDLE_ROUNDS = 3
"""After so many rounds that hardly help, no more are asked for."""

_HARDLY = 1e-3
"""A round hardly helps when it lowers the price by less than this share."""

_LITTLE = 1e-2
"""A round helps little when it lowers the price by less than this share."""

NOTHING = 1.0
"""Less than this is not bare. [square steps]"""

_NEAR = 1e-6

_WOOD_WORK, _KIND_WORK, _WIDE_WORK, _STEP_WORK = 3e-4, 1e-4, 1.5e-3, 1.3e-8
"""Seconds of a common machine, as measured once: a round of asking for each kind of wood and each kind of
course, the cheapest ways along a run, and a step of the solver for each column."""

_DUAL, _PRIMAL = 1, 4
"""Strategies of the simplex method, as the solver numbers them: after a change of bounds the solution at hand
is good for the dual one, after new columns for the primal one."""

_INFINITY = highspy.kHighsInf


class Programme:
    """The least price at which ways and cuts, parts of them counting, cover the surface.

    Parameters
    ----------
    question
        What is asked, and of which wood.
    courses
        How many courses of each kind there are, by its number, and none of any other; left out, the
        programme counts them itself, parts of courses counting.
    prices
        Of what is bare and of joints.
    joints
        How many joints in sight there may be at the most; any number when left out.

    Attributes
    ----------
    unit
        Square steps to one unit of price.
    kinds
        Numbers of the kinds of courses that there may be.
    tracks, sawn
        Every way and every cut known, with the number of its column.
    counts
        For each kind, the column that says how many such courses there are.
    columns
        How many columns there are.
    price
        The least, as solved last; infinite when nothing could be chosen.
    spent
        Work done, in seconds of a common machine. [s]
    """

    def __init__(
        self,
        question: Question,
        courses: Mapping[int, int] | None = None,
        prices: Prices = COVERING,
        joints: int | None = None,
    ) -> None:
        self.question, self.prices = question, prices
        self.kinds = tuple(range(len(question.kinds)) if courses is None else sorted(courses))
        self.unit = max(1.0, question.wood_area / 10_000)
        sticks = sum(len(wood.sticks) for wood in question.wood)
        self.joint = prices.joint * question.wood_area / max(1, sticks) / self.unit
        self.graphs = Graphs(question, self.joint, self.joint / _PIECES_A_JOINT)
        self.tracks: dict[Track, int] = {}
        self.sawn: dict[Sawn, int] = {}
        self.bare_runs: dict[tuple[int, int], int] = {}
        self.price, self.spent = _INFINITY, 0.0
        self._rows = self.columns = 0
        self._sorts: dict[Sort, int] = {}
        self._bare: dict[Sort, int] = {}
        self._near: dict[tuple[int, int, int], list[int]] = defaultdict(list)
        self._rebounded = False
        self._solver = SilentHighs()
        self._solver.setOptionValue("threads", 1)
        self._solver.setOptionValue("output_flag", False)  # noqa: FBT003 - the solver's own way
        self._add_runs()
        self._add_stagger()
        if joints is not None:
            self._limit_joints(joints)
        if courses is None:
            self._add_heights()
        self._add_counts(courses)

    def grow(self, rounds: int = _ROUNDS, *, roughly: bool = False) -> float:
        """Ask for ways and cuts until none would help much, or so many times at most; give the least price.

        Parameters
        ----------
        rounds
            How often at most.
        roughly
            Whether it will do that nothing is bare and the last round has helped little.
        """
        price, idle = self.solve(), 0
        for _ in range(rounds):
            if not self._ask():
                break
            before, price = price, self.solve()
            idle = idle + 1 if before - price <= _HARDLY * abs(before) else 0
            if idle >= _IDLE_ROUNDS:
                break
            if roughly and before - price <= _LITTLE * abs(before) and self.bare_area() < NOTHING:
                break
        return price

    def solve(self) -> float:
        """Solve the programme as it is; the price is infinite when its bounds contradict each other."""
        self._solver.setOptionValue("simplex_strategy", _DUAL if self._rebounded else _PRIMAL)
        self._rebounded = False
        if self._solver.run() is highspy.HighsStatus.kError:
            raise RuntimeError(f"the solver gave up: {self._solver.getModelStatus()}")
        info = self._solver.getInfo()
        self.spent += _STEP_WORK * self.columns * max(0, info.simplex_iteration_count)
        optimal = self._solver.getModelStatus() == highspy.HighsModelStatus.kOptimal
        self.price = float(self._solver.getObjectiveValue()) if optimal else _INFINITY
        return self.price

    @property
    def values(self) -> Sequence[float]:
        """How often each column is used."""
        return tuple(self._solver.getSolution().col_value)

    def slopes(self) -> Sequence[float]:
        """Give by how much the price would rise if each column were used once more."""
        return tuple(self._solver.getSolution().col_dual)

    def bare_area(self) -> float:
        """Give the area that the solution leaves bare. [square steps]"""
        values = self.values
        return sum(area * values[column] for column, area in self.bare_areas().items())

    def bound(self, column: int, least: float, most: float = _INFINITY) -> None:
        """Say how often a column may be used."""
        self._rebounded = True
        self._solver.changeColBounds(column, least, most)

    def model(self) -> highspy.HighsLp:
        """Give the programme as the solver has it."""
        return self._solver.getLp()

    def idle(self, share: float) -> Sequence[int]:
        """Give the columns not in use that would raise the price by more than this share if they were."""
        solution = self._solver.getSolution()
        dearest = share * abs(self._solver.getObjectiveValue())
        used, dearer = np.array(solution.col_value), np.array(solution.col_dual)
        return [int(column) for column in np.flatnonzero((used <= _NEAR) & (dearer > dearest))]

    def market(self) -> tuple[Floats, Floats]:
        """Give what a piece of each sort is worth, and what a stick of each wood costs, as solved."""
        duals = self._solver.getSolution().row_dual
        question = self.question
        worth = np.zeros((question.sets, 2, len(question.heights), len(question.lengths)))
        for sort, row in self._sorts.items():
            worth[sort.mates, int(sort.hidden), sort.height, sort.length] = max(0.0, duals[row])
        rents = [
            max(0.0, -duals[row]) + wood.area / self.unit
            for row, wood in zip(self._wood, question.wood, strict=True)
        ]
        return worth, np.array(rents)

    def offers(self, worth: Floats, rents: Floats, cutting: Cutting) -> Offers:
        """Say what a piece of each sort costs: cut anew, as it is paid for already, or left bare."""
        offers = cutting.offers(rents)
        price, source = offers.price, offers.source
        for sort in self._sorts:
            place = sort.mates, int(sort.hidden), sort.height, sort.length
            if worth[place] <= price[place]:
                price[place], source[place] = worth[place], -1
        heights, lengths = self.question.heights, self.question.lengths
        bare = self.prices.bare * heights[:, None] * lengths[None, :] / self.unit
        source[price > bare] = -1
        return Offers(np.minimum(price, bare), source)

    def nearness(self) -> dict[tuple[int, int, int], float]:
        """Give what a joint costs besides, by row, run and place, for others that it shuts out."""
        duals = self._solver.getSolution().row_dual
        return {place: sum(max(0.0, -duals[row]) for row in rows) for place, rows in self._near.items()}

    def run_price(self, kind: int, run: int) -> float:
        """Give what it costs to leave a run of a kind of course bare."""
        return self.bare_price(self._run_area(kind, run))

    def bare_price(self, area: float) -> float:
        """Give what it costs to leave an area bare. [square steps]"""
        return self.prices.bare * area / self.unit

    def height_price(self) -> float:
        """Give what the courses that are counted would cost more for each step that they had to fill more."""
        return float(self._solver.getSolution().row_dual[self._whole]) / self.question.narrowest

    @property
    def sorts(self) -> Collection[Sort]:
        """The sorts of pieces that ways ask for or cuts give."""
        return self._sorts.keys()

    def add_way(self, kind: int, run: int, mates: int, moves: Moves) -> bool:
        """(4) Take in a way; its pieces are asked for. Whether it is new."""
        track = kind, run, mates, moves
        if track in self.tracks:
            return False
        row = self.question.kinds[kind].row
        graph = self.question.graphs[row][run]
        sorts = sorts_of(self.question, kind, run, mates, moves)
        seen = sum(graph.in_sight[last] for _, last in moves)
        entries = [(self._run_rows[kind, run], 1.0)]
        entries += [(self._sort(sort), -1.0) for sort in sorts]
        entries += [(near, 1.0) for _, last in moves for near in self._near.get((row, run, last), ())]
        self.tracks[track] = self._column(self.joint * seen + self.graphs.piece * len(moves), entries)
        return True

    def add_cut(self, wood: int, cut: Cut) -> bool:
        """(5) Take in a cut; its pieces are there to be had. Whether it is new."""
        cut = tuple(sorted(tuple(sorted(lane)) for lane in cut if lane))
        if not cut or (wood, cut) in self.sawn:
            return False
        entries = [(self._wood[wood], 1.0)] + [(self._sort(sort), 1.0) for lane in cut for sort in lane]
        self.sawn[wood, cut] = self._column(self.question.wood[wood].area / self.unit, entries)
        return True

    def widen_ways(self, share: float, most: int) -> None:
        """Take in the cheapest ways along each run, so many at the most, that cost little more than the best.

        Each would raise the price by no more than some share of it, as far as its dual prices tell.
        """
        duals = self._solver.getSolution().row_dual
        dearest = share * abs(self._solver.getObjectiveValue())
        worth, rents = self.market()
        cutting = Cutting(self.question, worth)
        offers = self.offers(worth, rents, cutting)
        ways = Ways(self.graphs, offers.price, self.nearness())
        for (kind, run), row in self._run_rows.items():
            for way in ways.cheap(kind, run, most):
                if way.price - duals[row] <= dearest:
                    self._take(kind, run, way, offers, cutting)
        self.spent += _WIDE_WORK * len(self._run_rows)

    def widen_cuts(self, share: float) -> None:
        """Take in for each wood and each sort the worthiest cut that has one, where it costs little more.

        Each would raise the price by no more than some share of it, as far as its dual prices tell.
        """
        dearest = share * abs(self._solver.getObjectiveValue())
        worth, rents = self.market()
        cutting = Cutting(self.question, worth)
        for number, rent in enumerate(rents):
            for sort in [sort for sort in self._sorts if cutting.gives(number, sort)]:
                cut = cutting.around(number, sort)
                if rent - cutting.worth(cut) <= dearest:
                    self.add_cut(number, cut)
        self.spent += _WOOD_WORK * len(self.question.wood)

    def bare_areas(self) -> dict[int, int]:
        """Give the columns by which something stays bare, and how much that is. [square steps]"""
        pieces = {column: self.question.area(sort) for sort, column in self._bare.items()}
        return pieces | {column: int(self._run_area(*place)) for place, column in self.bare_runs.items()}

    @property
    def area(self) -> float:
        """What is to be covered by the courses that are given. [square steps]"""
        return sum(self._run_area(kind, run) for kind, run in self._run_rows if kind in self._given)

    def _ask(self) -> bool:
        """Take in each cut and each way that would lower the price. Whether there are any."""
        self.spent += _WOOD_WORK * len(self.question.wood) + _KIND_WORK * len(self.kinds)
        duals = self._solver.getSolution().row_dual
        worth, rents = self.market()
        cutting = Cutting(self.question, worth)
        found = False
        for number in range(len(self.question.wood)):
            gain, cut = cutting.best(number)
            if cut and gain > rents[number] * (1 + _NEAR):
                found |= self.add_cut(number, cut)
        offers = self.offers(worth, rents, cutting)
        ways = Ways(self.graphs, offers.price, self.nearness())
        for kind, entries in self._count_entries.items():
            along = [ways.cheapest(kind, run) for run in range(self._runs_of(kind))]
            if None in along:
                continue
            paths = [way for way in along if way is not None]
            price = sum(way.price for way in paths) - sum(value * duals[row] for row, value in entries)
            for run, way in enumerate(paths):
                known = kind in self._given or (kind, run) in self._with_ways
                if price < -_NEAR or (known and way.price < duals[self._run_rows[kind, run]] - _NEAR):
                    found |= self._take(kind, run, way, offers, cutting)
        return found

    def _take(self, kind: int, run: int, way: Way, offers: Offers, cutting: Cutting) -> bool:
        if not self.add_way(kind, run, way.mates, way.moves):
            return False
        self._with_ways.add((kind, run))
        for sort in sorts_of(self.question, kind, run, way.mates, way.moves):
            number = int(offers.source[sort.mates, int(sort.hidden), sort.height, sort.length])
            if number >= 0:
                self.add_cut(number, cutting.around(number, sort))
        return True

    def _runs_of(self, kind: int) -> int:
        return len(self.question.graphs[self.question.kinds[kind].row])

    def _run_area(self, kind: int, run: int) -> float:
        question = self.question
        length = question.row_of(kind).runs[run].length
        return float(question.height_of(kind) * question.up(length))

    def _add_runs(self) -> None:
        """(1) Each course goes some way along each of its runs, or leaves it bare; (2) wood is used once."""
        self._with_ways: set[tuple[int, int]] = set()
        runs = [(kind, run) for kind in self.kinds for run in range(self._runs_of(kind))]
        self._run_rows = {place: self._row(0, 0) for place in runs}
        self._wood = [self._row(-_INFINITY, len(wood.sticks)) for wood in self.question.wood]
        for place, row in self._run_rows.items():
            self.bare_runs[place] = self._column(self.run_price(*place), [(row, 1.0)])

    def _add_stagger(self) -> None:
        """(6) Of two joints in sight of courses that stay and touch, one at most where they would be near.

        None is near one of a course beside them.
        """
        question, rules = self.question, self.question.rules
        if rules.joints is not JointPolicy.STAGGER:
            return
        strips = {number: row.strip for number, row in enumerate(question.stack.rows) if row.strip}
        for number, strip in strips.items():
            others = joints_near(question.strips, *strip, question.stack.beside)
            for place in self._in_sight(number):
                at = question.graphs[number][place[0]].places[place[1]]
                if any(abs(at - other) < rules.stagger_nm for other in others):
                    self._near[number, *place].append(self._row(-_INFINITY, 0))
        for (lower, below), (upper, above) in product(strips.items(), strips.items()):
            if below[1] != above[0]:
                continue
            for place, other in product(self._in_sight(lower), self._in_sight(upper)):
                apart = question.graphs[lower][place[0]].places[place[1]]
                apart -= question.graphs[upper][other[0]].places[other[1]]
                if abs(apart) < rules.stagger_nm:
                    row = self._row(-_INFINITY, 1)
                    self._near[lower, *place].append(row)
                    self._near[upper, *other].append(row)

    def _limit_joints(self, most: int) -> None:
        """(7) There are no more joints in sight than that."""
        limit = self._row(-_INFINITY, most)
        for row in range(len(self.question.graphs)):
            for place in self._in_sight(row):
                self._near[row, *place].append(limit)

    def _in_sight(self, row: int) -> list[tuple[int, int]]:
        """Give the runs of a row and the places in them where a joint would be seen."""
        return [
            (run, place)
            for run, graph in enumerate(self.question.graphs[row])
            for place, seen in enumerate(graph.in_sight)
            if seen
        ]

    def _add_heights(self) -> None:
        """(3) Courses fill the stretch and reach each edge as their kinds say, as in `choose`."""
        question, stack = self.question, self.question.stack
        self._edges = []
        stays = all(row.strip is not None for row in stack.rows)
        for edge in () if stays else stack.edges:
            rise = edge - stack.low
            below = self._row(-_INFINITY, question.down(rise) / question.narrowest)
            begun = self._row(question.up(rise) / question.narrowest, _INFINITY)
            self._edges.append((below, begun, self._row(-_INFINITY, 1)))
        must, may = question.up(stack.must_end - stack.low), question.down(stack.may_end - stack.low)
        if stays:
            must, may = 0, 0
        self._whole = self._row(must / question.narrowest, max(may, must) / question.narrowest)
        self._given_up = [self._row(-_INFINITY, 0) for _ in stack.rows]

    def _add_counts(self, courses: Mapping[int, int] | None) -> None:
        question = self.question
        self._count_entries: dict[int, list[tuple[int, float]]] = {}
        self._given = set[int]()
        self.counts: dict[int, int] = {}
        for number in self.kinds:
            row = question.row_of(number)
            entries = self._counted_entries(number) if courses is None and row.strip is None else []
            self._count_entries[number] = entries
            runs = [(self._run_rows[number, run], -1.0) for run in range(self._runs_of(number))]
            self.counts[number] = self._column(0.0, [*entries, *runs])
            if courses is not None or row.strip is not None:
                count = 1 if courses is None else courses[number]
                self.bound(self.counts[number], count, count)
                self._given.add(number)
        for number, row in enumerate(question.stack.rows):
            if courses is None and row.strip is None:
                lost = [(at, -value) for at, value in self._height_entries(number, 1.0)]
                self._column(0.0, [*lost, (self._given_up[number], 1.0)])

    def _counted_entries(self, kind: int) -> list[tuple[int, float]]:
        """Give what a course of a kind that is not given takes of the rows of heights."""
        question = self.question
        number, height = question.kinds[kind].row, question.height_of(kind)
        row = question.stack.rows[number]
        give = max(0, height - question.narrowest) / question.narrowest
        return [
            *self._height_entries(number, height / question.narrowest),
            (self._given_up[number], -give),
            *(
                (across, 1.0)
                for band, (_, _, across) in enumerate(self._edges, start=1)
                if row.first_band < band <= row.last_band
            ),
        ]

    def _height_entries(self, row: int, height: float) -> list[tuple[int, float]]:
        at = self.question.stack.rows[row]
        entries = [(self._whole, height)]
        for band, (below, begun, _) in enumerate(self._edges, start=1):
            if at.last_band < band:
                entries.append((below, height))
            if at.first_band < band:
                entries.append((begun, height))
        return entries

    def _sort(self, sort: Sort) -> int:
        """Give the row of a sort of piece: no more are hung than are cut, but for those left bare."""
        if sort not in self._sorts:
            row = self._row(0, _INFINITY)
            area = self.question.area(sort)
            self._bare[sort] = self._column(self.prices.bare * area / self.unit, [(row, 1.0)])
            for better, lesser in exchanges(sort, self._sorts.keys(), self.question):
                self._column(0.0, [(self._sorts.get(better, row), -1.0), (self._sorts.get(lesser, row), 1.0)])
            self._sorts[sort] = row
        return self._sorts[sort]

    def _row(self, least: float, most: float) -> int:
        self._solver.addRow(float(least), float(most), 0, np.empty(0, np.int32), np.empty(0))
        self._rows += 1
        return self._rows - 1

    def _column(self, price: float, entries: Sequence[tuple[int, float]]) -> int:
        together: dict[int, float] = {}
        for row, value in entries:
            together[row] = together.get(row, 0.0) + value
        rows = np.array(list(together), dtype=np.int32)
        values = np.array(list(together.values()), dtype=np.float64)
        self._solver.addCol(float(price), 0.0, _INFINITY, len(rows), rows, values)
        self.columns += 1
        return self.columns - 1
