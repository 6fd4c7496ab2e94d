"""A surface before anything is laid out on it: what is measured so far, drawn small enough for a phone."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import TypeAlias

import shapely
from shapely.geometry.base import BaseGeometry

from plankwright.draw import shapes
from plankwright.draw.labels import Block, Room
from plankwright.draw.lettering import shortened, text_width
from plankwright.draw.rulers import dimension
from plankwright.draw.scene import Circle, Item, Line, Polygon, Rect, Scene, Span
from plankwright.draw.styles import Style
from plankwright.draw.subject import Subject, subject
from plankwright.draw.view import View, polygons
from plankwright.layout.hanging import called
from plankwright.layout.regions import as_polygon, must_region
from plankwright.measure import MILLIMETRE, Nm, TapeStyle, write_inches, write_length
from plankwright.model import (
    ConcealedZone,
    CutOut,
    Edge,
    Job,
    KeepOut,
    Opening,
    Rectangle,
    Rules,
    Score,
    Surface,
    SurfaceLayout,
)

Thing: TypeAlias = Opening | CutOut | ConcealedZone | KeepOut
"""What stands in, on or behind a surface."""

_WIDTH, _MOST_HEIGHT = 110.0, 74.0
"""Of the sheet, which shows as wide as a phone. [mm]"""

_MARGIN = 1.5
_DIMENSION = 5.5
"""Around the drawing, and what a dimension line takes beside it. [mm]"""

_SIZE, _SMALLER = 3.6, 3.0
"""Font sizes, which can be read on a phone. [mm]"""

_REACH = 25.0
"""How far from what it names a text may stand. [mm]"""

_NAME_WIDTHS = (45.0, 25.0, 14.0)
"""How wide a name may be, best first; it is cut off. [mm]"""

_UNNAMED = {
    "opening": "opening",
    "cut-out": "socket or pipe",
    "concealed": "fixture",
    "keep-out": "no-nail place",
}
"""How what has no name of its own is called, with a hyphen and its number, and how that is said."""

_NOT_SCORED = Score(bare_nm2=0, joints_in_sight=0, wood_spent_nm2=0, cuts=0)
_NO_GAP = Rules(expansion_gap_nm=0)


def bare_wall(surface: Surface, tape: TapeStyle, *, measures: bool = True) -> Scene:
    """Draw a surface with all that stands in, on and behind it, and no boards.

    Parameters
    ----------
    surface
        The surface.
    tape
        How lengths are written.
    measures
        Whether its size and the names of things are lettered; a small picture goes without.

    Returns
    -------
    Scene
        As high as it needs. The box around the surface is marked as where a tap means a place on it, and a
        heavy line is the side that the first course is hung on.
    """
    return _BareWall(surface, tape, measures=measures).scene()


def name_of(thing: Thing) -> str:
    """Say what something in, on or behind a surface is called; by what it is where it has no name of its own.

    Parameters
    ----------
    thing
        What it is.

    Returns
    -------
    str
        Such as "door", "socket", or "opening 1".
    """
    word, _, number = thing.id.rpartition("-")
    if word not in _UNNAMED or not number.isdecimal():
        return called(thing) if isinstance(thing, CutOut | KeepOut) else thing.id
    what = thing.what if isinstance(thing, CutOut | KeepOut) else ""
    return what or f"{_UNNAMED[word]} {number}"


def _within(surface: Surface) -> Surface:
    """Give a surface without what lies wholly outside it, as may be while it is being measured."""
    whole = shapely.Polygon(surface.outline)

    def inside(thing: Thing) -> bool:
        return as_polygon(thing.place).intersection(whole).area > 0

    return replace(
        surface,
        openings=tuple(filter(inside, surface.openings)),
        cut_outs=tuple(filter(inside, surface.cut_outs)),
        concealed=tuple(filter(inside, surface.concealed)),
        keep_outs=tuple(filter(inside, surface.keep_outs)),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Upright:
    """From where to where an end of the surface stands upright. [nm]"""

    low: Nm
    high: Nm


class _BareWall:
    def __init__(self, surface: Surface, tape: TapeStyle, *, measures: bool) -> None:
        surface = _within(surface)
        empty = SurfaceLayout(surface_id=surface.id, courses=(), score=_NOT_SCORED)
        self.what: Subject = subject(Job(name=surface.id, tape=tape, surfaces=(surface,), boards=()), empty)
        self.surface, self.tape, self.measures = surface, tape, measures
        aside = _MARGIN + (_DIMENSION if measures else 0.0)
        room_x, room_y = _WIDTH - 2 * aside, _MOST_HEIGHT - _MARGIN - aside
        width, height = (nm / MILLIMETRE for nm in (surface.width_nm, surface.height_nm))
        scale = max(width / room_x, height / room_y)
        self.height = height / scale + _MARGIN + aside
        self.view = View(scale=scale, left=(_WIDTH - width / scale) / 2, bottom=_MARGIN + height / scale)

    def scene(self) -> Scene:
        surface = self.surface
        width, height = (write_length(nm, self.tape) for nm in (surface.width_nm, surface.height_nm))
        return Scene(
            width=_WIDTH,
            height=self.height,
            title=f"{surface.id}, {width} × {height}",
            description=self._description(),
            items=tuple(self._items()),
        )

    def _items(self) -> Iterator[Item]:
        what, view, surface = self.what, self.view, self.surface
        yield from polygons(view.region(what.standing), Style.WOOD)
        yield from shapes.framing(what, view)
        yield from self._trim()
        yield from shapes.zones(what, view)
        yield from shapes.holes(what, view)
        yield from shapes.cut_outs(what, view)
        yield shapes.outline(what, view)
        yield self._first_course()
        yield Rect(
            x=view.left,
            y=view.y(surface.height_nm),
            width=view.size(surface.width_nm),
            height=view.size(surface.height_nm),
            style=Style.TAP_AREA,
        )
        if self.measures:
            yield from self._dimensions()
            yield from self._names()

    def _trim(self) -> Iterator[Item]:
        """Draw how far trim will cover the boards."""
        trim = self.surface.trim
        if any((trim.bottom, trim.top, trim.left, trim.right)) or any(
            opening.trim_nm for opening in self.surface.openings
        ):
            for part in polygons(self.view.region(must_region(self.surface, _NO_GAP)), Style.EXTENSION):
                yield Polygon(rings=part.rings, style=Style.EXTENSION)

    def _first_course(self) -> Item:
        """Draw the side that the first course is hung on, as far as the surface reaches."""
        width, height = self.surface.width_nm, self.surface.height_nm
        ends = {
            Edge.BOTTOM: ((0, 0), (width, 0)),
            Edge.TOP: ((0, height), (width, height)),
            Edge.LEFT: ((0, 0), (0, height)),
            Edge.RIGHT: ((width, 0), (width, height)),
        }[self.surface.start]
        return Line(places=(self.view.place(ends[0]), self.view.place(ends[1])), style=Style.REFERENCE)

    def _dimensions(self) -> Iterator[Item]:
        view, surface = self.view, self.surface
        left, right = view.left, view.x(surface.width_nm)
        below = view.bottom + _DIMENSION / 2
        yield from self._dimension((left, below), (right, below), surface.width_nm)
        whole = _Upright(low=0, high=surface.height_nm)
        at_left, at_right = self._upright(Edge.LEFT), self._upright(Edge.RIGHT)
        if whole not in {at_left, at_right}:
            at_right = whole
        if at_right is not None:
            yield from self._height(right + _DIMENSION / 2, at_right)
        if at_left is not None and at_left != at_right:
            yield from self._height(left - _DIMENSION / 2, at_left)

    def _height(self, x: float, upright: _Upright) -> tuple[Item, ...]:
        ends = (x, self.view.y(upright.high)), (x, self.view.y(upright.low))
        return self._dimension(*ends, upright.high - upright.low)

    def _dimension(self, start: tuple[float, float], end: tuple[float, float], nm: Nm) -> tuple[Item, ...]:
        text = write_length(nm, self.tape)
        room = abs(end[0] - start[0]) + abs(end[1] - start[1])
        size = min(_SIZE, _SIZE * room / text_width([Span(text=text)], _SIZE))
        return dimension(start, end, text, size=max(size, 0.1))

    def _upright(self, side: Edge) -> _Upright | None:
        """Give where an end of the surface stands upright; the longest stretch where there are several."""
        at = self.surface.width_nm if side is Edge.RIGHT else 0
        corners = self.surface.outline
        stretches = [
            _Upright(low=min(y, other_y), high=max(y, other_y))
            for (x, y), (other_x, other_y) in zip(corners, (*corners[1:], corners[0]), strict=True)
            if x == other_x == at and y != other_y
        ]
        return max(stretches, key=lambda stretch: stretch.high - stretch.low, default=None)

    def _names(self) -> Iterator[Item]:
        surface, view = self.surface, self.view
        room = Room(shapely.union_all([view.box(keep_out.place) for keep_out in surface.keep_outs]))
        for opening in surface.openings:
            yield from self._name_opening(room, name_of(opening), opening.place)
        ground = view.region(self.what.standing)
        for name, place in self._named():
            yield from self._name(room, ground, name, place)

    def _named(self) -> Iterator[tuple[str, Rectangle]]:
        surface = self.surface
        things: tuple[Thing, ...] = (*surface.cut_outs, *surface.keep_outs, *surface.concealed)
        for thing in things:
            yield name_of(thing), thing.place

    def _name_opening(self, room: Room, name: str, place: Rectangle) -> Iterator[Item]:
        width, height = (write_inches(nm, self.tape) for nm in (place.width_nm, place.height_nm))
        head, size = Span(text=shortened(name, _REACH, _SIZE), bold=True), Span(text=f"{width} × {height}")
        cell = self.view.box(place)
        blocks = [
            Block(lines=lines, size=font, turned=turned)
            for font in (_SIZE, _SMALLER)
            for turned in (False, True)
            for lines in (((head,), (size,)), ((head,),))
        ]
        spot = room.inside([cell], blocks)
        room.keep_clear(cell)
        if spot is not None:
            yield from spot.block.drawn(spot.centre, ground=Style.PAPER)

    def _name(self, room: Room, ground: BaseGeometry, name: str, place: Rectangle) -> Iterator[Item]:
        """Name something within it, else beside it on a leader; on the smallest of surfaces not at all."""
        texts = dict.fromkeys(shortened(name, width, _SMALLER) for width in _NAME_WIDTHS)
        blocks = [
            Block(lines=((Span(text=text),),), size=_SMALLER, turned=turned)
            for text in texts
            for turned in (False, True)
        ]
        target = self.view.box(place)
        spot = room.inside([ground.intersection(target)], blocks)
        spot = spot or room.beside([ground], blocks, target, _REACH)
        if spot is None:
            return
        if spot.leader is not None:
            end_x, end_y = spot.leader[1]
            yield Line(places=spot.leader, style=Style.LEADER)
            yield Circle(x=end_x, y=end_y, radius=0.5, style=Style.SOLID)
        yield from spot.block.drawn(spot.centre, ground=Style.WOOD, style=Style.NOTE)

    def _description(self) -> str:
        surface = self.surface
        things = [*map(name_of, surface.openings), *(name for name, _ in self._named())]
        on_it = f" On it: {', '.join(things)}." if things else ""
        return f"{surface.kind.capitalize()}, the first course at the {surface.start}.{on_it}"
