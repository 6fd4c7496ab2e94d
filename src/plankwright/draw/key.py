"""The key of a drawing: what each line, hatch and mark means, and a bar to measure by."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from plankwright.draw.lettering import shortened, text_width
from plankwright.draw.scene import Anchor, Item, Rect, Span, Text
from plankwright.draw.styles import Style
from plankwright.measure import FOOT, INCH, METRE, MILLIMETRE, Nm, System, TapeStyle

ROW = 4.8
"""Height of a row of the key. [mm]"""

_SIZE = 2.3
_GAP = 1.4
_APART = 5.0
_SWATCH = 3.2
"""Font size, sample to text, entry to entry, and height of a sample. [mm]"""

_BAR_PARTS = 4
_LONGEST_BAR = 60.0
"""How many parts a scale bar has and how long it may be. [mm]"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One entry of the key.

    Parameters
    ----------
    width
        Of its sample. [mm]
    sample
        Draws it, given its left end and its middle height on the sheet. [mm]
    text
        What it means.
    """

    width: float
    sample: Callable[[float, float], tuple[Item, ...]]
    text: str

    def extent(self, room: float) -> float:
        """Give how wide it is, its text cut off where it would be wider than the room. [mm]"""
        return self.width + _GAP + text_width([Span(text=self._said(room))], _SIZE)

    def drawn(self, left: float, middle: float, room: float) -> tuple[Item, ...]:
        """Draw it."""
        text = Text(x=left + self.width + _GAP, y=middle, spans=(Span(text=self._said(room)),), size=_SIZE)
        return (*self.sample(left, middle), text)

    def _said(self, room: float) -> str:
        return shortened(self.text, room - self.width - _GAP, _SIZE)


def swatch(style: Style, *over: Style, width: float = 7.0) -> Callable[[float, float], tuple[Item, ...]]:
    """Give a sample that is a rectangle in one style, and in others over it."""

    def draw(left: float, middle: float) -> tuple[Item, ...]:
        return tuple(
            Rect(x=left, y=middle - _SWATCH / 2, width=width, height=_SWATCH, style=each)
            for each in (style, *over)
        )

    return draw


def flow(entries: Sequence[Entry], room: float) -> list[list[Entry]]:
    """Break entries into rows no wider than the room. [mm]"""
    rows: list[list[Entry]] = []
    used = room
    for entry in entries:
        width = entry.extent(room)
        if not rows or used + _APART + width > room:
            rows.append([])
            used = -_APART
        rows[-1].append(entry)
        used += _APART + width
    return rows


def draw_key(entries: Sequence[Entry], left: float, top: float, room: float) -> tuple[Item, ...]:
    """Draw entries in rows.

    Parameters
    ----------
    entries
        In order.
    left, top
        Where the first row begins. [mm]
    room
        How wide a row may be. [mm]
    """
    items: list[Item] = []
    for index, row in enumerate(flow(entries, room)):
        at, middle = left, top + (index + 0.5) * ROW
        for entry in row:
            items += entry.drawn(at, middle, room)
            at += entry.extent(room) + _APART
    return tuple(items)


def scale_bar(scale: float, tape: TapeStyle, paper: str) -> Entry:
    """Give a bar of four equal parts, dark and light in turn, as an entry of the key.

    Parameters
    ----------
    scale
        So many times smaller than life the drawing is.
    tape
        Whether it measures feet or metres.
    paper
        On which paper that scale holds.
    """
    part = _bar_part(scale, tape)
    width = part / MILLIMETRE / scale
    unit = "m" if tape.system is System.METRIC else "ft"

    def draw(left: float, middle: float) -> tuple[Item, ...]:
        items: list[Item] = []
        for index in range(_BAR_PARTS):
            x, style = left + index * width, Style.BOARD if index % 2 else Style.SOLID
            items.append(Rect(x=x, y=middle, width=width, height=1.2, style=style))
        for index in (0, _BAR_PARTS // 2, _BAR_PARTS):
            said = _bar_number(index * part, tape) + (f" {unit}" if index == _BAR_PARTS else "")
            items.append(
                Text(
                    x=left + index * width,
                    y=middle - 1.2,
                    spans=(Span(text=said),),
                    size=2.0,
                    anchor=Anchor.MIDDLE if index else Anchor.START,
                )
            )
        return tuple(items)

    return Entry(width=_BAR_PARTS * width + 2.0, sample=draw, text=f"1:{scale:g} on {paper}")


def _bar_part(scale: float, tape: TapeStyle) -> Nm:
    """Give the longest of the usual parts at which the bar is not too long. [nm]"""
    usual = (
        [METRE, METRE // 2, METRE // 4, METRE // 10]
        if tape.system is System.METRIC
        else [4 * FOOT, 2 * FOOT, FOOT, 6 * INCH, 3 * INCH]
    )
    fitting = (part for part in usual if _BAR_PARTS * part / MILLIMETRE / scale <= _LONGEST_BAR)
    return next(fitting, usual[-1])


def _bar_number(nm: Nm, tape: TapeStyle) -> str:
    return f"{nm / (METRE if tape.system is System.METRIC else FOOT):g}"
