"""A surface before anything is laid out on it, drawn small."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builders import TAPE, nm, opening, outline, rectangle, socket, studs, wall
from plankwright.draw import Scene, write_svg
from plankwright.draw.bare_wall import bare_wall
from plankwright.draw.scene import Group, Item, Line, Polygon, Rect, Text
from plankwright.draw.styles import Style
from plankwright.measure import METRE
from plankwright.model import ConcealedZone, Direction, Edge, EdgeTrim, Framing, KeepOut, Surface

WALL = wall(144, 96)
GABLE = wall(144, 96, outline=outline((0, 0), (144, 0), (144, 96), (72, 120), (0, 90)))


def leaves(items: Sequence[Item]) -> Iterator[Item]:
    """Give every shape, in groups or not."""
    for item in items:
        if isinstance(item, Group):
            yield from leaves(item.items)
        else:
            yield item


def words(scene: Scene) -> list[str]:
    """Give everything that is lettered."""
    return [item.said for item in leaves(scene.items) if isinstance(item, Text)]


def styles(scene: Scene) -> set[Style]:
    """Give the styles of all shapes."""
    return {item.style for item in leaves(scene.items) if not isinstance(item, Group)}


def tap_area(scene: Scene) -> Rect:
    """Give the shape that a tap is measured against."""
    (area,) = [item for item in leaves(scene.items) if getattr(item, "style", None) is Style.TAP_AREA]
    assert isinstance(area, Rect)
    return area


def test_its_size_is_lettered() -> None:
    """Below and at the right."""
    assert words(bare_wall(WALL, TAPE)) == ["12' 0\"", "8' 0\""]


def test_the_heights_of_both_ends_are_lettered_where_they_differ() -> None:
    """And that of the whole, where it is neither."""
    assert words(bare_wall(GABLE, TAPE)) == ["12' 0\"", "10' 0\"", "7' 6\""]
    sloping = wall(144, 96, outline=outline((0, 0), (144, 0), (144, 96), (0, 90)))
    assert words(bare_wall(sloping, TAPE)) == ["12' 0\"", "8' 0\"", "7' 6\""]


def test_a_small_picture_has_no_lettering() -> None:
    """It stands in a list."""
    door = (opening("door", 30, 0, 62, 80),)
    assert words(bare_wall(wall(144, 96, openings=door), TAPE, measures=False)) == []


def test_everything_on_it_is_drawn_and_named() -> None:
    """Inside where there is room, else beside it."""
    surface = wall(
        144,
        96,
        openings=(opening("door", 30, 0, 62, 80),),
        cut_outs=(socket(80, 12, 82.25, 15.75),),
        concealed=(ConcealedZone(id="bench", place=rectangle(90, 0, 140, 18)),),
        keep_outs=(KeepOut(id="pipe", place=rectangle(100, 40, 102, 96), what="water pipe"),),
        trim=EdgeTrim(bottom=nm(3)),
    )
    scene = bare_wall(surface, TAPE)
    assert {"door", "socket", "bench", "water pipe"} <= set(words(scene))
    assert {Style.OPENING, Style.CUT_OUT, Style.CONCEALED, Style.KEEP_OUT, Style.FRAMING} <= styles(scene)
    assert Style.EXTENSION in styles(scene)
    assert "On it: door, socket, water pipe, bench." in scene.description


def test_a_tap_is_measured_against_the_box_around_it() -> None:
    """Which an SVG marks by its plain name."""
    area = tap_area(bare_wall(GABLE, TAPE))
    assert area.width / area.height == pytest.approx(144 / 120)
    assert 'class="pw-tap-area tap-area"' in write_svg(bare_wall(GABLE, TAPE))


@pytest.mark.parametrize(
    ("start", "at"), [(Edge.BOTTOM, "bottom"), (Edge.TOP, "top"), (Edge.LEFT, "left"), (Edge.RIGHT, "right")]
)
def test_a_heavy_line_is_where_the_first_course_hangs(start: Edge, at: str) -> None:
    """On whichever side that is."""
    run = Direction.HORIZONTAL if start in {Edge.BOTTOM, Edge.TOP} else Direction.VERTICAL
    surface = wall(144, 96, courses_run=run, start=start, framing=Framing(solid=True))
    scene = bare_wall(surface, TAPE)
    (line,) = [item for item in scene.items if isinstance(item, Line) and item.style is Style.REFERENCE]
    area = tap_area(scene)
    sides = {
        "left": {area.x},
        "right": {area.x + area.width},
        "top": {area.y},
        "bottom": {area.y + area.height},
    }
    along = {round(place[0 if at in {"left", "right"} else 1], 6) for place in line.places}
    assert along == {round(side, 6) for side in sides[at]}


def test_what_lies_wholly_outside_is_left_out() -> None:
    """As it may be while somebody types."""
    surface = wall(144, 96, openings=(opening("door", 200, 0, 230, 80),), cut_outs=(socket(-9, 0, -5, 4),))
    scene = bare_wall(surface, TAPE)
    assert words(scene) == words(bare_wall(WALL, TAPE))
    assert Style.OPENING not in styles(scene)


LENGTHS = st.integers(1, 1_000 * METRE)


@given(width=LENGTHS, height=LENGTHS, left=st.integers(0, 2_000 * METRE), size=LENGTHS)
def test_whatever_its_size_it_fits_on_its_sheet(width: int, height: int, left: int, size: int) -> None:
    """However thin, with whatever stands on it."""
    box = replace(rectangle(0, 0, 1, 1), left=left, bottom=0, right=left + size, top=size)
    surface = Surface(
        id="wall",
        outline=((0, 0), (width, 0), (width, height), (0, height)),
        framing=studs(1),
        openings=(replace(opening("door", 0, 0, 1, 1), place=box),),
        keep_outs=(KeepOut(id="pipe", place=box),),
    )
    scene = bare_wall(surface, TAPE)
    assert write_svg(scene)
    for item in scene.items:
        if isinstance(item, Polygon):
            for x, y in item.rings[0]:
                assert -0.01 <= x <= scene.width + 0.01
                assert -0.01 <= y <= scene.height + 0.01
