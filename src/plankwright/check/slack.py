"""How much two measures may differ by before anybody calls it a difference.

Layouts are whole nanometres, but slopes cut them at fractions of one, lengths typed by hand are rounded on
their way into a file, and the geometry library works in floating point. On a surface of ten metres (1e10 nm)
a double still holds a few millionths of a nanometre, so its error is far below anything here. A micrometre is
hundreds of times finer than the finest mark of a tape and far coarser than anything that arithmetic could add
up to: below it nothing is found, above it everything is.
"""

from shapely.geometry import MultiPolygon, Polygon
from shapely.geometry.base import BaseGeometry

from plankwright.measure import Nm

SLACK: Nm = 1_000
"""Differences up to this are rounding. [nm]"""


def exceeds(one: float, other: float) -> bool:
    """Whether one measure is more than another, beyond rounding. [nm]"""
    return one - other > SLACK


def differs(one: float, other: float) -> bool:
    """Whether two measures are unequal, beyond rounding. [nm]"""
    return abs(one - other) > SLACK


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
