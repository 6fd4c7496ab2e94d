"""How far boards move between the seasons of their room, once they hang."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import compress
from typing import NamedTuple

from plankwright.layout.regions import extent_in_course
from plankwright.measure import Nm
from plankwright.model import Board, EdgeTreatment, Job, Layout, Rectangle, Surface, SurfaceLayout
from plankwright.trade.moisture.facts import TONGUE_SHARE
from plankwright.trade.moisture.movement import change_along, width_change
from plankwright.trade.wood.species import Species, Wood
from plankwright.workshop.advice.woods import middle_pct, moisture_of, service_pct, wood_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """The width that changes most by a season.

    Parameters
    ----------
    course
        The number of its course; nothing without a layout.
    board_id
        The board that changes so.
    width_nm
        Of the course as hung, or of the board at its wider end. [nm]
    least_nm, most_nm
        By the quietest and by the liveliest species that the wood may be. [nm]
    """

    course: int | None
    board_id: str
    width_nm: Nm
    least_nm: float
    most_nm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Tongues:
    """Long edges that interlock with a neighbour's.

    Parameters
    ----------
    reach_nm
        Of the shortest tongue or lap. [nm]
    opens_nm
        How far seams between such edges open in the driest season, at most. [nm]
    """

    reach_nm: Nm
    opens_nm: float

    @property
    def covered(self) -> bool:
        """Whether enough of every tongue stays in its groove."""
        return self.reach_nm - self.opens_nm >= TONGUE_SHARE.value * self.reach_nm


@dataclass(frozen=True, slots=True, kw_only=True)
class SquareEdges:
    """Long edges that no tongue or lap holds together with a neighbour's.

    Parameters
    ----------
    opens_nm, closes_nm
        How far seams between such edges open in the driest season and close in the dampest, at most. [nm]
    """

    opens_nm: float
    closes_nm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Movement:
    """How far the boards of a surface move between the seasons, once they hang.

    Parameters
    ----------
    surface_id
        The surface.
    laid
        Whether this is told of the courses of a layout.
    opens, closes
        What gets narrower by most in the driest season, and what gets wider by most in the dampest.
    tongues, square
        Where edges interlock and where they do not, as hung; nothing where there are none such.
    all_swell_nm
        How much all courses together swell from what the boards have now, at most. [nm]
    ready_swell_nm
        The same from the middle of the room's seasons. [nm]
    gap_nm
        Left open along every side. [nm]
    end_opens_nm, end_closes_nm
        How much shorter the longest run gets along the grain in the driest season and longer in the dampest,
        at most. [nm]
    """

    surface_id: str
    laid: bool
    opens: Change
    closes: Change
    tongues: Tongues | None
    square: SquareEdges | None
    all_swell_nm: float
    ready_swell_nm: float
    gap_nm: Nm
    end_opens_nm: float
    end_closes_nm: float

    @property
    def room(self) -> bool:
        """Whether half of all that swells finds room at either side."""
        return self.all_swell_nm / 2 <= self.gap_nm

    @property
    def room_once_ready(self) -> bool:
        """Whether it would with boards that have come to the middle of the room's seasons."""
        return self.ready_swell_nm / 2 <= self.gap_nm


def judge_movement(job: Job, boards: Sequence[Board], layout: Layout | None) -> tuple[Movement, ...]:
    """Judge how far the boards of each surface move where anything hangs.

    Parameters
    ----------
    job
        With readings in its tally and the air of its room, as far as they were measured.
    boards
        Those that may be hung.
    layout
        A layout that hangs some of them; without one each stands for a course of every surface.

    Returns
    -------
    tuple of Movement
        Surface by surface.
    """
    strips = [(surface, tuple(_strips(job, surface, boards, layout))) for surface in job.surfaces]
    return tuple(_movement(job, surface, moving) for surface, moving in strips if moving)


class _Strip(NamedTuple):
    """A width that swells and shrinks as one: a piece in its course, or a board where nothing is laid out.

    `seams` tells of each long edge that meets another course whether it interlocks there.
    """

    course: int | None
    board: Board
    width_nm: Nm
    seams: tuple[bool, ...]


def _strips(job: Job, surface: Surface, boards: Sequence[Board], layout: Layout | None) -> Iterator[_Strip]:
    """Give what moves on a surface: the pieces that a layout hangs there, or any board without one."""
    if layout is None:
        for board in boards:
            width = max(board.width_start_nm, board.width_end_nm)
            yield _Strip(course=None, board=board, width_nm=width, seams=(board.profile.milled,))
        return
    by_id = {board.id: board for board in job.boards}
    for part in layout.surfaces:
        if part.surface_id == surface.id:
            yield from _hung_strips(part, by_id)


def _hung_strips(part: SurfaceLayout, boards: dict[str, Board]) -> Iterator[_Strip]:
    """Give the pieces of a surface; the outer edges of its first and its last course meet no other."""
    rows = [course for course in part.courses if course.pieces]
    for course in rows:
        for piece in course.pieces:
            board = boards[piece.board_id]
            treatments = (
                *((piece.near,) * (course is not rows[0])),
                *((piece.far,) * (course is not rows[-1])),
            )
            yield _Strip(
                course=course.number,
                board=board,
                width_nm=course.height_nm,
                seams=tuple(board.profile.milled and treatment in _INTERLOCKING for treatment in treatments),
            )


_INTERLOCKING = frozenset({EdgeTreatment.AS_FOUND, EdgeTreatment.SPLINE})
"""What is done with a milled edge that still holds on to its neighbour; a spline stands in for a tongue."""


def _movement(job: Job, surface: Surface, strips: Sequence[_Strip]) -> Movement:
    dry, damp = service_pct(job)
    narrower = [_change(strip, moisture_of(strip.board, job), dry, sign=-1) for strip in strips]
    wider = [_change(strip, moisture_of(strip.board, job), damp) for strip in strips]
    ready = [_change(strip, middle_pct(job), damp) for strip in strips]
    outer = Rectangle(left=0, bottom=0, right=surface.width_nm, top=surface.height_nm)
    along_from, along_to, across_from, across_to = extent_in_course(surface, outer)
    longest, height = float(along_to - along_from), across_to - across_from
    starts = [moisture_of(strip.board, job) for strip in strips]
    interlocked = [any(strip.seams) for strip in strips]
    square = [not all(strip.seams) for strip in strips]
    return Movement(
        surface_id=surface.id,
        laid=strips[0].course is not None,
        opens=max(narrower, key=_most),
        closes=max(wider, key=_most),
        tongues=Tongues(
            reach_nm=min(strip.board.profile.reach_nm for strip in compress(strips, interlocked)),
            opens_nm=max(map(_most, compress(narrower, interlocked))),
        )
        if any(interlocked)
        else None,
        square=SquareEdges(
            opens_nm=max(map(_most, compress(narrower, square))),
            closes_nm=max(map(_most, compress(wider, square))),
        )
        if any(square)
        else None,
        all_swell_nm=_together(wider, height),
        ready_swell_nm=_together(ready, height),
        gap_nm=job.rules.expansion_gap_nm,
        end_opens_nm=max(0.0, -change_along(longest, max(starts), dry)),
        end_closes_nm=max(0.0, change_along(longest, min(starts), damp)),
    )


def _most(change: Change) -> float:
    return change.most_nm


def _together(changes: Sequence[Change], height_nm: Nm) -> float:
    """Give how much all courses change, each by the piece that changes most.

    Without courses the whole height of the surface changes by the share of the liveliest board.
    """
    if changes[0].course is None:
        return max(change.most_nm / change.width_nm for change in changes) * height_nm
    courses: dict[int | None, float] = {}
    for change in changes:
        courses[change.course] = max(courses.get(change.course, 0.0), change.most_nm)
    return sum(courses.values())


def _change(strip: _Strip, from_pct: float, to_pct: float, *, sign: int = 1) -> Change:
    """Give how much wider a strip gets, or narrower with the other sign; nothing where it does not."""
    by = [
        max(0.0, sign * _of_species(strip.width_nm, one, from_pct, to_pct))
        for one in _ends(wood_of(strip.board))
    ]
    return Change(
        course=strip.course,
        board_id=strip.board.id,
        width_nm=strip.width_nm,
        least_nm=min(by),
        most_nm=max(by),
    )


def _ends(wood: Wood) -> tuple[Species, ...]:
    """Give the species that move least and most of those that a wood may be."""
    ordered = sorted(wood.species, key=lambda one: one.tangential)
    return ordered[0], ordered[-1]


def _of_species(width_nm: Nm, species: Species, from_pct: float, to_pct: float) -> float:
    return width_change(
        float(width_nm),
        species.tangential,
        from_pct,
        to_pct,
        total_pct=species.tangential_total_pct,
        saturation_pct=species.saturation_pct,
    )
