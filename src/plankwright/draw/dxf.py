"""Write a scene as DXF, for drawing programs: closed outlines, lines, circles and text on a layer a style."""

import io
import re
from collections.abc import Iterator
from contextlib import contextmanager
from typing import assert_never

import ezdxf
from ezdxf import units
from ezdxf.document import Drawing
from ezdxf.enums import TextEntityAlignment
from ezdxf.filemanagement import new
from ezdxf.layouts.layout import Modelspace
from ezdxf.sections.classes import REQ_R2004, REQUIRED_CLASSES

from plankwright.draw.scene import Anchor, Circle, Group, Item, Line, Place, Polygon, Rect, Scene, Text
from plankwright.draw.styles import LOOKS, Style
from plankwright.measure import System

_VERSION = "R2010"
_MM_PER_INCH = 25.4
_CONTROL = re.compile("%(?=%)")
_CAPITALS = 0.72
"""Height of capitals, which is what DXF calls the height of a text. [font sizes]"""

_ALIGNMENTS = {
    Anchor.START: TextEntityAlignment.MIDDLE_LEFT,
    Anchor.MIDDLE: TextEntityAlignment.MIDDLE_CENTER,
    Anchor.END: TextEntityAlignment.MIDDLE_RIGHT,
}
_WEIGHTS = (0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100)
"""Widths of lines that the format knows. [hundredths of a millimetre]"""


def write_dxf(scene: Scene, system: System) -> str:
    """Give a scene as the text of a DXF file.

    Parameters
    ----------
    scene
        The drawing; a millimetre of it is one in the file, so that a scene at full size stays at full size.
    system
        In which units the file counts: inches or millimetres.

    Returns
    -------
    str
        A whole document, the same for the same scene. Its y runs up from the bottom of the scene, and each
        style that is used has a layer of its name, in capitals.
    """
    with _same_every_time():
        return _written(scene, system)


def _written(scene: Scene, system: System) -> str:
    document = new(_VERSION)
    document.units = units.MM if system is System.METRIC else units.IN
    document.header["$MEASUREMENT"] = 1 if system is System.METRIC else 0
    pen = _Pen(document, scene.height, 1.0 if system is System.METRIC else 1 / _MM_PER_INCH)
    for item in scene.items:
        pen.draw(item)
    _settle_classes(document)
    text = io.StringIO()
    document.write(text)
    return text.getvalue()


@contextmanager
def _same_every_time() -> Iterator[None]:
    """Let the library write no date and no new id, which it does for all of the process or for none of it."""
    options = ezdxf.options  # type: ignore[attr-defined]  # exported without saying so
    before = options.write_fixed_meta_data_for_testing
    options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        options.write_fixed_meta_data_for_testing = before


def _settle_classes(document: Drawing) -> None:
    """Name the classes of a file in order of their names: the library adds them as a set gives them."""
    names = {*REQUIRED_CLASSES.get(document.dxfversion, REQ_R2004), *document.entitydb.dxf_types_in_use()}
    for name in sorted(names):
        document.classes.add_class(name)


def layer_of(style: Style) -> str:
    """Name the layer of a style."""
    return style.value.upper()


class _Pen:
    """Draws items into the model space, in the units of the file."""

    def __init__(self, document: Drawing, height: float, per_mm: float) -> None:
        self._document = document
        self._space: Modelspace = document.modelspace()
        self._height, self._per_mm = height, per_mm

    def draw(self, item: Item) -> None:
        match item:
            case Rect():
                left, top, right, bottom = item.x, item.y, item.x + item.width, item.y + item.height
                self._closed(((left, bottom), (right, bottom), (right, top), (left, top)), item.style)
            case Polygon():
                for ring in item.rings:
                    self._closed(ring, item.style)
            case Line():
                self._space.add_lwpolyline(list(self._places(item.places)), dxfattribs=self._on(item.style))
            case Circle():
                centre, radius = self._place((item.x, item.y)), item.radius * self._per_mm
                self._space.add_circle(centre, radius, dxfattribs=self._on(item.style))
            case Text():
                self._text(item)
            case Group():
                for inner in item.items:
                    self.draw(inner)
            case _:
                assert_never(item)

    def _closed(self, ring: tuple[Place, ...], style: Style) -> None:
        self._space.add_lwpolyline(list(self._places(ring)), close=True, dxfattribs=self._on(style))

    def _text(self, item: Text) -> None:
        # Two per cent signs begin a control code in this format.
        said = _CONTROL.sub("% ", item.said)
        height = item.size * _CAPITALS * self._per_mm
        text = self._space.add_text(
            said, height=height, rotation=90 if item.turned else 0, dxfattribs=self._on(item.style)
        )
        text.set_placement(self._place((item.x, item.y)), align=_ALIGNMENTS[item.anchor])

    def _places(self, places: tuple[Place, ...]) -> Iterator[Place]:
        return (self._place(place) for place in places)

    def _place(self, place: Place) -> Place:
        return round(place[0] * self._per_mm, 6), round((self._height - place[1]) * self._per_mm, 6)

    def _on(self, style: Style) -> dict[str, str]:
        """Give the attributes of what lies on the layer of a style, which is made when it is first needed."""
        name = layer_of(style)
        if name not in self._document.layers:
            look = LOOKS[style]
            ink = look.stroke or look.fill
            layer = self._document.layers.add(name)
            if ink:
                layer.rgb = (int(ink[1:3], 16), int(ink[3:5], 16), int(ink[5:7], 16))
            layer.dxf.lineweight = min(_WEIGHTS, key=lambda weight: abs(weight - look.width * 100))
        return {"layer": name}
