"""The butt joints of a layout: where they fall, on which framing, and which of them show."""

from dataclasses import dataclass
from itertools import pairwise

import shapely

from plankwright.layout.regions import as_polygon, course_strip, extent_in_course, may_region, must_region
from plankwright.measure import Nm
from plankwright.model import Course, Direction, Job, Piece, Point, Surface, SurfaceLayout

_DUST = 1000.0
"""A length below a micrometre is rounding of the geometry library, not wood. [nm]"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Joint:
    """Where two pieces of a course meet end to end.

    Parameters
    ----------
    course
        Number of the course.
    before, after
        Labels of the pieces left and right of it, or below and above.
    at_nm
        Where it is along the course. [nm]
    start, end
        The ends of its line where it is on the surface, in the frame of the surface. [nm]
    in_sight
        Whether no trim and no fixture will hide it.
    member
        On which of the crossing members it falls, counted from 1 in their order, if it falls on one.
    """

    course: int
    before: str
    after: str
    at_nm: Nm
    start: Point
    end: Point
    in_sight: bool
    member: int | None


def butt_joints(job: Job, surface_layout: SurfaceLayout) -> tuple[Joint, ...]:
    """Give every butt joint of a surface.

    Parameters
    ----------
    job
        For the surface and the rules.
    surface_layout
        The courses.

    Returns
    -------
    tuple[Joint, ...]
        Course by course, in order along each.
    """
    surface = job.surface(surface_layout.surface_id)
    finder = _Finder(job, surface)
    return tuple(
        joint
        for course in surface_layout.courses
        for before, after in pairwise(course.pieces)
        if (joint := finder.joint(course, before, after)) is not None
    )


class _Finder:
    def __init__(self, job: Job, surface: Surface) -> None:
        self.surface, self.rules = surface, job.rules
        self.may, self.must = may_region(surface, job.rules), must_region(surface, job.rules)
        self.zones = [as_polygon(zone.place) for zone in surface.concealed]

    def joint(self, course: Course, before: Piece, after: Piece) -> Joint | None:
        """Give the joint between two pieces, if their ends meet on the surface."""
        _, end_before, low_before, high_before = extent_in_course(self.surface, before.place)
        start_after, _, low_after, high_after = extent_in_course(self.surface, after.place)
        gap = abs(start_after - end_before)
        from_nm, to_nm = max(low_before, low_after), min(high_before, high_after)
        if gap > self.rules.gap_tolerance_nm or from_nm >= to_nm:
            return None
        at = (end_before + start_after) // 2
        start, end = self._line(at, from_nm, to_nm)
        line = shapely.LineString([start, end]).intersection(self.may)
        if line.length <= _DUST:
            return None
        left, bottom, right, top = map(round, line.bounds)
        shown = line.intersection(self.must)
        hidden = shown.length <= _DUST or any(shown.difference(zone).length <= _DUST for zone in self.zones)
        return Joint(
            course=course.number,
            before=before.label,
            after=after.label,
            at_nm=at,
            start=(left, bottom),
            end=(right, top),
            in_sight=not hidden,
            member=self._member(at),
        )

    def _line(self, at: Nm, from_nm: Nm, to_nm: Nm) -> tuple[Point, Point]:
        strip = course_strip(self.surface, from_nm, to_nm)
        if self.surface.courses_run is Direction.HORIZONTAL:
            return (at, strip.bottom), (at, strip.top)
        return (strip.left, at), (strip.right, at)

    def _member(self, at: Nm) -> int | None:
        for number, member in enumerate(self.surface.crossing_members, start=1):
            if abs(at - member.centre_nm) <= member.width_nm // 2:
                return number
        return None
