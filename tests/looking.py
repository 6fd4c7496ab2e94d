"""Plans to be looked at, in inches as a carpenter would say them: every piece is a board of its own."""

import random
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from typing import Any

from builders import board, job, nm
from choosing import plain
from plankwright.layout.capacity import capacity_of
from plankwright.layout.figure import Figure, figure
from plankwright.layout.look import Eye, Look, dress
from plankwright.layout.plan import Plan, PlannedCourse, PlannedPiece, Stick
from plankwright.layout.sticks import cut_from, whole_sticks
from plankwright.layout.strips import Strips
from plankwright.layout.writing import write_surface
from plankwright.model import Board, Bound, Job, Layout, Rules, Surface


@dataclass(frozen=True, slots=True)
class Dresser:
    """A job of one surface, and what it takes to look at plans of it and to dress them."""

    work: Job
    strips: Strips = field(init=False)
    stock: tuple[Stick, ...] = field(init=False)

    def __post_init__(self) -> None:
        capacity = capacity_of(self.work)
        strips = Strips(self.work.surfaces[0], self.work.rules, capacity)
        object.__setattr__(self, "strips", strips)
        stock = (
            stick
            for place, each in enumerate(self.work.boards)
            for stick in whole_sticks(each, place, self.work.rules, capacity)
        )
        object.__setattr__(self, "stock", tuple(stock))

    @property
    def faces(self) -> list[int]:
        """Face area of each board. [nm²]"""
        return [each.face_area_nm2 for each in self.work.boards]

    def look(self, plan: Plan) -> Look:
        """Look at a plan."""
        return Eye(self.strips, self.work.boards).looks_at(plan)

    def figure(self, plan: Plan) -> Figure:
        """Measure a plan as the search does."""
        return figure(self.strips, self.stock, self.faces, plan)

    def dressed(
        self, plan: Plan, seed: int = 0, *, work: float = 9.0, over: Callable[[], bool] = lambda: False
    ) -> Plan:
        """Dress a plan."""
        chance = random.Random(seed)  # noqa: S311 - chance, not secrecy
        return dress(self.work, self.strips, self.stock, self.faces, plan, chance, work=work, over=over)

    def layout(self, plan: Plan) -> Layout:
        """Write a plan down."""
        return Layout(
            job_name=self.work.name, surfaces=(write_surface(self.work, self.strips, plan, Bound()),)
        )


def pieced(
    surface: Surface,
    rows: Sequence[Sequence[tuple[Board, float]]],
    *,
    height: float = 6,
    rules: Rules | None = None,
    spare: Sequence[Board] = (),
) -> tuple[Dresser, Plan]:
    """Give courses of one height, each of its boards with the length of the piece that is cut from it.

    Boards to spare come last in the tally.
    """
    boards = [each for row in rows for each, _ in row]
    dresser = Dresser(job(surface, (*boards, *spare), rules or plain()))
    wood = {stick.board: stick for stick in dresser.stock}
    courses, number = [], 0
    for low, row in enumerate(rows):
        pieces, at = [], 0
        for _, length in row:
            stick = wood[number]
            part = cut_from(
                stick, stick.along_from, nm(length), stick.across_from, min(nm(height), stick.width)
            )
            pieces.append(PlannedPiece(part, at, at + nm(length)))
            at, number = at + nm(length), number + 1
        courses.append(PlannedCourse(nm(height) * low, nm(height) * (low + 1), tuple(pieces)))
    return dresser, tuple(courses)


def boards(prefix: str, count: int, length: float, width: float = 6, **more: Any) -> list[Board]:  # noqa: ANN401 - any field
    """Give boards that are alike."""
    return [board(f"{prefix}{number}", length, width, **more) for number in range(1, count + 1)]


def tones_of(dresser: Dresser, plan: Plan) -> list[list[str]]:
    """Give the tones of the pieces, course by course."""
    return [[dresser.work.boards[piece.stick.board].tone for piece in course.pieces] for course in plan]


def joints_of(plan: Plan) -> list[list[float]]:
    """Give where the pieces of each course begin but the first, in inches."""
    return [[piece.start / nm(1) for piece in course.pieces[1:]] for course in plan]
