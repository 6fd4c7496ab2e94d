"""Linked surfaces: courses that run round a corner meet there at the same heights.

Looked at is an upright line on each wall, as near the corner as everything that must be covered reaches.
Along it courses follow one another; where one ends and another begins, the other wall's must do so as well,
unless nothing hangs there. Where the wall itself ends, at an opening, a floor or a ceiling, its courses may
end as they can.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations, pairwise

from shapely.geometry import LineString
from shapely.geometry.base import BaseGeometry

from plankwright.check.case import Case, SurfaceCase
from plankwright.check.finding import Finding, FindingCode, found
from plankwright.check.shapes import line_in
from plankwright.check.slack import SLACK, differs, exceeds
from plankwright.check.wording import tell
from plankwright.measure import METRE, Nm
from plankwright.model import Course, Edge, walls_of

_FAR: Nm = 10_000 * METRE
"""Beyond any wall. [nm]"""


@dataclass(frozen=True, slots=True)
class _Stretch:
    """From where to where a course reaches, above the level that linked walls are raised from. [nm]"""

    course: Course
    low: float
    high: float

    def holds(self, height: float, tolerance: Nm) -> bool:
        """Whether a height lies inside it and nearer to neither of its ends than a tolerance."""
        return exceeds(height - self.low, tolerance) and exceeds(self.high - height, tolerance)


def check_corners(case: Case) -> Iterator[Finding]:
    """Find courses whose edges do not meet those of the next wall at the corner.

    Where courses hang at unlike heights already nothing can make those beyond meet, and nothing is asked.
    """
    by_id = {surface.surface.id: surface for surface in case.surfaces}
    for link in case.job.linked:
        walls = [by_id[name] for name in walls_of(link) if name in by_id]
        if any(_hang_apart(one, other) for one, other in combinations(walls, 2)):
            continue
        for left, right in pairwise(link):
            if left in by_id and right in by_id:
                yield from _apart(by_id[left], Edge.RIGHT, by_id[right], Edge.LEFT)
                yield from _apart(by_id[right], Edge.LEFT, by_id[left], Edge.RIGHT)


def _apart(one: SurfaceCase, side: Edge, other: SurfaceCase, other_side: Edge) -> Iterator[Finding]:
    """Find the courses of one wall that end inside one of another at the corner between them."""
    tolerance = one.rules.gap_tolerance_nm
    line = _line(one, side)
    asked = list(_parts(line, one.must_cover, one))
    beyond = list(_stretches(other, _line(other, other_side)))
    seen: list[float] = []
    for stretch in _stretches(one, line):
        for at in (stretch.low, stretch.high):
            goes_on = any(
                exceeds(at - low, tolerance) and exceeds(high - at, tolerance) for low, high in asked
            )
            if not goes_on or any(abs(at - other_at) <= tolerance + SLACK for other_at in seen):
                continue
            met = next((each for each in beyond if each.holds(at, tolerance)), None)
            if met is None:
                continue
            seen.append(at)
            off = min(at - met.low, met.high - at)
            by, allowed = tell(one.job.tape, off, tolerance)
            message = (
                f"At the corner it ends {by} off the nearest edge of course {met.course.number} of "
                f"{other.surface.id}; courses that run round may be {allowed} off."
            )
            place = one.surface.id, f"course {stretch.course.number}"
            yield found(FindingCode.CORNER, place, message, measured=off, allowed=tolerance)


def _line(case: SurfaceCase, side: Edge) -> LineString:
    """Give the upright line beside a corner that everything crosses which must be covered there."""
    trim = case.surface.trim
    hidden = trim.right if side is Edge.RIGHT else trim.left
    inwards = max(case.rules.expansion_gap_nm, hidden) + case.rules.gap_tolerance_nm + 2 * SLACK
    at = case.surface.width_nm - inwards if side is Edge.RIGHT else inwards
    return LineString(((at, -_FAR), (at, _FAR)))


def _stretches(case: SurfaceCase, line: LineString) -> Iterator[_Stretch]:
    """Give how far courses reach along a line: pieces may be a little narrower than their course."""
    for hung in case.hung:
        bottom, top = _edges(case, hung.course)
        place, raised = hung.piece.place, case.surface.raised_nm
        for low, high in _parts(line, hung.within, case):
            yield _Stretch(
                hung.course,
                low if differs(low, place.bottom + raised) else bottom,
                high if differs(high, place.top + raised) else top,
            )


def _edges(case: SurfaceCase, course: Course) -> tuple[float, float]:
    """Give the lower and the upper edge of a course above the common level. [nm]"""
    far_side, raised = case.frame.far_side_nm, case.surface.raised_nm
    edges = (at if far_side is None else far_side - at for at in (course.from_nm, course.to_nm))
    low, high = sorted(edges)
    return low + raised, high + raised


def _parts(line: LineString, area: BaseGeometry, case: SurfaceCase) -> Iterator[tuple[float, float]]:
    """Give from where to where a line lies in an area, above the common level. [nm]"""
    raised = case.surface.raised_nm
    crossed = line_in(line, area)
    for part in getattr(crossed, "geoms", (crossed,)):
        if part.length > SLACK:
            _, low, _, high = part.bounds
            yield low + raised, high + raised


def _hang_apart(one: SurfaceCase, other: SurfaceCase) -> bool:
    """Whether courses of two walls hang already at heights that do not go together."""
    tolerance = one.rules.gap_tolerance_nm
    ones, others = list(_begun(one)), list(_begun(other))
    return any(
        each.holds(at, tolerance)
        for some, rest in ((ones, others), (others, ones))
        for each in some
        for beside in rest
        for at in (beside.low, beside.high)
    )


def _begun(case: SurfaceCase) -> Iterator[_Stretch]:
    """Give the courses that hang, or of which something does."""
    return (_Stretch(course, *_edges(case, course)) for course in case.layout.courses if case.begun(course))
