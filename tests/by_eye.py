"""Layouts filled in by eye for tests that need a whole surface covered: no search and no pile.

Each course takes the height it is told and is cut where it is told; every piece gets a board of its own.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import pairwise

import shapely
from shapely.geometry.base import BaseGeometry

from builders import NOTHING_SCORED, nm
from plankwright.layout.regions import (
    as_polygon,
    course_strip,
    extent_in_course,
    may_region,
    must_region,
)
from plankwright.measure import INCH, Nm
from plankwright.model import (
    Board,
    Course,
    Direction,
    Piece,
    Point,
    Rectangle,
    Rules,
    Surface,
    SurfaceLayout,
)

_SLIVER = 1e12
"""An area that is rounding, not wood. [nm²]"""


def filled(
    surface: Surface,
    heights: Sequence[float],
    joints: Mapping[int, Sequence[float]],
    rules: Rules | None = None,
    *,
    bare: Sequence[str] = (),
    nails: bool = False,
) -> tuple[SurfaceLayout, tuple[Board, ...]]:
    """Fill a surface.

    `heights` are course heights in inches from the start edge on, the last one cut down to the surface;
    `joints` says where along each course, by its number, it is cut. Labels in `bare` are left bare.
    """
    rules = Rules() if rules is None else rules
    within = may_region(replace(surface, openings=()), rules)
    _, _, start, end = extent_in_course(surface, _bounds(within))
    courses: list[Course] = []
    boards: list[Board] = []
    bare_places: list[Rectangle] = []
    for number, height in enumerate(heights, start=1):
        from_nm, to_nm = start, min(start + nm(height), end)
        if from_nm >= end:
            break
        start = to_nm
        places = _runs(surface, rules, within, from_nm, to_nm, [nm(at) for at in joints.get(number, ())])
        pieces = []
        for letter, place in zip("abcdefghijklmnop", places, strict=False):
            label = f"{number}{letter}"
            if label in bare:
                bare_places.append(place)
                continue
            board_id = f"B{len(boards) + 1:02d}"
            pieces.append(_piece(surface, within, place, label, board_id, nails=nails))
            boards.append(_board(pieces[-1]))
        courses.append(Course(number=number, from_nm=from_nm, to_nm=to_nm, pieces=tuple(pieces)))
    uncovered = must_region(surface, rules).difference(
        shapely.union_all([as_polygon(piece.place) for course in courses for piece in course.pieces])
    )
    return (
        SurfaceLayout(
            surface_id=surface.id,
            courses=tuple(courses),
            bare=tuple(bare_places),
            score=replace(NOTHING_SCORED, bare_nm2=round(uncovered.area)),
        ),
        tuple(boards),
    )


def _bounds(region: BaseGeometry) -> Rectangle:
    left, bottom, right, top = map(round, region.bounds)
    return Rectangle(left=left, bottom=bottom, right=right, top=top)


def _runs(
    surface: Surface, rules: Rules, within: BaseGeometry, from_nm: Nm, to_nm: Nm, cuts: Sequence[Nm]
) -> list[Rectangle]:
    strip = course_strip(surface, from_nm, to_nm)
    stretches = []
    for part in shapely.get_parts(within.intersection(as_polygon(strip))):
        if isinstance(part, shapely.Polygon) and part.area > _SLIVER:
            along_from, along_to, _, _ = extent_in_course(surface, _bounds(part))
            stretches.append((along_from, along_to))
    for opening in surface.openings:
        hidden = max(rules.expansion_gap_nm, opening.trim_nm)
        _, _, low, high = extent_in_course(surface, opening.place)
        if low - hidden <= from_nm and to_nm <= high + hidden:
            left, right, _, _ = extent_in_course(surface, opening.place)
            left, right = left - rules.expansion_gap_nm, right + rules.expansion_gap_nm
            stretches = [
                part
                for one, two in stretches
                for part in ((one, min(two, left)), (max(one, right), two))
                if part[0] < part[1]
            ]
    places = []
    for one, two in sorted(stretches):
        ends = [one, *sorted(cut for cut in cuts if one < cut < two), two]
        for left, right in pairwise(ends):
            place = _placed(surface, strip, left, right)
            inside = within.intersection(as_polygon(place))
            if inside.area > _SLIVER:
                places.append(place)
    return places


def _placed(surface: Surface, strip: Rectangle, left: Nm, right: Nm) -> Rectangle:
    if surface.courses_run is Direction.HORIZONTAL:
        return Rectangle(left=left, bottom=strip.bottom, right=right, top=strip.top)
    return Rectangle(left=strip.left, bottom=left, right=strip.right, top=right)


def _piece(
    surface: Surface, within: BaseGeometry, place: Rectangle, label: str, board_id: str, *, nails: bool
) -> Piece:
    one, two, low, high = extent_in_course(surface, place)
    margin = INCH // 2
    nailed: tuple[Point, ...] = ()
    if nails:
        at = [m.centre_nm for m in surface.crossing_members if one + margin <= m.centre_nm <= two - margin]
        level = surface.courses_run is Direction.HORIZONTAL
        ends = (place.bottom, place.top) if level else (place.left, place.right)
        heights = (ends[0] + INCH, ends[1] - INCH)
        grid = ((u, v) if level else (v, u) for u in at for v in heights)
        nailed = tuple(point for point in grid if shapely.Point(point).within(within))
    return Piece(
        label=label,
        board_id=board_id,
        place=place,
        along_from_nm=margin,
        along_to_nm=margin + two - one,
        across_from_nm=INCH // 8,
        across_to_nm=INCH // 8 + high - low,
        nails=nailed,
    )


def _board(piece: Piece) -> Board:
    width = piece.across_to_nm + INCH // 8
    return Board(
        id=piece.board_id,
        length_nm=max(piece.along_to_nm + INCH // 2, width),
        width_start_nm=width,
        width_end_nm=width,
        thickness_nm=3 * INCH // 4,
    )
