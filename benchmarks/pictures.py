"""Pictures for the report, as plain SVG: dots along a scale, bars, and a line through sizes."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from statistics import mean, median
from xml.sax.saxutils import escape

_WIDTH, _ROW, _LEFT, _RIGHT, _FOOT = 720, 34, 190, 30, 44
_COLOURS = ("#1b6ca8", "#b5651d", "#6b8e23", "#7a5195", "#666666")
_TICKS = 5


@dataclass(frozen=True, slots=True)
class Marks:
    """The values of one row of a picture."""

    name: str
    values: Sequence[float]


def dots(rows: Sequence[Marks], axis: str, *, limit: float | None = None) -> str:
    """Draw a row of dots for each name, a dot a value, with a bar at the median.

    Parameters
    ----------
    rows
        From top to bottom.
    axis
        What the scale shows, with its unit.
    limit
        Where a line shows what must be reached.
    """
    values = [value for row in rows for value in row.values] + ([] if limit is None else [limit])
    scale = _Scale(min(values, default=0.0), max(values, default=1.0))
    height = _ROW * len(rows) + _FOOT
    parts = list(scale.axis(axis, height))
    for number, row in enumerate(rows):
        y, colour = _ROW * number + _ROW // 2 + 4, _COLOURS[number % len(_COLOURS)]
        parts.append(_text(_LEFT - 12, y + 4, row.name, anchor="end"))
        for place, value in enumerate(row.values):
            offset = (place % 5 - 2) * 2.5
            parts.append(
                f'<circle cx="{scale.x(value):.1f}" cy="{y + offset:.1f}" r="3" fill="{colour}"'
                ' fill-opacity="0.55"/>'
            )
        if row.values:
            x = scale.x(median(row.values))
            parts.append(
                f'<line x1="{x:.1f}" y1="{y - 12}" x2="{x:.1f}" y2="{y + 12}" stroke="{colour}"'
                ' stroke-width="3"/>'
            )
    if limit is not None:
        x = scale.x(limit)
        parts.append(
            f'<line x1="{x:.1f}" y1="4" x2="{x:.1f}" y2="{height - _FOOT + 4}" stroke="#c00"'
            ' stroke-dasharray="5 4"/>'
        )
    return _file(parts, height)


def bars(values: Mapping[str, float], unit: str) -> str:
    """Draw a bar for each name, with its value.

    Parameters
    ----------
    values
        None below zero.
    unit
        Told behind each value.
    """
    scale = _Scale(0.0, max(values.values(), default=1.0) or 1.0)
    parts = []
    for number, (name, value) in enumerate(values.items()):
        y = _ROW * number + 8
        width = scale.x(value) - _LEFT
        parts.append(_text(_LEFT - 12, y + 15, name, anchor="end"))
        parts.append(f'<rect x="{_LEFT}" y="{y}" width="{width:.1f}" height="20" fill="{_COLOURS[0]}"/>')
        inside = width > (_WIDTH - _LEFT) / 2
        at, anchor = (_LEFT + width - 6, "end") if inside else (_LEFT + width + 6, "start")
        colour = "#fff" if inside else "#222"
        parts.append(_text(at, y + 15, f"{value:.2f} {unit}", anchor=anchor, colour=colour))
    return _file(parts, _ROW * len(values) + 12)


def line(points: Sequence[tuple[float, float]], axes: tuple[str, str]) -> str:
    """Draw values over sizes, both on scales of powers of ten, with a line through the mean of each size.

    Parameters
    ----------
    points
        (size, value), both more than nothing.
    axes
        What the sizes and what the values are, with their units.
    """
    height = 300
    across = _Scale(*_log_span([size for size, _ in points]))
    up = _Scale(*_log_span([value for _, value in points]))

    def place(size: float, value: float) -> tuple[float, float]:
        share = (up.x(math.log10(value)) - _LEFT) / (_WIDTH - _LEFT - _RIGHT)
        return across.x(math.log10(size)), height - _FOOT - share * (height - _FOOT - 24)

    means = [
        (size, mean(value for at, value in points if at == size))
        for size in sorted({size for size, _ in points})
    ]
    path = " ".join("{:.1f},{:.1f}".format(*place(*point)) for point in means)
    parts = [f'<polyline points="{path}" fill="none" stroke="{_COLOURS[0]}" stroke-width="2"/>']
    for point in points:
        x, y = place(*point)
        parts.append(f'<circle cx="{x:.1f}" cy="{y:.1f}" r="4" fill="{_COLOURS[0]}" fill-opacity="0.55"/>')
    for size, value in means:
        x, y = place(size, value)
        parts.append(_text(x - 12, y - 6, f"{value:.0f}", anchor="end"))
        parts.append(_text(x, height - _FOOT + 18, f"{size:g}", anchor="middle"))
    parts.append(_text(_WIDTH - _RIGHT, height - 8, axes[0], anchor="end"))
    parts.append(_text(12, 20, axes[1]))
    return _file(parts, height)


class _Scale:
    """Values from left to right."""

    def __init__(self, low: float, high: float) -> None:
        self.low = low
        self.high = high if high > low else low + 1.0

    def x(self, value: float) -> float:
        share = (value - self.low) / (self.high - self.low)
        return _LEFT + share * (_WIDTH - _LEFT - _RIGHT)

    def axis(self, name: str, height: int) -> Iterator[str]:
        step = _round_step((self.high - self.low) / _TICKS)
        tick = math.ceil(self.low / step - 1e-9) * step
        while tick <= self.high + 1e-9 * step:
            x = self.x(tick)
            yield (f'<line x1="{x:.1f}" y1="4" x2="{x:.1f}" y2="{height - _FOOT + 4}" stroke="#ddd"/>')
            yield _text(x, height - _FOOT + 20, f"{round(tick, 10):g}", anchor="middle")
            tick += step
        yield _text(_WIDTH - _RIGHT, height - 6, name, anchor="end")


def _round_step(least: float) -> float:
    """Give the next 1, 2 or 5 times a power of ten."""
    power = 10.0 ** math.floor(math.log10(least))
    return next(factor * power for factor in (1, 2, 5, 10) if factor * power >= least * (1 - 1e-9))


def _log_span(values: Sequence[float]) -> tuple[float, float]:
    low, high = math.log10(min(values)), math.log10(max(values))
    return low - 0.1, high + 0.1


def _text(x: float, y: float, words: str, *, anchor: str = "start", colour: str = "#222") -> str:
    return f'<text x="{x:.1f}" y="{y:.1f}" text-anchor="{anchor}" fill="{colour}">{escape(words)}</text>'


def _file(parts: Sequence[str], height: int) -> str:
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {_WIDTH} {height}" width="{_WIDTH}"'
        f' height="{height}" font-family="sans-serif" font-size="13">'
    )
    ground = f'<rect width="{_WIDTH}" height="{height}" fill="#fff"/>'
    return "\n".join((head, ground, *parts, "</svg>")) + "\n"
