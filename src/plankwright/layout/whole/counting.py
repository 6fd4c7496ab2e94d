"""How many courses of each kind: whole numbers that fill the surface, and what covering with them costs.

That cost is convex in the numbers, and whenever it is worked out its slopes say what others would cost at the
least, as in Benders' decomposition (Benders, Numerische Mathematik 4, 1962, told from memory). Far from the
numbers in parts that are cheapest these cuts say little, so whole numbers are sought near those only.
"""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import permutations

from ortools.sat.python import cp_model

from plankwright.layout.solving import SECOND, solver_for
from plankwright.layout.whole.carrying import carry_over
from plankwright.layout.whole.programme import Programme
from plankwright.layout.whole.question import Question

_PARTS = 100
"""Numbers in parts are told to so many parts of a course."""

_REACH = 1.1
"""Numbers may be farther from the cheapest in parts than the nearest whole ones are by this factor."""

_DEAR = 0.05
"""Ways and cuts that would raise the price in parts by more than this share are not looked at."""

_GOOD = 1.15
"""Where the cheapest numbers within reach cost more than this times the cheapest in parts, others are sought
farther away."""

_WORK = 0.25
"""Work on one set of numbers. [deterministic seconds of the solver]"""

_WIDENED = 3
"""So often numbers are sought farther away before none are left."""

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
    price
        What covering costs with them, by the ways and cuts that are known.
    bare
        What is left bare then. [square steps]
    """

    courses: dict[int, int]
    given_up: dict[int, int]
    price: float
    bare: float


@dataclass(frozen=True, slots=True)
class _Slope:
    """Courses cost at least a constant and so much for each."""

    constant: float
    each: tuple[float, ...]


class Counting:
    """Numbers of courses, one set after another.

    Parameters
    ----------
    programme
        That counts its courses, as solved: its numbers in parts are gone by, and its ways and cuts.

    Attributes
    ----------
    bare
        What is left bare in parts by the ways and cuts known, and so by whole numbers. [square steps]
    """

    def __init__(self, programme: Programme) -> None:
        self.question = question = programme.question
        values = programme.values
        self._parts = [max(0.0, values[programme.counts[kind]]) for kind in range(len(question.kinds))]
        self._held = Programme(question, dict.fromkeys(range(len(question.kinds)), 0))
        carry_over(programme, self._held, _DEAR)
        self._slopes: list[_Slope] = []
        self._tried: list[dict[int, int]] = []
        self._reach: float | None = None
        self._work = 0.0
        price, self.bare = self._price(self._parts)
        self._good = _GOOD * price

    @property
    def spent(self) -> float:
        """Work done, in seconds of a common machine. [s]"""
        return self._held.spent + SECOND * self._work

    def sets(self, seeds: Iterator[int]) -> Iterator[Counts]:
        """Give sets of numbers: first the nearest, then those of the rest that may be cheapest.

        Parameters
        ----------
        seeds
            For the solver.

        Yields
        ------
        Counts
            Each once, until none are left near by.
        """
        widened = 0
        while widened < _WIDENED:
            model = _Model(self.question, self._parts, self._tried)
            if self._reach is None:
                model.nearest()
            else:
                model.cheapest(self._slopes, self._reach)
            found = model.solve(next(seeds))
            self._work += model.work
            if found is None:
                widened += 1
                self._reach = None if self._reach is None else _REACH * (self._reach + model.one_more)
                continue
            widened = 0
            if self._reach is None:
                self._reach = _REACH * model.distance_of(found.courses)
            elif found.price > self._good:
                self._reach *= _REACH
            self._tried.append(found.courses)
            price, bare = self._price([found.courses.get(kind, 0) for kind in range(len(self._parts))])
            yield Counts(found.courses, found.given_up, price, bare)

    def _price(self, numbers: Sequence[float]) -> tuple[float, float]:
        """Work out what so many courses of each kind cost and leave bare, and the slopes there."""
        for kind, column in self._held.counts.items():
            self._held.bound(column, numbers[kind], numbers[kind])
        price, slopes = self._held.solve(), self._held.slopes()
        each = tuple(slopes[self._held.counts[kind]] for kind in range(len(numbers)))
        constant = price - sum(slope * number for slope, number in zip(each, numbers, strict=True))
        if math.isfinite(constant):
            self._slopes.append(_Slope(constant, each))
        return price, self._held.bare_area()


@dataclass(frozen=True, slots=True)
class _Found:
    """Numbers of courses by kind, what their rows lose to the rip [steps], and what was least."""

    courses: dict[int, int]
    given_up: dict[int, int]
    price: float


class _Model:
    """Whole numbers of courses that fill the surface, for CP-SAT.

    Parameters
    ----------
    question
        Whose courses they are.
    parts
        Numbers in parts, by kind.
    tried
        Numbers that will not do.
    """

    def __init__(
        self,
        question: Question,
        parts: Sequence[float],
        tried: Sequence[dict[int, int]],
    ) -> None:
        self.question, self.cp = question, cp_model.CpModel()
        self.work = 0.0
        self._parts = [round(_PARTS * part) for part in parts]
        self._count = [
            self.cp.new_constant(1)
            if question.row_of(number).strip is not None
            else self.cp.new_int_var(0, 1 if _once(question, number) else question.most, "")
            for number in range(len(question.kinds))
        ]
        self._given_up = self._stack()
        for numbers in tried:
            self._forbid(numbers)

    @property
    def one_more(self) -> int:
        """How far numbers are apart that differ by the highest course."""
        return _PARTS * int(self.question.heights[-1])

    def distance_of(self, courses: dict[int, int]) -> int:
        """Give how far numbers are from those in parts: courses more or less, by their height."""
        return sum(
            self.question.height_of(kind) * abs(_PARTS * courses.get(kind, 0) - part)
            for kind, part in enumerate(self._parts)
        )

    def nearest(self) -> None:
        """Seek the numbers nearest to those in parts."""
        self.cp.minimize(self._distance())

    def cheapest(self, slopes: Sequence[_Slope], reach: float) -> None:
        """Seek the numbers within reach that cost least by all that is known."""
        self.cp.add(self._distance() <= round(reach))
        price = self.cp.new_int_var(0, _DEAREST, "")
        for slope in slopes:
            each = zip(slope.each, self._count, strict=True)
            self.cp.add(price >= round(slope.constant) + sum(round(cost) * count for cost, count in each))
        self.cp.minimize(price)

    def solve(self, seed: int) -> _Found | None:
        """Give the best numbers found, if any were."""
        solver = solver_for(_WORK, seed)
        status = solver.solve(self.cp)
        self.work += solver.response_proto.deterministic_time
        if status not in {cp_model.OPTIMAL, cp_model.FEASIBLE}:
            return None
        numbers = {kind: solver.value(count) for kind, count in enumerate(self._count)}
        return _Found(
            {kind: count for kind, count in numbers.items() if count},
            {row: solver.value(lost) for row, lost in self._given_up.items()},
            solver.objective_value,
        )

    def _distance(self) -> cp_model.LinearExprT:
        apart = []
        for kind, (count, part) in enumerate(zip(self._count, self._parts, strict=True)):
            if not part:
                apart.append(_PARTS * self.question.height_of(kind) * count)
                continue
            far = self.cp.new_int_var(0, _DEAREST, "")
            self.cp.add(far >= _PARTS * count - part)
            self.cp.add(far >= part - _PARTS * count)
            apart.append(self.question.height_of(kind) * far)
        return sum(apart)

    def _forbid(self, numbers: dict[int, int]) -> None:
        """Of some kind there are fewer: as many of all and more of another would not be cheaper."""
        fewer = []
        for kind, count in numbers.items():
            less = self.cp.new_bool_var("")
            self.cp.add(self._count[kind] <= count - 1).only_enforce_if(less)
            fewer.append(less)
        self.cp.add_bool_or(fewer)

    def _stack(self) -> dict[int, cp_model.IntVar]:
        """Let the courses fill the stretch; give for each row what its courses lose to the rip."""
        question, stack, cp = self.question, self.question.stack, self.cp
        heights, number_of, given_up = {}, {}, {}
        for number, row in enumerate(stack.rows):
            if row.strip is not None:
                continue
            kinds = [kind for kind, at in enumerate(question.kinds) if at.row == number]
            most = sum(
                max(0, question.height_of(kind) - question.narrowest) * self._count[kind] for kind in kinds
            )
            given_up[number] = cp.new_int_var(0, question.up(stack.may_end - stack.low), "")
            cp.add(given_up[number] <= most)
            heights[number] = sum(question.height_of(kind) * self._count[kind] for kind in kinds)
            heights[number] -= given_up[number]
            number_of[number] = sum(self._count[kind] for kind in kinds)
        # Where all courses stay there is nothing to stack, and edges between them limit nothing.
        for band, edge in enumerate(stack.edges if heights else (), start=1):
            rise = edge - stack.low
            rows = {number: stack.rows[number] for number in heights}
            cp.add(
                sum(heights[at] for at, row in rows.items() if row.last_band < band) <= question.down(rise)
            )
            cp.add(sum(heights[at] for at, row in rows.items() if row.first_band < band) >= question.up(rise))
            cp.add(
                sum(number_of[at] for at, row in rows.items() if row.first_band < band <= row.last_band) <= 1
            )
        self._leave_bands_between(number_of)
        if heights:
            must, may = question.up(stack.must_end - stack.low), question.down(stack.may_end - stack.low)
            cp.add(sum(heights.values()) >= must)
            cp.add(sum(heights.values()) <= max(may, must))
        return given_up

    def _leave_bands_between(self, number_of: Mapping[int, cp_model.LinearExpr | int]) -> None:
        """Where a course lies across a whole band and both its edges, there is no course within that band."""
        stack = self.question.stack
        most = 1 + (stack.may_end - stack.low) // self.question.rules.narrowest_course_nm
        for across, within in permutations(number_of, 2):
            wide, row = stack.rows[across], stack.rows[within]
            if wide.first_band < row.first_band == row.last_band < wide.last_band:
                self.cp.add(number_of[within] + most * number_of[across] <= most)


def _once(question: Question, kind: int) -> bool:
    row = question.row_of(kind)
    return row.first_band != row.last_band
