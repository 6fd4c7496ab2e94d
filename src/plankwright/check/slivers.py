"""Rule 7 again: what a notch or a slope leaves of a piece is not too thin to hang."""

from collections.abc import Iterator
from itertools import pairwise

from shapely.geometry import LineString, Polygon
from shapely.geometry.base import BaseGeometry

from plankwright.check.case import Hung, SurfaceCase
from plankwright.check.finding import Finding, FindingCode, found
from plankwright.check.frame import Frame
from plankwright.check.shapes import joined, line_in, polygons
from plankwright.check.slack import SLACK, exceeds
from plankwright.check.wording import tell
from plankwright.measure import Nm

Span = tuple[float, float]
"""From where to where across the course. [nm]"""


def check_slivers(case: SurfaceCase) -> Iterator[Finding]:
    """Warn of stretches of a piece that are narrower across the course than the narrowest course may be.

    A stretch that runs out to a point, as at the end of every board under a slope, cannot be helped, and only
    counts when it is longer than the shortest piece.
    """
    least = case.rules.narrowest_course_nm
    for hung in case.judged:
        if exceeds(least, hung.v_to - hung.v_from) or _whole(hung):
            continue  # Where the course itself is too narrow, that is told of the course.
        for sliver in polygons(joined(_narrow_stretches(case.frame, hung, least))):
            u_from, _, u_to, _ = sliver.bounds
            length, thin = u_to - u_from, _least_width(sliver)
            if thin <= 2 * SLACK and not exceeds(length, case.rules.shortest_piece_nm):
                continue
            (long,), (wide, needed) = tell(case.job.tape, length), tell(case.job.tape, thin, least)
            message = (
                f"A notch or a slope leaves a stretch {long} long that is down to {wide} wide,"
                f" under {needed}: it may break off."
            )
            yield found(FindingCode.SLIVER, hung.place, message, measured=thin, allowed=least)


def _narrow_stretches(frame: Frame, hung: Hung, least: Nm) -> Iterator[Polygon]:
    """Cut what hangs into upright trapezoids and give the narrow part of each, in the frame of the courses.

    Between two neighbouring corners, along the course, every edge of a shape is straight, so the shape is a
    row of trapezoids there.
    """
    for shape in polygons(hung.shape):
        corners = {
            frame.point(x, y)[0] for ring in (shape.exterior, *shape.interiors) for x, y in ring.coords
        }
        for u_from, u_to in pairwise(sorted(corners)):
            if u_to - u_from > SLACK:
                # A hair inside the corners, where neither side belongs to a notch.
                starts = _spans(frame, hung, shape, u_from + SLACK / 4)
                ends = _spans(frame, hung, shape, u_to - SLACK / 4)
                for start, end in zip(starts, ends, strict=False):
                    yield from _narrow_part(u_from, u_to, start, end, least)


def _spans(frame: Frame, hung: Hung, shape: Polygon, u: float) -> list[Span]:
    """Give the spans of a shape across the course at one place along it, in order. [nm]"""
    line = LineString(
        (frame.surface_point(u, hung.v_from - SLACK), frame.surface_point(u, hung.v_to + SLACK))
    )
    crossing = line_in(line, shape)
    parts: tuple[BaseGeometry, ...] = tuple(getattr(crossing, "geoms", (crossing,)))
    spans = [frame.extent(*part.bounds) for part in parts if part.length > 0]
    return sorted((span.v_from, span.v_to) for span in spans)


def _narrow_part(u_from: float, u_to: float, start: Span, end: Span, least: Nm) -> Iterator[Polygon]:
    wide_start, wide_end = start[1] - start[0], end[1] - end[0]
    if min(wide_start, wide_end) + SLACK >= least:
        return
    if max(wide_start, wide_end) > least:
        share = (least - wide_start) / (wide_end - wide_start)
        u_limit = u_from + share * (u_to - u_from)
        limit = (start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1]))
        if wide_start < wide_end:
            u_to, end = u_limit, limit
        else:
            u_from, start = u_limit, limit
    yield Polygon(((u_from, start[0]), (u_to, end[0]), (u_to, end[1]), (u_from, start[1])))


def _least_width(sliver: Polygon) -> float:
    """Give how wide a sliver is at the narrower of its two ends. [nm]

    It is measured inside of them, as its sides were, and carried on to the end: under a slope that a board
    meets nearly square, a hair farther in is already much wider.
    """
    u_from, _, u_to, _ = sliver.bounds
    start, end = _width(sliver, u_from + SLACK), _width(sliver, u_to - SLACK)
    rise = abs(end - start) / max(SLACK, u_to - u_from - 2 * SLACK)
    return max(0.0, min(start, end) - (SLACK + SLACK / 4) * rise)


def _width(sliver: Polygon, u: float) -> float:
    """Give how wide a sliver is across the course at one place along it. [nm]"""
    _, v_from, _, v_to = sliver.bounds
    return line_in(LineString(((u, v_from - SLACK), (u, v_to + SLACK))), sliver).length


def _whole(hung: Hung) -> bool:
    """Whether what hangs is the blank as it is."""
    along, across = hung.u_to - hung.u_from, hung.v_to - hung.v_from
    return along * across - hung.shape.area <= SLACK * (along + across)
