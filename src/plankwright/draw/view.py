"""From a surface to a sheet: the sizes of paper, and the scale and place at which a surface stands on it."""

from dataclasses import dataclass

import shapely
from shapely.geometry.base import BaseGeometry

from plankwright.draw.scene import Place, Polygon
from plankwright.draw.styles import Style
from plankwright.measure import MILLIMETRE, Nm
from plankwright.model import Point, Rectangle


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """A sheet to draw on.

    Parameters
    ----------
    name
        As a person asks for it.
    width, height
        [mm]
    margin
        Left free on all sides, since few printers reach the edge. [mm]
    """

    name: str
    width: float
    height: float
    margin: float = 8.0


LETTER = Page(name="Letter", width=279.4, height=215.9)
"""US Letter, landscape: 11 by 8-1/2 in."""

A4 = Page(name="A4", width=297.0, height=210.0)
"""ISO 216 A4, landscape."""


@dataclass(frozen=True, slots=True, kw_only=True)
class View:
    """Where a surface, or a board, stands on the sheet.

    Parameters
    ----------
    scale
        So many times smaller than life.
    left, bottom
        Where its lower left corner is on the sheet. [mm]
    """

    scale: float
    left: float
    bottom: float

    def size(self, nm: Nm) -> float:
        """Give a length as drawn. [mm]"""
        return nm / MILLIMETRE / self.scale

    def x(self, nm: Nm) -> float:
        """Give where a distance from the left is on the sheet. [mm]"""
        return self.left + self.size(nm)

    def y(self, nm: Nm) -> float:
        """Give where a height is on the sheet, whose y runs down. [mm]"""
        return self.bottom - self.size(nm)

    def place(self, point: Point) -> Place:
        """Give where a point is on the sheet. [mm]"""
        return self.x(point[0]), self.y(point[1])

    def ring(self, corners: tuple[Point, ...]) -> tuple[Place, ...]:
        """Give where corners are on the sheet. [mm]"""
        return tuple(map(self.place, corners))

    def box(self, place: Rectangle) -> shapely.Polygon:
        """Give a rectangle as it lies on the sheet. [mm]"""
        return shapely.box(self.x(place.left), self.y(place.top), self.x(place.right), self.y(place.bottom))

    def region(self, region: BaseGeometry) -> BaseGeometry:
        """Give a region of the surface as it lies on the sheet. [mm]"""
        return shapely.transform(
            region,
            lambda points: points / MILLIMETRE / self.scale * (1, -1) + (self.left, self.bottom),
        )


def polygons(region: BaseGeometry, style: Style) -> tuple[Polygon, ...]:
    """Give a region of the sheet as shapes to draw, one a part."""
    return tuple(
        Polygon(
            rings=tuple(
                tuple((x, y) for x, y in ring.coords[:-1]) for ring in (part.exterior, *part.interiors)
            ),
            style=style,
        )
        for part in shapely.get_parts(region)
        if isinstance(part, shapely.Polygon) and not part.is_empty
    )
