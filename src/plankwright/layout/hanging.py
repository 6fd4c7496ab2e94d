"""What each piece looks like on the surface once its ends are angled, its edges tapered, its notches cut."""

import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import groupby, pairwise

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from plankwright.layout.regions import along_and_across, as_polygon, may_region
from plankwright.measure import Nm
from plankwright.model import (
    CutOut,
    Direction,
    HungPiece,
    Job,
    KeepOut,
    Piece,
    Point,
    Rectangle,
    Surface,
    SurfaceLayout,
)

TAPER_OR_END = 4
"""A slope of less than one in so many belongs to a tapered long edge, any other to an angled end.

A floor or a ceiling out of level leans far less, the rafters of a gable seldom do. Rule of thumb.
"""

_DUST = 1e6
"""An area below a millimetre by a nanometre is rounding of the geometry library, not wood. [nm²]"""


def hung_pieces(job: Job, surface_layout: SurfaceLayout) -> tuple[HungPiece, ...]:
    """Give every piece of a surface as it hangs.

    Parameters
    ----------
    job
        For the surface and the expansion gap.
    surface_layout
        The pieces.

    Returns
    -------
    tuple[HungPiece, ...]
        In the order of the layout. Corners are exact where edges are upright or level, else to the nearest
        nanometre.

    Raises
    ------
    ValueError
        If a piece lies wholly outside its surface, which only a layout that was never checked can hold.
    """
    surface = job.surface(surface_layout.surface_id)
    within = may_region(replace(surface, openings=()), job.rules)
    shapely.prepare(within)
    gap = job.rules.expansion_gap_nm
    obstacles = (
        *((grown(opening.place, gap), opening.id) for opening in surface.openings),
        *((cut_out.place, called(cut_out)) for cut_out in surface.cut_outs),
    )
    return tuple(_hang(piece, surface, within, obstacles) for piece in surface_layout.pieces)


def called(thing: CutOut | KeepOut) -> str:
    """Say what something in or behind the surface is called, and no word of it twice.

    Parameters
    ----------
    thing
        The box, pipe or wire.

    Returns
    -------
    str
        What it is and in brackets what the user calls it, such as "socket (left)"; the one of the two alone
        that says the other as well, such as "socket-by-bench", or "cable of the lamp" for the lamp-cable.
    """
    name, what = _words(thing.id), _words(thing.what)
    if _say(name, what):
        return thing.id
    if _say(what, name):
        return thing.what
    return f"{thing.what} ({thing.id})"


def _words(text: str) -> list[str]:
    return re.findall(r"[^\W_]+", text.lower())


def _say(said: list[str], meant: list[str]) -> bool:
    """Tell whether each word that is meant is said as well, in whatever order and number."""
    return all(any(word.rstrip("s") == other.rstrip("s") for other in said) for word in meant)


def grown(place: Rectangle, by: Nm) -> Rectangle:
    """Give a rectangle grown by the same on all four sides. [nm]"""
    return Rectangle(
        left=place.left - by, bottom=place.bottom - by, right=place.right + by, top=place.top + by
    )


def _hang(
    piece: Piece, surface: Surface, within: BaseGeometry, obstacles: tuple[tuple[Rectangle, str], ...]
) -> HungPiece:
    body = _largest(as_polygon(piece.place).intersection(within))
    if body.is_empty:
        msg = f"piece {piece.label} lies wholly outside the surface {surface.id}: have the layout checked"
        raise ValueError(msg)
    notches = sorted(
        _notches(piece.place, body, obstacles), key=lambda notch: (notch[0].left, notch[0].bottom)
    )
    shape: BaseGeometry = body
    for place, _ in notches:
        shape = shape.difference(as_polygon(place))
    outline = _Outline(surface, piece.place, body)
    return HungPiece(
        label=piece.label,
        board_id=piece.board_id,
        shape=_corners(_largest(shape)),
        long_point_nm=outline.long_point_nm,
        short_point_nm=outline.short_point_nm,
        width_left_nm=outline.widths_nm[0],
        width_right_nm=outline.widths_nm[1],
        notches=tuple(notches),
    )


def _notches(
    blank: Rectangle, body: BaseGeometry, obstacles: tuple[tuple[Rectangle, str], ...]
) -> Iterator[tuple[Rectangle, str]]:
    for place, name in obstacles:
        left, right = max(blank.left, place.left), min(blank.right, place.right)
        bottom, top = max(blank.bottom, place.bottom), min(blank.top, place.top)
        if left < right and bottom < top:
            notch = Rectangle(left=left, bottom=bottom, right=right, top=top)
            if body.intersection(as_polygon(notch)).area > _DUST:
                yield notch, name


def _largest(region: BaseGeometry) -> shapely.Polygon:
    """Give the largest polygon of a region, or an empty one."""
    polygons = [part for part in shapely.get_parts(region) if isinstance(part, shapely.Polygon)]
    return max(polygons, key=lambda polygon: polygon.area, default=shapely.Polygon())


def _corners(polygon: shapely.Polygon) -> tuple[Point, ...]:
    """Give the corners anticlockwise from the lowest of the leftmost ones, in whole nanometres."""
    ring = shapely.orient_polygons(polygon).exterior.coords
    # The ring ends where it began, so a corner that rounds to the first one is dropped with the last.
    rounded = [corner for corner, _ in groupby((round(x), round(y)) for x, y in ring)][:-1]
    kept = [
        here
        for before, here, after in zip(
            [rounded[-1], *rounded], rounded, [*rounded[1:], rounded[0]], strict=False
        )
        if _turn(before, here, after)
    ]
    first = kept.index(min(kept))
    return (*kept[first:], *kept[:first])


def _turn(before: Point, here: Point, after: Point) -> int:
    """Give what tells a corner from a point on a straight edge: zero for the latter."""
    return (here[0] - before[0]) * (after[1] - here[1]) - (here[1] - before[1]) * (after[0] - here[0])


class _Outline:
    """The long edges of a piece before it is notched, in the coordinates of its course."""

    def __init__(self, surface: Surface, blank: Rectangle, body: shapely.Polygon) -> None:
        corners = [along_and_across(surface, corner) for corner in _corners(body)]
        if not shapely.LinearRing(corners).is_ccw:
            corners.reverse()
        near: set[Point] = set()
        far: set[Point] = set()
        for start, end in pairwise([*corners, corners[0]]):
            run, rise = end[0] - start[0], end[1] - start[1]
            if abs(rise) * TAPER_OR_END < abs(run):
                (near if run > 0 else far).update((start, end))
        self.near, self.far = sorted(near), sorted(far)
        self.long_point_nm: Nm = max(u for u, _ in corners) - min(u for u, _ in corners)
        level = surface.courses_run is Direction.HORIZONTAL
        self.blank_width_nm: Nm = blank.height_nm if level else blank.width_nm

    @property
    def short_point_nm(self) -> Nm:
        """Length of the shorter long edge; nothing for a piece that comes to a point. [nm]"""
        return min(edge[-1][0] - edge[0][0] if edge else 0 for edge in (self.near, self.far))

    @property
    def widths_nm(self) -> tuple[Nm, Nm]:
        """Widths at the two ends, angled ends left out; those of the blank where no two edges face. [nm]"""
        if self.near and self.far:
            left = max(self.near[0][0], self.far[0][0])
            right = min(self.near[-1][0], self.far[-1][0])
            if left <= right:
                return self._width_at(left), self._width_at(right)
        return self.blank_width_nm, self.blank_width_nm

    def _width_at(self, along: Nm) -> Nm:
        near, far = (
            np.interp(along, [u for u, _ in edge], [v for _, v in edge]) for edge in (self.near, self.far)
        )
        return round(float(far - near))
