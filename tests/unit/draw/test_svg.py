"""The writer of SVG."""

import math
from xml.etree import ElementTree as ET

import pytest

from plankwright.draw.scene import (
    Anchor,
    Circle,
    Group,
    Item,
    Line,
    Polygon,
    Rect,
    Scene,
    Span,
    Text,
    slug,
)
from plankwright.draw.styles import LOOKS, Style
from plankwright.draw.svg import write_svg

SVG = "{http://www.w3.org/2000/svg}"


def _scene(*items: Item, title: str = "Hall", description: str = "A wall.") -> Scene:
    return Scene(width=120.0, height=60.5, title=title, description=description, items=items)


def _written(*items: Item) -> ET.Element:
    return ET.fromstring(write_svg(_scene(*items)))  # noqa: S314 - our own text


def test_the_sheet_is_as_large_as_it_says() -> None:
    """Millimetres are the user units, so that a print at full size is to scale."""
    root = _written()
    assert (root.get("width"), root.get("height"), root.get("viewBox")) == ("120mm", "60.5mm", "0 0 120 60.5")


def test_an_empty_scene_is_a_sheet_of_white_paper() -> None:
    """One rectangle over the whole sheet, and a style for it alone."""
    root = _written()
    (paper,) = root.findall(f"{SVG}rect")
    assert (paper.get("x"), paper.get("y"), paper.get("width"), paper.get("height")) == (
        "0",
        "0",
        "120",
        "60.5",
    )
    style = root.findtext(f"{SVG}style", "")
    assert style.strip() == ".pw-paper{fill:#ffffff}"
    assert root.find(f"{SVG}defs") is None


def test_it_can_be_heard() -> None:
    """A title and a description come first, and the whole is one image."""
    root = _written()
    assert root.get("role") == "img"
    assert [child.tag for child in root][:2] == [f"{SVG}title", f"{SVG}desc"]
    assert root.findtext(f"{SVG}title") == "Hall"
    assert root.findtext(f"{SVG}desc") == "A wall."


def test_shapes_are_written_in_order_with_their_class() -> None:
    """Each kind of shape once, later ones over earlier ones."""
    ring = ((0.0, 0.0), (10.0, 0.0), (10.0, 5.0))
    hole = ((1.0, 1.0), (2.0, 1.0), (2.0, 2.0))
    root = _written(
        Polygon(rings=(ring, hole), style=Style.WOOD),
        Rect(x=1, y=2, width=3, height=4, style=Style.CUT_OUT),
        Line(places=((0, 0), (1.25, 2)), style=Style.LEADER),
        Circle(x=5, y=6, radius=0.5, style=Style.NAIL),
    )
    path, rect, line, circle = list(root)[-4:]
    assert path.attrib == {"class": "pw-wood", "d": "M0,0 10,0 10,5ZM1,1 2,1 2,2Z", "fill-rule": "evenodd"}
    assert rect.attrib == {"class": "pw-cut-out", "x": "1", "y": "2", "width": "3", "height": "4"}
    assert line.attrib == {"class": "pw-leader", "points": "0,0 1.25,2"}
    assert circle.attrib == {"class": "pw-nail", "cx": "5", "cy": "6", "r": "0.5"}


def test_each_style_stands_once_however_often_it_is_used() -> None:
    """A hundred nails share one rule."""
    nails = [Circle(x=float(x), y=1, radius=0.3, style=Style.NAIL) for x in range(100)]
    assert write_svg(_scene(*nails)).count(".pw-nail{") == 1


def test_a_hatch_is_a_pattern_of_lines() -> None:
    """Two sets of lines for a crossed one, one for a plain one, each filling its class."""
    root = _written(
        Rect(x=0, y=0, width=9, height=9, style=Style.BARE),
        Rect(x=9, y=0, width=9, height=9, style=Style.CONCEALED),
    )
    bare, concealed = root.findall(f"{SVG}defs/{SVG}pattern")
    assert (bare.get("id"), concealed.get("id")) == ("pw-hatch-bare", "pw-hatch-concealed")
    assert [each.find(f"{SVG}path").get("d", "").count("M") for each in (bare, concealed)] == [2, 1]  # type: ignore[union-attr]
    assert "fill:url(#pw-hatch-bare)" in root.findtext(f"{SVG}style", "")


def test_text_is_text_and_escaped() -> None:
    """What a user typed is read back letter for letter, whatever it is."""
    said = """<b> & "B17" · 7' ½ 板"""
    root = _written(Text(x=1, y=2, spans=(Span(text=said),), size=2.5))
    (text,) = root.findall(f"{SVG}text")
    assert "".join(text.itertext()) == said
    assert text.get("font-size") == "2.5"


def test_what_xml_cannot_hold_is_replaced() -> None:
    """A control character in a name does not make a file that nothing can open."""
    root = _written(Text(x=1, y=2, spans=(Span(text="B\x0017"),), size=2.5))
    assert "".join(root.find(f"{SVG}text").itertext()) == "B\ufffd17"  # type: ignore[union-attr]


def test_bold_spans_and_no_space_between_them() -> None:
    """Spans follow each other directly: line breaks in the file must not show as gaps."""
    root = _written(Text(x=1, y=2, spans=(Span(text="4b", bold=True), Span(text=" · B17")), size=2.0))
    (text,) = root.findall(f"{SVG}text")
    assert [(span.text, span.get("font-weight"), span.tail) for span in text] == [
        ("4b", "bold", None),
        (" · B17", None, None),
    ]
    assert text.text is None


def test_text_stands_with_its_capitals_around_its_place() -> None:
    """The line that letters stand on lies below the place, and left of it for text that reads upwards."""
    spans = (Span(text="4b"),)
    root = _written(
        Text(x=10, y=20, spans=spans, size=5, anchor=Anchor.MIDDLE),
        Text(x=10, y=20, spans=spans, size=5, anchor=Anchor.END, turned=True),
    )
    level, upright = root.findall(f"{SVG}text")
    assert (level.get("x"), level.get("y"), level.get("text-anchor")) == ("10", "21.8", "middle")
    assert level.get("transform") is None
    assert (upright.get("x"), upright.get("y"), upright.get("text-anchor")) == ("11.8", "20", "end")
    assert upright.get("transform") == "rotate(-90 11.8 20)"


def test_a_group_has_an_id_and_a_title_and_may_be_a_link() -> None:
    """A page can find each piece, say what it is and lead somewhere."""
    nail = Circle(x=1, y=1, radius=0.3, style=Style.NAIL)
    root = _written(
        Group(id="piece-4b", title="4b: board B17", items=(nail,)),
        Group(id="piece-4c", title="4c: board B18", href="/pieces/4c?a=1&b=2", items=(nail,)),
    )
    plain, link = root.find(f"{SVG}g"), root.find(f"{SVG}a")
    assert plain is not None
    assert link is not None
    assert (plain.get("id"), plain.findtext(f"{SVG}title")) == ("pw-piece-4b", "4b: board B17")
    assert (link.get("id"), link.get("href")) == ("pw-piece-4c", "/pieces/4c?a=1&b=2")
    assert len(plain.findall(f"{SVG}circle")) == len(link.findall(f"{SVG}circle")) == 1


def test_numbers_are_short_and_alike_everywhere() -> None:
    """Thousandths at most, no trailing zeros, no exponent and no minus before nothing."""
    root = _written(Line(places=((1 / 3, -0.00001), (1e-9, 100.0)), style=Style.LEADER))
    assert root.find(f"{SVG}polyline").get("points") == "0.333,0 0,100"  # type: ignore[union-attr]


def test_a_place_that_is_nowhere_is_refused() -> None:
    """Not a number cannot be drawn."""
    with pytest.raises(ValueError, match="a drawing cannot hold"):
        write_svg(_scene(Circle(x=math.nan, y=1, radius=1, style=Style.NAIL)))


def test_every_style_has_a_look() -> None:
    """Nothing can be drawn that would come out black and filled for want of a rule."""
    assert set(LOOKS) == set(Style)


def test_no_two_hatches_differ_in_colour_alone() -> None:
    """In black and white each hatch is still told from each other one."""
    hatched = [Style.BARE, Style.CONCEALED, Style.KEEP_OUT]
    hatches = [LOOKS[style].hatch for style in hatched]
    lines = {(hatch.spacing, hatch.angle, hatch.crossed) for hatch in hatches if hatch is not None}
    assert len(lines) == len(hatched)


def test_a_drawing_that_can_be_followed_is_no_image() -> None:
    """What lies within an image is nothing that one could follow, for those who hear it."""
    dot = Circle(x=1, y=1, radius=1, style=Style.NAIL)
    plain, linked = (Group(id="a", title="a", href=href, items=(dot,)) for href in ("", "/there"))
    assert _written(plain).get("role") == "img"
    assert _written(linked).get("role") == "group"
    assert _written(Group(id="b", title="b", items=(linked,))).get("role") == "group"


@pytest.mark.parametrize(("text", "part"), [("4b", "4b"), ("entry wall", "entry-wall"), ('a<"b">', "a-b-")])
def test_ids_hold_only_what_ids_may(text: str, part: str) -> None:
    """Spaces and marks become hyphens."""
    assert slug(text) == part
