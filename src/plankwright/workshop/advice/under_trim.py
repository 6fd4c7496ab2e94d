"""Where pieces end under the trim along an edge, and how wide a gap each of them leaves there."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import pairwise

import shapely
from shapely.affinity import affine_transform
from shapely.geometry.base import BaseGeometry

from plankwright.draw.subject import Subject
from plankwright.layout.ground import HAIR
from plankwright.layout.regions import as_polygon, edges_of, must_region, side_of_edge
from plankwright.measure import Nm
from plankwright.model import Edge, Opening, Point, Surface

_Line = tuple[Point, Point]
"""A stretch of an edge, with the boards to its left."""


def gaps_at_side(what: Subject, edge: Edge) -> dict[str, Nm]:
    """Give how far from a side of the surface each piece ends that ends under the trim there.

    Parameters
    ----------
    what
        The surface and its layout.
    edge
        The side; slopes belong to it as they do to its trim.

    Returns
    -------
    dict
        The widest gap by the label of the piece, the widest first; nothing of what is bare, or of pieces
        that no trim of this side is to cover. [nm]
    """
    lines = [
        (start, end)
        for start, end in edges_of(what.surface.outline)
        if start != end and side_of_edge(start, end) is edge
    ]
    surface = what.surface
    without = replace(surface, trim=replace(surface.trim, **{edge.value: 0}))
    return _gaps(what, without, lines, getattr(surface.trim, edge))


def gaps_at_opening(what: Subject, opening: Opening) -> dict[str, Nm]:
    """Give how far from an opening each piece ends that ends under its casing, as `gaps_at_side` does."""
    place = opening.place
    corners = (
        (place.left, place.bottom),
        (place.left, place.top),
        (place.right, place.top),
        (place.right, place.bottom),
    )
    openings = (replace(one, trim_nm=0) if one == opening else one for one in what.surface.openings)
    without = replace(what.surface, openings=tuple(openings))
    return _gaps(what, without, edges_of(corners), opening.trim_nm)


def _gaps(what: Subject, without: Surface, lines: Iterable[_Line], trim_nm: Nm) -> dict[str, Nm]:
    """Give the widest gaps along an edge; `without` is the surface without the trim there."""
    widest: dict[str, Nm] = {}
    rules, gap = what.job.rules, what.job.rules.expansion_gap_nm
    open_to_see = must_region(without, rules)
    for line in lines:
        for label, depth in _Strip(what, open_to_see, line, trim_nm).ends():
            measured = gap if abs(depth - gap) <= HAIR else round(depth)
            widest[label] = max(widest.get(label, 0), measured)
    return dict(sorted(widest.items(), key=lambda each: -each[1]))


class _Strip:
    """What lies along an edge, turned so that the edge runs to the right and the boards lie above it.

    It reaches as far as trim does, and by the tolerance farther: so far a gap may be left beyond it. Pieces
    count where no other trim hides how they end, as it does near the corners.
    """

    def __init__(self, what: Subject, open_to_see: BaseGeometry, line: _Line, trim_nm: Nm) -> None:
        self.line, self.length = line, math.dist(*line)
        self.trim_nm, self.tolerance = trim_nm, max(what.job.rules.gap_tolerance_nm, HAIR)
        self.pieces = [
            (row.piece.label, shape)
            for row in what.rows
            if (shape := self._within(as_polygon(row.piece.place).intersection(what.may))).area > 0
        ]
        self.bare = [shape for blank in what.bare if (shape := self._within(blank)).area > 0]
        self.open_to_see = self._within(open_to_see)

    def _within(self, shape: BaseGeometry) -> BaseGeometry:
        (ax, ay), (bx, by) = self.line
        along, up = (bx - ax) / self.length, (by - ay) / self.length
        turned = affine_transform(shape, (along, up, -up, along, -along * ax - up * ay, up * ax - along * ay))
        return turned.intersection(shapely.box(0, 0, self.length, self.trim_nm + self.tolerance + HAIR))

    def ends(self) -> Iterator[tuple[str, float]]:
        """Give how far from the edge pieces end, at both ends of each stretch along which that is even.

        A stretch that is narrower than the tolerance is a joint or a seam, through which one sees past the
        pieces that end there.
        """
        shapes = [*(shape for _, shape in self.pieces), *self.bare, self.open_to_see]
        marks = sorted({x for shape in shapes for x, _ in shapely.get_coordinates(shape).tolist()})
        for low, high in pairwise(marks):
            if high - low > self.tolerance:
                for at in (low + HAIR / 2, high - HAIR / 2):
                    yield from self._end_at(at)

    def _end_at(self, at: float) -> Iterator[tuple[str, float]]:
        found = [(depth, label) for label, shape in self.pieces for depth in self._depths(shape, at)]
        bare = [depth for shape in self.bare for depth in self._depths(shape, at)]
        if found and min(found)[0] <= min(bare, default=math.inf):
            depth, label = min(found)
            if self.open_to_see.distance(shapely.Point(at, depth)) <= HAIR:
                yield label, depth

    def _depths(self, shape: BaseGeometry, at: float) -> Iterator[float]:
        left, _, right, top = shape.bounds
        if left < at < right:
            met = shape.intersection(shapely.LineString(((at, 0), (at, top))))
            if not met.is_empty:
                yield met.bounds[1]
