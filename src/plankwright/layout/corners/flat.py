"""Linked walls beside each other on one plane: a surface as good as any other, with a strip at each corner.

Every strip is an opening from bottom to top, so that each run of a course ends at the corner.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TypeVar

import shapely

from plankwright.measure import Nm
from plankwright.model import (
    ConcealedZone,
    CutOut,
    Framing,
    KeepOut,
    Opening,
    Point,
    Rectangle,
    Surface,
    corner_heights,
)

_Part = TypeVar("_Part", Opening, CutOut, ConcealedZone, KeepOut)

_GRID = 1.0
"""Corners lie on whole nanometres. [nm]"""


@dataclass(frozen=True, slots=True)
class Flat:
    """Walls laid flat.

    Parameters
    ----------
    surface
        All of them as one.
    corners
        Where the lower left corner of each wall's box lies on it. [nm]
    """

    surface: Surface
    corners: tuple[Point, ...]


def flat_surface(walls: Sequence[Surface], apart: Nm) -> Flat:
    """Lay linked walls flat.

    Parameters
    ----------
    walls
        Two or more, in order from left to right.
    apart
        How wide the strips between them are to be. [nm]

    Returns
    -------
    Flat
        It has no trim along its sides: what of a wall need not be covered `FlatStrips` tells.
    """
    lowest = min(wall.raised_nm for wall in walls)
    corners: list[Point] = []
    right = 0
    for wall in walls:
        corners.append((right, wall.raised_nm - lowest))
        right += wall.width_nm + apart
    right -= apart
    top = max(y + wall.height_nm for wall, (_, y) in zip(walls, corners, strict=True))
    placed = tuple(zip(walls, corners, strict=True))
    plain = all(_is_plain(wall) for wall in walls)
    openings = [
        *(part for wall, at in placed for part in _moved(wall.openings, at)),
        *_strips(placed, top),
        *(part for wall, at in placed if plain for part in _beyond(wall, at, top)),
    ]
    surface = Surface(
        id=" and ".join(wall.id for wall in walls),
        outline=((0, 0), (right, 0), (right, top), (0, top)) if plain else _outline(placed, lowest),
        start=walls[0].start,
        openings=tuple(openings),
        cut_outs=tuple(part for wall, at in placed for part in _moved(wall.cut_outs, at)),
        concealed=tuple(part for wall, at in placed for part in _moved(wall.concealed, at)),
        framing=_framing(placed),
        keep_outs=tuple(part for wall, at in placed for part in _moved(wall.keep_outs, at)),
    )
    return Flat(surface, tuple(corners))


_Placed = tuple[tuple[Surface, Point], ...]


def _is_plain(wall: Surface) -> bool:
    """Whether a wall is an upright rectangle."""
    return bool(shapely.Polygon(wall.outline).equals(shapely.box(0, 0, wall.width_nm, wall.height_nm)))


def _moved(parts: Sequence[_Part], by: Point) -> Iterator[_Part]:
    for part in parts:
        yield replace(part, place=_shifted(part.place, by))


def _shifted(place: Rectangle, by: Point) -> Rectangle:
    x, y = by
    return Rectangle(left=place.left + x, bottom=place.bottom + y, right=place.right + x, top=place.top + y)


def _strips(placed: _Placed, top: Nm) -> Iterator[Opening]:
    """Give the strips between the walls."""
    for (wall, (x, _)), (_, (other_x, _)) in pairwise(placed):
        place = Rectangle(left=x + wall.width_nm, bottom=0, right=other_x, top=top)
        yield Opening(id=f"corner right of {wall.id}", place=place)


def _beyond(wall: Surface, at: Point, top: Nm) -> Iterator[Opening]:
    """Give what lies below and above a wall that is lower than others, as openings.

    So walls that are level each by themselves are a level surface together.
    """
    (x, y), right = at, at[0] + wall.width_nm
    if y:
        place = Rectangle(left=x, bottom=0, right=right, top=y)
        yield Opening(id=f"below {wall.id}", place=place, trim_nm=wall.trim.bottom)
    if y + wall.height_nm < top:
        place = Rectangle(left=x, bottom=y + wall.height_nm, right=right, top=top)
        yield Opening(id=f"above {wall.id}", place=place, trim_nm=wall.trim.top)


def _framing(placed: _Placed) -> Framing:
    """Give the framing of all; `FlatStrips` tells which walls have solid backing where others have none."""
    members = tuple(
        replace(member, centre_nm=member.centre_nm + x)
        for wall, (x, _) in placed
        for member in wall.crossing_members
        if not wall.framing.solid
    )
    return Framing(members=members, solid=not members)


def _outline(placed: _Placed, lowest: Nm) -> tuple[Point, ...]:
    """Give the outline of walls of any shape, joined where they meet at the corners."""
    parts = [
        shapely.Polygon([(corner_x + x, corner_y + y) for corner_x, corner_y in wall.outline])
        for wall, (x, y) in placed
    ]
    for (wall, (x, _)), (other, (other_x, _)) in pairwise(placed):
        heights = corner_heights(wall, other)
        assert heights is not None  # noqa: S101 - a job has no other links
        low, high = heights
        parts.append(shapely.box(x + wall.width_nm, low - lowest, other_x, high - lowest))
    whole = shapely.union_all(parts, grid_size=_GRID)
    ring = shapely.get_coordinates(shapely.orient_polygons(whole))[:-1]
    return _without_flat_corners([(round(x), round(y)) for x, y in ring])


def _without_flat_corners(ring: Sequence[Point]) -> tuple[Point, ...]:
    """Leave out corners that are none, as where a strip continues a floor."""
    return tuple(
        (x, y)
        for (before_x, before_y), (x, y), (after_x, after_y) in zip(
            (ring[-1], *ring), ring, (*ring[1:], ring[0]), strict=False
        )
        if (x - before_x) * (after_y - y) != (y - before_y) * (after_x - x)
    )
