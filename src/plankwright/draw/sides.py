"""Which marks stand along which side of a wall map: courses, framing, openings and the size of the whole."""

from dataclasses import dataclass

import shapely
from shapely.geometry.base import BaseGeometry

from plankwright.draw.lettering import text_width
from plankwright.draw.rulers import Mark, dimension, ruler, ruler_depth
from plankwright.draw.scene import Anchor, Item, Line, Span, Text
from plankwright.draw.styles import Style
from plankwright.draw.subject import Subject
from plankwright.draw.view import View
from plankwright.measure import Nm, System, TapeStyle, write_inches, write_length
from plankwright.model import Direction, Edge

_TITLE = 3.2
_DIMENSION = 4.6
"""Room for the title of a ruler and for a dimension line. [mm]"""

_NUMBERS = 5.6
"""Room for the course numbers between the drawing and their ruler. [mm]"""

_MARGIN = 4.2
"""Room kept for names beside the drawing, where there is anything to name. [mm]"""

_BORDER = 0.6
"""How much of that the outline takes. [mm]"""

_OVERHANG = 5.0
"""How far a ruler may reach past the drawing at both its ends. [mm]"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Side:
    """What stands along one side.

    Parameters
    ----------
    edge
        Which side.
    title
        What is marked, and from where.
    marks
        Distances from the left or from the bottom of the box, in order, each with what its mark says. [nm]
    whole
        The size of the whole, for a dimension line; empty for none.
    numbers
        For courses: the middle of each, its height and its number. [nm]
    names
        Whether names may stand between the drawing and the marks.
    """

    edge: Edge
    title: str
    marks: tuple[tuple[Nm, tuple[Span, ...]], ...]
    whole: str = ""
    numbers: tuple[tuple[Nm, Nm, int], ...] = ()
    names: bool = False

    @property
    def depth(self) -> float:
        """How much of the sheet it takes, square to its side. [mm]"""
        marks = ruler_depth([spans for _, spans in self.marks], apart=self._apart) or self._apart
        return marks + (_TITLE if self.marks else 0.0) + (_DIMENSION if self.whole else 0.0)

    @property
    def _apart(self) -> float:
        return _NUMBERS if self.numbers else _MARGIN if self.names else 0.0

    def drawn(self, subject: Subject, view: View) -> tuple[Item, ...]:
        """Draw it beside a surface."""
        surface = subject.surface
        right, top = view.x(surface.width_nm), view.y(surface.height_nm)
        beyond = {Edge.LEFT: view.left, Edge.RIGHT: right, Edge.TOP: top, Edge.BOTTOM: view.bottom}[self.edge]
        upright = self.edge in {Edge.LEFT, Edge.RIGHT}
        low, high = (top, view.bottom) if upright else (view.left, right)
        marks = [Mark(at=view.y(at) if upright else view.x(at), spans=spans) for at, spans in self.marks]
        marks.sort(key=lambda mark: mark.at)
        outwards = -1.0 if self.edge in {Edge.LEFT, Edge.TOP} else 1.0
        span = (low - _OVERHANG, high + _OVERHANG)
        items = list(ruler(self.edge, beyond, marks, span, apart=self._apart))
        items += self._numbers(view, beyond + outwards * _NUMBERS / 2)
        depth = ruler_depth([spans for _, spans in self.marks], apart=self._apart) or self._apart
        reach = beyond + outwards * depth
        if self.marks:
            items.append(self._title(reach + outwards * _TITLE / 2, low, high))
            reach += outwards * _TITLE
        if self.whole:
            at = reach + outwards * _DIMENSION / 2
            ends = ((at, low), (at, high)) if upright else ((low, at), (high, at))
            items += dimension(*ends, self.whole)
        return tuple(items)

    def margin(self, subject: Subject, view: View) -> BaseGeometry:
        """Give what of the sheet is free for names on this side, between the ticks. [mm]"""
        if not self.names:
            return shapely.Polygon()
        surface = subject.surface
        right, top = view.x(surface.width_nm), view.y(surface.height_nm)
        near, far = _BORDER, self._apart
        strip = {
            Edge.LEFT: (view.left - far, top, view.left - near, view.bottom),
            Edge.RIGHT: (right + near, top, right + far, view.bottom),
            Edge.TOP: (view.left, top - far, right, top - near),
            Edge.BOTTOM: (view.left, view.bottom + near, right, view.bottom + far),
        }[self.edge]
        upright = self.edge in {Edge.LEFT, Edge.RIGHT}
        ticks = [
            shapely.box(strip[0], view.y(at) - 0.2, strip[2], view.y(at) + 0.2)
            if upright
            else shapely.box(view.x(at) - 0.2, strip[1], view.x(at) + 0.2, strip[3])
            for at, _ in self.marks
        ]
        return shapely.box(*strip).difference(shapely.union_all(ticks))

    def _title(self, at: float, low: float, high: float) -> Item:
        upright = self.edge in {Edge.LEFT, Edge.RIGHT}
        spans, size = (Span(text=self.title),), 2.1
        size = min(size, size * (high - low + 2 * _OVERHANG) / text_width(spans, size))
        middle = (low + high) / 2
        return Text(
            x=at if upright else middle,
            y=middle if upright else at,
            spans=spans,
            size=size,
            anchor=Anchor.MIDDLE,
            turned=upright,
            style=Style.NOTE,
        )

    def _numbers(self, view: View, at: float) -> list[Item]:
        upright = self.edge in {Edge.LEFT, Edge.RIGHT}
        items: list[Item] = []
        for middle, height, number in self.numbers:
            spans = (Span(text=str(number), bold=True),)
            room = view.size(height)
            size = min(2.8, room / 1.2 if upright else room / max(1.2, text_width(spans, 1.0)))
            items.append(
                Text(
                    x=at if upright else view.x(middle),
                    y=view.y(middle) if upright else at,
                    spans=spans,
                    size=min(size, 2.8 * _NUMBERS / max(_NUMBERS, text_width(spans, 2.8))),
                    anchor=Anchor.MIDDLE,
                )
            )
        return items


def sides(subject: Subject) -> tuple[Side, ...]:
    """Give what stands along the four sides.

    Parameters
    ----------
    subject
        What is drawn.

    Returns
    -------
    tuple[Side, ...]
        Left, top, right and bottom. Courses are marked at their ends, framing across from where the courses
        are numbered, openings and the whole on the two sides that are left.
    """
    surface = subject.surface
    level = surface.courses_run is Direction.HORIZONTAL
    width, height = (write_length(nm, subject.tape) for nm in (surface.width_nm, surface.height_nm))
    upright = _ordinates(subject, [y for _, y in surface.outline], upright=True)
    across = _ordinates(subject, [x for x, _ in surface.outline], upright=False)
    courses = _courses(subject, Edge.LEFT if level else Edge.BOTTOM)
    framing = _framing(subject, Edge.TOP if level else Edge.LEFT)
    names = bool(surface.cut_outs or surface.keep_outs or surface.concealed)
    right = Side(
        edge=Edge.RIGHT,
        title=f"Heights, from the bottom{_in_unit(subject)}",
        marks=upright,
        whole=height,
        names=names,
    )
    other = Side(
        edge=Edge.BOTTOM if level else Edge.TOP,
        title=f"Distances, from the left{_in_unit(subject)}",
        marks=across,
        whole=width,
        names=names,
    )
    return (courses, framing, right, other) if level else (framing, other, right, courses)


def extensions(subject: Subject, view: View) -> tuple[Item, ...]:
    """Draw thin lines from the marks of a sloping surface to what they mark."""
    surface = subject.surface
    lines: list[Item] = []
    level = surface.courses_run is Direction.HORIZONTAL
    for course in subject.layout.courses:
        corners = [corner for row in subject.rows if row.course is course for corner in row.hung.shape]
        for edge in (course.from_nm, course.to_nm):
            at = _box_place(subject, edge)
            if level:
                start, end = (0, at), (min((x for x, _ in corners), default=0), at)
            else:
                start, end = (at, 0), (at, min((y for _, y in corners), default=0))
            far = view.size(max(end[0] - start[0], end[1] - start[1]))
            if far > 1.0:
                lines.append(Line(places=(view.place(start), view.place(end)), style=Style.EXTENSION))
    for member in surface.crossing_members:
        line = _member_line(subject, member.centre_nm, level=level)
        lines.append(Line(places=tuple(view.place(point) for point in line), style=Style.EXTENSION))
    return tuple(lines)


def _member_line(subject: Subject, at: Nm, *, level: bool) -> tuple[tuple[Nm, Nm], tuple[Nm, Nm]]:
    """Give the line from the framing's ruler to the surface."""
    surface = subject.surface
    crossings = []
    corners = surface.outline
    for (ax, ay), (bx, by) in zip(corners, (*corners[1:], corners[0]), strict=True):
        (a, a_other), (b, b_other) = ((ax, ay), (bx, by)) if level else ((ay, ax), (by, bx))
        if min(a, b) <= at <= max(a, b):
            crossings += (
                [a_other, b_other] if a == b else [a_other + (b_other - a_other) * (at - a) // (b - a)]
            )
    if level:
        return (at, surface.height_nm), (at, max(crossings, default=surface.height_nm))
    return (0, at), (min(crossings, default=0), at)


def _box_place(subject: Subject, from_start: Nm) -> Nm:
    """Turn a distance from the start side into one from the left or the bottom. [nm]"""
    surface = subject.surface
    whole = {Edge.TOP: surface.height_nm, Edge.RIGHT: surface.width_nm}.get(surface.start)
    return from_start if whole is None else whole - from_start


def _mark(at: Nm, tape: TapeStyle) -> str:
    """Write a mark: inches with their sign, millimetres bare, since the title of the ruler names them."""
    return write_inches(at, tape).removesuffix(" mm")


def _in_unit(subject: Subject) -> str:
    return ", in mm" if subject.tape.system is System.METRIC else ""


def _courses(subject: Subject, edge: Edge) -> Side:
    tape = subject.tape
    marks = sorted({at for course in subject.layout.courses for at in (course.from_nm, course.to_nm)})
    return Side(
        edge=edge,
        title=f"Course edges, from the {subject.surface.start}{_in_unit(subject)}",
        marks=tuple((_box_place(subject, at), (Span(text=_mark(at, tape)),)) for at in marks),
        numbers=tuple(
            (_box_place(subject, (course.from_nm + course.to_nm) // 2), course.height_nm, course.number)
            for course in subject.layout.courses
        ),
    )


def _framing(subject: Subject, edge: Edge) -> Side:
    origin = "left" if edge is Edge.TOP else "bottom"
    return Side(
        edge=edge,
        title=f"Centres of the {subject.member}s, from the {origin}{_in_unit(subject)}",
        marks=tuple(
            (
                member.centre_nm,
                (
                    Span(text=f"{subject.member[0].upper()}{number}", bold=True),
                    Span(text=f" {_mark(member.centre_nm, subject.tape)}"),
                ),
            )
            for number, member in enumerate(subject.surface.crossing_members, start=1)
        ),
    )


def _ordinates(
    subject: Subject, corners: list[Nm], *, upright: bool
) -> tuple[tuple[Nm, tuple[Span, ...]], ...]:
    """Mark the corners of the outline, but not the ends of the whole, and the edges of openings."""
    ends = {0, max(corners)}
    edges = {
        at
        for opening in subject.surface.openings
        for at in (
            (opening.place.bottom, opening.place.top)
            if upright
            else (opening.place.left, opening.place.right)
        )
    }
    return tuple((at, (Span(text=_mark(at, subject.tape)),)) for at in sorted((edges | set(corners)) - ends))
