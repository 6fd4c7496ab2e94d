"""Which courses can exist: what a strip of the surface asks of the boards that cover it.

Coordinates here are those of the courses: along them from the left or the bottom, across them from the start
side.
"""

from dataclasses import dataclass, replace
from functools import lru_cache

import shapely
from shapely.geometry.base import BaseGeometry

from plankwright.layout.capacity import UNLIMITED, Capacity
from plankwright.layout.regions import (
    along_and_across,
    course_strip,
    extent_in_course,
    may_region,
    must_region,
    side_of_edge,
)
from plankwright.layout.runs import JointPlace, Run
from plankwright.layout.sites import Site, nail_room, sites_of
from plankwright.layout.slopes import highest_sawn, too_long_to_saw
from plankwright.measure import INCH, Nm
from plankwright.model import Direction, Edge, Rectangle, Rules, Surface

_SLIVER = 1000.0
"""Breadths below a micrometre are rounding of the geometry library, not wood. [nm]"""

_NAIL_ROOM = INCH / 4
"""Least height of wood that a nail is planned for. [nm]"""


@dataclass(frozen=True, slots=True)
class Span:
    """A rectangle in course coordinates. [nm]"""

    left: Nm
    right: Nm
    low: Nm
    high: Nm


class Strips:
    """The surface as the courses see it.

    Parameters
    ----------
    surface, rules
        The surface and the rules that it is covered by.
    capacity
        What the saws at hand can do.

    Attributes
    ----------
    may, must
        What boards may cover and what they must, in the frame of the surface.
    left, right
        How far the surface reaches along the courses. [nm]
    start
        Where the first course begins. [nm]
    must_end, may_end
        The last course ends between these. [nm]
    holes
        For each opening, where nothing may hang.
    must_holes
        For each opening, where nothing need hang.
    zones
        Concealed zones, reaching on without end where they touch the side of the surface.
    sites
        Where joints may fall, in order.
    sawn
        For each slope of the outline, the highest course whose ends along it the saws can cut. [nm]
    level
        Whether the outline is an upright rectangle, so that every strip is equally long.
    """

    def __init__(self, surface: Surface, rules: Rules, capacity: Capacity = UNLIMITED) -> None:
        self.surface, self.rules, self.capacity = surface, rules, capacity
        self.may, self.must = may_region(surface, rules), must_region(surface, rules)
        gap = rules.expansion_gap_nm
        self.holes = tuple(self._span(opening.place, gap) for opening in surface.openings)
        self.must_holes = tuple(
            self._span(opening.place, max(gap, opening.trim_nm)) for opening in surface.openings
        )
        self.zones = tuple(self._open_ended(self._span(zone.place, 0)) for zone in surface.concealed)
        whole = replace(surface, openings=())
        self._outline = may_region(whole, rules)
        may, must = self._bounds(self._outline), self._bounds(must_region(whole, rules))
        self.left, self.right = may.left, may.right
        self.level = self._outline.equals(shapely.envelope(self._outline))
        self.start = self._start(may, must)
        self.must_end, self.may_end = must.high, may.high
        self.sites = sites_of(surface, rules, self.left, self.right)
        self.sawn = () if capacity.crosscut is None else highest_sawn(surface, capacity.crosscut)
        self.runs = lru_cache(maxsize=100_000)(self._runs)

    @property
    def extent(self) -> Nm:
        """Size of the enclosing box across the courses. [nm]"""
        horizontal = self.surface.courses_run is Direction.HORIZONTAL
        return self.surface.height_nm if horizontal else self.surface.width_nm

    def solid_at(self, _at: Nm) -> bool:
        """Whether the backing at a place along the courses takes a nail anywhere."""
        return self.surface.framing.solid

    def takes_joint_at(self, at: Nm, low: Nm, high: Nm) -> bool:
        """Whether pieces of a strip may butt anywhere on solid backing, for all that bites into it.

        Parameters
        ----------
        at
            Where along the courses. [nm]
        low, high
            The strip. [nm]
        """
        return self.solid_at(at) and self._takes_joint(Site(at, ()), low, high)

    def level_between(self, low: Nm, high: Nm) -> bool:
        """Whether every strip between two places across the courses is equally long.

        Parameters
        ----------
        low, high
            From where to where. [nm]
        """
        if self.level:
            return True
        box = self._box(self.left, self.right, low, high)
        return bool(box.difference(self._outline).area <= _SLIVER * (self.right - self.left))

    def level_until(self, low: Nm) -> Nm:
        """Give the place up to which every strip from another on is equally long, or that itself. [nm]

        Parameters
        ----------
        low
            From where. [nm]
        """
        corners = shapely.get_coordinates(self._outline)
        places = {along_and_across(self.surface, (round(x), round(y)))[1] for x, y in corners}
        return max((at for at in places if at > low and self.level_between(low, at)), default=low)

    def rectangle(self, span: Span) -> Rectangle:
        """Give a rectangle in the frame of the surface."""
        low, high = span.low, span.high
        if self.surface.start in {Edge.TOP, Edge.RIGHT}:
            low, high = self.extent - high, self.extent - low
        if self.surface.courses_run is Direction.HORIZONTAL:
            return Rectangle(left=span.left, right=span.right, bottom=low, top=high)
        return Rectangle(left=low, right=high, bottom=span.left, top=span.right)

    def hidden(self, at: Nm, low: Nm, high: Nm) -> bool:
        """Whether one concealed zone hides a joint over the whole height of a strip.

        Parameters
        ----------
        at
            Where the joint is along the courses. [nm]
        low, high
            The strip. [nm]
        """
        return any(left <= at <= right for left, right in self._concealed(low, high))

    def _concealed(self, low: Nm, high: Nm) -> list[tuple[Nm, Nm]]:
        """Give the stretches of a strip that one concealed zone hides over its whole height. [nm]"""
        return [(zone.left, zone.right) for zone in self.zones if zone.low <= low and high <= zone.high]

    def _runs(self, low: Nm, high: Nm) -> tuple[Run, ...]:
        """Give the runs to cover of a strip, in order along the courses."""
        stretches = [(self.left, self.right)] if self.level else self._outline_stretches(low, high)
        for hole, must in zip(self.holes, self.must_holes, strict=True):
            if must.low <= low and high <= must.high:
                stretches = [
                    part
                    for left, right in stretches
                    for part in ((left, min(right, hole.left)), (max(left, hole.right), right))
                    if part[0] < part[1]
                ]
        return tuple(
            self._run(left, right, low, high)
            for left, right in stretches
            if self._asked(left, right, low, high)
        )

    def _asked(self, left: Nm, right: Nm, low: Nm, high: Nm) -> bool:
        """Whether anything of a stretch must be covered."""
        if self.level and not self.holes:
            return low < self.must_end
        part = self.must.intersection(self._box(left, right, low, high))
        return bool(part.area > _SLIVER * (right - left))

    def _run(self, left: Nm, right: Nm, low: Nm, high: Nm) -> Run:
        within = [site for site in self.sites if left < site.at < right]
        return Run(
            left,
            right,
            joints=tuple(
                JointPlace(site.at, self.hidden(site.at, low, high))
                for site in within
                if self._takes_joint(site, low, high)
            ),
            nails=tuple(site.at for site in within if self._holds(site, low, high)),
            concealed=tuple(self._concealed(low, high)),
            barred=self._barred(left, right, low, high),
        )

    def _takes_joint(self, site: Site, low: Nm, high: Nm) -> bool:
        """Whether pieces of a strip can butt at a site: no opening bites in there, and they can be nailed."""
        if any(hole.left < site.at < hole.right for hole in self._biting(low, high)):
            return False
        return self.solid_at(site.at) or self._nail_room(site, low, high) is not None

    def _holds(self, site: Site, low: Nm, high: Nm) -> bool:
        """Whether a piece of this strip has wood at a site that a nail may go through."""
        room = self._nail_room(site, low, high)
        if room is None or self.solid_at(site.at):
            return room is not None
        beside_hole = any(hole.left <= site.at <= hole.right for hole in self._biting(low, high))
        if not beside_hole and self.level_between(low, high):
            return True
        place = self.rectangle(Span(site.at, site.at + 1, *room))
        line = shapely.LineString([(place.left, place.bottom), (place.right, place.top)])
        return bool(line.intersection(self.may).length >= _NAIL_ROOM)

    def _nail_room(self, site: Site, low: Nm, high: Nm) -> tuple[Nm, Nm] | None:
        """Give where across a strip even the narrowest piece that may hang in it takes a nail. [nm]"""
        return nail_room(site.blocked, low, high - self.rules.width_tolerance_nm, self.rules)

    def _barred(self, left: Nm, right: Nm, low: Nm, high: Nm) -> tuple[tuple[Nm, Nm], ...]:
        if high - low < self.rules.narrowest_course_nm:
            return ((left, right),)
        if self.capacity.crosscut is None or self.level_between(low, high):
            return ()
        shape = self.may.intersection(self._box(left, right, low, high))
        return too_long_to_saw(self.surface, shape, self.rules.width_tolerance_nm, self.capacity.crosscut)

    def _biting(self, low: Nm, high: Nm) -> list[Span]:
        """Give the openings that reach into a strip."""
        return [hole for hole in self.holes if hole.low < high and low < hole.high]

    def _outline_stretches(self, low: Nm, high: Nm) -> list[tuple[Nm, Nm]]:
        """Give how far a strip reaches along the courses, openings left aside."""
        shape = self._outline.intersection(self._box(self.left, self.right, low, high))
        parts = [part for part in shapely.get_parts(shape) if part.area > _SLIVER * (self.right - self.left)]
        merged: list[tuple[Nm, Nm]] = []
        for left, right in sorted((span.left, span.right) for span in map(self._bounds, parts)):
            if merged and left <= merged[-1][1]:
                merged[-1] = (merged[-1][0], max(right, merged[-1][1]))
            else:
                merged.append((left, right))
        return merged

    def _box(self, left: Nm, right: Nm, low: Nm, high: Nm) -> BaseGeometry:
        place = self.rectangle(Span(left, right, low, high))
        return shapely.box(place.left, place.bottom, place.right, place.top)

    def _span(self, place: Rectangle, grown: Nm) -> Span:
        left, right, low, high = extent_in_course(self.surface, place)
        return Span(left - grown, right + grown, low - grown, high + grown)

    def _bounds(self, shape: BaseGeometry) -> Span:
        if shape.is_empty:
            return Span(0, 0, 0, 0)
        left, bottom, right, top = (round(bound) for bound in shape.bounds)
        return self._span(Rectangle(left=left, bottom=bottom, right=right, top=top), 0)

    def _open_ended(self, zone: Span) -> Span:
        """Let a zone that touches a side of the surface hide what lies under the trim there, too."""
        box = course_strip(self.surface, 0, self.extent)
        length = box.width_nm if self.surface.courses_run is Direction.HORIZONTAL else box.height_nm
        far = 10 * (length + self.extent)
        return Span(
            -far if zone.left <= 0 else zone.left,
            far if zone.right >= length else zone.right,
            -far if zone.low <= 0 else zone.low,
            far if zone.high >= self.extent else zone.high,
        )

    def _start(self, may: Span, must: Span) -> Nm:
        """Start level where trim allows it, no lower than needed: an uneven edge need not be scribed then."""
        corners = self.surface.outline
        near = (
            max(along_and_across(self.surface, corner)[1] for corner in edge)
            for edge in zip(corners, (*corners[1:], corners[0]), strict=True)
            if side_of_edge(*edge) is self.surface.start
        )
        level = max(near, default=0) + self.rules.expansion_gap_nm
        return min(max(level, may.low), max(may.low, must.low))
