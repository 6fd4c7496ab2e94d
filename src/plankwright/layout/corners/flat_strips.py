"""The strips of walls that lie flat beside each other: what each of the walls asks for, put together."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import shapely
from shapely.affinity import translate
from shapely.geometry.base import BaseGeometry

from plankwright.layout.capacity import UNLIMITED, Capacity
from plankwright.layout.sites import Site
from plankwright.layout.strips import Span, Strips
from plankwright.measure import Nm
from plankwright.model import Direction, Edge, Point, Rules, Surface


@dataclass(frozen=True, slots=True)
class LaidWall:
    """A wall where it lies.

    Parameters
    ----------
    strips
        The wall by itself.
    corner
        Where the lower left corner of its box lies on the flat surface. [nm]
    along, across
        How much farther its own left end and its own start side lie from those of the flat surface. [nm]
    """

    strips: Strips
    corner: Point
    along: Nm
    across: Nm

    @property
    def surface(self) -> Surface:
        """The wall."""
        return self.strips.surface

    @property
    def end(self) -> Nm:
        """How far its far end lies from the near end of the flat surface. [nm]"""
        level = self.surface.courses_run is Direction.HORIZONTAL
        return self.along + (self.surface.width_nm if level else self.surface.height_nm)

    def holds(self, start: Nm, end: Nm) -> bool:
        """Whether a stretch along the courses of the flat surface lies on it. [nm]"""
        return self.along <= start and end <= self.end


class FlatStrips(Strips):
    """Linked walls as the courses see them, as one surface.

    What may and must be covered, where joints may fall and what a fixture hides is just what it is on each
    wall by itself, trim and all.

    Parameters
    ----------
    surface
        The walls laid flat.
    corners
        Where the lower left corner of each wall's box lies on it. [nm]
    walls
        The same walls by themselves.
    rules
        The rules that they are covered by.
    capacity
        What the saws at hand can do.

    Attributes
    ----------
    walls
        The walls where they lie, from left to right.
    """

    def __init__(
        self,
        surface: Surface,
        corners: Sequence[Point],
        walls: Sequence[Strips],
        rules: Rules,
        capacity: Capacity = UNLIMITED,
    ) -> None:
        super().__init__(surface, rules, capacity)
        self.walls = tuple(
            LaidWall(strips, corner, corner[0], _across(surface, strips.surface, corner))
            for corner, strips in zip(corners, walls, strict=True)
        )
        self.may = _together([(wall.strips.may, wall.corner) for wall in self.walls])
        self.must = _together([(wall.strips.must, wall.corner) for wall in self.walls])
        self.start = min(wall.across + wall.strips.start for wall in self.walls)
        self.must_end = max(wall.across + wall.strips.must_end for wall in self.walls)
        self.may_end = max(wall.across + wall.strips.may_end for wall in self.walls)
        self.zones = tuple(_laid(zone, wall) for wall in self.walls for zone in wall.strips.zones)
        self.sites = tuple(
            replace(
                site,
                at=site.at + wall.along,
                blocked=tuple((low + wall.across, high + wall.across) for low, high in site.blocked),
            )
            for wall in self.walls
            for site in wall.strips.sites
        )

    def wall_at(self, at: Nm) -> LaidWall:
        """Give the wall that lies at a place along the courses."""
        return next((wall for wall in self.walls if at <= wall.end), self.walls[-1])

    def solid_at(self, at: Nm) -> bool:
        """Whether the backing at a place along the courses takes a nail anywhere."""
        return self.wall_at(at).surface.framing.solid

    def _barred(self, left: Nm, right: Nm, low: Nm, high: Nm) -> tuple[tuple[Nm, Nm], ...]:
        """Bar a course, besides, where a wall that is lower or raised would get only a sliver of it."""
        own_low, own_high = self._own(left, low, high)
        if own_high - own_low < self.rules.narrowest_course_nm:
            return ((left, right),)
        return super()._barred(left, right, low, high)

    def _takes_joint(self, site: Site, low: Nm, high: Nm) -> bool:
        """Judge by what of the course its wall gets: of a lower or raised one that may be a part."""
        return super()._takes_joint(site, *self._own(site.at, low, high))

    def _holds(self, site: Site, low: Nm, high: Nm) -> bool:
        """Judge by what of the course its wall gets."""
        return super()._holds(site, *self._own(site.at, low, high))

    def _own(self, at: Nm, low: Nm, high: Nm) -> tuple[Nm, Nm]:
        """Give what of a strip lies on the wall at a place along the courses. [nm]"""
        wall = self.wall_at(at)
        return max(low, wall.across + wall.strips.start), min(high, wall.across + wall.strips.may_end)


def _across(surface: Surface, wall: Surface, corner: Point) -> Nm:
    if surface.start is Edge.TOP:
        return surface.height_nm - wall.height_nm - corner[1]
    return corner[1]


def _together(regions: Sequence[tuple[BaseGeometry, Point]]) -> BaseGeometry:
    return shapely.MultiPolygon(
        [part for region, at in regions for part in shapely.get_parts(translate(region, *at))]
    )


def _laid(zone: Span, wall: LaidWall) -> Span:
    """Give a concealed zone of a wall where it lies; one without end ends with its wall."""
    return Span(
        max(zone.left, 0) + wall.along,
        min(zone.right, wall.surface.width_nm) + wall.along,
        zone.low + wall.across,
        zone.high + wall.across,
    )
