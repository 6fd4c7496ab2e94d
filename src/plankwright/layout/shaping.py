"""What is cut on a piece beyond its blank: sloping ends, tapered edges, notches, a tongue taken off."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

import shapely

from plankwright.layout.guillotine import Patch
from plankwright.layout.hanging import TAPER_OR_END
from plankwright.layout.regions import as_polygon
from plankwright.measure import INCH, MILLIMETRE, Nm
from plankwright.model import (
    Cut,
    CutKind,
    Direction,
    Edge,
    EdgeKind,
    EdgeProfile,
    EdgeTreatment,
    HungPiece,
    Piece,
    Point,
    Rectangle,
    Surface,
)

_HARDLY: Nm = MILLIMETRE // 10
"""Less than a saw follows: what lies so close to a line lies on it, and a slice so thin is none."""

_NEARLY: Nm = INCH // 16
"""A blank is rounded up to marks of a tape: a line that misses its side by this was meant to reach it."""

_Segment = tuple[Point, Point]


@dataclass(frozen=True, slots=True, kw_only=True)
class Workpiece:
    """A piece at the bench: its blank is free, and what hangs is still to be made of it.

    Parameters
    ----------
    label
        Its name on the cut list.
    piece, hung
        The piece in the layout, and its shape on the surface.
    surface
        Where it hangs.
    profile
        How the edges of its board are milled.
    """

    label: str
    piece: Piece
    hung: HungPiece
    surface: Surface
    profile: EdgeProfile

    @property
    def blank(self) -> Patch:
        """The rectangle of its board that it is cut to."""
        piece = self.piece
        return Patch(piece.along_from_nm, piece.along_to_nm, piece.across_from_nm, piece.across_to_nm)

    def on_board(self, point: Point) -> Point:
        """Give where a point of the surface lies on the board: along it, and across it. [nm]"""
        (x, y), place = point, self.piece.place
        level = self.surface.courses_run is Direction.HORIZONTAL
        along = x - place.left if level else y - place.bottom
        across = {
            Edge.BOTTOM: y - place.bottom,
            Edge.TOP: place.top - y,
            Edge.LEFT: x - place.left,
            Edge.RIGHT: place.right - x,
        }[self.surface.start]
        blank = self.blank
        last = self.piece.marked_end_last(self.surface.start)
        return (
            blank.along_to - along if last else blank.along_from + along,
            blank.across_to - across if self.piece.turned else blank.across_from + across,
        )


def shaping_cuts(work: Workpiece, rip_kerf_nm: Nm) -> tuple[Cut, ...]:
    """Give what is done to a piece once its blank is free.

    Parameters
    ----------
    work
        The piece.
    rip_kerf_nm
        What a rip takes. [nm]

    Returns
    -------
    tuple[Cut, ...]
        A tongue taken off, tapers ripped, ends angled, notches made, in this order. Marks lie on the finished
        lines, in the frame of the board.
    """
    lines = [_line_cut(work, slope) for slope in _slopes(work)]
    lines.sort(key=lambda cut: (cut.kind is CutKind.ANGLED, cut.at_nm, cut.from_nm))
    notches = [*work.hung.notches, *((step, "the edge of the surface") for step in _steps(work))]
    return (
        *_tongues_off(work, rip_kerf_nm),
        *lines,
        *(_notch_cut(work, place, what) for place, what in notches),
    )


def end_cut(work: Workpiece, cut: Cut) -> Edge | None:
    """Say which end of a piece a cut makes by itself, as the board lies with its marked end to the left.

    Returns
    -------
    Edge | None
        Left or right; nothing when the cut only takes a corner off, or is no angled crosscut.
    """
    blank = work.blank
    if cut.kind is not CutKind.ANGLED or (cut.from_nm, cut.to_nm) != (blank.across_from, blank.across_to):
        return None
    first, last = sorted((cut.at_nm, cut.other_at_nm))
    left, right = first <= blank.along_from + _NEARLY, last >= blank.along_to - _NEARLY
    if left is right:
        return None
    return Edge.LEFT if left else Edge.RIGHT


def _slopes(work: Workpiece) -> list[_Segment]:
    """Give the edges of the shape that run neither along nor across, each line once."""
    slopes: list[_Segment] = []
    for start, end in pairwise((*work.hung.shape, work.hung.shape[0])):
        if min(abs(start[0] - end[0]), abs(start[1] - end[1])) <= _HARDLY:
            continue
        for index, other in enumerate(slopes):
            if _off_line(start, other) <= _HARDLY and _off_line(end, other) <= _HARDLY:
                reach = sorted((*other, start, end))
                slopes[index] = (reach[0], reach[-1])
                break
        else:
            slopes.append((start, end))
    return slopes


def _off_line(point: Point, line: _Segment) -> float:
    (ax, ay), (bx, by) = line
    return abs((bx - ax) * (point[1] - ay) - (by - ay) * (point[0] - ax)) / math.hypot(bx - ax, by - ay)


def _line_cut(work: Workpiece, slope: _Segment) -> Cut:
    """Name a sloping line for what it joins: both long edges, or both ends; a corner by how steep it is."""
    blank = work.blank
    start, end = (work.on_board(point) for point in slope)
    low, high = sorted((start, end), key=lambda point: point[1])
    left, right = sorted((start, end))
    from_edge_to_edge = low[1] <= blank.across_from + _NEARLY and high[1] >= blank.across_to - _NEARLY
    from_end_to_end = left[0] <= blank.along_from + _NEARLY and right[0] >= blank.along_to - _NEARLY
    run, rise = right[0] - left[0], high[1] - low[1]
    if from_edge_to_edge and not (from_end_to_end and run > rise):
        across = blank.across_from, blank.across_to
        marks = [low[0] + (high[0] - low[0]) * (place - low[1]) // rise for place in across]
        return _angled(work, marks, across, math.atan2(run, rise))
    if from_end_to_end:
        along = blank.along_from, blank.along_to
        marks = [left[1] + (right[1] - left[1]) * (place - left[0]) // run for place in along]
        return _taper(work, marks, along)
    if rise * TAPER_OR_END >= run:
        return _angled(work, [low[0], high[0]], (low[1], high[1]), math.atan2(run, rise))
    return _taper(work, [left[1], right[1]], (left[0], right[0]))


def _angled(work: Workpiece, marks: list[Nm], across: tuple[Nm, Nm], angle: float) -> Cut:
    return Cut(
        kind=CutKind.ANGLED,
        at_nm=marks[0],
        other_at_nm=marks[1],
        from_nm=across[0],
        to_nm=across[1],
        angle_mdeg=round(1000 * math.degrees(angle)),
        label=work.label,
    )


def _taper(work: Workpiece, marks: list[Nm], along: tuple[Nm, Nm]) -> Cut:
    return Cut(
        kind=CutKind.TAPER_RIP,
        at_nm=marks[0],
        other_at_nm=marks[1],
        from_nm=along[0],
        to_nm=along[1],
        label=work.label,
    )


def _steps(work: Workpiece) -> list[Rectangle]:
    """Give what a stepped outline takes off a blank: from each edge inside the blank out to its side."""
    blank, corners = work.piece.place, work.hung.shape
    edges = [
        (start, end)
        for start, end in pairwise((*corners, corners[0]))
        if min(abs(start[0] - end[0]), abs(start[1] - end[1])) <= _HARDLY
        and not any(_lies_in(notch, start, end) for notch, _ in work.hung.notches)
    ]
    # Edges along the course come first, so that a flight of steps is told as one notch a step.
    level = work.surface.courses_run is Direction.HORIZONTAL
    edges.sort(key=lambda edge: (abs(edge[0][1] - edge[1][1]) <= _HARDLY) is not level)
    steps: list[Rectangle] = []
    told = shapely.union_all([as_polygon(notch) for notch, _ in work.hung.notches])
    for start, end in edges:
        step = _outwards(blank, start, end)
        if step is not None and as_polygon(step).difference(told).area > _HARDLY**2:
            steps.append(step)
            told = told.union(as_polygon(step))
    return sorted(steps, key=lambda step: (step.left, step.bottom))


def _lies_in(place: Rectangle, start: Point, end: Point) -> bool:
    x, y = (start[0] + end[0]) // 2, (start[1] + end[1]) // 2
    across = place.left - _HARDLY <= x <= place.right + _HARDLY
    return across and place.bottom - _HARDLY <= y <= place.top + _HARDLY


def _outwards(blank: Rectangle, start: Point, end: Point) -> Rectangle | None:
    """Give what lies between an upright or level edge, wood to its left, and the side of the blank."""
    (ax, ay), (bx, by) = start, end
    if abs(ay - by) <= _HARDLY:
        (left, right), (bottom, top) = sorted((ax, bx)), (blank.bottom, ay) if ax < bx else (ay, blank.top)
    else:
        (left, right), (bottom, top) = (ax, blank.right) if ay < by else (blank.left, ax), sorted((ay, by))
    if right - left <= _HARDLY or top - bottom <= _HARDLY:
        return None
    return Rectangle(left=left, bottom=bottom, right=right, top=top)


def _notch_cut(work: Workpiece, place: Rectangle, what: str) -> Cut:
    blank = work.piece.place
    left, bottom = max(place.left, blank.left), max(place.bottom, blank.bottom)
    right, top = min(place.right, blank.right), min(place.top, blank.top)
    corners = [work.on_board(corner) for corner in ((left, bottom), (right, top))]
    along, across = sorted(point[0] for point in corners), sorted(point[1] for point in corners)
    return Cut(
        kind=CutKind.NOTCH,
        at_nm=along[0],
        other_at_nm=along[1],
        from_nm=across[0],
        to_nm=across[1],
        notch=Rectangle(
            left=left - blank.left,
            bottom=bottom - blank.bottom,
            right=right - blank.left,
            top=top - blank.bottom,
        ),
        label=work.label,
        what=what,
    )


def _tongues_off(work: Workpiece, rip_kerf_nm: Nm) -> Iterator[Cut]:
    piece, blank = work.piece, work.blank
    reference, beyond = (piece.far, piece.near) if piece.turned else (piece.near, piece.far)
    marks = []
    if reference is EdgeTreatment.TONGUE_OFF:
        marks.append(blank.across_from - rip_kerf_nm)
    if beyond is EdgeTreatment.TONGUE_OFF:
        marks.append(blank.across_to)
    for mark in marks:
        yield Cut(
            kind=CutKind.RIP,
            at_nm=mark,
            other_at_nm=mark,
            from_nm=blank.along_from,
            to_nm=blank.along_to,
            label=work.label,
            what=f"take the {'lap' if work.profile.kind is EdgeKind.SHIPLAP else 'tongue'} off",
        )
