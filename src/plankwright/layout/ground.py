"""A surface turned so that its courses run to the right and begin below, whichever way they run on it.

Coordinates (u, v) are those of a plan: u along the courses, v away from their start side. Shapes are cut on a
grid of whole nanometres: in plain floating point the geometry library can lose a shape whose edges all but
coincide with another's.
"""

from typing import TypeAlias

import numpy as np
import numpy.typing as npt
import shapely
from shapely.geometry.base import BaseGeometry

from plankwright.layout.regions import extent_in_course
from plankwright.layout.strips import Span, Strips
from plankwright.measure import Nm
from plankwright.model import Direction, Edge, Point, Rectangle, Surface

_GRID = 1.0

Area: TypeAlias = shapely.Polygon | shapely.MultiPolygon

HAIR: Nm = 1_000
"""Lengths below a micrometre are rounding of the geometry library, not wood. [nm]"""


class Ground:
    """What the pieces lie on.

    Parameters
    ----------
    strips
        The surface.

    Attributes
    ----------
    surface, rules
        The surface and its rules.
    may, must
        What may be covered, and what must.
    cut_outs, keep_outs
        The rectangles to notch around, and those that no nail may enter, clearance counted in.
    """

    def __init__(self, strips: Strips) -> None:
        self.strips, self.surface, self.rules = strips, strips.surface, strips.rules
        self.may, self.must = self._turned(strips.may), self._turned(strips.must)
        shapely.prepare(self.may)
        clearance = strips.rules.nail_clearance_nm
        self.cut_outs = tuple(self.box(cut_out.place) for cut_out in self.surface.cut_outs)
        self.keep_outs = tuple(self.box(keep_out.place, clearance) for keep_out in self.surface.keep_outs)

    def hung(self, span: Span) -> Area:
        """Give what hangs of a blank, before cut-outs are taken out of it."""
        blank = box(span)
        return blank if self.may.covers(blank) else common(blank, self.may)

    def box(self, place: Rectangle, grown: Nm = 0) -> shapely.Polygon:
        """Turn a rectangle of the surface, grown on all sides. [nm]"""
        left, right, low, high = extent_in_course(self.surface, place)
        return shapely.box(left - grown, low - grown, right + grown, high + grown)

    def clear(self, span: Span) -> bool:
        """Whether nothing stands in a rectangle: no side of the surface, opening, cut-out or keep-out."""
        blank = box(span)
        return self.may.covers(blank) and not any(
            place.intersects(blank) for place in (*self.cut_outs, *self.keep_outs)
        )

    def point(self, along: Nm, across: Nm) -> Point:
        """Give a point in the frame of the surface."""
        sides = {Edge.TOP: self.surface.height_nm, Edge.RIGHT: self.surface.width_nm}
        if self.surface.start in sides:
            across = sides[self.surface.start] - across
        return (along, across) if self.surface.courses_run is Direction.HORIZONTAL else (across, along)

    def _turned(self, region: BaseGeometry) -> Area:
        return _areas(shapely.transform(region, lambda corners: _turned(self.surface, corners)))


def box(span: Span) -> shapely.Polygon:
    """Give a rectangle as a polygon of the geometry library. [nm]"""
    return shapely.box(span.left, span.low, span.right, span.high)


def common(one: Area, other: Area) -> Area:
    """Give what two areas have in common."""
    return _areas(shapely.intersection(one, other, grid_size=_GRID))


def less(region: Area, *parts: Area) -> Area:
    """Give an area without others."""
    return _areas(
        shapely.difference(region, shapely.union_all(list(parts), grid_size=_GRID), grid_size=_GRID)
    )


def polygons_of(region: Area) -> list[shapely.Polygon]:
    """Give the parts of an area."""
    return [part for part in shapely.get_parts(region) if not part.is_empty]


def crossings(region: Area, start: Point, end: Point) -> list[BaseGeometry]:
    """Give the parts of a line that lie in an area or along its edge."""
    line = shapely.intersection(shapely.LineString([start, end]), region, grid_size=_GRID)
    return [part for part in shapely.get_parts(line) if not part.is_empty]


def _areas(shape: BaseGeometry) -> Area:
    """Leave out the points and lines at which shapes only touch, and slivers thinner than a hair."""
    if isinstance(shape, shapely.Polygon):
        return shape if shape.area > HAIR * shape.length else shapely.Polygon()
    parts = [part for part in shapely.get_parts(shape) if isinstance(part, shapely.Polygon)]
    return shapely.MultiPolygon([part for part in parts if part.area > HAIR * part.length])


def _turned(surface: Surface, corners: npt.NDArray[np.float64]) -> npt.NDArray[np.float64]:
    if surface.courses_run is Direction.VERTICAL:
        corners = corners[:, ::-1]
    if surface.start in {Edge.TOP, Edge.RIGHT}:
        extent = surface.height_nm if surface.start is Edge.TOP else surface.width_nm
        corners = np.column_stack([corners[:, 0], extent - corners[:, 1]])
    return corners
