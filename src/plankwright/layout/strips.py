"""Which courses can exist: what a strip of the surface asks of the boards that cover it."""

from dataclasses import dataclass
from functools import lru_cache

import shapely
from shapely.geometry.base import BaseGeometry

from plankwright.layout.regions import course_strip, may_region, must_region
from plankwright.measure import INCH, Nm
from plankwright.model import Direction, Edge, Rectangle, Rules, Surface

_SOLID_SITE_SPACING: Nm = 4 * INCH
"""On solid backing a joint may fall anywhere; the search looks at places this far apart."""

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


@dataclass(frozen=True, slots=True)
class Site:
    """A place along the courses where two pieces may butt: a framing member, or any place on solid backing.

    Parameters
    ----------
    at
        Where the joint goes. [nm]
    blocked
        Stretches (low, high) across the courses where no nail may go into it. [nm]
    """

    at: Nm
    blocked: tuple[tuple[Nm, Nm], ...]


@dataclass(frozen=True, slots=True)
class JointPlace:
    """A place for a joint within one run."""

    at: Nm
    hidden: bool


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of a course between surface edges and openings, and where joints may fall in it.

    Parameters
    ----------
    start, end
        Its long points. [nm]
    joints
        In order along the run.
    nails
        Where a piece over it can be nailed: framing that is clear of keep-outs and covered high enough. [nm]
    hidden
        Whether one concealed zone hides it all.
    """

    start: Nm
    end: Nm
    joints: tuple[JointPlace, ...]
    nails: tuple[Nm, ...]
    hidden: bool

    @property
    def length(self) -> Nm:
        """[nm]."""
        return self.end - self.start


class Strips:
    """The surface as the courses see it.

    Parameters
    ----------
    surface, rules
        The surface and the rules that it is covered by.

    Attributes
    ----------
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
    level
        Whether the outline is an upright rectangle, so that every strip is equally long.
    """

    def __init__(self, surface: Surface, rules: Rules) -> None:
        self.surface, self.rules = surface, rules
        self.may, self.must = may_region(surface, rules), must_region(surface, rules)
        gap = rules.expansion_gap_nm
        self.holes = tuple(self._span(opening.place, gap) for opening in surface.openings)
        self.must_holes = tuple(
            self._span(opening.place, max(gap, opening.trim_nm)) for opening in surface.openings
        )
        self.zones = tuple(self._open_ended(self._span(zone.place, 0)) for zone in surface.concealed)
        bare = Surface(
            id=surface.id,
            kind=surface.kind,
            outline=surface.outline,
            courses_run=surface.courses_run,
            start=surface.start,
            framing=surface.framing,
            trim=surface.trim,
        )
        self._outline = may_region(bare, rules)
        outline, must = self._bounds(self._outline), self._bounds(must_region(bare, rules))
        self.left, self.right = outline.left, outline.right
        self.level = self._outline.equals(shapely.box(*self._outline.bounds))
        self.start = self._start(outline, must)
        self.must_end, self.may_end = must.high, outline.high
        self.sites = self._sites()
        self.runs = lru_cache(maxsize=100_000)(self._runs)

    @property
    def extent(self) -> Nm:
        """Size of the enclosing box across the courses. [nm]"""
        horizontal = self.surface.courses_run is Direction.HORIZONTAL
        return self.surface.height_nm if horizontal else self.surface.width_nm

    def level_between(self, low: Nm, high: Nm) -> bool:
        """Whether every strip between two places across the courses is equally long."""
        if self.level:
            return True
        box = self._box(self.left, self.right, low, high)
        return bool(box.difference(self._outline).area <= _SLIVER * (self.right - self.left))

    def rectangle(self, span: Span) -> Rectangle:
        """Give a rectangle in the frame of the surface."""
        low, high = span.low, span.high
        if self.surface.start in {Edge.TOP, Edge.RIGHT}:
            low, high = self.extent - high, self.extent - low
        if self.surface.courses_run is Direction.HORIZONTAL:
            return Rectangle(left=span.left, right=span.right, bottom=low, top=high)
        return Rectangle(left=low, right=high, bottom=span.left, top=span.right)

    def hidden(self, at: Nm, low: Nm, high: Nm) -> bool:
        """Whether one concealed zone hides a joint over the whole height of a strip."""
        return any(
            zone.left <= at <= zone.right and zone.low <= low and high <= zone.high for zone in self.zones
        )

    def blocks(self, hole: int, low: Nm, high: Nm) -> bool:
        """Whether a strip lies wholly within the height of an opening, so that it parts there."""
        return self.must_holes[hole].low <= low and high <= self.must_holes[hole].high

    def nailable(self, site: Site, low: Nm, high: Nm) -> bool:
        """Whether a piece of this strip can be nailed at a site, clear of every keep-out."""
        return self.nail_room(site.blocked, low, high) is not None

    def nail_room(self, blocked: tuple[tuple[Nm, Nm], ...], low: Nm, high: Nm) -> tuple[Nm, Nm] | None:
        """Give the widest stretch across a strip that takes a nail, edge distances kept, if there is one. [nm]"""
        start, end = low + self.rules.nail_edge_nm, high - self.rules.nail_edge_nm
        best = None
        for stop, resume in (*blocked, (end, end)):
            if stop >= start and (best is None or min(stop, end) - start > best[1] - best[0]):
                if min(stop, end) >= start:
                    best = (start, min(stop, end))
            start = max(start, resume)
        return best

    def _runs(self, low: Nm, high: Nm) -> tuple[Run, ...]:
        """Give the runs to cover of a strip, in order along the courses."""
        stretches = [(self.left, self.right)] if self.level else self._outline_stretches(low, high)
        for index, hole in enumerate(self.holes):
            if self.blocks(index, low, high):
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
        if self.level and not self.holes:
            return low < self.must_end
        part = self.must.intersection(self._box(left, right, low, high))
        return bool(part.area > _SLIVER * (right - left))

    def _run(self, left: Nm, right: Nm, low: Nm, high: Nm) -> Run:
        joints = tuple(
            JointPlace(site.at, self.hidden(site.at, low, high))
            for site in self.sites
            if left < site.at < right
            and not self._notched(site.at, low, high)
            and (self.surface.framing.solid or self.nailable(site, low, high))
        )
        hidden = any(
            zone.left <= left and right <= zone.right and zone.low <= low and high <= zone.high
            for zone in self.zones
        )
        nails = tuple(
            site.at for site in self.sites if left < site.at < right and self._holds(site, low, high)
        )
        return Run(left, right, joints, nails, hidden)

    def _holds(self, site: Site, low: Nm, high: Nm) -> bool:
        """Whether a piece of this strip has wood at a site that a nail may go through."""
        room = self.nail_room(site.blocked, low, high)
        if room is None or self.surface.framing.solid:
            return room is not None
        beside_hole = any(
            hole.left <= site.at <= hole.right and hole.low < high and low < hole.high for hole in self.holes
        )
        if not beside_hole and self.level_between(low, high):
            return True
        place = self.rectangle(Span(site.at, site.at + 1, *room))
        line = shapely.LineString([(place.left, place.bottom), (place.right, place.top)])
        return bool(line.intersection(self.may).length >= _NAIL_ROOM)

    def _notched(self, at: Nm, low: Nm, high: Nm) -> bool:
        """Whether an opening bites into the strip here: a joint would stand on a notch."""
        return any(hole.left < at < hole.right and low < hole.high and hole.low < high for hole in self.holes)

    def _outline_stretches(self, low: Nm, high: Nm) -> list[tuple[Nm, Nm]]:
        strip = self._box(self.left, self.right, low, high)
        shape = self._outline.intersection(strip)
        spans = sorted(
            (span.left, span.right)
            for part in shapely.get_parts(shape)
            if part.area > _SLIVER * (self.right - self.left)
            for span in (self._bounds(part),)
        )
        merged: list[tuple[Nm, Nm]] = []
        for left, right in spans:
            if merged and left <= merged[-1][1]:
                merged[-1] = (merged[-1][0], max(right, merged[-1][1]))
            else:
                merged.append((left, right))
        return merged

    def _box(self, left: Nm, right: Nm, low: Nm, high: Nm) -> BaseGeometry:
        place = self.rectangle(Span(left, right, low, high))
        return shapely.box(place.left, place.bottom, place.right, place.top)

    def _span(self, place: Rectangle, grown: Nm) -> Span:
        return self._course_span(
            place.left - grown, place.bottom - grown, place.right + grown, place.top + grown
        )

    def _course_span(self, left: Nm, bottom: Nm, right: Nm, top: Nm) -> Span:
        if self.surface.courses_run is Direction.VERTICAL:
            left, bottom, right, top = bottom, left, top, right
        if self.surface.start in {Edge.TOP, Edge.RIGHT}:
            bottom, top = self.extent - top, self.extent - bottom
        return Span(left, right, bottom, top)

    def _bounds(self, shape: BaseGeometry) -> Span:
        left, bottom, right, top = (round(bound) for bound in shape.bounds)
        return self._course_span(left, bottom, right, top)

    def _open_ended(self, zone: Span) -> Span:
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
        """Start level where the trim allows it: no lower than needed, so that an uneven edge need not be scribed."""
        near = [
            max(self._course_span(ax, ay, ax, ay).low, self._course_span(bx, by, bx, by).low)
            for (ax, ay), (bx, by) in zip(
                self.surface.outline, (*self.surface.outline[1:], self.surface.outline[0]), strict=True
            )
            if self._faces_start((bx - ax, by - ay))
        ]
        level = max(near, default=0) + self.rules.expansion_gap_nm
        return min(max(level, may.low), max(may.low, must.low))

    def _faces_start(self, run_and_rise: tuple[Nm, Nm]) -> bool:
        run, rise = run_and_rise
        if abs(run) >= abs(rise):
            return self.surface.start is (Edge.BOTTOM if run > 0 else Edge.TOP)
        return self.surface.start is (Edge.RIGHT if rise > 0 else Edge.LEFT)

    def _sites(self) -> tuple[Site, ...]:
        if self.surface.framing.solid:
            count = (self.right - self.left) // _SOLID_SITE_SPACING
            places = [self.left + index * _SOLID_SITE_SPACING for index in range(1, count)]
            return tuple(Site(at, ()) for at in places)
        return tuple(
            Site(member.centre_nm, self.blocked_at(member.centre_nm))
            for member in self.surface.crossing_members
            if member.width_nm >= 2 * self.rules.bearing_nm
        )

    def blocked_at(self, at: Nm) -> tuple[tuple[Nm, Nm], ...]:
        """Give where across the courses no nail may go at a place along them. [nm]"""
        clearance = self.rules.nail_clearance_nm
        reach = max(clearance, self.rules.nail_end_nm) + self.rules.bearing_nm
        spans = [self._span(keep_out.place, clearance) for keep_out in self.surface.keep_outs]
        spans += [self._span(cut_out.place, 0) for cut_out in self.surface.cut_outs]
        return tuple(
            sorted((span.low, span.high) for span in spans if span.left - reach < at < span.right + reach)
        )
