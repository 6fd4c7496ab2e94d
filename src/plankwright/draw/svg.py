"""Write a scene as SVG: real text, shapes in millimetres, each style once, the same bytes every time."""

import math
import re
from collections.abc import Iterator
from typing import assert_never
from xml.etree import ElementTree as ET

from plankwright.draw.scene import Anchor, Circle, Group, Item, Line, Place, Polygon, Rect, Scene, Text
from plankwright.draw.styles import LOOKS, Hatch, Look, Style

_NAMESPACE = "http://www.w3.org/2000/svg"
_PREFIX = "pw-"
"""Before every class and id, so that a drawing set into a page keeps its styles apart from the page's."""

_CAPITALS_MIDDLE = 0.36
"""How far the middle of the capitals stands above the line that letters stand on. [font sizes]"""

_NOT_XML = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


def write_svg(scene: Scene) -> str:
    """Give a scene as the text of an SVG file.

    Parameters
    ----------
    scene
        The drawing.

    Returns
    -------
    str
        A whole document, one shape a line. It carries its own sheet of white paper, so it reads the same on
        a light and on a dark page, and as printed.
    """
    width, height = _number(scene.width), _number(scene.height)
    root = ET.Element(
        "svg",
        {
            "xmlns": _NAMESPACE,
            "width": f"{width}mm",
            "height": f"{height}mm",
            "viewBox": f"0 0 {width} {height}",
            # Whatever can be followed within an image is lost to those who hear it.
            "role": "group" if any(map(_leads_on, scene.items)) else "img",
        },
    )
    _say(root, "title", scene.title)
    _say(root, "desc", scene.description)
    used = sorted({item.style for item in _leaves(scene.items)} | {Style.PAPER}, key=list(Style).index)
    _say(root, "style", "\n" + "".join(map(_rule, used)))
    hatches = {style: hatch for style in used if (hatch := LOOKS[style].hatch) is not None}
    if hatches:
        defs = ET.SubElement(root, "defs")
        for style, hatch in hatches.items():
            _add_pattern(defs, style, hatch)
    sheet = Rect(x=0, y=0, width=scene.width, height=scene.height, style=Style.PAPER)
    for item in (sheet, *scene.items):
        _add(root, item)
    _break_lines(root)
    return ET.tostring(root, encoding="unicode") + "\n"


def _leaves(items: tuple[Item, ...]) -> Iterator[Rect | Polygon | Line | Circle | Text]:
    for item in items:
        if isinstance(item, Group):
            yield from _leaves(item.items)
        else:
            yield item


def _leads_on(item: Item) -> bool:
    return isinstance(item, Group) and (bool(item.href) or any(map(_leads_on, item.items)))


def _add(parent: ET.Element, item: Item) -> None:
    match item:
        case Rect():
            attributes = {"x": item.x, "y": item.y, "width": item.width, "height": item.height}
            _shape(parent, "rect", item.style, {name: _number(value) for name, value in attributes.items()})
        case Polygon():
            rings = "".join(f"M{_places(ring)}Z" for ring in item.rings)
            _shape(parent, "path", item.style, {"d": rings, "fill-rule": "evenodd"})
        case Line():
            _shape(parent, "polyline", item.style, {"points": _places(item.places)})
        case Circle():
            attributes = {"cx": item.x, "cy": item.y, "r": item.radius}
            _shape(parent, "circle", item.style, {name: _number(value) for name, value in attributes.items()})
        case Text():
            _add_text(parent, item)
        case Group():
            _add_group(parent, item)
        case _:
            assert_never(item)


def _shape(parent: ET.Element, tag: str, style: Style, attributes: dict[str, str]) -> ET.Element:
    # A page finds by its plain name what a tap is measured against.
    names = f"{_PREFIX}{style} {style}" if style is Style.TAP_AREA else _PREFIX + style
    return ET.SubElement(parent, tag, {"class": names, **attributes})


def _add_text(parent: ET.Element, text: Text) -> None:
    drop = _CAPITALS_MIDDLE * text.size
    x, y = (text.x + drop, text.y) if text.turned else (text.x, text.y + drop)
    attributes = {"x": _number(x), "y": _number(y), "font-size": _number(text.size)}
    if text.anchor is not Anchor.START:
        attributes["text-anchor"] = text.anchor
    if text.turned:
        attributes["transform"] = f"rotate(-90 {_number(x)} {_number(y)})"
    element = _shape(parent, "text", text.style, attributes)
    for span in text.spans:
        part = ET.SubElement(element, "tspan", {"font-weight": "bold"} if span.bold else {})
        part.text = _clean(span.text)


def _add_group(parent: ET.Element, group: Group) -> None:
    attributes = {"id": _PREFIX + group.id}
    if group.href:
        element = ET.SubElement(parent, "a", {**attributes, "href": _clean(group.href)})
    else:
        element = ET.SubElement(parent, "g", attributes)
    _say(element, "title", group.title)
    for item in group.items:
        _add(element, item)


def _add_pattern(defs: ET.Element, style: Style, hatch: Hatch) -> None:
    size = _number(hatch.spacing)
    pattern = ET.SubElement(
        defs,
        "pattern",
        {
            "id": f"{_PREFIX}hatch-{style}",
            "width": size,
            "height": size,
            "patternUnits": "userSpaceOnUse",
            "patternTransform": f"rotate({_number(hatch.angle)})",
        },
    )
    ET.SubElement(pattern, "path", {"d": _hatch_lines(hatch), "fill": "none", "stroke": hatch.ink,
                                    "stroke-width": _number(hatch.width)})  # fmt: skip


def _hatch_lines(hatch: Hatch) -> str:
    """Give the lines of one tile, through its middle so that no edge of a tile halves them."""
    middle, size = _number(hatch.spacing / 2), _number(hatch.spacing)
    return f"M0 {middle}H{size}" + (f"M{middle} 0V{size}" if hatch.crossed else "")


def _rule(style: Style) -> str:
    return f".{_PREFIX}{style}{{{';'.join(_declarations(style, LOOKS[style]))}}}\n"


def _declarations(style: Style, look: Look) -> Iterator[str]:
    if style in {Style.TEXT, Style.NOTE}:
        yield "font-family:sans-serif"
    if look.slanted:
        yield "font-style:italic"
    yield f"fill:{f'url(#{_PREFIX}hatch-{style})' if look.hatch else look.fill or 'none'}"
    if look.opacity < 1:
        yield f"fill-opacity:{_number(look.opacity)}"
    if look.stroke:
        yield f"stroke:{look.stroke}"
        yield f"stroke-width:{_number(look.width)}"
    if style is Style.PIECE:
        yield "pointer-events:all"  # A piece can be tapped anywhere in it, though it is not filled.
    if look.dash:
        yield f"stroke-dasharray:{' '.join(map(_number, look.dash))}"


def _places(places: tuple[Place, ...]) -> str:
    return " ".join(f"{_number(x)},{_number(y)}" for x, y in places)


def _number(value: float) -> str:
    """Write a number of millimetres to the thousandth, the same on every machine."""
    if not math.isfinite(value):
        msg = f"a drawing cannot hold {value}"
        raise ValueError(msg)
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _say(parent: ET.Element, tag: str, text: str) -> None:
    ET.SubElement(parent, tag).text = _clean(text)


def _clean(text: str) -> str:
    """Replace what XML cannot hold, such as control characters; the writer escapes the rest."""
    return _NOT_XML.sub("\ufffd", text)


def _break_lines(element: ET.Element) -> None:
    """Put each shape on a line of its own, but nothing into a text, where it would show."""
    if element.tag == "text" or len(element) == 0:
        return
    element.text = "\n"
    for child in element:
        child.tail = "\n"
        _break_lines(child)
