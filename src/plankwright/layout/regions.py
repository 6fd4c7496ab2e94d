"""What of a surface may be covered, what must be, and where a course lies on it.

Coordinates are nanometres in the frame of the surface, as floating-point numbers because the geometry
library knows no other; they hold the whole nanometres of any real surface exactly, so upright and level
edges are exact. What slopes is cut at whole nanometres as well: a region whose corners lie between them can
keep a spur thinner than the numbers tell, and crosses itself once it is turned.
"""

import math
from collections.abc import Iterator

import shapely
from shapely.geometry.base import BaseGeometry

from plankwright.measure import Nm
from plankwright.model import Direction, Edge, Point, Rectangle, Rules, Surface

_GRID = 1.0
"""Corners lie on whole nanometres. [nm]"""

_LONGEST_MITRE = 4.0
"""How many band widths a mitre may reach from its corner; at a right angle it reaches one and a half."""


def may_region(surface: Surface, rules: Rules) -> BaseGeometry:
    """Give what boards may cover: the surface and its openings kept clear by the expansion gap.

    Parameters
    ----------
    surface
        The surface.
    rules
        For the expansion gap.

    Returns
    -------
    BaseGeometry
        A polygon, several, or an empty one. [nm]
    """
    gap = rules.expansion_gap_nm
    return _less(
        shapely.Polygon(surface.outline),
        [
            *_bands(surface.outline, [gap] * len(surface.outline)),
            *(_grown(opening.place, gap) for opening in surface.openings),
        ],
    )


def must_region(surface: Surface, rules: Rules) -> BaseGeometry:
    """Give what boards must cover: what they may cover, less what the trim will hide.

    Parameters
    ----------
    surface
        The surface.
    rules
        For the expansion gap.

    Returns
    -------
    BaseGeometry
        A polygon, several, or an empty one; inside the `may_region`. [nm]
    """
    gap, corners = rules.expansion_gap_nm, surface.outline
    widths = [max(gap, getattr(surface.trim, side_of_edge(*edge))) for edge in edges_of(corners)]
    return _less(
        may_region(surface, rules),
        [
            *_bands(corners, widths),
            *(
                _grown(opening.place, opening.trim_nm)
                for opening in surface.openings
                if opening.trim_nm > gap
            ),
        ],
    )


def side_of_edge(start: Point, end: Point) -> Edge:
    """Say which side of the surface an edge of its outline belongs to.

    Parameters
    ----------
    start, end
        Its corners, in the order of the outline. [nm]

    Returns
    -------
    Edge
        The side that the edge faces most; bottom or top when it leans at exactly 45 degrees.
    """
    run, rise = end[0] - start[0], end[1] - start[1]
    if abs(run) >= abs(rise):
        return Edge.BOTTOM if run > 0 else Edge.TOP
    return Edge.RIGHT if rise > 0 else Edge.LEFT


def course_strip(surface: Surface, from_nm: Nm, to_nm: Nm) -> Rectangle:
    """Give the strip that a course takes up, over the whole box that encloses the surface.

    Parameters
    ----------
    surface
        The surface.
    from_nm, to_nm
        Distances of the edges of the course from the start side. [nm]

    Returns
    -------
    Rectangle
        In the frame of the surface.

    Raises
    ------
    InvalidValueError
        If the course has no height.
    """
    if surface.start in {Edge.TOP, Edge.RIGHT}:
        extent = surface.height_nm if surface.start is Edge.TOP else surface.width_nm
        from_nm, to_nm = extent - to_nm, extent - from_nm
    if surface.courses_run is Direction.HORIZONTAL:
        return Rectangle(left=0, bottom=from_nm, right=surface.width_nm, top=to_nm)
    return Rectangle(left=from_nm, bottom=0, right=to_nm, top=surface.height_nm)


def along_and_across(surface: Surface, point: Point) -> tuple[Nm, Nm]:
    """Give where a point lies along the courses and how far from the start side.

    Parameters
    ----------
    surface
        The surface.
    point
        In the frame of the surface. [nm]

    Returns
    -------
    tuple[Nm, Nm]
        From the left, or the bottom, along the courses; from the start side across them. [nm]
    """
    along, across = point if surface.courses_run is Direction.HORIZONTAL else point[::-1]
    if surface.start in {Edge.TOP, Edge.RIGHT}:
        across = (surface.height_nm if surface.start is Edge.TOP else surface.width_nm) - across
    return along, across


def member_at(surface: Surface, point: Point) -> int | None:
    """Give which framing member a point lies on, from 0 along the courses; nothing beside them all."""
    along, _ = along_and_across(surface, point)
    for number, member in enumerate(surface.crossing_members):
        if abs(along - member.centre_nm) <= member.width_nm // 2:
            return number
    return None


def place_on_surface(surface: Surface, along: Nm, across: Nm) -> Point:
    """Give the point that lies so far along and across the courses: the inverse of `along_and_across`."""
    if surface.start in {Edge.TOP, Edge.RIGHT}:
        across = (surface.height_nm if surface.start is Edge.TOP else surface.width_nm) - across
    return (along, across) if surface.courses_run is Direction.HORIZONTAL else (across, along)


def extent_in_course(surface: Surface, place: Rectangle) -> tuple[Nm, Nm, Nm, Nm]:
    """Give how far a rectangle reaches along and across the courses.

    Parameters
    ----------
    surface
        The surface.
    place
        In the frame of the surface.

    Returns
    -------
    tuple[Nm, Nm, Nm, Nm]
        From and to along, then from and to across, as `along_and_across` measures them. [nm]
    """
    (u_1, v_1), (u_2, v_2) = (
        along_and_across(surface, corner) for corner in ((place.left, place.bottom), (place.right, place.top))
    )
    return u_1, u_2, min(v_1, v_2), max(v_1, v_2)


def as_polygon(place: Rectangle) -> shapely.Polygon:
    """Give a rectangle as a polygon of the geometry library. [nm]"""
    return shapely.box(place.left, place.bottom, place.right, place.top)


def _grown(place: Rectangle, by: Nm) -> shapely.Polygon:
    return shapely.box(place.left - by, place.bottom - by, place.right + by, place.top + by)


def _less(region: BaseGeometry, parts: list[shapely.Polygon]) -> BaseGeometry:
    """Take parts away one by one, since a union of them first would be no faster and could leave slivers."""
    for part in parts:
        region = _areas(shapely.difference(region, part, grid_size=_GRID))
    return region


def _areas(region: BaseGeometry) -> BaseGeometry:
    """Leave out the lines and points to which cutting on whole nanometres may shrink what is thinner."""
    polygons = [part for part in shapely.get_parts(region) if isinstance(part, shapely.Polygon)]
    return polygons[0] if len(polygons) == 1 else shapely.MultiPolygon(polygons)


def edges_of(corners: tuple[Point, ...]) -> Iterator[tuple[Point, Point]]:
    """Give the edges of an outline, each from corner to corner, the one that closes it last."""
    return zip(corners, (*corners[1:], corners[0]), strict=True)


_Band = tuple[Point, Point, Nm]
_Place = tuple[float, float]


def _bands(corners: tuple[Point, ...], widths: list[Nm]) -> list[shapely.Polygon]:
    """Give the band along the inside of each edge of an outline.

    The library's own inward offset is not used: it straightens out corners that are nearly flat, as those
    along a floor out of level are, and knows one width only.
    """
    bands = [
        (start, end, width)
        for (start, end), width in zip(edges_of(corners), widths, strict=True)
        if start != end
    ]
    ring = []
    for index, band in enumerate(bands):
        start, end, width = band
        if width == 0:
            continue
        before, after = bands[index - 1], bands[(index + 1) % len(bands)]
        ring.append(shapely.Polygon([start, end, _inner_end(band, after), _inner_start(before, band)]))
    return ring


def _inner_end(band: _Band, after: _Band) -> _Place:
    """Give the inner corner at the end of a band: where it meets the next one, if that is further on."""
    square, mitre = _offset(band[1], band), _meeting(band, after)
    return mitre if mitre is not None and _along(band, mitre) > _along(band, square) else square


def _inner_start(before: _Band, band: _Band) -> _Place:
    square, mitre = _offset(band[0], band), _meeting(before, band)
    return mitre if mitre is not None and _along(band, mitre) < _along(band, square) else square


def _along(band: _Band, place: _Place) -> float:
    (ax, ay), (bx, by), _ = band
    return (place[0] - ax) * (bx - ax) + (place[1] - ay) * (by - ay)


def _offset(point: Point, band: _Band) -> _Place:
    """Move a point inwards, square to the edge, by the width of its band."""
    (ax, ay), (bx, by), width = band
    length = math.hypot(bx - ax, by - ay)
    return point[0] - (by - ay) * width / length, point[1] + (bx - ax) * width / length


def _meeting(before: _Band, after: _Band) -> _Place | None:
    """Give the point where the inner edges of two bands meet, if they do so near the corner between them."""
    (ax, ay), (bx, by), _ = before
    _, (cx, cy), _ = after
    run_1, rise_1, run_2, rise_2 = bx - ax, by - ay, cx - bx, cy - by
    turn = run_1 * rise_2 - rise_1 * run_2
    if turn == 0:
        return None
    px, py = _offset((bx, by), before)
    qx, qy = _offset((bx, by), after)
    along = ((qx - px) * rise_2 - (qy - py) * run_2) / turn
    meeting = (px + along * run_1, py + along * rise_1)
    near = math.hypot(meeting[0] - bx, meeting[1] - by) <= _LONGEST_MITRE * max(before[2], after[2])
    return meeting if near else None
