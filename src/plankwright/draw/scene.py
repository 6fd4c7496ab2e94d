"""What a drawing consists of: plain shapes and text on a sheet, in millimetres from its top left corner.

A scene knows neither boards nor a file format: other modules compose it, and a writer such as `svg` turns it
into a file.
"""

import re
from dataclasses import dataclass
from enum import StrEnum
from typing import TypeAlias

from plankwright.draw.styles import Style

Place: TypeAlias = tuple[float, float]
"""A position (x to the right, y down) on the sheet. [mm]"""


class Anchor(StrEnum):
    """Which point of a text its position is."""

    START = "start"
    MIDDLE = "middle"
    END = "end"


@dataclass(frozen=True, slots=True, kw_only=True)
class Rect:
    """An upright rectangle by its top left corner. [mm]"""

    x: float
    y: float
    width: float
    height: float
    style: Style


@dataclass(frozen=True, slots=True, kw_only=True)
class Polygon:
    """A closed shape; rings inside the first one are holes. [mm]"""

    rings: tuple[tuple[Place, ...], ...]
    style: Style


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A line through two or more places. [mm]"""

    places: tuple[Place, ...]
    style: Style


@dataclass(frozen=True, slots=True, kw_only=True)
class Circle:
    """A circle by its centre. [mm]"""

    x: float
    y: float
    radius: float
    style: Style


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """A stretch of text in one weight."""

    text: str
    bold: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Text:
    """One line of text.

    Parameters
    ----------
    x, y
        Its anchor along the line, and the middle of its capitals across it. [mm]
    spans
        What it says.
    size
        Font size. [mm]
    anchor
        Which point of the text x and y are.
    turned
        Whether it reads upwards instead of to the right.
    style
        Its ink.
    """

    x: float
    y: float
    spans: tuple[Span, ...]
    size: float
    anchor: Anchor = Anchor.START
    turned: bool = False
    style: Style = Style.TEXT

    @property
    def said(self) -> str:
        """The whole text."""
        return "".join(span.text for span in self.spans)


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """Shapes that belong together, such as one piece, so that a page can point at them and link from them.

    Parameters
    ----------
    id
        Unique on the sheet.
    title
        What it is, in words.
    href
        Where it leads when tapped, if anywhere.
    items
        In drawing order.
    """

    id: str
    title: str
    href: str = ""
    items: tuple["Item", ...]


Item: TypeAlias = Rect | Polygon | Line | Circle | Text | Group


@dataclass(frozen=True, slots=True, kw_only=True)
class Scene:
    """A drawing on its own sheet.

    Parameters
    ----------
    width, height
        Of the sheet. [mm]
    title, description
        For those who hear the drawing instead of seeing it.
    items
        In drawing order, the later over the earlier ones.
    """

    width: float
    height: float
    title: str
    description: str
    items: tuple[Item, ...]


def slug(text: str) -> str:
    """Give a text as part of an id: letters, digits, hyphens and underscores."""
    return re.sub(r"[^\w-]+", "-", text)
