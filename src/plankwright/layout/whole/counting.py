"""How many courses of each kind: whole numbers that add up, cheapest as far as prices tell.

Each solution of a programme, whatever courses it was for, says what any numbers of courses of each kind cost,
as Benders' cuts do (Benders, Numerische Mathematik 4, 1962, told from memory); but only about, since pieces
of sorts that it has not seen may be priced too high. The numbers that are cheapest by all that was said are
tried next.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from ortools.sat.python import cp_model

from plankwright.layout.whole.cutting import Cutting
from plankwright.layout.whole.programme import Programme
from plankwright.layout.whole.question import Question
from plankwright.layout.whole.ways import Ways

_SCALE = 100
"""Prices are counted in whole hundredths."""

_WORK = 0.25
"""Work on one set of numbers. [deterministic seconds of the solver]"""

_DEAREST = 10**12


@dataclass(frozen=True, slots=True)
class Counts:
    """How many courses of each kind.

    Parameters
    ----------
    courses
        By the number of the kind.
    given_up
        By the number of the row, how much of their height its courses lose to the rip. [steps]
    work
        What finding them took. [deterministic seconds of the solver]
    """

    courses: dict[int, int]
    given_up: dict[int, int]
    work: float


@dataclass(frozen=True, slots=True)
class _Said:
    """Courses cost about a constant and so much for each."""

    constant: float
    each: tuple[float, ...]


class Counting:
    """Numbers of courses, one set after another.

    Parameters
    ----------
    question
        What is asked.
    """

    def __init__(self, question: Question) -> None:
        self.question = question
        self._said: list[_Said] = []
        self._tried: list[dict[int, int]] = []

    def learn(self, programme: Programme) -> None:
        """Take in what the programme, as it is solved, says of the price of courses."""
        question = self.question
        worth, rents = programme.market()
        cutting = Cutting(question, worth)
        for number in range(len(question.wood)):
            rents[number] = max(rents[number], cutting.best(number)[0])
        ways = Ways(programme.graphs, programme.offers(worth, rents, cutting).price, programme.nearness())
        each = []
        for kind, at in enumerate(question.kinds):
            price = 0.0
            for run in range(len(question.graphs[at.row])):
                way, bare = ways.cheapest(kind, run), programme.run_price(kind, run)
                price += bare if way is None else min(way.price, bare)
            each.append(price)
        spent = sum(
            (rent - wood.area / programme.unit) * len(wood.sticks)
            for rent, wood in zip(rents, question.wood, strict=True)
        )
        self._said.append(_Said(-spent, tuple(each)))

    def tried(self, courses: dict[int, int]) -> None:
        """Give these numbers no more."""
        self._tried.append(courses)

    def cheapest(self, seed: int, only: Mapping[int, int] | None = None) -> Counts | None:
        """Give the numbers, not tried yet, that cost least by all that was said, if any are left.

        Parameters
        ----------
        seed
            For the solver.
        only
            The one set of numbers that will do; any will when left out.
        """
        question, cp = self.question, cp_model.CpModel()
        stack = question.stack
        count = [
            cp.new_constant(1)
            if stack.rows[kind.row].strip is not None
            else cp.new_int_var(0, 1 if _once(question, number) else question.most, "")
            for number, kind in enumerate(question.kinds)
        ]
        given_up = self._stack(cp, count)
        if only is not None:
            for kind, given in enumerate(count):
                cp.add(given == only.get(kind, 0))
        price = cp.new_int_var(-_DEAREST, _DEAREST, "")
        for said in self._said:
            cost = sum(round(_SCALE * each) * courses for each, courses in zip(said.each, count, strict=True))
            cp.add(price >= round(_SCALE * said.constant) + cost)
        for tried in self._tried:
            fewer = []
            for number, courses in tried.items():
                less = cp.new_bool_var("")
                cp.add(count[number] <= courses - 1).only_enforce_if(less)
                fewer.append(less)
            cp.add_bool_or(fewer)
        cp.minimize(price)
        solver = cp_model.CpSolver()
        solver.parameters.max_deterministic_time = _WORK
        solver.parameters.num_workers = 1
        solver.parameters.random_seed = seed
        solver.parameters.catch_sigint_signal = False
        if solver.solve(cp) not in {cp_model.OPTIMAL, cp_model.FEASIBLE}:
            return None
        found = {kind: solver.value(courses) for kind, courses in enumerate(count)}
        return Counts(
            {kind: courses for kind, courses in found.items() if courses},
            {row: solver.value(lost) for row, lost in given_up.items()},
            solver.response_proto.deterministic_time,
        )

    def _stack(self, cp: cp_model.CpModel, count: list[cp_model.IntVar]) -> dict[int, cp_model.IntVar]:
        """Let the courses fill the stretch; give for each row what its courses lose to the rip."""
        question, stack = self.question, self.question.stack
        heights, number_of, given_up = {}, {}, {}
        for number, row in enumerate(stack.rows):
            if row.strip is not None:
                continue
            kinds = [kind for kind, at in enumerate(question.kinds) if at.row == number]
            most = sum(max(0, question.height_of(kind) - question.narrowest) * count[kind] for kind in kinds)
            given_up[number] = cp.new_int_var(0, question.up(stack.may_end - stack.low), "")
            cp.add(given_up[number] <= most)
            heights[number] = sum(question.height_of(kind) * count[kind] for kind in kinds) - given_up[number]
            number_of[number] = sum(count[kind] for kind in kinds)
        for band, edge in enumerate(stack.edges, start=1):
            rise = edge - stack.low
            rows = {number: stack.rows[number] for number in heights}
            cp.add(
                sum(heights[at] for at, row in rows.items() if row.last_band < band) <= question.down(rise)
            )
            cp.add(sum(heights[at] for at, row in rows.items() if row.first_band < band) >= question.up(rise))
            cp.add(
                sum(number_of[at] for at, row in rows.items() if row.first_band < band <= row.last_band) <= 1
            )
        if heights:
            must, may = question.up(stack.must_end - stack.low), question.down(stack.may_end - stack.low)
            cp.add(sum(heights.values()) >= must)
            cp.add(sum(heights.values()) <= max(may, must))
        return given_up


def _once(question: Question, kind: int) -> bool:
    row = question.row_of(kind)
    return row.first_band != row.last_band
