"""How far boards move between the seasons of their room, once they hang."""

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import compress
from typing import NamedTuple

from plankwright.layout.regions import extent_in_course
from plankwright.measure import Nm
from plankwright.model import (
    NOTHING_DONE,
    Board,
    Course,
    EdgeTreatment,
    Job,
    Layout,
    Piece,
    Rectangle,
    Standing,
    Surface,
    SurfaceLayout,
    part_of,
)
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
        Of the piece in its course, or of the board at its wider end. [nm]
    least_nm, most_nm
        By the quietest and by the liveliest species that the wood may be. [nm]
    once_ready
        Whether it does so from the middle of the room's seasons, where it is to come first, and not from what
        it has now.
    """

    course: int | None
    board_id: str
    width_nm: Nm
    least_nm: float
    most_nm: float
    once_ready: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Tongues:
    """Long edges that interlock with a neighbour's.

    Parameters
    ----------
    reach_nm
        Of the shortest tongue or lap. [nm]
    opens_nm
        How far the seam between such edges that ends up widest opens in the driest season. [nm]
    open_nm
        How far that seam is open as it hangs. [nm]
    hangs
        Whether the piece that opens it hangs already.
    """

    reach_nm: Nm
    opens_nm: float
    open_nm: Nm = 0
    hangs: bool = False

    @property
    def covered(self) -> bool:
        """Whether enough of every tongue stays in its groove."""
        return self.reach_nm - self.open_nm - self.opens_nm >= TONGUE_SHARE.value * self.reach_nm


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
    pieces, hanging
        How many pieces it is told of, or boards without a layout, and how many of them hang already.
    driest_pct, dampest_pct
        Between which moistures they are before they move. [% of dry mass]
    opens, closes
        What gets narrower by most in the driest season, and what gets wider by most in the dampest.
    tongues, square
        Where edges interlock and where they do not, as hung; nothing where there are none such.
    all_swell_nm
        How much all courses together swell from what the boards have now, at most. [nm]
    ready_swell_nm
        The same from the middle of the room's seasons, for what does not hang yet. [nm]
    most_swell_nm
        The same if boards that have to wait come to the middle first and swell more from there. [nm]
    gap_nm
        Left open along every side. [nm]
    end_opens_nm, end_closes_nm
        How much shorter the longest run gets along the grain in the driest season and longer in the dampest,
        at most. [nm]
    """

    surface_id: str
    laid: bool
    pieces: int
    hanging: int
    driest_pct: float
    dampest_pct: float
    opens: Change
    closes: Change
    tongues: Tongues | None
    square: SquareEdges | None
    all_swell_nm: float
    ready_swell_nm: float
    most_swell_nm: float
    gap_nm: Nm
    end_opens_nm: float
    end_closes_nm: float

    @property
    def room(self) -> bool:
        """Whether half of all that swells finds room at either side."""
        return self.most_swell_nm / 2 <= self.gap_nm

    @property
    def room_once_ready(self) -> bool:
        """Whether it would with boards that have come to the middle of the room's seasons."""
        return self.ready_swell_nm / 2 <= self.gap_nm

    @property
    def swells_more_once_ready(self) -> bool:
        """Whether all courses swell more once boards that have to wait are ready."""
        return self.most_swell_nm > self.all_swell_nm

    @property
    def all_hangs(self) -> bool:
        """Whether nothing of it can be changed any more."""
        return self.hanging == self.pieces


def judge_movement(
    job: Job,
    boards: Sequence[Board],
    layout: Layout | None,
    standing: Standing = NOTHING_DONE,
    waiting: Collection[str] = (),
) -> tuple[Movement, ...]:
    """Judge how far the boards of each surface move where anything hangs.

    Parameters
    ----------
    job
        With readings in its tally and the air of its room, as far as they were measured.
    boards
        Those that may be hung.
    layout
        A layout that hangs some of them; without one each stands for a course of every surface.
    standing
        What of the layout hangs already: it moves from what its boards have.
    waiting
        Names of boards that have to come to the middle of the room's seasons before they are hung. Each is
        judged from there and from what it has now, whichever moves it more.

    Returns
    -------
    tuple of Movement
        Surface by surface.
    """
    strips = [
        (surface, tuple(_strips(job, surface, boards, layout, standing, waiting))) for surface in job.surfaces
    ]
    return tuple(_movement(job, surface, moving) for surface, moving in strips if moving)


class _Seam(NamedTuple):
    """A long edge that meets another course: whether it interlocks, and how far it is open there. [nm]"""

    interlocks: bool
    open_nm: Nm = 0


class _Strip(NamedTuple):
    """A width that swells and shrinks as one: a piece in its course, or a board where nothing is laid out."""

    course: int | None
    board: Board
    width_nm: Nm
    seams: tuple[_Seam, ...]
    hangs: bool
    waits: bool

    @property
    def interlocks(self) -> bool:
        return any(seam.interlocks for seam in self.seams)

    @property
    def open_nm(self) -> Nm:
        """How far its tongue or its groove is from its neighbour's as it hangs, at most. [nm]"""
        return max((seam.open_nm for seam in self.seams if seam.interlocks), default=0)


def _strips(
    job: Job,
    surface: Surface,
    boards: Sequence[Board],
    layout: Layout | None,
    standing: Standing,
    waiting: Collection[str],
) -> Iterator[_Strip]:
    """Give what moves on a surface: the pieces that a layout hangs there, or any board without one."""
    if layout is None:
        for board in boards:
            yield _Strip(
                course=None,
                board=board,
                width_nm=max(board.width_start_nm, board.width_end_nm),
                seams=(_Seam(board.profile.milled),),
                hangs=False,
                waits=board.id in waiting,
            )
        return
    for part in layout.surfaces:
        if part.surface_id == surface.id:
            yield from _hung_strips(job, surface, part, standing.hung_labels(surface.id), waiting)


def _hung_strips(
    job: Job, surface: Surface, part: SurfaceLayout, hung: Collection[str], waiting: Collection[str]
) -> Iterator[_Strip]:
    """Give the pieces of a surface; the outer edges of its first and its last course meet no other."""
    boards = {board.id: board for board in job.boards}
    rows = [course for course in part.courses if course.pieces]
    bare = job.rules.narrowest_course_nm
    for below, course, above in zip([None, *rows], rows, [*rows[1:], None], strict=False):
        for piece in course.pieces:
            board, hangs = boards[piece.board_id], piece.label in hung
            sides = [
                (treatment, neighbours)
                for treatment, neighbours in ((piece.near, below), (piece.far, above))
                if neighbours is not None
            ]
            yield _Strip(
                course=course.number,
                board=board,
                width_nm=part_of(piece).width_nm,
                seams=tuple(
                    _Seam(
                        interlocks=board.profile.milled and treatment in _INTERLOCKING,
                        open_nm=_open_nm(surface, piece, neighbours, bare),
                    )
                    for treatment, neighbours in sides
                ),
                hangs=hangs,
                waits=board.id in waiting and not hangs,
            )


def _open_nm(surface: Surface, piece: Piece, neighbours: Course, bare_nm: Nm) -> Nm:
    """Give how far a piece hangs from those of the next course; what takes another course is bare. [nm]"""
    left, right, low, high = extent_in_course(surface, piece.place)
    apart = [0]
    for other in neighbours.pieces:
        other_left, other_right, other_low, other_high = extent_in_course(surface, other.place)
        if min(right, other_right) > max(left, other_left):
            apart.append(max(low - other_high, other_low - high))
    return max(distance for distance in apart if distance < bare_nm)


_INTERLOCKING = frozenset({EdgeTreatment.AS_FOUND, EdgeTreatment.SPLINE})
"""What is done with a milled edge that still holds on to its neighbour; a spline stands in for a tongue."""


def _movement(job: Job, surface: Surface, strips: Sequence[_Strip]) -> Movement:
    dry, damp = service_pct(job)
    middle, starts = middle_pct(job), [moisture_of(strip.board, job) for strip in strips]
    narrower = [
        _largest(strip, start, middle, dry, sign=-1) for strip, start in zip(strips, starts, strict=True)
    ]
    wider = [_largest(strip, start, middle, damp) for strip, start in zip(strips, starts, strict=True)]
    outer = Rectangle(left=0, bottom=0, right=surface.width_nm, top=surface.height_nm)
    along_from, along_to, across_from, across_to = extent_in_course(surface, outer)
    longest, height = float(along_to - along_from), across_to - across_from
    now = [_change(strip, start, damp) for strip, start in zip(strips, starts, strict=True)]
    ready = [
        _change(strip, start if strip.hangs else middle, damp)
        for strip, start in zip(strips, starts, strict=True)
    ]
    swells = _together(now, height), _together(ready, height)
    waits = any(strip.waits for strip in strips)
    ends = [*starts, middle] if waits else starts
    square = [not all(seam.interlocks for seam in strip.seams) for strip in strips]
    return Movement(
        surface_id=surface.id,
        laid=strips[0].course is not None,
        pieces=len(strips),
        hanging=sum(strip.hangs for strip in strips),
        driest_pct=min(starts),
        dampest_pct=max(starts),
        opens=max(narrower, key=_most),
        closes=max(wider, key=_most),
        tongues=_tongues(strips, narrower),
        square=SquareEdges(
            opens_nm=max(map(_most, compress(narrower, square))),
            closes_nm=max(map(_most, compress(wider, square))),
        )
        if any(square)
        else None,
        all_swell_nm=swells[0],
        ready_swell_nm=swells[1],
        most_swell_nm=max(*swells, _together(wider, height)) if waits else swells[0],
        gap_nm=job.rules.expansion_gap_nm,
        end_opens_nm=max(0.0, -change_along(longest, max(ends), dry)),
        end_closes_nm=max(0.0, change_along(longest, min(ends), damp)),
    )


def _tongues(strips: Sequence[_Strip], narrower: Sequence[Change]) -> Tongues | None:
    """Give the shortest tongue with the seam that ends up widest; nothing where no edges interlock."""
    held = [(strip, change) for strip, change in zip(strips, narrower, strict=True) if strip.interlocks]
    if not held:
        return None
    strip, change = max(held, key=lambda one: one[0].open_nm + one[1].most_nm)
    return Tongues(
        reach_nm=min(strip.board.profile.reach_nm for strip, _ in held),
        opens_nm=change.most_nm,
        open_nm=strip.open_nm,
        hangs=strip.hangs,
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


def _largest(strip: _Strip, now_pct: float, middle_pct: float, to_pct: float, *, sign: int = 1) -> Change:
    """Give the change from what a strip has now, or from the middle if it waits and moves more from there."""
    now = _change(strip, now_pct, to_pct, sign=sign)
    if not strip.waits:
        return now
    ready = replace(_change(strip, middle_pct, to_pct, sign=sign), once_ready=True)
    return max(now, ready, key=_most)


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
