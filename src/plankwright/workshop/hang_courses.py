"""Where courses hang once they do: on what hangs below them, and where somebody measured their edges."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import ClassVar

from plankwright.errors import ExitCode, PlankwrightError
from plankwright.layout.regions import course_strip, extent_in_course
from plankwright.measure import Nm, write_length
from plankwright.model import (
    Course,
    Direction,
    Edge,
    HungCourse,
    Job,
    Layout,
    Piece,
    Standing,
    Surface,
    SurfaceLayout,
    part_of,
)
from plankwright.workshop.find_pieces import Found


class MeasureError(PlankwrightError, ValueError):
    """A measured edge that cannot be that of its course."""

    exit_code: ClassVar[int] = ExitCode.BAD_INPUT


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """Where the far edge of a course was measured: one of the two is given.

    Parameters
    ----------
    edge_nm
        From the start side of the box that encloses the surface. [nm]
    off_nm
        Or how much farther from the start side it is than the layout has it; negative when nearer. [nm]
    """

    edge_nm: Nm | None = None
    off_nm: Nm = 0


def hang_courses(
    job: Job, layout: Layout, standing: Standing, found: Sequence[Found], measured: Measured | None
) -> tuple[HungCourse, ...]:
    """Hang pieces.

    A course hangs on the one below, wherever that came out, and is as high as planned unless its far edge was
    measured. Where it was, the pieces have their far edges there.

    Parameters
    ----------
    job, layout, standing
        The job, the layout that it is worked by, and how far it has come.
    found
        The pieces, hung already or not.
    measured
        Where their course ends, when that was measured; they are all of one course then.

    Returns
    -------
    tuple of HungCourse
        The courses as they hang since, with all of their pieces that hang.

    Raises
    ------
    MeasureError
        If the measured edge is a whole course away from where it was planned.
    """
    hung = list(standing.hung)
    changed: dict[tuple[str, int], HungCourse] = {}
    for laid in layout.surfaces:
        surface = job.surface(laid.surface_id)
        for course in laid.courses:
            named = [one.piece for one in found if one.key[0] == laid.surface_id and one.course == course]
            if not named:
                continue
            before = _hanging(hung, laid.surface_id, course)
            base = _base(job, hung, laid, course)
            row = _hang(job, surface, course, named, before, base, measured)
            hung = [other for other in hung if other is not before] + [row]
            changed[laid.surface_id, course.number] = row
    return tuple(changed.values())


def _hanging(hung: Sequence[HungCourse], surface_id: str, course: Course) -> HungCourse | None:
    """Give a course of the layout as it hangs, if anything of it does."""
    labels = {piece.label for piece in course.pieces}
    return next(
        (
            row
            for row in hung
            if row.surface_id == surface_id and any(piece.label in labels for piece in row.course.pieces)
        ),
        None,
    )


def _base(job: Job, hung: Sequence[HungCourse], laid: SurfaceLayout, course: Course) -> Nm:
    """Give where a course begins: on the one below as that hangs, if they touch. [nm]"""
    below = next((lower for lower, upper in pairwise(laid.courses) if upper is course), None)
    row = None if below is None else _hanging(hung, laid.surface_id, below)
    if below is None or row is None or course.from_nm - below.to_nm > job.rules.gap_tolerance_nm:
        return course.from_nm
    return course.from_nm - below.to_nm + row.course.to_nm


def _hang(
    job: Job,
    surface: Surface,
    course: Course,
    pieces: Sequence[Piece],
    before: HungCourse | None,
    base: Nm,
    measured: Measured | None,
) -> HungCourse:
    low, high = base, base + course.height_nm
    if before is not None:
        low, high = before.course.from_nm, before.course.to_nm
    if measured is not None:
        high = measured.edge_nm if measured.edge_nm is not None else course.to_nm + measured.off_nm
        if abs(high - course.to_nm) >= course.height_nm or high <= low:
            at, planned = (write_length(place, job.tape) for place in (high, course.to_nm))
            raise MeasureError(
                f"Course {course.number} was to end at {planned}, and {at} is a whole course away: measure "
                "from the side where the first course hangs."
            )
    hanging = [] if before is None else list(before.course.pieces)
    labels = {piece.label for piece in hanging}
    for piece in pieces:
        if piece.label not in labels:
            _, _, near, far = extent_in_course(surface, piece.place)
            hanging.append(_moved(surface, piece, low + near - course.from_nm, low + far - course.from_nm))
    if measured is not None:
        hanging = [_placed(surface, piece, low, high) for piece in hanging]
    ordered = tuple(sorted(hanging, key=lambda piece: extent_in_course(surface, piece.place)[0]))
    return HungCourse(
        surface_id=surface.id,
        course=Course(number=course.number, from_nm=low, to_nm=high, pieces=ordered),
    )


def _placed(surface: Surface, piece: Piece, low: Nm, high: Nm) -> Piece:
    """Put a piece between the edges of its course: with its far edge at theirs, and none below them."""
    width = part_of(piece).width_nm
    from_nm = max(low, high - width)
    return _moved(surface, piece, from_nm, min(high, from_nm + width))


def _moved(surface: Surface, piece: Piece, from_nm: Nm, to_nm: Nm) -> Piece:
    """Give a piece between two distances from the start side, its nails moved along with it. [nm]"""
    _, _, near, _ = extent_in_course(surface, piece.place)
    strip, place, by = course_strip(surface, from_nm, to_nm), piece.place, from_nm - near
    if surface.start in {Edge.TOP, Edge.RIGHT}:
        by = -by
    if surface.courses_run is Direction.HORIZONTAL:
        place = replace(place, bottom=strip.bottom, top=strip.top)
        nails = tuple((x, y + by) for x, y in piece.nails)
    else:
        place = replace(place, left=strip.left, right=strip.right)
        nails = tuple((x + by, y) for x, y in piece.nails)
    return replace(piece, place=place, nails=nails)
