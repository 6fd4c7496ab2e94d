"""Which part of a surface may be covered and which must be."""

from collections.abc import Callable, Iterator
from math import hypot

from shapely import make_valid
from shapely.geometry import Polygon
from shapely.geometry.base import BaseGeometry

from plankwright.check.frame import box_of
from plankwright.check.shapes import areal, common, less
from plankwright.measure import Nm
from plankwright.model import Edge, Rules, Surface

MITRE_LIMIT = 5
"""Where two bands of unequal width meet at a very flat corner their mitre would run far along it: beyond this
many widths they are taken to end square instead."""

Vector = tuple[float, float]


def may_cover(surface: Surface, rules: Rules) -> BaseGeometry:
    """Give the part of a surface that boards may lie on: all but the expansion gaps and the openings.

    Parameters
    ----------
    surface, rules
        The surface, and the rules that say how wide the gaps are.

    Returns
    -------
    BaseGeometry
        In the frame of the surface. [nm]
    """
    gap = rules.expansion_gap_nm
    return _less(surface, lambda _side: gap, lambda _trim: gap)


def must_cover(surface: Surface, rules: Rules) -> BaseGeometry:
    """Give the part of a surface that boards must lie on: what may be covered, less what trim will hide.

    Parameters
    ----------
    surface, rules
        The surface, and the rules that say how wide the gaps are.

    Returns
    -------
    BaseGeometry
        In the frame of the surface. [nm]
    """
    gap, trim = rules.expansion_gap_nm, surface.trim
    hidden = {Edge.BOTTOM: trim.bottom, Edge.TOP: trim.top, Edge.LEFT: trim.left, Edge.RIGHT: trim.right}
    bare = _less(surface, lambda side: max(gap, hidden[side]), lambda casing: max(gap, casing))
    return common(bare, may_cover(surface, rules))


def _less(
    surface: Surface, side_width: Callable[[Edge], Nm], casing_width: Callable[[Nm], Nm]
) -> BaseGeometry:
    outline = areal(make_valid(Polygon(surface.outline)))
    openings = (box_of(each.place, casing_width(each.trim_nm)) for each in surface.openings)
    return less(outline, *_bands(surface, side_width), *openings)


def _bands(surface: Surface, side_width: Callable[[Edge], Nm]) -> Iterator[Polygon]:
    """Lay a band along the inside of every edge of the outline, mitred with its neighbours'."""
    corners = [
        corner
        for corner, before in zip(surface.outline, (surface.outline[-1], *surface.outline), strict=False)
        if corner != before
    ]
    edges = [
        _Band(start, end, side_width) for start, end in zip(corners, (*corners[1:], corners[0]), strict=True)
    ]
    for before, edge, after in zip((edges[-1], *edges), edges, (*edges[1:], edges[0]), strict=False):
        if edge.width:
            yield edge.mitred(before, after)


class _Band:
    """The band along one edge of the outline."""

    def __init__(self, start: Vector, end: Vector, side_width: Callable[[Edge], Nm]) -> None:
        run, rise = end[0] - start[0], end[1] - start[1]
        length = hypot(run, rise)
        self.start, self.end = start, end
        self.along: Vector = (run / length, rise / length)
        self.inward: Vector = (-rise / length, run / length)
        self.width = side_width(_side(run, rise))

    def mitred(self, before: "_Band", after: "_Band") -> Polygon:
        """Give the band with its ends drawn out to where its neighbours' inner edges cross its own."""
        back, on = max(0.0, -self._meets(before)), max(0.0, self._meets(after))
        (sx, sy), (ex, ey), (ax, ay), (nx, ny) = self.start, self.end, self.along, self.inward
        return Polygon(
            (
                self.start,
                self.end,
                (ex + nx * self.width + ax * on, ey + ny * self.width + ay * on),
                (sx + nx * self.width - ax * back, sy + ny * self.width - ay * back),
            )
        )

    def _meets(self, other: "_Band") -> float:
        """Say how far past the corner shared with a neighbour, along this band, the inner edges meet. [nm]"""
        (nx, ny), (mx, my) = self.inward, other.inward
        turn = nx * my - ny * mx
        if turn == 0:
            return 0.0
        x = (self.width * my - ny * other.width) / turn
        y = (nx * other.width - self.width * mx) / turn
        past = x * self.along[0] + y * self.along[1]
        return past if abs(past) <= MITRE_LIMIT * max(self.width, other.width) else 0.0


def _side(run: float, rise: float) -> Edge:
    """Give the side that the outward normal of an edge mostly points to, top or bottom on a tie.

    Going round anticlockwise the inside lies to the left, so the outward normal is (rise, -run).
    """
    if abs(run) >= abs(rise):
        return Edge.BOTTOM if run > 0 else Edge.TOP
    return Edge.RIGHT if rise > 0 else Edge.LEFT
