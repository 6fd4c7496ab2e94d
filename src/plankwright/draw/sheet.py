"""How a sheet is parted: title above, key below, a table where one is needed, and the drawing in the rest."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from plankwright.draw.lettering import LINE, shortened, text_width, wrapped
from plankwright.draw.scene import Item, Span, Text
from plankwright.draw.styles import Style
from plankwright.draw.view import View
from plankwright.measure import MILLIMETRE, Nm

_TITLE, _ANSWER, _FACTS, _ROW = 4.6, 3.2, 2.4, 2.2
"""Font sizes. [mm]"""

_APART = 3.0
"""Between the parts of the sheet. [mm]"""

_LEAST_COLUMN = 24.0
"""Of the table. [mm]"""

_WIDEST_COLUMN = 48.0
"""Of the table: a longer row goes on in the next one, so that one of them does not widen all. [mm]"""

_MOST_FOR_TABLE = 0.4
"""The share of the sheet that a table may take from the drawing."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Heading:
    """What stands above a drawing.

    Parameters
    ----------
    title, of
        What is drawn, and a part of what.
    answer
        The answer that a person is looking for.
    facts
        What else to know at a glance.
    """

    title: str
    of: str
    answer: str
    facts: str

    def drawn(self, left: float, top: float, width: float) -> tuple[tuple[Item, ...], float]:
        """Draw it, and tell how high it came out. [mm]"""
        items: list[Item] = []
        name = shortened(self.title, width, _TITLE, bold=True)
        rest = shortened(f" · {self.of}", width - text_width([Span(text=name, bold=True)], _TITLE), _TITLE)
        at = top
        lines: list[tuple[tuple[Span, ...], float]] = [
            ((Span(text=name, bold=True), Span(text=rest)), _TITLE)
        ]
        lines += [((Span(text=line),), _ANSWER) for line in wrapped(self.answer, width, _ANSWER)]
        lines += [((Span(text=line),), _FACTS) for line in wrapped(self.facts, width, _FACTS)]
        for spans, size in lines:
            at += LINE * size
            items.append(Text(x=left, y=at - LINE * size / 2, spans=spans, size=size))
        return tuple(items), at - top


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """Where rows of text stand that found no room on the drawing.

    Parameters
    ----------
    left, top
        Its corner on the sheet. [mm]
    column
        Width of one of its columns. [mm]
    columns, rows
        How many columns it has room for, and how many rows in each.
    """

    left: float
    top: float
    column: float
    columns: int
    rows: int

    @property
    def capacity(self) -> int:
        """How many rows it has room for altogether."""
        return self.columns * self.rows

    def drawn(self, title: str, rows: Sequence[tuple[str, str]]) -> tuple[Item, ...]:
        """Draw its title and its rows, column by column; those that find no room are left to the cut list."""
        step = LINE * _ROW
        head = shortened(title, self.columns * self.column, _ROW)
        lines = _in_lines(rows, self.column)
        if len(lines) > self.capacity:
            kept = next(
                count
                for count in range(len(rows) - 1, -1, -1)
                if len(_in_lines(rows[:count], self.column)) < self.capacity
            )
            more = (f"+ {len(rows) - kept}", "on the cut list")
            lines = [*_in_lines(rows[:kept], self.column), more]
        items: list[Item] = [
            Text(x=self.left, y=self.top + step / 2, spans=(Span(text=head),), size=_ROW, style=Style.NOTE)
        ]
        for index, (mark, rest) in enumerate(lines):
            column, row = divmod(index, self.rows)
            mark_width = text_width([Span(text=mark, bold=True)], _ROW)
            said = shortened(f"  {rest}", self.column - mark_width - 1.0, _ROW)
            items.append(
                Text(
                    x=self.left + column * self.column,
                    y=self.top + (row + 1.5) * step,
                    spans=(Span(text=mark, bold=True), Span(text=said)),
                    size=_ROW,
                )
            )
        return tuple(items)


@dataclass(frozen=True, slots=True, kw_only=True)
class Area:
    """A free rectangle of the sheet. [mm]"""

    left: float
    top: float
    right: float
    bottom: float


def fit(area: Area, size: tuple[Nm, Nm], depths: tuple[float, float, float, float]) -> View:
    """Place a surface in an area, as large as a whole-numbered scale allows.

    Parameters
    ----------
    area
        Where it may stand, with what is along its sides. [mm]
    size
        Width and height of the surface. [nm]
    depths
        What is along its left, top, right and bottom. [mm]

    Returns
    -------
    View
        Centred.
    """
    left, top, right, bottom = depths
    room_x = max(1.0, area.right - area.left - left - right)
    room_y = max(1.0, area.bottom - area.top - top - bottom)
    width, height = (nm / MILLIMETRE for nm in size)
    scale = max(1, math.ceil(width / room_x), math.ceil(height / room_y))
    spare_x, spare_y = room_x - width / scale, room_y - height / scale
    return View(scale=scale, left=area.left + left + spare_x / 2, bottom=area.bottom - bottom - spare_y / 2)


def with_table(
    area: Area,
    rows: Sequence[tuple[str, str]],
    size: tuple[Nm, Nm],
    depths: tuple[float, float, float, float],
) -> tuple[View, Table | None]:
    """Place a surface and a table beside or below it, whichever leaves the surface larger.

    Parameters
    ----------
    area, size, depths
        As for `fit`.
    rows
        Of the table; without any there is none.

    Returns
    -------
    tuple[View, Table | None]
        Where both stand.
    """
    if not rows:
        return fit(area, size, depths), None
    step = LINE * _ROW
    widest = max(
        text_width([Span(text=mark, bold=True), Span(text=f"  {rest}")], _ROW) for mark, rest in rows
    )
    column = min(max(_LEAST_COLUMN, widest + 3.0), _WIDEST_COLUMN, area.right - area.left)
    lines = len(_in_lines(rows, column))
    width, height = area.right - area.left, area.bottom - area.top
    high = max(1, int(height / step) - 1)
    columns = min(math.ceil(lines / high), max(1, int(_MOST_FOR_TABLE * width / column)))
    left = area.right - columns * column
    beside = (
        fit(replace(area, right=left - _APART), size, depths),
        Table(left=left, top=area.top, column=column, columns=columns, rows=high),
    )
    abreast = max(1, int(width / column))
    low = min(math.ceil(lines / abreast), max(1, int(_MOST_FOR_TABLE * height / step) - 1))
    top = area.bottom - (low + 1) * step
    below = (
        fit(replace(area, bottom=top - _APART), size, depths),
        Table(left=area.left, top=top, column=column, columns=abreast, rows=low),
    )
    return min(beside, below, key=lambda option: (option[1].capacity < lines, option[0].scale))


def _in_lines(rows: Sequence[tuple[str, str]], column: float) -> list[tuple[str, str]]:
    """Break the rows of a table that are wider than its column into several."""
    lines: list[tuple[str, str]] = []
    whole = column - 1.0
    for mark, rest in rows:
        *marks, last = wrapped(mark, whole, _ROW, bold=True) or [""]
        lines += [(line, "") for line in marks]
        room = whole - text_width([Span(text=f"{last}  ", bold=True)], _ROW)
        words = [text_width([Span(text=word)], _ROW) for word in rest.split()]
        if marks or max(words, default=0.0) > room:
            # The rest begins a line of its own: beside the mark it would be cut off.
            lines.append((last, ""))
            last, room = "", whole
        first, *others = wrapped(rest, room, _ROW) or [""]
        if last or first:
            lines.append((last, first))
        lines += [("", line) for line in others]
    return lines
