"""The plan of one surface under repair: what is to be filled, what may be touched, what counts as changed."""

import random
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from plankwright.layout.again.at_hand import AtHand
from plankwright.layout.butting import joints_of
from plankwright.layout.choose import Choice, Chooser, Prices
from plankwright.layout.ground import HAIR
from plankwright.layout.plan import Plan, PlannedCourse, PlannedPiece, Stick
from plankwright.layout.rows import Row
from plankwright.layout.solving import SECOND
from plankwright.layout.sticks import free_sticks
from plankwright.layout.strips import Strips
from plankwright.measure import INCH, Nm
from plankwright.model import Piece

PRICES = Prices(bare=50, joint=1000, wood=0, piece=1, new=5000, new_wood=1)
_CHANGE, _DROPPED, _CUT_IN_VAIN = 1000, 500, 1000
"""A piece that is not where one was costs as much as a joint in sight, one that is given up half of that, and
if it is cut already as much again; a square step of the grid that stays bare so much that a strip of a hand's
width is worth changing everything for."""

_WASTE_UNIT, _MOST_WASTE, _WHOLE_BOARD = 32 * INCH * INCH, 50, 20
"""Wood that nobody can use any more costs something for so much of it [nm²], and no more than the next; to
begin a board that could stay whole costs the last. Counted so coarsely, the best is soon found and proven."""

_MODEL_WORK, _LEAST_WORK = 3e-5, 0.005
"""Work for each piece or bare stretch in a model, and on a look at the least, as measured once. [s]"""

Key = tuple[Nm, Nm, Nm, int]
"""A piece in its place: where its course begins, or how high that is, from where to where it reaches along
it, and the place of its board in the tally."""


@dataclass(frozen=True, slots=True)
class Before:
    """What counts as unchanged.

    Parameters
    ----------
    in_place, by_height
        Pieces by where their course begins, and by how high that is, each with what it costs to give it up.
    boards
        Boards that are cut into.
    """

    in_place: Mapping[Key, int]
    by_height: Mapping[Key, int]
    boards: frozenset[int]

    def cost(self, plan: Plan) -> int:
        """Give what is changed in a plan, as it is charged."""
        now = {
            (course.low, piece.start, piece.end, piece.stick.board)
            for course in plan
            for piece in course.pieces
        }
        given_up = sum(cost for key, cost in self.in_place.items() if key not in now)
        return given_up + _CHANGE * sum(key not in self.in_place for key in now)

    def changed(self, plan: Plan) -> int:
        """Count the pieces of a plan that are not where one was."""
        return sum(
            (course.low, piece.start, piece.end, piece.stick.board) not in self.in_place
            for course in plan
            for piece in course.pieces
        )


def before_of(plan: Plan, at_hand: AtHand, sawn: Iterable[int]) -> Before:
    """Take a plan for what is there before.

    Parameters
    ----------
    plan
        What can stay.
    at_hand
        The wood, by which it is known which pieces are cut already.
    sawn
        The boards that were cut into.
    """
    cut = {(stick.board, stick.along_from, stick.across_from) for stick in at_hand.pieces}
    pieces = [(course, piece) for course in plan for piece in course.pieces]
    costs = [
        _DROPPED
        + _CUT_IN_VAIN * ((piece.stick.board, piece.stick.along_from, piece.stick.across_from) in cut)
        for _, piece in pieces
    ]
    return Before(
        {
            (course.low, piece.start, piece.end, piece.stick.board): cost
            for (course, piece), cost in zip(pieces, costs, strict=True)
        },
        {
            (course.height, piece.start, piece.end, piece.stick.board): cost
            for (course, piece), cost in zip(pieces, costs, strict=True)
        },
        frozenset({*sawn, *(piece.stick.board for _, piece in pieces)}),
    )


@dataclass(slots=True)
class Repair:
    """The plan of one surface under repair.

    Parameters
    ----------
    strips
        The surface.
    at_hand
        The wood that may be used.
    elsewhere
        Courses of other surfaces, whose wood is taken.
    grid
        Step of the model. [nm]
    chance
        Seeds the solver.
    plan
        The best so far.
    hung
        What hangs, by how it is planned.
    before
        What counts as unchanged.
    work
        How much may be done. [s]
    stopped
        Whether somebody wants no more of it.
    spent
        How much was done. [s]
    """

    strips: Strips
    at_hand: AtHand
    elsewhere: Plan
    grid: Nm
    chance: random.Random
    plan: Plan
    hung: dict[PlannedPiece, Piece]
    before: Before
    work: float
    stopped: Callable[[], bool]
    spent: float = 0.0

    @property
    def holes(self) -> list[int]:
        """Numbers of the courses in which something is bare."""
        return [number for number, course in enumerate(self.plan) if course.bare]

    @property
    def open(self) -> list[int]:
        """Numbers of the courses of which anything does not hang yet."""
        return [
            number
            for number, course in enumerate(self.plan)
            if course.bare or any(piece not in self.hung for piece in course.pieces)
        ]

    @property
    def over(self) -> bool:
        """Whether the work is done or somebody wants no more."""
        return self.spent >= self.work or self.stopped()

    @property
    def figure(self) -> tuple[int, int]:
        """How good the plan is: area bare, and the cost of changes and joints; the smaller the better."""
        return self._figure(self.plan)

    def _figure(self, plan: Plan) -> tuple[int, int]:
        return bare_area(plan), self.before.cost(plan) + PRICES.joint * self.joints(plan)

    @property
    def least(self) -> int:
        """What it will cost about at the least to fill every hole: a piece each, and the joints there are."""
        holes = sum(len(course.bare) for course in self.plan)
        return _CHANGE * holes + PRICES.joint * self.joints(self.plan)

    def joints(self, plan: Plan) -> int:
        """Count the joints of a plan that nothing hides."""
        return sum(not hidden for course in plan for _, hidden in joints_of(self.strips, course))

    def loose(self, chosen: Sequence[int]) -> frozenset[PlannedPiece]:
        """Give the pieces of some courses that do not hang."""
        return frozenset(
            piece for number in chosen for piece in self.plan[number].pieces if piece not in self.hung
        )

    def free(self, released: frozenset[PlannedPiece] = frozenset()) -> list[Stick]:
        """Give the wood that nothing takes but, it may be, some pieces."""
        kept = tuple(
            replace(course, pieces=tuple(piece for piece in course.pieces if piece not in released))
            for course in self.plan
        )
        loose = tuple(
            replace(course, pieces=tuple(piece for piece in course.pieces if piece in released))
            for course in self.plan
        )
        return free_sticks(self.at_hand.stock, (*kept, *self.elsewhere), self.strips.rules, loose)

    def solve(self, chooser: Chooser, work: float) -> Choice:
        """Have a question answered, and count the work."""
        choice = chooser.solve(work, self.chance.randrange(2**31), self.stopped)
        self.spent += _LEAST_WORK + SECOND * choice.work + _MODEL_WORK * chooser.size
        return choice

    def take(self, plan: Plan) -> bool:
        """Take another plan if it is better. Whether it leaves less bare."""
        bare, figure = bare_area(self.plan), self._figure(plan)
        if figure < self.figure:
            self.plan = plan
        return figure[0] < bare

    def terms(self, row: Row, start: Nm, end: Nm, stick: Stick) -> int | None:
        """Charge what is not where it was; pieces cut for one place alone fit there alone."""
        own = self.at_hand.only_at.get(stick)
        if own is not None:
            if row.strip is None or own[0] != self.strips.surface.id:
                return None
            there = start, end, row.strip[0]
            fits = all(abs(a - b) <= HAIR for a, b in zip(own[1:], there, strict=True))
            return -(_DROPPED + _CUT_IN_VAIN) if fits else None
        waste = self._waste(end - start, row.heights[0], stick)
        kept = self._kept(row, start, end, stick.board)
        if kept is not None:
            # To keep it is worth what it would cost to give it up.
            return waste - kept
        # A piece that is cut and would lie about otherwise is half a change.
        return waste + (_CHANGE // 2 if stick in self.at_hand.pieces else _CHANGE)

    def _kept(self, row: Row, start: Nm, end: Nm, board: int) -> int | None:
        """Give what it would cost to give up what was there of a board; nothing where nothing was."""
        if row.strip is not None:
            return self.before.in_place.get((row.strip[0], start, end, board))
        costs = (self.before.by_height.get((height, start, end, board)) for height in row.heights)
        return next((cost for cost in costs if cost is not None), None)

    def _waste(self, length: Nm, height: Nm, stick: Stick) -> int:
        """Say how much wood is of no use any more where a piece is cut from a stick, or of less."""
        if stick.endless:
            return 0
        rules = self.strips.rules
        beyond = stick.length - length
        if beyond >= rules.shortest_piece_nm + rules.crosscut_kerf_nm:
            beyond = 0
        beside = max(0, stick.width - height)
        if beside >= rules.narrowest_course_nm + rules.rip_kerf_nm:
            beside = 0
        whole = _WHOLE_BOARD * (stick.board not in self.before.boards)
        return whole + min(_MOST_WASTE, (beyond * stick.width + beside * length) // _WASTE_UNIT)


def bare_area(plan: Plan) -> int:
    """Give the area that a plan leaves bare. [nm²]"""
    return sum(course.bare_area for course in plan)


def sorted_plan(courses: Iterator[PlannedCourse]) -> Plan:
    """Give courses in order from the start side."""
    return tuple(sorted(courses, key=lambda course: course.low))
