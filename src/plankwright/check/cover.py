"""Rule 1: every point of the surface outside openings is covered once."""

from collections.abc import Iterator
from itertools import combinations

from shapely.geometry import Polygon
from shapely.geometry.base import BaseGeometry

from plankwright.check.case import SurfaceCase
from plankwright.check.finding import Finding, FindingCode, found
from plankwright.check.frame import box_of
from plankwright.check.shapes import common, joined, less, polygons
from plankwright.check.slack import SLACK, exceeds
from plankwright.check.wording import tell
from plankwright.measure import MILLIMETRE, Nm, TapeStyle, write_area, write_length

WIDTH_READING: Nm = MILLIMETRE // 20
"""How closely the width of a gap is read for its message. [nm]"""


def check_gaps(case: SurfaceCase) -> Iterator[Finding]:
    """Find gaps wider than the tolerance in what must be covered, unless they are declared bare.

    A gap is as wide as the largest disc that fits in it.
    """
    tolerance = case.rules.gap_tolerance_nm
    declared = (box_of(place) for place in case.layout.bare)
    for gap in polygons(less(case.uncovered, *declared)):
        if not _takes_disc(gap, tolerance + SLACK) or _cannot_be_helped(case, gap):
            continue
        width = _width(gap)
        wide, allowed = tell(case.job.tape, width, tolerance)
        message = f"A gap {wide} wide is neither covered nor declared bare; {allowed} may stay open."
        where = _place(gap, case.job.tape)
        yield found(FindingCode.GAP, (case.surface.id, where), message, measured=width, allowed=tolerance)


def check_overlaps(case: SurfaceCase) -> Iterator[Finding]:
    """Find pairs of blanks that lie on one another inside what may be covered."""
    for one, other in combinations(case.hung, 2):
        across = min(one.v_to, other.v_to) - max(one.v_from, other.v_from)
        if not exceeds(across, 0) or (one.hangs and other.hangs):
            continue  # The common case, as most pieces hang in different courses.
        along = min(one.u_to, other.u_to) - max(one.u_from, other.u_from)
        if exceeds(along, 0) and polygons(common(one.within, other.within)):
            overlap = min(along, across)
            (by,) = tell(case.job.tape, overlap)
            message = f"It lies {by} over piece {other.piece.label} of course {other.course.number}."
            yield found(FindingCode.OVERLAP, one.place, message, measured=overlap, allowed=0)


def check_outside(case: SurfaceCase) -> Iterator[Finding]:
    """Find pieces that lie wholly outside what may be covered."""
    for hung in case.judged:
        if not polygons(hung.within):
            message = "It lies wholly outside the surface or in an opening: take it out."
            yield found(FindingCode.OUTSIDE, hung.place, message)


def check_blank_sizes(case: SurfaceCase) -> Iterator[Finding]:
    """Find blanks that are larger than the smallest upright rectangle around what hangs.

    Along the course each piece is held to its own shape. Across it the course is held to all its pieces
    together, since they share one width. Less than the gap tolerance wastes nothing that anybody could see.
    """
    for row in case.rows:
        hanging = [hung for hung in row if polygons(hung.within)]
        for hung in (hung for hung in hanging if not hung.hangs):
            needed = case.frame.extent(*hung.within.bounds)
            spare = max(needed.u_from - hung.u_from, hung.u_to - needed.u_to)
            yield from _too_large(case, hung.place, "longer", spare)
        if hanging and not any(hung.hangs for hung in hanging):
            course = case.frame.extent(*joined(hung.within for hung in hanging).bounds)
            low, high = min(hung.v_from for hung in hanging), max(hung.v_to for hung in hanging)
            spare = max(course.v_from - low, high - course.v_to)
            yield from _too_large(case, (case.surface.id, f"course {row[0].course.number}"), "wider", spare)


def _too_large(case: SurfaceCase, place: tuple[str, str], more: str, spare: float) -> Iterator[Finding]:
    if exceeds(spare, case.rules.gap_tolerance_nm):
        (by,) = tell(case.job.tape, spare)
        message = f"It is cut {by} {more} than what hangs: the rest is wasted."
        yield found(FindingCode.BLANK_TOO_LARGE, place, message, measured=spare, allowed=0)


def check_declared_bare(case: SurfaceCase) -> Iterator[Finding]:
    """Note what is declared bare, and warn of what is declared bare although nothing is missing there."""
    for place in case.layout.bare:
        bare = polygons(common(case.uncovered, box_of(place)))
        where = _place(box_of(place), case.job.tape)
        if bare:
            area = sum(part.area for part in bare)
            message = f"{write_area(round(area), case.job.tape)} are left bare for want of boards."
            yield found(FindingCode.LEFT_BARE, (case.surface.id, where), message, measured=area)
        else:
            message = "This is declared bare, but nothing that must be covered is bare there."
            yield found(FindingCode.BARE_BUT_COVERED, (case.surface.id, where), message)


def _cannot_be_helped(case: SurfaceCase, gap: Polygon) -> bool:
    """Whether a gap lies between pieces that hang already, and is too narrow for any other."""
    around = gap.buffer(2 * SLACK)
    beside = [hung for hung in case.hung if hung.within.intersects(around)]
    return (
        bool(beside)
        and all(hung.hangs for hung in beside)
        and not _takes_disc(gap, case.rules.narrowest_course_nm)
    )


def _takes_disc(shape: BaseGeometry, diameter: float) -> bool:
    """Whether a disc fits in a shape: whether anything is left once half its width is taken off all round."""
    return not shape.buffer(-diameter / 2).is_empty


def _width(gap: Polygon) -> float:
    """Read the width of a gap off by halving, to the next `WIDTH_READING` below. [nm]"""
    left, bottom, right, top = gap.bounds
    fits, too_wide = 0.0, min(right - left, top - bottom) + WIDTH_READING
    while too_wide - fits > WIDTH_READING:
        middle = (fits + too_wide) / 2
        fits, too_wide = (middle, too_wide) if _takes_disc(gap, middle) else (fits, middle)
    return fits


def _place(shape: BaseGeometry, tape: TapeStyle) -> str:
    left, bottom, _, _ = shape.bounds
    return f"{write_length(round(left), tape)} from the left, {write_length(round(bottom), tape)} up"
