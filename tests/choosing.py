"""Stretches of courses put to the solver one question at a time, in inches as a carpenter would say them.

`PLAIN` rules lose nothing to saws, straightening or trimming and ask as little as can be, so that a board of
96 by 6 is just that, and a test adds the one rule that it is about.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

from builders import nm, studs, wall
from plankwright.layout.capacity import UNLIMITED, Capacity
from plankwright.layout.choose import Choice, Chooser, Prices
from plankwright.layout.plan import Plan, PlannedCourse, Stick
from plankwright.layout.rows import Stack, fixed_stack, free_stack
from plankwright.layout.sticks import whole_sticks
from plankwright.layout.strips import Strips
from plankwright.model import Board, JointPolicy, Rules, Surface

PLAIN = Rules(
    crosscut_kerf_nm=0,
    rip_kerf_nm=0,
    straight_edge_loss_nm=0,
    end_trim_nm=0,
    width_tolerance_nm=0,
    thickness_tolerance_nm=0,
    joints=JointPolicy.COUNT,
    stagger_nm=0,
    bearing_nm=0,
    shortest_piece_nm=nm(1),
    narrowest_course_nm=nm(1),
    expansion_gap_nm=0,
    nailing_points=1,
    nail_edge_nm=0,
    nail_end_nm=0,
    nail_clearance_nm=0,
)

WALL = wall(96, 12, framing=studs(0.75, 24, 48, 72, 95.25))
"""Two courses of six inches, or as one likes, on five studs."""

_PRICES = Prices(bare=1000, joint=1_000_000, wood=1, piece=1)
_ENOUGH_WORK = 5.0


def plain(**changes: Any) -> Rules:  # noqa: ANN401 - any field of the rules
    """Give rules that ask for little but what is named."""
    return replace(PLAIN, **changes)


def sticks_of(boards: Sequence[Board], rules: Rules, capacity: Capacity = UNLIMITED) -> list[Stick]:
    """Give what boards can give."""
    return [
        stick for place, board in enumerate(boards) for stick in whole_sticks(board, place, rules, capacity)
    ]


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """Courses to be covered with boards.

    Parameters
    ----------
    boards
        The pile.
    rules, surface
        What holds, and what is covered.
    courses
        The edges (low, high) of courses that keep their places. [in]
    heights
        When given, there are any number of courses of these heights instead. [in]
    span
        Those begin at the first of these, and end between the others. [in]
    beside
        Courses that stay as they are.
    grid
        Step of lengths. [in]
    capacity
        What the saws can do.
    endless
        Boards beside the pile, of which there are as many as are asked for.
    more
        For the chooser.
    """

    boards: Sequence[Board]
    rules: Rules = PLAIN
    surface: Surface = WALL
    courses: Sequence[tuple[float, float]] = ((0, 6),)
    heights: Sequence[float] = ()
    span: tuple[float, float, float] = (0, 12, 12)
    beside: Plan = ()
    grid: float = 1 / 32
    capacity: Capacity = UNLIMITED
    endless: Sequence[Board] = ()
    more: dict[str, Any] | None = None

    @property
    def strips(self) -> Strips:
        """The surface as the courses see it."""
        return Strips(self.surface, self.rules, self.capacity)

    @property
    def stack(self) -> Stack:
        """What is to cover."""
        if self.heights:
            low, must, may = (nm(place) for place in self.span)
            return free_stack(
                self.strips, [nm(height) for height in self.heights], (low, must, may), self.beside
            )
        empty = [PlannedCourse(nm(low), nm(high), ()) for low, high in self.courses]
        return fixed_stack(self.strips, empty, self.beside)

    def prices(self, **changes: int) -> Prices:
        """Give what each measure costs: bare area before joints, those before wood, that before pieces."""
        return replace(_PRICES, **changes)

    def chooser(self) -> Chooser:
        """Write the model."""
        given: dict[str, Any] = {"prices": _PRICES, "grid": nm(self.grid), "bare_allowed": False}
        sticks = [
            replace(stick, endless=stick.board >= len(self.boards))
            for stick in sticks_of([*self.boards, *self.endless], self.rules, self.capacity)
        ]
        return Chooser(self.strips, sticks, self.stack, **(given | (self.more or {})))

    def answer(self) -> Choice:
        """Solve it to the end."""
        choice = self.chooser().solve(_ENOUGH_WORK, 0)
        assert choice.proven or choice.impossible
        return choice


def can_cover(boards: Sequence[Board], rules: Rules = PLAIN, **more: Any) -> bool:  # noqa: ANN401 - see Question
    """Say whether boards cover courses with nothing bare."""
    return Question(boards=boards, rules=rules, **more).answer().cuts is not None


def pieces_of(choice: Choice) -> list[tuple[int, float, float]]:
    """Give the pieces chosen: the place of its board in the tally, and from where to where it hangs. [in]"""
    assert choice.cuts is not None
    return sorted(
        (piece.stick.board, piece.start / nm(1), piece.end / nm(1))
        for cut in choice.cuts
        for piece in cut.pieces
    )
