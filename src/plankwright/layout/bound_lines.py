"""What no layout gets round: the lines along the courses, and where each may be jointed.

Every line along the courses through the surface is looked at, wherever the courses may lie. Lines that ask
for the same are counted together by the height of wall that they make up.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import isqrt

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from plankwright.layout.regions import along_and_across
from plankwright.layout.strips import Span, Strips
from plankwright.measure import INCH, MILLIMETRE, Nm
from plankwright.model import JointPolicy, Rules

ROUNDING: Nm = MILLIMETRE // 1000
"""Lengths may be off by this and still count as right: no tape shows it. [nm]"""

SHORT: Nm = 10 * MILLIMETRE
"""What is shorter than this is not counted as taking any wood. [nm]"""

_LEFT_INWARDS, _RIGHT_INWARDS = 3, 2
"""Corners are moved so far inwards, as they may be off by rounding. [nm]"""

_SLOPE_STEP: Nm = 3 * INCH
"""Beside a slope lines are counted together over at most this height. [nm]"""

_SLOPE_STEPS = 16
"""So many such heights at the most between two corners of the outline."""

_ARCS = 1000
"""Where joints may fall anywhere, runs are parted so that there are about so many ways from cell to cell."""

Interval = tuple[Nm, Nm]


def gap_allowed(rules: Rules) -> Nm:
    """Give the widest gap that counts as none. [nm]"""
    return rules.gap_tolerance_nm + 2 * ROUNDING


@dataclass(frozen=True, slots=True)
class Cell:
    """Where along a line a joint may fall, and whether something may hide it there. [nm]"""

    left: Nm
    right: Nm
    hidden: bool


@dataclass(frozen=True, slots=True)
class LineRun:
    """A stretch of a line that must be covered.

    Parameters
    ----------
    start, end
        At least this much of it is covered. [nm]
    cells
        Where its joints may fall, in order.
    first, last
        Whether no other run lies before it, or after it, on its line.
    """

    start: Nm
    end: Nm
    cells: tuple[Cell, ...]
    first: bool
    last: bool

    @property
    def length(self) -> Nm:
        """[nm]."""
        return self.end - self.start

    def nominal(self, rules: Rules) -> Nm:
        """Give its length before anything was cut off for gaps and rounding. [nm]"""
        return self.length + 4 * gap_allowed(rules) + _LEFT_INWARDS + _RIGHT_INWARDS


@dataclass(frozen=True, slots=True)
class Level:
    """Lines that lie next to one another and ask for the same.

    Parameters
    ----------
    low, high
        From where to where across the courses. [nm]
    runs
        In order along them.
    """

    low: Nm
    high: Nm
    runs: tuple[LineRun, ...]


@dataclass(frozen=True, slots=True)
class Lines:
    """All lines of a surface.

    Parameters
    ----------
    heights
        For each run, the height of the lines that have it. [nm]
    apart
        The least distance between two runs of one line; nothing when no line has two. [nm]
    """

    heights: dict[LineRun, Nm]
    apart: Nm | None


def lines_of(strips: Strips) -> Lines:
    """Look at every line along the courses of a surface.

    Parameters
    ----------
    strips
        The surface.

    Returns
    -------
    Lines
        Rounded so that they never ask for more than any layout gives.
    """
    heights: Counter[LineRun] = Counter()
    levels = levels_of(strips)
    for level in levels:
        for run in level.runs:
            heights[run] += level.high - level.low
    return Lines(dict(heights), apart(levels))


def levels_of(strips: Strips) -> list[Level]:
    """Give the lines of a surface level by level, from the start side on."""
    reach = gap_allowed(strips.rules) + 4 * ROUNDING
    bands = _bands(strips)
    edges = _edges(strips, bands, reach)
    cells = isqrt(2 * _ARCS // max(1, len(edges) // 2))
    broadest = max(1, min((strips.right - strips.left) // cells, strips.rules.shortest_piece_nm // 2))
    levels = []
    for low, high in pairwise(edges):
        around = low - reach, high + reach
        levels.append(Level(low, high, tuple(_runs(strips, _core(bands, *around), around, broadest))))
    return levels


def apart(levels: Iterable[Level]) -> Nm | None:
    """Give the least distance between two runs of one line; nothing when no line has two. [nm]"""
    return min(
        (right.start - left.end for level in levels for left, right in pairwise(level.runs)), default=None
    )


@dataclass(frozen=True, slots=True)
class _Band:
    """What to cover between two corners of the outline: each (left, right) below, and (left, right) above."""

    low: Nm
    high: Nm
    sides: tuple[tuple[Interval, Interval], ...]

    @property
    def slopes(self) -> bool:
        return any(below != above for below, above in self.sides)

    def inner(self, low: Nm, high: Nm) -> list[Interval]:
        """Give what is to cover at every height from low to high."""
        low, high = max(low, self.low), min(high, self.high)
        spans = []
        for below, above in self.sides:
            left = max(self._between(below[0], above[0], at, up=True) for at in (low, high))
            right = min(self._between(below[1], above[1], at, up=False) for at in (low, high))
            if left < right:
                spans.append((left, right))
        return spans

    def _between(self, below: Nm, above: Nm, at: Nm, *, up: bool) -> Nm:
        part, whole = (above - below) * (at - self.low), self.high - self.low
        return below - (-part // whole) if up else below + part // whole


def _bands(strips: Strips) -> list[_Band]:
    must = _in_course_frame(strips)
    if must.is_empty:
        return []
    left, _, right, _ = must.bounds
    levels = sorted({round(v) for _, v in shapely.get_coordinates(must)})
    bands = []
    for low, high in pairwise(levels):
        clipped = must.intersection(shapely.box(left - 1, low, right + 1, high))
        parts = (part for part in shapely.get_parts(clipped) if part.area > 0)
        sides = sorted(side for part in parts for side in _sides(shapely.get_coordinates(part), low, high))
        bands.append(_Band(low, high, tuple(sides)))
    return bands


def _in_course_frame(strips: Strips) -> BaseGeometry:
    def turn(points: np.ndarray) -> np.ndarray:
        return np.array([along_and_across(strips.surface, (x, y)) for x, y in points])

    return shapely.transform(strips.must, turn)


def _sides(corners: np.ndarray, low: Nm, high: Nm) -> Iterator[tuple[Interval, Interval]]:
    """Read the slanted sides of a part off its corners, a little inwards for rounding."""
    ends = [[u for u, v in corners if abs(v - level) <= 2] for level in (low, high)]  # noqa: PLR2004
    if all(ends):
        below, above = ((int(min(end)) + _LEFT_INWARDS, int(max(end)) - _RIGHT_INWARDS) for end in ends)
        yield below, above


def _edges(strips: Strips, bands: Sequence[_Band], reach: Nm) -> list[Nm]:
    """Give the heights between which all lines ask for the same, or nearly where there are slopes."""
    if not bands:
        return []
    edges = {zone.low - reach for zone in strips.zones} | {zone.high + reach for zone in strips.zones}
    edges |= {level + step for band in bands for level in (band.low, band.high) for step in (-reach, reach)}
    for band in bands:
        if band.slopes:
            steps = min(_SLOPE_STEPS, -(-(band.high - band.low) // _SLOPE_STEP))
            edges |= {band.low + (band.high - band.low) * step // steps for step in range(1, steps)}
    return sorted(edge for edge in edges if bands[0].low <= edge <= bands[-1].high)


def _core(bands: Sequence[_Band], low: Nm, high: Nm) -> list[Interval]:
    """Give what is to cover at every height from low to high."""
    if low < bands[0].low or high > bands[-1].high:
        return []
    spans: list[Interval] | None = None
    for band in bands:
        if band.low < high and low < band.high:
            inner = band.inner(low, high)
            spans = inner if spans is None else list(_common(spans, inner))
    return spans or []


def _common(ones: Iterable[Interval], others: Iterable[Interval]) -> Iterator[Interval]:
    for left, right in ones:
        for start, end in others:
            if max(left, start) < min(right, end):
                yield max(left, start), min(right, end)


def _runs(strips: Strips, core: Sequence[Interval], heights: Interval, broadest: Nm) -> Iterator[LineRun]:
    # A piece may stop a gap short of the end, and one that reaches in by no more than a gap counts as none.
    spare = 2 * gap_allowed(strips.rules)
    long = [(left, right) for left, right in core if right - left >= 2 * spare + SHORT]
    zones = [zone for zone in strips.zones if zone.low < heights[1] and heights[0] < zone.high]
    for place, (left, right) in enumerate(long):
        cells = tuple(_cells(strips, (left, right), zones, broadest))
        yield LineRun(left + spare, right - spare, cells, place == 0, place == len(long) - 1)


def _cells(strips: Strips, core: Interval, zones: Sequence[Span], broadest: Nm) -> Iterator[Cell]:
    (left, right), rules = core, strips.rules
    edges = {edge for zone in zones for edge in (zone.left - ROUNDING, zone.right + ROUNDING)}
    for low, high in _joint_places(strips, left, right):
        cuts = [low, *sorted(edge for edge in edges if low < edge < high), high]
        for start, end in pairwise(cuts):
            hidden = any(zone.left - ROUNDING < end and start < zone.right + ROUNDING for zone in zones)
            if hidden or rules.joints is not JointPolicy.NEVER:
                # Cut at the same places in every run, so that the same lengths come up again.
                inner = (
                    range(start - start % broadest + broadest, end, broadest)
                    if end - start > broadest
                    else ()
                )
                yield from (Cell(one, other, hidden) for one, other in pairwise((start, *inner, end)))


def _joint_places(strips: Strips, left: Nm, right: Nm) -> list[Interval]:
    """Give where both pieces of a joint have their bearing, overlapping faces joined."""
    surface, bearing = strips.surface, strips.rules.bearing_nm
    if strips.solid_at(left):
        return [(left, right)]
    places: list[Interval] = []
    for member in surface.crossing_members:
        twice = member.width_nm - 2 * bearing + 2 * ROUNDING
        low, high = (2 * member.centre_nm - twice) // 2, -(-(2 * member.centre_nm + twice) // 2)
        low, high = max(low, left), min(high, right)
        if twice >= 0 and low <= high:
            places.append((low, high))
    merged: list[Interval] = []
    for low, high in sorted(places):
        if merged and low <= merged[-1][1]:
            merged[-1] = (merged[-1][0], max(high, merged[-1][1]))
        else:
            merged.append((low, high))
    return merged
