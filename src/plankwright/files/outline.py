"""Outlines of surfaces: made from what was measured, and judged by exact integer geometry."""

from itertools import pairwise

from plankwright.files.surface_document import Level, SurfaceDocument
from plankwright.measure import Nm
from plankwright.model import Point, Rectangle
from plankwright.model.surface import MIN_CORNERS, twice_signed_area


def outline_of(document: SurfaceDocument) -> tuple[Point, ...]:
    """Give the outline that a surface was measured with.

    Parameters
    ----------
    document
        The surface as written.

    Returns
    -------
    tuple
        Corners anticlockwise, none on the straight line between its neighbours. [nm]

    Raises
    ------
    ValueError
        With a sentence to follow the name of the field, if the measurements make no outline.
    """
    if document.width is not None and document.height is not None:
        return ((0, 0), (document.width, 0), (document.width, document.height), (0, document.height))
    if document.heights:
        return _tidy(_from_heights(document))
    return _tidy(_from_corners(document))


def outline_field(document: SurfaceDocument) -> str:
    """Name the key that the outline was given by."""
    if document.heights:
        return "heights"
    return "corners" if document.corners else "width"


def _from_heights(document: SurfaceDocument) -> tuple[Point, ...]:
    places = [(entry.at, entry.height) for entry in document.heights]
    if len(places) < 2 or places[0][0] != 0:  # noqa: PLR2004 - a surface has two ends
        raise ValueError("need the height at both ends at least: begin with at = 0 and end at the right end")
    if any(left >= right for (left, _), (right, _) in pairwise(places)):
        raise ValueError("must go from left to right: each `at` lies beyond the one before")
    width, tallest = places[-1][0], max(height for _, height in places)
    if tallest == 0:
        raise ValueError("are all 0: at least one must be more than nothing")
    if document.level is Level.CEILING:
        return (*((at, tallest - height) for at, height in places), (width, tallest), (0, tallest))
    return ((0, 0), (width, 0), *reversed(places))


def _from_corners(document: SurfaceDocument) -> tuple[Point, ...]:
    corners = document.corners
    if len(_tidy(corners)) < MIN_CORNERS:
        raise ValueError("need at least three that do not lie on one line")
    if _crosses_itself(_tidy(corners)):
        raise ValueError("cross or touch their own path: go round the outline once, corner by corner")
    if min(x for x, _ in corners) or min(y for _, y in corners):
        raise ValueError(
            "must be measured from the lower left of the surface: the smallest x and the smallest y must be 0"
        )
    return corners if twice_signed_area(corners) > 0 else tuple(reversed(corners))


def _tidy(outline: tuple[Point, ...]) -> tuple[Point, ...]:
    """Leave out corners that repeat, or that lie on the line between their neighbours."""
    kept = [
        corner for before, corner in zip((outline[-1], *outline), outline, strict=False) if before != corner
    ]
    return tuple(
        corner
        for before, corner, after in zip((kept[-1:] + kept), kept, kept[1:] + kept[:1], strict=False)
        if _turn(before, corner, after) != 0 or not _within(corner, (before, after))
    )


def _turn(a: Point, b: Point, c: Point) -> int:
    """Tell which way the path a-b-c turns: left over zero, right below, straight zero."""
    cross = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0])
    return (cross > 0) - (cross < 0)


def _crosses_itself(outline: tuple[Point, ...]) -> bool:
    following = outline[1:] + outline[:1]
    corners = zip(outline, following, following[1:] + following[:1], strict=True)
    if any(_turn(before, corner, after) == 0 for before, corner, after in corners):
        return True  # straight back where it came from
    sides = list(zip(outline, following, strict=True))
    count = len(sides)
    return any(
        _meet(sides[first], sides[second])
        for first in range(count)
        for second in range(first + 2, count)
        if (second + 1) % count != first
    )


def _meet(one: tuple[Point, Point], other: tuple[Point, Point]) -> bool:
    (a, b), (c, d) = one, other
    turns = _turn(a, b, c), _turn(a, b, d), _turn(c, d, a), _turn(c, d, b)
    if turns[0] != turns[1] and turns[2] != turns[3]:
        return True
    return any(
        turn == 0 and _within(point, side)
        for turn, point, side in zip(turns, (c, d, a, b), (one, one, other, other), strict=True)
    )


def _within(point: Point, side: tuple[Point, Point]) -> bool:
    return all(min(pair) <= at <= max(pair) for at, pair in zip(point, zip(*side, strict=True), strict=True))


def overlap(one: Rectangle, other: Rectangle) -> bool:
    """Tell whether two boxes share more than an edge."""
    return (
        one.left < other.right
        and other.left < one.right
        and one.bottom < other.top
        and other.bottom < one.top
    )


def share_inside(box: Rectangle, outline: tuple[Point, ...]) -> float:
    """Tell how much of a box lies inside an outline, from 0 to 1.

    The outline is cut down to the box, side by side of the box; the area that stays is counted exactly.
    """
    path = list(outline)
    for axis, limit, keep_above in (
        (0, box.left, True),
        (0, box.right, False),
        (1, box.bottom, True),
        (1, box.top, False),
    ):
        path = _cut(path, axis, limit, keep_above=keep_above)
    return abs(twice_signed_area(tuple(path))) / (2 * box.width_nm * box.height_nm) if path else 0.0


def _cut(path: list[Point], axis: int, limit: Nm, *, keep_above: bool) -> list[Point]:
    def inside(point: Point) -> bool:
        return point[axis] >= limit if keep_above else point[axis] <= limit

    kept: list[Point] = []
    for before, point in zip(path[-1:] + path, path, strict=False):
        if inside(before) != inside(point):
            along, other = before[axis], before[1 - axis]
            crossing = other + (point[1 - axis] - other) * (limit - along) // (point[axis] - along)
            kept.append((limit, crossing) if axis == 0 else (crossing, limit))
        if inside(point):
            kept.append(point)
    return kept
