"""The wall map: to scale, complete, and legible."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import cache
from xml.etree import ElementTree as ET

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from builders import TAPE, nm, opening, outline, rectangle, socket, studs, wall
from by_eye import filled
from conftest import Golden
from plankwright.draw import A4, LETTER, Page, Scene, wall_map, write_svg
from plankwright.draw.lettering import text_width
from plankwright.draw.scene import Anchor, Group, Item, Line, Polygon, Rect, Text
from plankwright.draw.styles import Style
from plankwright.draw.wall import CAUTION
from plankwright.measure import MILLIMETRE, System, TapeStyle
from plankwright.model import (
    Board,
    Bound,
    ConcealedZone,
    CutOut,
    Direction,
    Edge,
    EdgeTrim,
    Job,
    KeepOut,
    Rules,
    Surface,
    SurfaceKind,
    SurfaceLayout,
)

METRIC = TapeStyle(system=System.METRIC)
HAIR = 1e-6
"""An area that is no more than rounding. [mm²]"""

SVG = "{http://www.w3.org/2000/svg}"

PLAIN = wall(144, 96)
ENTRY = wall(
    144,
    96,
    id="entry wall",
    openings=(opening("doorway", 20, 0, 52, 80, trim=2.5), opening("window", 86, 38, 122, 74, trim=2.5)),
    cut_outs=(
        CutOut(id="by the door", place=rectangle(57, 44, 59.25, 48), what="switch"),
        CutOut(id="left", place=rectangle(70, 12, 72.25, 16), what="socket"),
    ),
    concealed=(ConcealedZone(id="bench", place=rectangle(60, 0, 108, 18)),),
    keep_outs=(
        KeepOut(id="K1", place=rectangle(57, 0, 59, 44), what="cable"),
        KeepOut(id="K2", place=rectangle(126, 0, 129, 96), what="water pipe"),
    ),
    trim=EdgeTrim(bottom=nm(3.5)),
)
GABLE = wall(
    144,
    96,
    id="gable",
    outline=outline((0, 0), (144, 0), (144, 72), (72, 130), (0, 72)),
    framing=studs(1, 17, 32.5, 48, 64.75, 80, 96.25, 112, 128, 143),
    openings=(opening("door", 30, 0, 62, 80, trim=2.5),),
    cut_outs=(socket(70, 12, 72.25, 16),),
    keep_outs=(KeepOut(id="wire", place=rectangle(69, 16, 73, 110), what="wire"),),
)
UPRIGHT = wall(
    144,
    96,
    id="upright",
    courses_run=Direction.VERTICAL,
    start=Edge.RIGHT,
    framing=studs(1, 24, 48, 72, 95, runs=Direction.HORIZONTAL),
    openings=(opening("window", 50, 30, 90, 70, trim=2),),
)
CEILING = wall(180, 120, id="ceiling", kind=SurfaceKind.CEILING, start=Edge.TOP)
CRUMBS = wall(60, 30, id="crumbs", cut_outs=(socket(5, 5, 5.5, 5.5),))

SURFACES: dict[str, tuple[Surface, Sequence[float], dict[int, Sequence[float]], TapeStyle]] = {
    "plain": (PLAIN, [5.5] * 20, {1: [72], 2: [56, 104], 3: [40, 88]}, TAPE),
    "entry": (ENTRY, [5.5, 7.25, 5.5, 4.75] * 6, {1: [72, 104], 2: [88], 3: [56, 120]}, TAPE),
    "gable": (
        GABLE,
        [5.5, 6.5, 7.25, 5] * 8,
        {1: [32.5, 80, 112], 2: [17, 64.75, 96.25, 128], 3: [48]},
        TAPE,
    ),
    "upright": (UPRIGHT, [5.5, 7.25] * 20, {1: [48], 2: [24, 72], 3: []}, TAPE),
    "ceiling": (CEILING, [3.25] * 50, {1: [40, 88, 136], 2: [56, 104], 3: [72, 152]}, METRIC),
    "crumbs": (CRUMBS, [2] * 30, {1: range(2, 60, 9), 2: range(3, 60, 9), 3: range(4, 44, 3)}, TAPE),
}


@cache
def _case(name: str, *bare: str) -> tuple[Job, SurfaceLayout]:
    """Give a job of one surface, filled by eye; the joints of three courses come again in every three."""
    surface, heights, joints, tape = SURFACES[name]
    again = {number: joints[(number - 1) % 3 + 1] for number in range(1, 51)}
    return _job(surface, tape, *filled(surface, heights, again, bare=bare, nails=True))


def _job(
    surface: Surface, tape: TapeStyle, layout: SurfaceLayout, boards: tuple[Board, ...]
) -> tuple[Job, SurfaceLayout]:
    return Job(name="Hall <boards>", tape=tape, surfaces=(surface,), boards=boards), layout


@cache
def _map(name: str, page: Page = LETTER) -> Scene:
    return wall_map(*_case(name), page)


def _all(items: tuple[Item, ...]) -> Iterator[Item]:
    for item in items:
        yield item
        if isinstance(item, Group):
            yield from _all(item.items)


def _texts(scene: Scene) -> list[Text]:
    return [item for item in _all(scene.items) if isinstance(item, Text)]


def _styled(scene: Scene, style: Style) -> list[Item]:
    return [item for item in _all(scene.items) if not isinstance(item, Group) and item.style is style]


def _touching(boxes: list[shapely.Polygon]) -> list[tuple[int, int]]:
    """Give which boxes share more than an edge."""
    first, second = shapely.STRtree(boxes).query(boxes, "intersects")
    pairs = [(int(one), int(two)) for one, two in zip(first, second, strict=True) if one < two]
    return [(one, two) for one, two in pairs if boxes[one].intersection(boxes[two]).area > HAIR]


def _box(text: Text) -> shapely.Polygon:
    """Give the paper that a text takes at most, by the upper widths and its font size."""
    width, half = text_width(text.spans, text.size), text.size / 2
    before = {Anchor.START: 0.0, Anchor.MIDDLE: width / 2, Anchor.END: width}[text.anchor]
    if text.turned:
        return shapely.box(text.x - half, text.y + before - width, text.x + half, text.y + before)
    return shapely.box(text.x - before, text.y - half, text.x - before + width, text.y + half)


@pytest.mark.parametrize("page", [LETTER, A4], ids=lambda page: page.name)
@pytest.mark.parametrize("name", sorted(SURFACES))
def test_no_two_texts_touch_and_none_leaves_the_sheet(name: str, page: Page) -> None:
    """Whatever is drawn, every text has paper of its own."""
    scene = _map(name, page)
    texts = _texts(scene)
    boxes = [_box(text) for text in texts]
    sheet = shapely.box(0, 0, page.width, page.height)
    assert not [text.said for text, box in zip(texts, boxes, strict=True) if not sheet.contains(box)]
    assert not [(texts[one].said, texts[two].said) for one, two in _touching(boxes)]


@pytest.mark.parametrize("name", sorted(SURFACES))
def test_lettering_in_a_piece_stays_in_its_piece(name: str) -> None:
    """No label crosses the edge of its board, a slope or a notch, or runs over a socket."""
    scene, (job, _) = _map(name), _case(name)
    sockets = [item for item in _styled(scene, Style.CUT_OUT) if isinstance(item, Rect)][
        : len(job.surfaces[0].cut_outs)
    ]
    boxes = [shapely.box(rect.x, rect.y, rect.x + rect.width, rect.y + rect.height) for rect in sockets]
    for group in _pieces(scene):
        shape = shapely.Polygon(_shape(group).rings[0])
        for text in (item for item in group.items if isinstance(item, Text)):
            assert shape.contains(_box(text)), text.said
            assert not any(box.intersects(_box(text)) for box in boxes), text.said


@pytest.mark.parametrize("name", sorted(SURFACES))
def test_every_piece_is_drawn_to_scale(name: str) -> None:
    """What is drawn, times the scale that the sheet tells, lies within the blank to the micrometre."""
    scene, (_, layout) = _map(name), _case(name)
    scale = _scale(scene)
    left, _, _, bottom = _bounds(_outline(scene))
    for group, piece in zip(_pieces(scene), layout.pieces, strict=True):
        xs, ys = zip(*_shape(group).rings[0], strict=True)
        place = piece.place
        assert (min(xs) - left) * scale * MILLIMETRE >= place.left - 1000
        assert (max(xs) - left) * scale * MILLIMETRE <= place.right + 1000
        assert (bottom - max(ys)) * scale * MILLIMETRE >= place.bottom - 1000
        assert (bottom - min(ys)) * scale * MILLIMETRE <= place.top + 1000


def test_a_plain_piece_measures_what_its_board_measures() -> None:
    """On the plain wall, with nothing cut off, drawn size times scale is the size to the micrometre."""
    scene, (_, layout) = _map("plain"), _case("plain")
    scale = _scale(scene)
    for group, piece in zip(_pieces(scene), layout.pieces, strict=True):
        left, top, right, bottom = _bounds(_shape(group))
        assert (right - left) * scale * MILLIMETRE == pytest.approx(piece.place.width_nm, abs=1000)
        assert (bottom - top) * scale * MILLIMETRE == pytest.approx(piece.place.height_nm, abs=1000)


def test_every_piece_is_lettered_or_in_the_table() -> None:
    """Each label, each board and each length stands somewhere on the sheet."""
    for name in SURFACES:
        said = "\n".join(text.said for text in _texts(_map(name)))
        _, layout = _case(name)
        missing = [piece.label for piece in layout.pieces if piece.label not in said]
        boards = [piece.board_id for piece in layout.pieces if piece.board_id not in said]
        assert not missing, name
        assert not boards, name


def test_joints_in_sight_and_concealed_ones_are_marked_differently() -> None:
    """On the entry wall every joint has one mark, and it is the one that its kind has."""
    scene = _map("entry")
    surface, layout = SURFACES["entry"][0], _case("entry")[1]
    seen = [item for item in _styled(scene, Style.JOINT_IN_SIGHT) if isinstance(item, Line)]
    rings = _styled(scene, Style.JOINT_CONCEALED)
    key = 1  # The key shows one of each.
    in_sight, concealed = len(seen) - key, len(rings) - key
    assert in_sight > 5
    assert concealed == 3, "two joints of the first course and one of the second, behind the bench"
    without = replace(surface, concealed=(), trim=EdgeTrim())
    bare_map = wall_map(*_job(without, TAPE, layout, ()), LETTER)
    assert len(_styled(bare_map, Style.JOINT_IN_SIGHT)) - key == in_sight + concealed


def test_openings_are_crossed_and_named() -> None:
    """Two diagonals each, the name and the size."""
    scene = _map("entry")
    assert len(_styled(scene, Style.OPENING_CROSS)) == 2 * (2 + 1)
    said = [text.said for text in _texts(scene)]
    for line in ("doorway", '32" × 80"', "window", '36" × 36"'):
        assert line in said


def test_what_stands_in_and_behind_the_wall_is_named() -> None:
    """Sockets, pipes, wires and fixtures all have their names on the sheet."""
    said = " ".join(text.said for text in _texts(_map("entry")))
    for name in ("bench", "cable (K1)", "water pipe (K2)", "socket (left)", "switch (by the door)"):
        assert name in said


def test_what_is_bare_says_so() -> None:
    """Bare blanks are hatched, named, told in the answer and in the key."""
    job, layout = _case("plain", "2b", "5a")
    scene = wall_map(job, layout, LETTER)
    said = [text.said for text in _texts(scene)]
    assert sum(text.startswith("BARE ") for text in said) == 2
    assert len([item for item in _styled(scene, Style.BARE) if isinstance(item, Polygon)]) == 2
    assert "left bare" in said
    assert any(text.startswith("Not settled whether it is enough: ") for text in said)


def test_what_is_too_small_for_its_name_is_named_beside_it() -> None:
    """A peephole and a bare inch get their names on a leader."""
    peephole = opening("peephole", 40, 40, 41, 41)
    surface = wall(144, 96, openings=(peephole,))
    layout, boards = filled(surface, [5.5] * 6 + [1] + [5.5] * 20, {7: [100, 101]}, bare=("7b",))
    scene = wall_map(*_job(surface, TAPE, layout, boards), LETTER)
    said = [text.said for text in _texts(scene)]
    assert "peephole" in said
    assert "BARE" in said
    assert len(_styled(scene, Style.LEADER)) >= 2
    assert not _touching([_box(text) for text in _texts(scene)])


@pytest.mark.parametrize(
    ("bare", "bound", "answer"),
    [
        ((), 0, "Enough: nothing left bare, 30 joints in sight."),
        (("2b",), 1, "Not enough: 1.8 sq ft left bare, 28 joints in sight."),
        (("2b",), 0, "Not settled whether it is enough: 1.8 sq ft left bare, 28 joints in sight."),
    ],
)
def test_the_answer_stands_on_top(bare: tuple[str, ...], bound: int, answer: str) -> None:
    """Enough, not enough, or not settled; how much is bare and how many joints show."""
    job, layout = _case("plain", *bare)
    scene = wall_map(job, replace(layout, bound=Bound(bare_nm2=bound)), LETTER)
    assert [text.said for text in _texts(scene)][:2] == ["Hall <boards> · wall", answer]


def test_courses_are_numbered_and_marked_from_the_start_edge() -> None:
    """Every course has its number, and every edge its distance from the side that hanging starts on."""
    for name, far in (("plain", '95-3/4"'), ("upright", '143-3/4"')):
        said = [text.said for text in _texts(_map(name))]
        _, layout = _case(name)
        for course in layout.courses:
            assert str(course.number) in said
        assert '5-3/4"' in said, "a quarter inch of gap and 5-1/2 inches of board"
        assert far in said
    titles = [text.said for text in _texts(_map("upright"))]
    assert "Course edges, from the right" in titles


def test_marks_of_courses_stand_where_the_courses_are() -> None:
    """A course counted from the right is marked on the right: its tick is at its edge."""
    scene = _map("upright")
    scale = _scale(scene)
    _, _, right, bottom = _bounds(_outline(scene))
    expected = right - nm(5.75) / MILLIMETRE / scale
    starts = [line.places[0] for line in _styled(scene, Style.DIMENSION) if isinstance(line, Line)]
    assert any(x == pytest.approx(expected, abs=0.002) for x, y in starts if y > bottom)


def test_framing_is_drawn_and_numbered_from_the_left() -> None:
    """Ten studs, uneven, with a number and a place each."""
    scene = _map("gable")
    said = [text.said for text in _texts(scene)]
    assert [text for text in said if text.startswith("S") and text[1:2].isdigit()] == [
        'S1 1"', 'S2 17"', 'S3 32-1/2"', 'S4 48"', 'S5 64-3/4"',
        'S6 80"', 'S7 96-1/4"', 'S8 112"', 'S9 128"', 'S10 143"',
    ]  # fmt: skip
    assert "Centres of the studs, from the left" in said
    assert "Centres of the strips, from the bottom" in [text.said for text in _texts(_map("upright"))]
    assert any(text.said.startswith("Centres of the joists") for text in _texts(_map("ceiling")))


def test_lengths_are_in_the_units_of_the_user() -> None:
    """A metric user sees no inch anywhere, an imperial one no millimetre."""
    metric = [text.said for text in _texts(_map("ceiling"))]
    imperial = [text.said for text in _texts(_map("plain"))]
    assert not any('"' in text for text in metric)
    assert "4572 mm" in metric
    assert any(text.endswith(", in mm") for text in metric)
    assert any(text.endswith(" m") for text in metric), "the scale bar"
    assert not any(" mm" in text for text in imperial)
    assert "12' 0\"" in imperial


def test_lengths_to_the_long_point_say_so() -> None:
    """Pieces under a rafter are lettered LP, others not, and the key explains it where there are any."""
    assert any(text.said.endswith(" LP") for text in _texts(_map("gable")))
    assert not any(" LP" in text.said for text in _texts(_map("plain")))
    assert "label · board · length, LP to the long point" in [text.said for text in _texts(_map("gable"))]


def test_the_scale_bar_is_as_long_as_it_says() -> None:
    """Its parts together are the feet that stand at its end."""
    scene = _map("plain")
    scale = _scale(scene)
    bar = [rect for rect in _all(scene.items) if isinstance(rect, Rect) and rect.height == pytest.approx(1.2)]
    length = max(rect.x + rect.width for rect in bar) - min(rect.x for rect in bar)
    (said,) = [text.said for text in _texts(scene) if text.said.endswith(" ft")]
    assert length * scale == pytest.approx(float(said.removesuffix(" ft")) * 304.8)


def test_the_key_shows_only_what_there_is() -> None:
    """A plain wall has no opening to explain; the entry wall has all but nails and bare."""
    plain = {text.said for text in _texts(_map("plain"))}
    entry = {text.said for text in _texts(_map("entry"))}
    everywhere = {"joint in sight", "stud", "label · board · length"}
    things = {"opening", "cut-out", "hidden later by a fixture", "keep-out: no nails", "joint out of sight"}
    assert everywhere <= plain
    assert not things & plain
    assert everywhere | things <= entry
    assert not {"nail", "left bare"} & entry


def test_nails_are_drawn_when_asked_for() -> None:
    """One dot a nail and one in the key; none without asking."""
    job, layout = _case("plain")
    scene = wall_map(job, layout, LETTER, nails=True)
    assert len(_styled(scene, Style.NAIL)) == sum(len(piece.nails) for piece in layout.pieces) + 1
    assert not _styled(_map("plain"), Style.NAIL)


def test_the_caution_stands_on_every_map() -> None:
    """Also where nobody entered a pipe."""
    for name in ("plain", "entry"):
        assert CAUTION in [text.said for text in _texts(_map(name))]


def test_pieces_can_be_pointed_at_and_tapped() -> None:
    """Each piece has an id and says what it is; those with a link lead there."""
    job, layout = _case("plain")
    scene = wall_map(job, layout, LETTER, links={"1a": "/pieces/1a"})
    first, second = _pieces(scene)[:2]
    assert (first.id, first.href, first.title) == (
        "piece-wall-1a",
        "/pieces/1a",
        '1a: board B01, 71-3/4" × 5-1/2"',
    )
    assert second.href == ""
    ids = [group.id for group in _pieces(scene)]
    assert len(set(ids)) == len(ids)


def test_a_crowd_of_small_pieces_does_not_crowd_out_the_drawing() -> None:
    """However many rows the table has, the surface keeps more than a third of the sheet's width."""
    left, _, right, _ = _bounds(_outline(_map("crumbs")))
    assert right - left > LETTER.width / 3


def test_the_same_map_comes_out_byte_for_byte() -> None:
    """Drawing twice gives the same file."""
    job, layout = _case("entry")
    assert write_svg(wall_map(job, layout, LETTER)) == write_svg(wall_map(job, layout, LETTER))


def test_a_small_wall_looks_as_it_did(golden: Golden) -> None:
    """The golden file of a wall with one of everything; first that it is what it should be."""
    surface = wall(
        72,
        30,
        id="half wall",
        openings=(opening("hatch", 30, 12, 46, 24, trim=1),),
        cut_outs=(socket(10, 6, 12.25, 10),),
        concealed=(ConcealedZone(id="bench", place=rectangle(44, 0, 70, 11)),),
        keep_outs=(KeepOut(id="K1", place=rectangle(10, 10, 12, 30), what="cable"),),
    )
    joints = {1: [40], 2: [56], 3: [24], 5: [40]}
    layout, boards = filled(surface, [5.5, 5.5, 6, 7, 5.5], joints, Rules(), bare=("5b",), nails=True)
    job = Job(name="Village hall", tape=TAPE, surfaces=(surface,), boards=boards)
    text = write_svg(wall_map(job, layout, LETTER, nails=True))
    root = ET.fromstring(text)  # noqa: S314 - our own text
    assert root.get("viewBox") == "0 0 279.4 215.9"
    groups = [group for group in root.findall(f"{SVG}g") if str(group.get("id")).startswith("pw-piece-")]
    assert len(groups) == len(layout.pieces) == 10
    assert len(root.findall(f".//{SVG}path[@class='pw-piece']")) == 10
    assert len(root.findall(f".//{SVG}path[@class='pw-bare']")) == 1
    assert len(root.findall(f".//{SVG}path[@class='pw-opening']")) == 1
    golden("half_wall.svg", text)


def _pieces(scene: Scene) -> list[Group]:
    return [item for item in scene.items if isinstance(item, Group)]


def _shape(group: Group) -> Polygon:
    (shape,) = [item for item in group.items if isinstance(item, Polygon)]
    return shape


def _outline(scene: Scene) -> Polygon:
    (shape,) = [item for item in _styled(scene, Style.OUTLINE) if isinstance(item, Polygon)]
    return shape


def _bounds(polygon: Polygon) -> tuple[float, float, float, float]:
    """Give left, top, right and bottom on the sheet. [mm]"""
    left, top, right, bottom = shapely.Polygon(polygon.rings[0]).bounds
    return left, top, right, bottom


def _scale(scene: Scene) -> float:
    (said,) = [text.said for text in _texts(scene) if text.said.startswith("1:")]
    return float(said.removeprefix("1:").split()[0])


@settings(max_examples=8)
@given(
    width=st.integers(30, 300),
    height=st.integers(20, 120),
    course_height=st.sampled_from([2.5, 4.0, 5.5, 9.25]),
    cuts=st.lists(st.integers(12, 288), max_size=5, unique=True),
    zone=st.tuples(st.integers(0, 100), st.integers(0, 100), st.integers(1, 60), st.integers(1, 60)),
    start=st.sampled_from([Edge.BOTTOM, Edge.TOP]),
    page=st.sampled_from([LETTER, A4, Page(name="tall", width=100.0, height=200.0, margin=4.0)]),
)
def test_any_wall_can_be_drawn_without_texts_touching(
    *,
    width: int,
    height: int,
    course_height: float,
    cuts: list[int],
    zone: tuple[int, int, int, int],
    start: Edge,
    page: Page,
) -> None:
    """Large and small walls, thin and thick courses, a fixture, a pipe and a box anywhere, any sheet."""
    x, y, across, up = zone
    surface = wall(
        width,
        height,
        start=start,
        concealed=(ConcealedZone(id="a long-named cabinet", place=rectangle(x, y, x + across, y + up)),),
        keep_outs=(KeepOut(id="pipe", place=rectangle(x, 0, x + 2, height), what="water"),),
        cut_outs=(socket(1, 1, 3, 4),),
    )
    joints = dict.fromkeys(range(1, 100), cuts)
    layout, boards = filled(surface, [course_height] * 100, joints)
    scene = wall_map(*_job(surface, TAPE, layout, boards), page)
    boxes = [_box(text) for text in _texts(scene)]
    assert all(shapely.contains(shapely.box(0, 0, page.width, page.height), boxes))
    assert not _touching(boxes)
