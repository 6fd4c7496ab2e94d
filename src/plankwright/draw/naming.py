"""The lettering on a wall map: what each piece, opening and zone says, and where it finds room to say it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import shapely
from shapely.geometry.base import BaseGeometry

from plankwright.draw.labels import Block, Room, Spot
from plankwright.draw.scene import Circle, Item, Line, Span
from plankwright.draw.styles import Style
from plankwright.draw.subject import HungRow, Subject
from plankwright.draw.view import View
from plankwright.layout.hanging import called
from plankwright.measure import write_inches
from plankwright.model import Direction, Rectangle

SIZES = (3.6, 3.2, 2.8, 2.5, 2.2, 2.0, 1.8)
"""Font sizes of lettering on the surface, best first; the last is 5 points, which still prints well. [mm]"""

_NAME_SIZES = (2.4, 1.9)
"""Font sizes of the names of things, best first. [mm]"""

_NAIL = 0.2
"""Half of what is kept free around the middle of a nail. [mm]"""

_MOST = 0.85
"""The share of the pieces that must find room at a font size before it is taken for all of them."""

_BORDER = 0.5
"""How much of the sheet a heavy line takes to either side. [mm]"""

_REACH, _PIECE_REACH = 25.0, 6.0
"""How far from what it names a text may stand on the end of a leader, and how far from a piece. [mm]"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lettering:
    """All lettering on the surface.

    Parameters
    ----------
    pieces
        For each piece, in order, what is lettered in it.
    names
        The lettering of everything else.
    table
        What found no room, a row each: what stands on the drawing, and what belongs to it.
    """

    pieces: tuple[tuple[Item, ...], ...]
    names: tuple[Item, ...]
    table: tuple[tuple[str, str], ...]


def letter(
    subject: Subject,
    view: View,
    margins: Sequence[BaseGeometry],
    *,
    nails: bool,
    marked: Sequence[BaseGeometry] = (),
) -> Lettering:
    """Letter a wall map.

    Parameters
    ----------
    subject
        What is drawn.
    view
        Where it stands on the sheet.
    margins
        What is free beside the surface. [mm]
    nails
        Whether the nails are drawn.
    marked
        What else lettering is to leave free. [mm]

    Returns
    -------
    Lettering
        No text of it touches another one, crosses an edge or leaves the surface but on a leader.
    """
    letterer = _Letterer(subject, view, margins, nails=nails)
    for shape in marked:
        letterer.room.keep_clear(shape)
    return letterer.letter()


class _Letterer:
    def __init__(self, subject: Subject, view: View, margins: Sequence[BaseGeometry], *, nails: bool) -> None:
        self.subject, self.view = subject, view
        surface = subject.surface
        clutter = [view.box(keep_out.place) for keep_out in surface.keep_outs]
        clutter += [view.box(zone.place).exterior.buffer(_BORDER) for zone in surface.concealed]
        self.room = Room(shapely.union_all(clutter))
        self.boxes = shapely.union_all([view.box(cut_out.place) for cut_out in surface.cut_outs])
        self.cells = [self._cell(row) for row in subject.rows]
        frame = shapely.box(view.x(0), view.y(surface.height_nm), view.x(surface.width_nm), view.y(0))
        self.outside = [
            frame.difference(shapely.Polygon(view.ring(surface.outline)).buffer(_BORDER)),
            *margins,
        ]
        self.names: list[Item] = []
        self.table: list[tuple[str, str]] = []
        for joint in subject.joints:
            line = shapely.LineString([view.place(joint.start), view.place(joint.end)])
            self.room.keep_clear(line.buffer(_BORDER, cap_style="flat"))
        for row in subject.rows if nails else ():
            for nail in row.piece.nails:
                x, y = view.place(nail)
                self.room.keep_clear(shapely.box(x - _NAIL, y - _NAIL, x + _NAIL, y + _NAIL))

    def letter(self) -> Lettering:
        self._name_openings()
        self._name_bare()
        pieces = self._letter_pieces()
        surface = self.subject.surface
        for cut_out in surface.cut_outs:
            self._name(called(cut_out), cut_out.place)
        for keep_out in surface.keep_outs:
            self._name(called(keep_out), keep_out.place)
        for zone in surface.concealed:
            self._name(zone.id, zone.place)
        return Lettering(pieces=pieces, names=tuple(self.names), table=tuple(self.table))

    def _cell(self, row: HungRow) -> BaseGeometry:
        return shapely.Polygon(self.view.ring(row.hung.shape)).difference(self.boxes)

    def _letter_pieces(self) -> tuple[tuple[Item, ...], ...]:
        base = self._common_size()
        sizes = [size for size in SIZES if size <= base]
        items = []
        for row, cell in zip(self.subject.rows, self.cells, strict=True):
            spot = self.room.inside([cell], self._full(row, sizes)) or self._shortly(row, cell, sizes)
            items.append(() if spot is None else spot.block.drawn(spot.centre, ground=Style.WOOD))
        return tuple(items)

    def _common_size(self) -> float:
        """Give the largest font size at which most pieces that have room at any have it for all they say."""
        rows = list(zip(self.subject.rows, self.cells, strict=True))
        roomy = [(row, cell) for row, cell in rows if self._has_room(row, cell, SIZES[-1])]
        may_fail = (1 - _MOST) * len(roomy)
        for size in SIZES[:-1]:
            failed = 0
            for row, cell in roomy:
                failed += not self._has_room(row, cell, size)
                if failed > may_fail:
                    break
            else:
                return size
        return SIZES[-1]

    def _has_room(self, row: HungRow, cell: BaseGeometry, size: float) -> bool:
        return Room(shapely.Polygon()).inside([cell], self._full(row, [size])) is not None

    def _full(self, row: HungRow, sizes: Sequence[float]) -> Iterator[Block]:
        label, board, length = row.piece.label, row.piece.board_id, self._length(row)
        head = Span(text=label, bold=True)
        forms = (
            ((head, Span(text=f" · {board} · {length}")),),
            ((head, Span(text=f" · {board}")), (Span(text=length),)),
            ((head,), (Span(text=board),), (Span(text=length),)),
        )
        yield from self._blocks(forms, sizes)

    def _shortly(self, row: HungRow, cell: BaseGeometry, sizes: Sequence[float]) -> Spot | None:
        """Letter a small piece with its label alone and put the rest into the table."""
        label = row.piece.label
        self.table.append((label, f"{row.piece.board_id} · {self._length(row)}"))
        blocks = list(self._blocks((((Span(text=label, bold=True),),),), sizes))
        spot = self.room.inside([cell], blocks)
        if spot is None:
            shape = shapely.Polygon(self.view.ring(row.hung.shape))
            beside = self.room.beside(self.outside, blocks, shape, _PIECE_REACH)
            if beside is not None:
                self._lead(beside, Style.TEXT, Style.PAPER)
            else:
                nth = row.course.pieces.index(row.piece) + 1
                self.table[-1] = (label, f"{self.table[-1][1]} (no. {nth} in course {row.course.number})")
        return spot

    def _blocks(
        self, forms: Sequence[tuple[tuple[Span, ...], ...]], sizes: Sequence[float]
    ) -> Iterator[Block]:
        """Give the forms of a text, best first: large before small, then the way that the pieces run."""
        upright = self.subject.surface.courses_run is Direction.VERTICAL
        for size in sizes:
            for turned in (upright, not upright):
                for lines in forms:
                    yield Block(lines=lines, size=size, turned=turned)

    def _length(self, row: HungRow) -> str:
        length = write_inches(row.length_nm, self.subject.tape)
        sloped = row.hung.long_point_nm - row.hung.short_point_nm > self.subject.tape.step_nm
        return f"{length} LP" if sloped else length

    def _name_openings(self) -> None:
        for opening in self.subject.surface.openings:
            width, height = (
                write_inches(nm, self.subject.tape)
                for nm in (opening.place.width_nm, opening.place.height_nm)
            )
            name, size = Span(text=opening.id, bold=True), Span(text=f"{width} × {height}")
            forms = (((name,), (size,)), ((name, Span(text=" "), size),), ((name,),))
            cell = self.view.box(opening.place)
            spot = self.room.inside([cell], _upright_first(forms))
            if spot is not None:
                self.names += spot.block.drawn(spot.centre, ground=Style.PAPER)
            else:
                self._name(opening.id, opening.place)
            self.room.keep_clear(cell)

    def _name_bare(self) -> None:
        for place, region in zip(self.subject.layout.bare, self.subject.bare, strict=True):
            length, width = (write_inches(nm, self.subject.tape) for nm in (place.width_nm, place.height_nm))
            word, size = Span(text="BARE", bold=True), Span(text=f"{length} × {width}")
            forms = (((word, Span(text=" "), size),), ((word,), (size,)), ((word,),))
            cell = self.view.region(region).difference(self.boxes)
            spot = self.room.inside([cell], _upright_first(forms))
            if spot is not None:
                self.names += spot.block.drawn(spot.centre, ground=Style.PAPER)
            else:
                self._name("BARE", place)
            self.room.keep_clear(cell)

    def _name(self, name: str, place: Rectangle) -> None:
        """Name something within it, else beside it on a leader, else in the table."""
        blocks = list(_upright_first([((Span(text=name),),), *_parted(name)], _NAME_SIZES))
        target = self.view.box(place)
        inside = [cell.intersection(target) for cell in self.cells]
        spot = self.room.inside(inside, blocks)
        if spot is not None:
            self.names += spot.block.drawn(spot.centre, ground=Style.WOOD, style=Style.NOTE)
            return
        spot = self.room.beside([*self.cells, *self.outside], blocks, target, _REACH)
        if spot is not None:
            self._lead(spot, Style.NOTE, Style.WOOD if spot.cell < len(self.cells) else Style.PAPER)
            return
        left, bottom = (write_inches(nm, self.subject.tape) for nm in (place.left, place.bottom))
        self.table.append((name, f"at {left}, {bottom}"))

    def _lead(self, spot: Spot, style: Style, ground: Style) -> None:
        if spot.leader is not None:
            end_x, end_y = spot.leader[1]
            self.names.append(Line(places=spot.leader, style=Style.LEADER))
            self.names.append(Circle(x=end_x, y=end_y, radius=0.4, style=Style.SOLID))
        self.names += spot.block.drawn(spot.centre, ground=ground, style=style)


def _parted(name: str) -> list[tuple[tuple[Span, ...], ...]]:
    """Give a name of several words in two lines, as even as can be; nothing for a single word."""
    words = name.split()
    halves = [(" ".join(words[:at]), " ".join(words[at:])) for at in range(1, len(words))]
    if not halves:
        return []
    upper, lower = min(halves, key=lambda half: abs(len(half[0]) - len(half[1])))
    return [((Span(text=upper),), (Span(text=lower),))]


def _upright_first(
    forms: Sequence[tuple[tuple[Span, ...], ...]], sizes: Sequence[float] = SIZES
) -> Iterator[Block]:
    """Give the forms of a name, best first: large before small, reading to the right before reading up."""
    for size in sizes:
        for turned in (False, True):
            for lines in forms:
                yield Block(lines=lines, size=size, turned=turned)
