"""Walls with a layout planted in them: first the layout, then just the boards that it takes, not a hair more.

The layouts use up what the rules leave open: gaps between courses and at joints, pieces narrower than their
course, joints anywhere on a member, pieces sawn side by side, out of tapered boards, from between lost wood.
Some walls are plain, and then there is no wood to spare at all.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from random import Random
from typing import TypeAlias

import shapely
from shapely.geometry.base import BaseGeometry

from builders import box_outline, job, nm, opening, outline, rectangle, studs, surface_layout, wall
from plankwright.check.regions import may_cover, must_cover
from plankwright.layout.strips import Span, Strips
from plankwright.measure import INCH, Nm
from plankwright.model import (
    Board,
    ConcealedZone,
    Course,
    Direction,
    Edge,
    EdgeTrim,
    Flaw,
    Framing,
    Job,
    JointPolicy,
    Piece,
    Rules,
    Severity,
    Surface,
    SurfaceLayout,
)

Interval: TypeAlias = tuple[Nm, Nm]

PLAIN = 0.4
"""How many of the walls are plain."""


@dataclass(frozen=True, slots=True)
class Planted:
    """A job and a layout that covers its only surface."""

    job: Job
    layout: SurfaceLayout


def plant(chance: Random) -> Planted:
    """Make a wall, cover it, and saw the cover back together into boards."""
    plain = chance.random() < PLAIN
    rules, surface = _rules(chance), _surface(chance, plain=plain)
    plot = _Plot(chance, surface, rules)
    rows = tuple(plot.courses())
    pile = _Pile(chance, rules, plain=plain)
    sawn = pile.saw([(index, piece) for index, row in enumerate(rows) for piece in row.pieces])
    courses = (
        Course(
            number=index + 1,
            from_nm=row.low,
            to_nm=row.high,
            pieces=tuple(
                replace(sawn[index, piece], label=f"{index + 1}{place}", place=plot.strips.rectangle(piece))
                for place, piece in enumerate(row.pieces)
            ),
        )
        for index, row in enumerate(rows)
    )
    return Planted(job(surface, pile.boards, rules), surface_layout(surface, *courses))


@dataclass(frozen=True, slots=True)
class _Row:
    low: Nm
    high: Nm
    pieces: tuple[Span, ...]


def _rules(chance: Random) -> Rules:
    gap = nm(chance.choice((0, 1 / 16, 1 / 8)))
    return Rules(
        crosscut_kerf_nm=nm(chance.choice((0, 1 / 16, 1 / 8))),
        rip_kerf_nm=nm(chance.choice((0, 1 / 16, 1 / 8))),
        straight_edge_loss_nm=nm(chance.choice((0, 1 / 8))),
        end_trim_nm=nm(chance.choice((0, 1 / 2))),
        gap_tolerance_nm=gap,
        width_tolerance_nm=chance.choice((0, gap // 2, gap)),
        bearing_nm=nm(chance.choice((0, 1 / 4, 1 / 2))),
        shortest_piece_nm=nm(chance.choice((4, 10, 16))),
        narrowest_course_nm=nm(chance.choice((2, 3))),
        expansion_gap_nm=nm(chance.choice((0, 1 / 4))),
        joints=JointPolicy.COUNT,
    )


def _surface(chance: Random, *, plain: bool) -> Surface:
    wide, high = chance.uniform(50, 150), chance.uniform(12, 40)
    lying = chance.random() < 0.7
    along, across = (wide, high) if lying else (high, wide)

    def turned(left: float, low: float, right: float, top: float) -> tuple[float, float, float, float]:
        return (left, low, right, top) if lying else (low, left, top, right)

    framing = Framing(solid=True)
    if chance.random() < 0.8:
        centre, centres = chance.uniform(0, 10), []
        while centre < wide:
            centres.append(centre)
            centre += chance.uniform(6, 22)
        runs = Direction.VERTICAL if lying else Direction.HORIZONTAL
        framing = studs(*centres, width=chance.choice((1.5, 3.5)), runs=runs)
    left, low = chance.uniform(-5, wide - 20), chance.uniform(-5, high - 5)
    hole = turned(left, low, left + chance.uniform(2, 40), low + chance.uniform(1, 20))
    left, low = chance.uniform(-5, wide - 20), chance.uniform(-5, high - 5)
    zone = turned(left, low, left + chance.uniform(2, 60), low + chance.uniform(4, 30))
    start = chance.choice((Edge.BOTTOM, Edge.TOP) if lying else (Edge.LEFT, Edge.RIGHT))
    corners, trim = box_outline(along, across), 0.0 if plain else chance.choice((0, 0.75, 2))
    if chance.random() < 0.3 and not plain:
        rise = chance.uniform(2, across - 4)
        corners = outline((0, 0), (along, 0), (along, across - rise), (along / 2, across), (0, across - rise))
    return wall(
        along,
        across,
        outline=corners,
        courses_run=Direction.HORIZONTAL if lying else Direction.VERTICAL,
        start=start,
        framing=framing,
        openings=(opening("door", *hole, trim=chance.choice((0, 1))),)
        if chance.random() < 0.5 and not plain
        else (),
        concealed=(ConcealedZone(id="bench", place=rectangle(*zone)),) if chance.random() < 0.5 else (),
        trim=EdgeTrim(bottom=nm(trim), top=nm(trim), left=nm(trim), right=nm(trim)),
    )


class _Plot:
    """A surface that is covered course by course, and where along a course pieces may butt."""

    def __init__(self, chance: Random, surface: Surface, rules: Rules) -> None:
        self.chance, self.surface, self.rules = chance, surface, rules
        self.strips = Strips(surface, rules)
        # Where gaps along and across meet, a larger disc fits than in either: so there is one kind of gap.
        gap = rules.gap_tolerance_nm
        self.gap_along, self.gap_across = chance.choice(((gap, 0), (0, gap)))
        self.may, self.must = may_cover(surface, rules), must_cover(surface, rules)

    def courses(self) -> Iterator[_Row]:
        gap, least = self.gap_across, self.rules.narrowest_course_nm
        low, end = self._heights()
        low += self.chance.randint(0, gap)
        while low < end - gap:
            high = low + self.chance.randint(least, 8 * INCH)
            if end - high < least + gap:
                high = max(end - self.chance.randint(0, gap), low + least)
            narrower = self.chance.choice((0, min(gap, self.rules.width_tolerance_nm)))
            yield _Row(low, high, tuple(self._pieces(low, high, narrower)))
            low = high + self.chance.randint(0, gap - narrower)

    def _heights(self) -> Interval:
        spans = [self._span(part) for part in shapely.get_parts(self.must)]
        return min(span.low for span in spans), max(span.high for span in spans)

    def _span(self, part: BaseGeometry) -> Span:
        left, bottom, right, top = (round(bound) for bound in part.bounds)
        if self.surface.courses_run is Direction.VERTICAL:
            left, bottom, right, top = bottom, left, top, right
        if self.surface.start in {Edge.TOP, Edge.RIGHT}:
            bottom, top = self.strips.extent - top, self.strips.extent - bottom
        return Span(left, right, bottom, top)

    def _pieces(self, low: Nm, high: Nm, narrower: Nm) -> Iterator[Span]:
        for left, right in self._runs(low, high):
            for start, end in self._parted(left, right, low, high):
                yield Span(start, end, low, high - narrower)

    def _runs(self, low: Nm, high: Nm) -> list[Interval]:
        """Give what is to cover of a strip, now and then in one piece across an opening."""
        gap, spans = self.gap_along, []
        strip = self._box(-(10**12), 10**12, low, high)
        for part in shapely.get_parts(self.must.intersection(strip)):
            if part.area > 0:
                span = self._span(part)
                spans.append((span.left, span.right))
        runs: list[Interval] = []
        for left, right in sorted(spans):
            if runs and (left <= runs[-1][1] + gap or self.chance.random() < 0.2):
                runs[-1] = (runs[-1][0], max(right, runs[-1][1]))
            else:
                runs.append((left, right))
        spare = self.chance.choice((0, gap))
        return [(left + spare, right - spare) for left, right in runs if left + 2 * spare < right]

    def _box(self, left: Nm, right: Nm, low: Nm, high: Nm) -> BaseGeometry:
        place = self.strips.rectangle(Span(left, right, low, high))
        return shapely.box(place.left, place.bottom, place.right, place.top)

    def _parted(self, left: Nm, right: Nm, low: Nm, high: Nm) -> Iterator[Interval]:
        shortest, start = self.rules.shortest_piece_nm, left
        eager = self.chance.choice((0.1, 0.4, 1.0))
        for near, far in self._places(left, right):
            end = self.chance.choice((near, far, self.chance.randint(near, far)))
            again = self.chance.choice((end, min(far, end + self.gap_along)))
            fits = end - start >= shortest and right - again >= shortest
            if fits and self.chance.random() < eager and self._hangs(end, again, low, high):
                yield start, end
                start = again
        yield start, right

    def _hangs(self, end: Nm, again: Nm, low: Nm, high: Nm) -> bool:
        line = self._box(end, again + 1, low, high)
        return bool(self.may.intersects(line))

    def _places(self, left: Nm, right: Nm) -> list[Interval]:
        if self.surface.framing.solid:
            spots = sorted(self.chance.randint(left, right) for _ in range(6))
            return [(spot, spot) for spot in spots]
        bearing = self.rules.bearing_nm
        faces = (
            (
                member.centre_nm - member.width_nm // 2 + bearing,
                member.centre_nm + member.width_nm // 2 - bearing,
            )
            for member in self.surface.crossing_members
        )
        return [(near, far) for near, far in faces if left < near <= far < right]


_Key: TypeAlias = tuple[int, Span]
"""A piece, known by its course and by where it hangs."""


class _Pile:
    """Boards put together from the pieces that they are to give."""

    def __init__(self, chance: Random, rules: Rules, *, plain: bool) -> None:
        self.chance, self.rules, self.plain = chance, rules, plain
        self.boards: list[Board] = []

    def saw(self, pieces: list[_Key]) -> dict[_Key, Piece]:
        """Give each piece as it lies on its board."""
        left = list(pieces)
        sawn: dict[_Key, Piece] = {}
        self.chance.shuffle(left)
        more = self.chance.choice(((0,), (0, 0, 1, 2)))
        while left:
            beside = 1 if self.plain else self.chance.choice((1, 1, 2))
            row = [[left.pop() for _ in range(min(len(left), beside))]]
            row += [[left.pop()] for _ in range(min(len(left), self.chance.choice(more)))]
            self._board(row, sawn)
        return sawn

    def _board(self, row: list[list[_Key]], sawn: dict[_Key, Piece]) -> None:
        rules, name = self.rules, f"B{len(self.boards)}"
        along, width = rules.end_trim_nm, 0
        flaws: list[Flaw] = []
        for lanes in row:
            across = rules.straight_edge_loss_nm
            for key in lanes:
                sawn[key] = self._piece(name, key[1], along, across)
                across = sawn[key].across_to_nm + rules.rip_kerf_nm
            width = max(width, across - rules.rip_kerf_nm + rules.straight_edge_loss_nm)
            along = max(sawn[key].along_to_nm for key in lanes) + rules.crosscut_kerf_nm
            if self.chance.random() < 0.2 and lanes is not row[-1]:
                rot = self.chance.randint(1, 3 * INCH)
                start = along - rules.crosscut_kerf_nm
                along += rot
                flaws.append(Flaw(start_nm=start, end_nm=along, what="rot", severity=Severity.LOST))
        length = along - rules.crosscut_kerf_nm + rules.end_trim_nm
        wider = width if self.plain else width + self.chance.choice((0, 0, self.chance.randint(0, 2 * INCH)))
        ends = (width, wider) if self.chance.random() < 0.5 else (wider, width)
        self.boards.append(
            Board(
                id=name,
                length_nm=max(length, *ends),
                width_start_nm=ends[0],
                width_end_nm=ends[1],
                thickness_nm=INCH,
                flaws=tuple(flaws),
            )
        )

    def _piece(self, board: str, hung: Span, along: Nm, across: Nm) -> Piece:
        return Piece(
            label="",
            board_id=board,
            place=rectangle(0, 0, 1, 1),
            along_from_nm=along,
            along_to_nm=along + hung.right - hung.left,
            across_from_nm=across,
            across_to_nm=across + hung.high - hung.low,
            turned=self.chance.random() < 0.5,
        )
