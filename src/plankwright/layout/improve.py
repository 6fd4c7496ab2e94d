"""Better and better: a stretch of courses around the worst part is laid out anew, again and again."""

import itertools
import random
from collections import defaultdict
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace

from plankwright.layout.butting import joints_of
from plankwright.layout.choose import Chooser
from plankwright.layout.courses import courses_from
from plankwright.layout.end_to_end import laid_end_to_end
from plankwright.layout.figure import Figure, figure, ranked
from plankwright.layout.first import extend
from plankwright.layout.packing import LengthPrices, Need, lost_besides, pack
from plankwright.layout.plan import Plan, PlannedCourse, PlannedPiece, Stick
from plankwright.layout.pricing import prices_for
from plankwright.layout.rows import Stack, fixed_stack, free_stack
from plankwright.layout.solving import SECOND
from plankwright.layout.sticks import free_sticks
from plankwright.layout.strips import Strips
from plankwright.layout.whole import Covering, Question, mended
from plankwright.measure import INCH, Nm
from plankwright.model import JointPolicy

_RIP_AT_MOST = INCH // 2
"""The first looks at a stretch leave out sticks that would lose more than this to the rip."""

_HEIGHTS_AT_MOST = 5
"""How many heights beside its own a look at a stretch may choose from."""

_LOOK_WORK = 0.5
"""Work on one look. [deterministic seconds of the solver]"""

_PATTERN_HEIGHTS = 40
"""Out of how many heights beside those in use the whole surface may be covered by patterns."""

_NUMBERS_TRIED = 4
"""So many numbers of courses at the most are looked at for each cover by patterns."""

_WHOLE_AT_MOST = 4000
"""A look at the whole surface is worth its time up to this many heights × kinds of course × sticks."""

_LOOK_AT_MOST = 2000
"""Any other look takes as many sticks, drawn by lot, as keep heights × sticks, over all kinds of course,
below this: with more, the question alone fills the memory, and no answer comes in time."""

_WIDE, _WIDE_SIZE = 0.6, 9
"""Share of the looks that are by patterns, and how many courses they take, or up to two more."""

_LEAST_SIZE, _MOST_SIZE = 2.0, 8.0
"""How many courses a look takes at least and at most. [courses]"""

_GROWN = 0.25
"""By how much looks grow after each that is settled. [courses]"""

_REGROWN, _SCATTERED = 0.05, 0.75
"""What a look does, by a draw from 0 to 1: below the first, on a slope, it draws everything above some course
anew; below the second it takes courses from anywhere, which keep their heights; else courses in a row, whose
heights are free."""

_SHAPES_TRIED = 20
"""How often heights are drawn until they end well."""

_THOROUGH = 0.5
"""Share of the looks that leave out no stick and allow two lanes."""

_LEAST_WORK = 0.005
"""What a look takes at the least: so a search ends even where every look is settled at once. [s]"""

_DRAW_WORK, _MODEL_WORK = 0.01, 3e-5
"""Seconds of a common machine to draw one course, and to write a piece or a bare stretch into a model."""


@dataclass(slots=True)
class Search:
    """A search under way on one surface.

    Parameters
    ----------
    strips, stock, faces
        The surface, the wood that it may use, and the face area of each board of the tally. [nm²]
    grid
        Step of the model. [nm]
    chance
        The only source of chance.
    plan
        The best so far.
    stopped
        Whether somebody wants no more of it.
    spent
        Work done, in seconds of a common machine. [s]
    prices
        What lengths of pieces turned out to be worth, if all were given.
    settled
        Where the courses begin that are never taken down, as what hangs already is not. [nm]
    """

    strips: Strips
    stock: Sequence[Stick]
    faces: Sequence[int]
    grid: Nm
    chance: random.Random
    plan: Plan
    stopped: Callable[[], bool] = lambda: False
    spent: float = 0.0
    settled: frozenset[Nm] = frozenset()
    prices: tuple[LengthPrices, ...] | None = None
    figure: Figure = field(init=False)
    _size: float = _LEAST_SIZE
    _covering: Covering | None = None

    def __post_init__(self) -> None:
        self.figure = figure(self.strips, self.stock, self.faces, self.plan)

    def take(self, plan: Plan | None) -> bool:
        """Keep a plan if it is better than the best so far."""
        if plan is None:
            return False
        found = figure(self.strips, self.stock, self.faces, plan)
        better = self._rank(found) < self._rank(self.figure)
        if self._rank(found) <= self._rank(self.figure):
            self.plan, self.figure = plan, found
        return better

    def _rank(self, found: Figure) -> Figure:
        return ranked(found, short=self._asking)

    @property
    def _asking(self) -> bool:
        """Whether boards are asked for."""
        return any(stick.endless for stick in self.stock)

    def begin_again(self) -> bool:
        """Draw another first layout. Whether it is better."""
        self.spent += _DRAW_WORK * max(1, len(self.plan))
        below = self.plan[: self._first_free()]
        sticks = free_sticks(self.stock, below, self.strips.rules)
        return self.take(extend(self.strips, sticks, below, self.chance))

    def whole(self, work: float) -> bool:
        """Look at the level part of the surface at once. Whether that made it better.

        Whether all of it can be covered is asked first, with every width for a height: a question of yes or
        no is often settled where the least that stays bare is far to seek.
        """
        if not self._level_part() or not self.stock:
            return False
        half = work / SECOND / 2
        every = self._free(self._level_part(), most=len(self.stock))
        if self._small(every) and self._look(
            self._level_part(), every, thorough=False, work=half, bare_allowed=False
        ):
            return True
        # What was no better may have been taken all the same, with another number of courses.
        some = self._free(self._level_part())
        return self._small(some) and self._look(self._level_part(), some, thorough=False, work=half)

    def by_patterns(self) -> bool | None:
        """Try once more to cover the whole surface by patterns.

        Returns
        -------
        bool or None
            Whether that is better; nothing when there is no use in trying.
        """
        covering = self._covered_by_patterns()
        if covering is None or covering.hopeless:
            return None
        return self._take_cover(covering, covering.whole)

    def nearly_by_patterns(self) -> bool:
        """Cover most of the surface by patterns, where all was tried in vain. Whether that is better."""
        return self._covering is not None and self._take_cover(self._covering, self._covering.nearly)

    def _covered_by_patterns(self) -> Covering | None:
        """Begin to cover the surface by patterns. Where the outline slopes courses keep their places."""
        stays = self._stays()
        sticks = free_sticks(self.stock, stays, self.strips.rules)
        if self._covering is None and sticks and len(stays) < len(self.plan):
            self._covering = Covering(
                Question(self.strips, sticks, self._every_course(), self.grid),
                tries=_NUMBERS_TRIED,
                chance=self.chance,
                over=self.stopped,
            )
            self.spent += self._covering.spent
        return self._covering

    def _take_cover(self, covering: Covering, cover: Callable[[], Plan | None]) -> bool:
        before = covering.spent
        plan = cover()
        self.spent += covering.spent - before
        return plan is not None and self.take((*self._stays(), *plan))

    def _stays(self) -> Plan:
        """Give the courses that are not laid out anew by patterns."""
        return self.plan[: self._first_free()]

    def _every_course(self) -> Stack:
        """Give the level part as courses whose heights are free, and those above it as they lie."""
        first, level = self._first_free(), self._level_part()
        beside, above = self.plan[:first], self.plan[first + len(level) :]
        if not level:
            return fixed_stack(self.strips, above, beside)
        rows = fixed_stack(self.strips, above, ()).rows if above else ()
        free = self._free(level, most=_PATTERN_HEIGHTS)
        return replace(free, rows=(*free.rows, *rows), beside=beside)

    def _level_part(self) -> tuple[int, ...]:
        """Give the courses from the first on as far as the surface is level."""
        first, last = self._first_free(), len(self.plan)
        while last > first and not self.strips.level_between(self.plan[first].low, self.plan[last - 1].high):
            last -= 1
        return tuple(range(first, last))

    def _first_free(self) -> int:
        """Give the number of the first course from which on none is settled."""
        return max(
            (number for number, course in enumerate(self.plan, start=1) if course.low in self.settled),
            default=0,
        )

    def _small(self, stack: Stack) -> bool:
        """Whether a stack is small enough to be looked at with all the wood at once."""
        heights = len({height for row in stack.rows for height in row.heights})
        return heights * len(stack.rows) * len(self.stock) <= _WHOLE_AT_MOST

    def repack(self, work: float) -> bool:
        """Choose the boards anew where no run has a place for a joint, so that every piece is given.

        That is cutting stock, for which patterns by column generation are far stronger than anything below.
        It may take so much work. [s]
        """
        if self.settled:
            return False
        rows = [(course, self.strips.runs(course.low, course.high)) for course in self.plan]
        runs = [(course, run) for course, runs in rows for run in runs if not run.barred]
        if any(run.joints for _, run in runs) and self.strips.rules.joints is not JointPolicy.NEVER:
            return False
        if any(joint.hidden for _, run in runs for joint in run.joints):
            return False
        sticks = [stick for stick in self.stock if stick.rippable]
        packed = pack(
            [Need(run.length, course.height, run.hides(run.start, run.end)) for course, run in runs],
            sticks,
            self.strips.rules,
            work=work,
            seed=self.chance.randrange(2**31),
            lost=lost_besides(sticks, self.faces),
            stopped=self.stopped,
        )
        self.spent += packed.spent
        self.prices = packed.prices
        chosen = dict(packed.chosen)
        pieces: dict[Nm, list[PlannedPiece]] = defaultdict(list)
        bare: dict[Nm, list[tuple[Nm, Nm]]] = defaultdict(list)
        for course, some in rows:
            bare[course.low] += [(run.start, run.end) for run in some if run.barred]
        for place, (course, run) in enumerate(runs):
            if place in chosen:
                pieces[course.low].append(PlannedPiece(chosen[place], run.start, run.end))
            else:
                bare[course.low].append((run.start, run.end))
        return self.take(
            tuple(
                PlannedCourse(course.low, course.high, tuple(pieces[course.low]), tuple(bare[course.low]))
                for course in self.plan
            )
        )

    def join(self, work: float) -> bool:
        """Lay boards end to end, where pieces may butt wherever they end. Whether that is better.

        It may take so much work. [s]
        """
        better = False
        if not self.settled:
            for found in laid_end_to_end(
                self.strips,
                self.stock,
                self.plan,
                self.grid,
                work=work,
                chance=self.chance,
                stopped=self.stopped,
            ):
                self.spent += found.spent
                better |= self.take(found.plan)
        return better

    def step(self) -> bool:
        """Lay out some courses anew. Whether that made the plan better."""
        draw = self.chance.random()
        if draw < _WIDE and not self._asking:
            return self._look_by_patterns(self._scattered(_WIDE_SIZE))
        draw = self.chance.random()
        if not self.strips.level and draw < _REGROWN:
            return self._regrow()
        if draw < _SCATTERED:
            chosen = self._scattered(self._size + 1)
            stack = fixed_stack(self.strips, [self.plan[place] for place in chosen], self._others(chosen))
            return self._look(chosen, stack, thorough=self.chance.random() < _THOROUGH, work=_LOOK_WORK)
        stretch = self._stretch()
        if self.strips.level_between(self.plan[stretch[0]].low, self.plan[stretch[-1]].high):
            chosen, stack = stretch, self._free(stretch)
        else:
            chosen = tuple(sorted({*stretch, *self._scattered(self._size + 1)}))
            stack = self._reshaped(stretch, chosen)
        return self._look(chosen, stack, thorough=self.chance.random() < _THOROUGH, work=_LOOK_WORK)

    def _look_by_patterns(self, chosen: Sequence[int]) -> bool:
        """Lay out many courses anew where they lie, with the wood that the others leave."""
        courses, others = tuple(self.plan[place] for place in chosen), self._others(chosen)
        sticks = free_sticks(self.stock, others, self.strips.rules, courses)
        self.spent += _LEAST_WORK
        if not sticks:
            return False
        stack = fixed_stack(self.strips, courses, others)
        covered = not any(course.bare for course in self.plan)
        seen = sum(not hidden for course in courses for _, hidden in joints_of(self.strips, course))
        if covered and not seen:
            return False
        found, spent = mended(
            Question(self.strips, sticks, stack, self.grid),
            self.chance,
            self.stopped,
            joints=seen - 1 if covered else None,
        )
        self.spent += spent
        return found is not None and self.take(
            tuple(sorted((*others, *found), key=lambda course: course.low))
        )

    def _free(self, chosen: Sequence[int], most: int = _HEIGHTS_AT_MOST) -> Stack:
        """Give courses in a row on a level part as a stack whose heights are free, out of so many at most."""
        courses, beside = tuple(self.plan[place] for place in chosen), self._others(chosen)
        sticks = free_sticks(self.stock, beside, self.strips.rules, courses)
        must_end, may_end = self._ends(chosen[-1])
        span = (courses[0].low, must_end, may_end)
        return free_stack(self.strips, self._heights(sticks, courses, most), span, beside)

    def _ends(self, last: int) -> tuple[Nm, Nm]:
        """Give the places between which a stretch must end that now ends with some course. [nm]"""
        if last == len(self.plan) - 1:
            return self.strips.must_end, self.strips.may_end
        return self.plan[last].high, self.plan[last].high

    def _fitting_size(self, *, settled: bool) -> float:
        """Look at more courses while looks are settled within their work, at fewer when they are not."""
        return min(self._size + _GROWN, _MOST_SIZE) if settled else max(self._size - 2 * _GROWN, _LEAST_SIZE)

    def _others(self, chosen: Sequence[int]) -> Plan:
        return tuple(course for place, course in enumerate(self.plan) if place not in chosen)

    def _look(
        self,
        chosen: Sequence[int],
        stack: Stack,
        *,
        work: float,
        thorough: bool,
        bare_allowed: bool | None = None,
    ) -> bool:
        """Solve a stack with the wood that the other courses leave.

        Unless told, something may stay bare where something is, and where courses that stay leave no choice.
        """
        courses, others = tuple(self.plan[place] for place in chosen), self._others(chosen)
        sticks = free_sticks(self.stock, others, self.strips.rules, courses)
        if bare_allowed is None:
            bare_allowed = stack.fixed or any(course.bare for course in courses)
            sticks = self._some(sticks, stack, courses)
        chooser = Chooser(
            self.strips,
            sticks,
            stack,
            prices=prices_for(self.strips, courses, self.grid, saving=self.figure[0] > 0 or self._asking),
            grid=self.grid,
            bare_allowed=bare_allowed,
            rip_at_most=None if thorough else _RIP_AT_MOST,
            lanes=2 if thorough else 1,
            now=courses,
        )
        choice = chooser.solve(work, self.chance.randrange(2**31), self.stopped)
        self.spent += _LEAST_WORK + SECOND * choice.work + _MODEL_WORK * chooser.size
        self._size = self._fitting_size(settled=choice.proven or choice.impossible)
        if choice.cuts is None:
            return False
        found = courses_from(self.strips, stack, choice.cuts, grid=self.grid, chance=self.chance)
        if found is None:
            return False
        return self.take(tuple(sorted((*others, *found), key=lambda course: course.low)))

    def _some(self, sticks: list[Stick], stack: Stack, courses: Plan) -> list[Stick]:
        """Give sticks that a look can take in: those of the boards in use, and as many others as may be."""
        most = _LOOK_AT_MOST // max(1, sum(len(row.heights) for row in stack.rows))
        if len(sticks) <= most:
            return sticks
        in_use = {piece.stick.board for course in courses for piece in course.pieces}
        others = [place for place, stick in enumerate(sticks) if stick.board not in in_use]
        taken = set(self.chance.sample(others, max(0, min(len(others), most - len(sticks) + len(others)))))
        return [stick for place, stick in enumerate(sticks) if stick.board in in_use or place in taken]

    def _regrow(self) -> bool:
        """Lay out everything above some course anew, for the slopes that a stretch cannot reshape."""
        free = self._first_free()
        keep = self.chance.randrange(free, len(self.plan)) if free < len(self.plan) else free
        below = self.plan[:keep]
        self.spent += _LEAST_WORK + _DRAW_WORK * (len(self.plan) - keep)
        return self.take(
            extend(self.strips, free_sticks(self.stock, below, self.strips.rules), below, self.chance)
        )

    def _badness(self) -> list[float]:
        """Weigh the courses: the worst are looked at most often, those that are settled never."""
        return [
            0.0
            if course.low in self.settled
            else 1.0
            + 20.0 * bool(course.bare)
            + 2.0 * sum(1 for _, hidden in joints_of(self.strips, course) if not hidden)
            for course in self.plan
        ]

    def _stretch(self) -> tuple[int, ...]:
        """Choose courses in a row."""
        size = min(round(self._size) + self.chance.randrange(3), len(self.plan))
        centre = self.chance.choices(range(len(self.plan)), self._badness())[0]
        low, high = self._between_settled(centre)
        size = min(size, high - low)
        first = min(max(low, centre - self.chance.randrange(size)), high - size)
        return tuple(range(first, first + size))

    def _between_settled(self, centre: int) -> tuple[int, int]:
        """Give where the courses round one begin and end, from and up to but without, with none settled."""
        stays = [number for number, course in enumerate(self.plan) if course.low in self.settled]
        low = max((number + 1 for number in stays if number < centre), default=0)
        return low, min((number for number in stays if number > centre), default=len(self.plan))

    def _scattered(self, least: float) -> tuple[int, ...]:
        """Choose so many courses anywhere, or up to two more, that may change boards with each other."""
        free = sum(course.low not in self.settled for course in self.plan)
        size = min(round(least) + self.chance.randrange(3), free)
        weights = self._badness()
        chosen: set[int] = set()
        while len(chosen) < size:
            chosen.add(self.chance.choices(range(len(self.plan)), weights)[0])
        return tuple(sorted(chosen))

    def _reshaped(self, stretch: Sequence[int], chosen: Sequence[int]) -> Stack:
        """Give a stretch with other heights, and other courses beside it that may change boards with it.

        On a slope what a course asks depends on its very place, so places are drawn, and only boards and
        joints are left to the solver.
        """
        beside = self._others(chosen)
        sticks = free_sticks(self.stock, beside, self.strips.rules)
        narrowest = self.strips.rules.narrowest_course_nm
        widths = sorted({stick.width for stick in sticks if stick.width >= narrowest})
        low, high = self.plan[stretch[0]].low, self._ends(stretch[-1])[1]
        courses = [self.plan[place] for place in chosen if place not in stretch]
        drawn = [self.plan[place] for place in stretch]
        for _ in range(_SHAPES_TRIED):
            edges = [low]
            while widths and high - edges[-1] > widths[-1]:
                edges += [edges[-1] + height for height in self.chance.choices(widths, widths)]
            if narrowest <= high - edges[-1]:
                edges.append(high)
                drawn = [PlannedCourse(bottom, top, (), ()) for bottom, top in itertools.pairwise(edges)]
                break
        return fixed_stack(self.strips, sorted((*courses, *drawn), key=lambda course: course.low), beside)

    def _heights(self, sticks: Sequence[Stick], stretch: Sequence[PlannedCourse], most: int) -> list[Nm]:
        """Give the heights that a stretch may choose from: those in use, and so many widths at hand."""
        narrowest = self.strips.rules.narrowest_course_nm
        used = {course.height for course in stretch}
        widths = sorted({stick.width for stick in sticks if stick.width >= narrowest} - used)
        if len(widths) > most and stretch:
            widths = self.chance.sample(widths, most)
        return sorted(used | set(widths))
