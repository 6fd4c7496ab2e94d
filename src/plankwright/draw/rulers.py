"""Marks along the sides of a drawing: where things are from one edge, and how long the whole is."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from plankwright.draw.lettering import LINE, text_width
from plankwright.draw.scene import Anchor, Item, Line, Place, Span, Text
from plankwright.draw.styles import Style
from plankwright.model import Edge

SIZE = 2.5
"""Font size of marks. [mm]"""

_SMALLEST = 1.3
"""Font size to which marks shrink when they are many. [mm]"""

_BETWEEN = 1.5
"""Between two texts that stand side by side. [mm]"""

_GAP = 1.0
_LEAD = 3.0
"""From the drawing to the tick, and from the tick to the text. [mm]"""

_LEVEL_SIZE, _LEVEL_LEAD = 3.1, 2.0
"""Font size of marks that read to the right, which have more room, and the lead to them. [mm]"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """One mark of a ruler.

    Parameters
    ----------
    at
        Where it is along the side, on the sheet. [mm]
    spans
        What it says.
    """

    at: float
    spans: tuple[Span, ...]


def ruler_depth(texts: Sequence[tuple[Span, ...]], *, apart: float = 0.0) -> float:
    """Give how much of the sheet a ruler takes, square to its side. [mm]

    Parameters
    ----------
    texts
        What its marks say; none, and it takes nothing.
    apart
        Room kept between the drawing and its ticks. [mm]
    """
    if not texts:
        return 0.0
    return _GAP + apart + _LEAD + max(text_width(spans, SIZE) for spans in texts) + 1.0


def ruler(
    side: Edge, edge: float, marks: Sequence[Mark], span: tuple[float, float], *, apart: float = 0.0
) -> tuple[Item, ...]:
    """Draw the marks of one side, spread so that none touches the next.

    Parameters
    ----------
    side
        On which side of the drawing they stand.
    edge
        Where that side is on the sheet. [mm]
    marks
        In order along it.
    span
        Between which places on the sheet their texts may stand. [mm]
    apart
        Room kept between the drawing and the ticks, which cross it. [mm]

    Returns
    -------
    tuple[Item, ...]
        Ticks, leaders and texts. Those above and below read upwards. Of more marks than there is room for at
        the smallest font size, only every second, third and so on is drawn.
    """
    if not marks:
        return ()
    marks = marks[:: math.ceil(len(marks) * LINE * _SMALLEST / (span[1] - span[0]))]
    size = min(SIZE, max(_SMALLEST, (span[1] - span[0]) / len(marks) / LINE))
    places = spread([mark.at for mark in marks], LINE * size, span)
    outwards = -1.0 if side in {Edge.LEFT, Edge.TOP} else 1.0
    upright = side in {Edge.TOP, Edge.BOTTOM}
    near, far = edge + outwards * 0.4, edge + outwards * (_GAP + apart)
    text_at = far + outwards * _LEAD

    def place(across: float, along: float) -> Place:
        return (along, across) if upright else (across, along)

    # Turned text reads upwards, so above the drawing it starts at its tick and below it ends there.
    anchor = Anchor.START if side in {Edge.TOP, Edge.RIGHT} else Anchor.END
    items: list[Item] = []
    for mark, at in zip(marks, places, strict=True):
        x, y = place(text_at + outwards * 0.5, at)
        line = (place(near, mark.at), place(far, mark.at), place(text_at, at))
        items.append(Line(places=line, style=Style.DIMENSION))
        items.append(Text(x=x, y=y, spans=mark.spans, size=size, anchor=anchor, turned=upright))
    return tuple(items)


def level_ruler_depth(texts: Sequence[tuple[Span, ...]], width: float) -> float:
    """Give how much of the sheet a level ruler takes. [mm]

    Parameters
    ----------
    texts
        What its marks say; none, and it takes nothing.
    width
        How wide it may be. [mm]
    """
    if not texts:
        return 0.0
    if _fit_level(texts, width):
        return _GAP + _LEVEL_LEAD + LINE * _LEVEL_SIZE
    return ruler_depth(texts)


def level_ruler(edge: float, marks: Sequence[Mark], width: float, *, above: bool) -> tuple[Item, ...]:
    """Draw marks above or below a drawing that read to the right, or upwards where there are too many.

    Parameters
    ----------
    edge
        The side of the drawing. [mm]
    marks
        In order along it.
    width
        Their texts stand between the left edge of the sheet and here. [mm]
    above
        On which side of the drawing they stand.
    """
    if not _fit_level([mark.spans for mark in marks], width):
        return ruler(Edge.TOP if above else Edge.BOTTOM, edge, marks, (SIZE, width - SIZE))
    outwards = -1.0 if above else 1.0
    widest = max((text_width(mark.spans, _LEVEL_SIZE) for mark in marks), default=0.0)
    span = widest / 2, width - widest / 2
    far = edge + outwards * _GAP
    text_at = far + outwards * _LEVEL_LEAD
    items: list[Item] = []
    for mark, at in zip(marks, spread([mark.at for mark in marks], widest + _BETWEEN, span), strict=True):
        line = ((mark.at, edge), (mark.at, far), (at, text_at))
        items.append(Line(places=line, style=Style.DIMENSION))
        y = text_at + outwards * LINE * _LEVEL_SIZE / 2
        items.append(Text(x=at, y=y, spans=mark.spans, size=_LEVEL_SIZE, anchor=Anchor.MIDDLE))
    return tuple(items)


def _fit_level(texts: Sequence[tuple[Span, ...]], width: float) -> bool:
    widest = max((text_width(spans, _LEVEL_SIZE) for spans in texts), default=0.0)
    return len(texts) * (widest + _BETWEEN) <= width


def spread(places: Sequence[float], apart: float, span: tuple[float, float]) -> list[float]:
    """Move places along a line, as little as can be, until all are at least so far apart.

    Parameters
    ----------
    places
        In order. [mm]
    apart
        Least distance of two neighbours; less when the span has no room for it. [mm]
    span
        Where they must stay. [mm]

    Returns
    -------
    list[float]
        The new places, in the same order; the sum of squares of their moves is the least possible before they
        are kept within the span.
    """
    if len(places) > 1:
        apart = min(apart, (span[1] - span[0]) / (len(places) - 1))
    blocks: list[
        tuple[float, int]
    ] = []  # Runs of neighbours that touch: where the first should be, how many.
    for index, place in enumerate(places):
        first, count = place - index * apart, 1
        while blocks and blocks[-1][0] > first:
            before, of_them = blocks.pop()
            first = (before * of_them + first * count) / (of_them + count)
            count += of_them
        blocks.append((first, count))
    firsts = [first for first, count in blocks for _ in range(count)]
    low, high = span[0], span[1] - (len(places) - 1) * apart
    return [min(max(first, low), high) + index * apart for index, first in enumerate(firsts)]


def dimension(start: Place, end: Place, text: str, *, size: float = 2.6) -> tuple[Item, ...]:
    """Draw a dimension line, level or upright, with a stroke across each end and its text in the middle.

    Parameters
    ----------
    start, end
        Its ends; from left to right, or from top to bottom. [mm]
    text
        The length.
    size
        Font size. [mm]
    """
    upright = start[0] == end[0]
    middle_x, middle_y = (start[0] + end[0]) / 2, (start[1] + end[1]) / 2
    half = text_width([Span(text=text)], size) / 2 + 1.0
    if upright:
        parts = ((start, (start[0], middle_y - half)), ((start[0], middle_y + half), end))
    else:
        parts = ((start, (middle_x - half, start[1])), ((middle_x + half, start[1]), end))
    strokes = (((x - 0.8, y + 0.8), (x + 0.8, y - 0.8)) for x, y in (start, end))
    return (
        *(Line(places=part, style=Style.DIMENSION) for part in parts if part[0] <= part[1]),
        *(Line(places=stroke, style=Style.SOLID) for stroke in strokes),
        Text(
            x=middle_x,
            y=middle_y,
            spans=(Span(text=text),),
            size=size,
            anchor=Anchor.MIDDLE,
            turned=upright,
        ),
    )
