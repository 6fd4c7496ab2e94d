"""Kinds of courses: what one asks for depends on which edges it crosses, not on where it lies exactly.

Between two neighbouring edges of openings and concealed zones every strip of a level surface has the same
runs and the same hiding places. So courses are counted by kind and height instead of being told apart, which
takes out the symmetry that makes a search slow. Keep-outs may tell strips of one band apart; whoever puts the
courses in their places looks at them again. Where the outline slopes each course is a kind of its own.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from plankwright.layout.plan import PlannedCourse, PlannedPiece
from plankwright.layout.runs import Run
from plankwright.layout.strips import Strips
from plankwright.measure import Nm


@dataclass(frozen=True, slots=True)
class Pinned:
    """A piece that stays where it is.

    Parameters
    ----------
    piece
        The piece, of a stick of its own.
    shim
        How thick the shim behind it is; nothing where that may still be chosen. [nm]
    """

    piece: PlannedPiece
    shim: Nm | None = None


@dataclass(frozen=True, slots=True)
class Row:
    """A kind of course.

    Parameters
    ----------
    runs
        What such a course must cover.
    heights
        Heights that it may take before the closing rip. [nm]
    first_band, last_band
        The bands that its lower and its upper edge lie in; the same for a course between two edges.
    strip
        Its place (low, high) when there is just one such course and it stays; otherwise nothing. [nm]
    pinned
        Pieces of a course that stays which stay themselves; the runs have places for joints where they end.
    """

    runs: tuple[Run, ...]
    heights: tuple[Nm, ...]
    first_band: int
    last_band: int
    strip: tuple[Nm, Nm] | None
    pinned: tuple[Pinned, ...] = ()


@dataclass(frozen=True, slots=True)
class Stack:
    """A stretch of a surface to be covered with courses.

    Parameters
    ----------
    rows
        The kinds of courses that may be used.
    low
        Where the first course begins. [nm]
    must_end, may_end
        The last course ends between these. [nm]
    edges
        The edges between the bands, in order. [nm]
    beside
        Courses that stay, those among them that a course here touches.
    """

    rows: tuple[Row, ...]
    low: Nm
    must_end: Nm
    may_end: Nm
    edges: tuple[Nm, ...]
    beside: tuple[PlannedCourse, ...] = ()

    @property
    def fixed(self) -> bool:
        """Whether there are courses, and they keep their places."""
        return bool(self.rows) and all(row.strip is not None for row in self.rows)


def fixed_stack(strips: Strips, courses: Sequence[PlannedCourse], beside: Sequence[PlannedCourse]) -> Stack:
    """Give courses that keep their places and heights, so that only boards and joints change.

    Parameters
    ----------
    strips
        The surface.
    courses
        In order from the start side; there may be others between them.
    beside
        The courses that stay.

    Returns
    -------
    Stack
        A row for each course.
    """
    rows = tuple(
        Row(strips.runs(course.low, course.high), (course.height,), band, band, (course.low, course.high))
        for band, course in enumerate(courses)
    )
    low, high = courses[0].low, courses[-1].high
    return Stack(rows, low, high, high, tuple(course.high for course in courses[:-1]), tuple(beside))


def free_stack(
    strips: Strips,
    heights: Sequence[Nm],
    span: tuple[Nm, Nm, Nm],
    beside: Sequence[PlannedCourse],
) -> Stack:
    """Give a stretch of a level surface whose courses may take any of some heights.

    Parameters
    ----------
    strips
        The surface; its outline must be level over the stretch.
    heights
        Heights worth having. [nm]
    span
        Where it begins, where it must end at the least, and where it may end at the most. [nm]
    beside
        The courses that stay.

    Returns
    -------
    Stack
        A row for each band, and for each set of neighbouring bands that a course can lie across.
    """
    low, must_end, may_end = span
    edges = tuple(edge for edge in _edges(strips) if low < edge < must_end)
    bounds = (low, *edges, may_end)
    widest = max(heights, default=0)
    rows = []
    for first in range(len(bounds) - 1):
        for last in range(first, len(bounds) - 1):
            # The least height of a strip from one band to the other: more than the bands wholly between.
            between = bounds[last] - bounds[first + 1] if last > first else 0
            fitting = tuple(
                height
                for height in heights
                if height > between and (last > first or height <= bounds[first + 1] - bounds[first])
            )
            if between >= widest or not fitting:
                continue
            strip = _typical(bounds, first, last, fitting[len(fitting) // 2])
            rows.append(Row(strips.runs(*strip), fitting, first, last, None))
    return Stack(tuple(rows), low, must_end, may_end, edges, tuple(beside))


def _typical(bounds: Sequence[Nm], first: int, last: int, height: Nm) -> tuple[Nm, Nm]:
    """Give a strip that lies in just these bands, as high as a course where they leave it room."""
    if first == last:
        return bounds[first], bounds[first + 1]
    middle = (bounds[first + 1] + bounds[last]) // 2
    low = max(bounds[first], min(middle - height // 2, bounds[first + 1] - 1))
    return low, min(bounds[last + 1], max(low + height, bounds[last] + 1))


def _edges(strips: Strips) -> list[Nm]:
    """Give every place across the courses where what they ask for changes."""
    edges = {edge for hole in (*strips.holes, *strips.must_holes) for edge in (hole.low, hole.high)}
    edges |= {edge for zone in strips.zones for edge in (zone.low, zone.high)}
    return sorted(edges)
