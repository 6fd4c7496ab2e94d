"""Layouts come back from JSON as they went, and what others wrote is read or refused with every reason."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plankwright.errors import BadInputError
from plankwright.files import layout_from_json, layout_to_json, read_layout, write_files
from plankwright.files.layout_document import write_area_exact
from plankwright.measure import INCH, MILLIMETRE
from plankwright.model import (
    Bound,
    Course,
    EdgeTreatment,
    Face,
    Layout,
    Piece,
    Rectangle,
    Score,
    SurfaceLayout,
)
from village import short_result, small_layout

Raw = dict[str, Any]

LENGTHS = st.integers(-(10**12), 10**12)
EXTENTS = st.tuples(LENGTHS, LENGTHS).filter(lambda pair: pair[0] < pair[1])
AREAS = st.integers(0, 10**22)
COUNTS = st.integers(0, 10**6)
NAMES = (
    st.text("abcäö 019-&'\"", min_size=1, max_size=12).map(lambda text: " ".join(text.split())).filter(bool)
)
BOXES = st.builds(
    lambda along, up: Rectangle(left=along[0], right=along[1], bottom=up[0], top=up[1]), EXTENTS, EXTENTS
)
PIECES = st.builds(
    lambda along, across, **rest: Piece(
        along_from_nm=along[0], along_to_nm=along[1], across_from_nm=across[0], across_to_nm=across[1], **rest
    ),
    along=EXTENTS,
    across=EXTENTS,
    label=NAMES,
    board_id=NAMES,
    place=BOXES,
    face=st.sampled_from(Face),
    turned=st.booleans(),
    near=st.sampled_from(EdgeTreatment),
    far=st.sampled_from(EdgeTreatment),
    shim_nm=st.integers(0, 10**8),
    nails=st.lists(st.tuples(LENGTHS, LENGTHS), max_size=3).map(tuple),
)
COURSES = st.builds(
    lambda number, across, pieces: Course(number=number, from_nm=across[0], to_nm=across[1], pieces=pieces),
    COUNTS,
    EXTENTS,
    st.lists(PIECES, max_size=2).map(tuple),
)
SURFACES = st.builds(
    SurfaceLayout,
    surface_id=NAMES,
    courses=st.lists(COURSES, max_size=2).map(tuple),
    bare=st.lists(BOXES, max_size=2).map(tuple),
    score=st.builds(Score, bare_nm2=AREAS, joints_in_sight=COUNTS, wood_spent_nm2=AREAS, cuts=COUNTS),
    bound=st.builds(Bound, bare_nm2=AREAS, joints_in_sight=COUNTS, wood_spent_nm2=AREAS),
)
LAYOUTS = st.builds(
    Layout,
    job_name=NAMES,
    surfaces=st.lists(SURFACES, max_size=2).map(tuple),
    seed=st.integers(-(2**31), 2**31),
    effort=st.sampled_from(["", "steady"]),
)


@given(LAYOUTS)
def test_any_layout_comes_back_as_it_went(layout: Layout) -> None:
    """To the nanometre, and the text byte for byte."""
    text = layout_to_json(layout)
    assert layout_from_json(text) == layout
    assert layout_to_json(layout_from_json(text)) == text
    assert json.loads(text)["format"] == "plankwright layout"


def test_a_layout_is_written_line_by_line() -> None:
    """Every line is short enough to be read, and lengths name their unit."""
    text = layout_to_json(short_result().layout)
    assert max(map(len, text.splitlines())) <= 112
    assert '"bare": [{"left": "0 mm", "bottom": "127 mm", "right": "2438.4 mm", "top": "254 mm"}],' in text


def test_a_layout_file_is_read(tmp_path: Path) -> None:
    """As it was written."""
    write_files({tmp_path / "layout.json": layout_to_json(small_layout())})
    assert read_layout(tmp_path / "layout.json") == small_layout()


def test_a_file_that_is_no_text_is_refused(tmp_path: Path) -> None:
    """In plain words."""
    (tmp_path / "layout.json").write_bytes(b"\xff\xfe\x00")
    with pytest.raises(BadInputError, match=r"layout\.json: the file is not UTF-8 text: save it as JSON"):
        read_layout(tmp_path / "layout.json")


def by_hand(change: Callable[[Raw], object] = lambda raw: raw) -> str:
    """Give a layout as somebody would write it, with a change."""
    raw: Raw = {
        "format": "plankwright layout",
        "version": 1,
        "job": "village hall",
        "units": "inches",
        "surfaces": [
            {
                "surface": "wall",
                "courses": [
                    {
                        "number": 1,
                        "from": 0,
                        "to": 5,
                        "pieces": [
                            {
                                "label": "1a",
                                "board": "A",
                                "place": {"left": 0, "bottom": 0, "right": "8 ft", "top": 5},
                                "along": [0.5, 96.5],
                                "across": ["1/8", "5-1/8"],
                                "nails": [["1 ft", "25.4 mm"]],
                            }
                        ],
                    }
                ],
                "score": {"bare": "0 mm²", "joints_in_sight": 0, "wood_spent": "1.5 mm²", "cuts": 2},
            }
        ],
    }
    change(raw)
    return json.dumps(raw)


def piece_of(raw: Raw) -> Raw:
    """Give the only piece."""
    piece: Raw = course_of(raw)["pieces"][0]
    return piece


def course_of(raw: Raw) -> Raw:
    """Give the only course."""
    course: Raw = raw["surfaces"][0]["courses"][0]
    return course


def test_what_somebody_wrote_is_read() -> None:
    """Bare numbers in the unit of the file, text with its own, and defaults for what is left out."""
    (surface,) = layout_from_json(by_hand()).surfaces
    (piece,) = surface.pieces
    assert (piece.place.right, piece.across_from_nm, piece.nails) == (
        96 * INCH,
        INCH // 8,
        ((12 * INCH, INCH),),
    )
    assert (piece.face, piece.near, piece.turned, piece.shim_nm) == (
        Face.FRONT,
        EdgeTreatment.AS_FOUND,
        False,
        0,
    )
    assert (surface.score.wood_spent_nm2, surface.bound) == (MILLIMETRE**2 * 3 // 2, Bound())


@pytest.mark.parametrize(
    ("change", "problem"),
    [
        (lambda raw: raw.pop("units"), "surfaces[0].courses[0].from: from “0” has no unit"),
        (lambda raw: raw.update(format="x"), "format: format must be 'plankwright layout'"),
        (lambda raw: raw.update(version=2), "version: version must be 1"),
        (lambda raw: raw.pop("format"), 'format: format is missing: add "format": "plankwright layout"'),
        (lambda raw: raw.pop("job"), "job: job is missing: add it"),
        (lambda raw: raw.update(surfaces={}), "surfaces: surfaces must be a list in square brackets"),
        (lambda raw: raw.update(seed=1.5), "seed: seed must be a whole number, without quotes"),
        (lambda raw: raw.update(job="\ud800"), "job: job is empty: give it a name"),
        (
            lambda raw: raw["surfaces"][0]["score"].update(bare="5"),
            "surfaces[0].score.bare: bare must be an area in square millimetres, like “1250.5 mm²”",
        ),
        (
            lambda raw: piece_of(raw).update(bord="A"),
            "surfaces[0].courses[0].pieces[0].bord: bord is not a key that is known here (did you",
        ),
        (
            lambda raw: piece_of(raw).update(near="ripped"),
            "surfaces[0].courses[0].pieces[0].near: near is “ripped” but must be as found, ripped",
        ),
        (
            lambda raw: piece_of(raw).update(along=[5, 5]),
            "surfaces[0].courses[0].pieces[0].along: along must go from the lower to the higher position",
        ),
        (
            lambda raw: piece_of(raw).update(along=[5]),
            "surfaces[0].courses[0].pieces[0].along: along needs two lengths, like [x, y]",
        ),
        (
            lambda raw: piece_of(raw)["nails"].append([1, "x"]),
            "surfaces[0].courses[0].pieces[0].nails[1][1]: nails 2 “x” is not a length",
        ),
        (
            lambda raw: piece_of(raw)["place"].update(right=-1),
            "surfaces[0].courses[0].pieces[0].place.right: right must lie to the right of left",
        ),
        (
            lambda raw: piece_of(raw)["place"].update(top="-1"),
            "surfaces[0].courses[0].pieces[0].place.top: top must lie above bottom",
        ),
        (
            lambda raw: course_of(raw).update(to=0),
            "surfaces[0].courses[0].to: to must be farther from the start side than from",
        ),
        (
            lambda raw: course_of(raw).update(number=-1),
            "surfaces[0].courses[0].number: number must be 0 or more",
        ),
    ],
)
def test_each_problem_is_told_with_its_path(change: Callable[[Raw], object], problem: str) -> None:
    """What is wrong, where in the JSON, and how to mend it."""
    with pytest.raises(BadInputError) as caught:
        layout_from_json(by_hand(change), "mine.json")
    assert str(caught.value.problems[0]).startswith(f"mine.json, {problem}")


def test_every_problem_is_told_at_once() -> None:
    """Three slips, three problems."""

    def spoil(raw: Raw) -> None:
        raw["seed"] = "x"
        piece_of(raw)["face"] = "side"
        piece_of(raw)["shim"] = "thin"

    with pytest.raises(BadInputError) as caught:
        layout_from_json(by_hand(spoil))
    assert len(caught.value.problems) == 3


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        ("", "mine.json, line 1: cannot be read as JSON from here on: expecting value"),
        ('{\n"a": 1,\n?}', "mine.json, line 3: cannot be read as JSON from here on: "),
        ('{"a": 1, "a": 2}', "mine.json: cannot be read as JSON: the key a stands twice in one object"),
        ('{"a": NaN}', "mine.json: cannot be read as JSON: NaN is not a number"),
        ("[" * 100_000, "mine.json: brackets are nested too deeply to be read"),
        ("[]", "mine.json: the file must be a table of keys and values"),
    ],
)
def test_what_is_no_layout_is_told(text: str, problem: str) -> None:
    """With the line where the reading stops."""
    with pytest.raises(BadInputError) as caught:
        layout_from_json(text, "mine.json")
    assert str(caught.value.problems[0]).startswith(problem)


@pytest.mark.parametrize(
    ("nm2", "text"), [(0, "0 mm²"), (1, "0.000000000001 mm²"), (15 * 10**11, "1.5 mm²"), (10**12, "1 mm²")]
)
def test_areas_are_written_exactly(nm2: int, text: str) -> None:
    """With as many decimals as it takes."""
    assert write_area_exact(nm2) == text
