"""Shapes cut with one another, on a grid of whole nanometres.

In plain floating point the geometry library can lose a result without a word where edges all but coincide:
what two overlapping triangles had in common came back as two points. Cut on a grid, with every corner and
crossing rounded to it, the result is always whole, and off by a nanometre at the most, which is a thousandth
of what counts as anything.
"""

from collections.abc import Iterable

import shapely
from shapely.geometry import LineString, MultiPolygon, Polygon
from shapely.geometry.base import BaseGeometry

from plankwright.check.slack import SLACK

GRID = 1.0
"""Corners lie on whole nanometres. [nm]"""


def common(one: BaseGeometry, other: BaseGeometry) -> BaseGeometry:
    """Give what two areas have in common."""
    return areal(shapely.intersection(one, other, grid_size=GRID))


def less(whole: BaseGeometry, *parts: BaseGeometry) -> BaseGeometry:
    """Give what is left of an area when others are taken off."""
    return areal(shapely.difference(whole, joined(parts), grid_size=GRID)) if parts else whole


def joined(parts: Iterable[BaseGeometry]) -> BaseGeometry:
    """Give the area that others make up together."""
    return areal(shapely.union_all(list(parts), grid_size=GRID))


def line_in(line: LineString, area: BaseGeometry) -> BaseGeometry:
    """Give the part of a line that lies in an area or along its edge."""
    return shapely.intersection(line, area, grid_size=GRID)


def line_off(line: BaseGeometry, area: BaseGeometry) -> BaseGeometry:
    """Give the part of a line that lies outside an area."""
    return shapely.difference(line, area, grid_size=GRID)


def polygons(shape: BaseGeometry) -> tuple[Polygon, ...]:
    """Give the parts of a shape that have an area, beyond rounding.

    Parameters
    ----------
    shape
        Anything that the geometry library gives back, points and lines among it.

    Returns
    -------
    tuple[Polygon, ...]
        Its polygons, less slivers. A sliver of length l and thickness t has about the area l t and the
        perimeter 2 l, so twice the area over the perimeter tells the thickness.
    """
    parts = getattr(shape, "geoms", (shape,))
    return tuple(
        part
        for part in parts
        if isinstance(part, Polygon) and not part.is_empty and 2 * part.area > SLACK * part.length
    )


def areal(shape: BaseGeometry) -> BaseGeometry:
    """Give a shape without the points and lines that it has where others only touch it, nor slivers.

    Parameters
    ----------
    shape
        What is left of cutting shapes with one another.

    Returns
    -------
    BaseGeometry
        Polygons alone, which can be cut again.
    """
    return shape if isinstance(shape, Polygon) else MultiPolygon(polygons(shape))
