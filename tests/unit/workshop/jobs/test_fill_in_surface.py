"""What is filled in about a surface becomes its definition and nothing else, and the other way round."""

from typing import Any

import pytest

from plankwright import files
from plankwright.workshop.jobs.bring_job import example_job
from plankwright.workshop.jobs.fill_in_surface import FilledIn, as_form, filled_in, free_name, parts_of

READ = files.read_definition({"name": "hall", "units": "inches", "surface": []}).read_length
STUDS = {"first_centre": "16", "spacing": "16"}
SOLID = {"solid": True}
PLAIN: dict[str, Any] = {"id": "wall", "width": "12 ft", "height": "8 ft", "framing": STUDS}
GABLE = {"width": "16 ft", "sides": "8 ft", "ridge_at": "8 ft", "ridge": "11 ft 6"}


def filled(given: dict[str, Any], *, comma: bool = False, taken: tuple[str, ...] = ()) -> FilledIn:
    """Give what was filled in as a definition would have it."""
    return filled_in(given, decimal_comma=comma, taken=taken)


def lacks_of(given: dict[str, Any]) -> list[str]:
    """Give what is told to be lacking."""
    return [trouble.sentence for trouble in filled(given).lacks]


def settled(surface: dict[str, Any]) -> dict[str, Any]:
    """Give a surface as it would be kept."""
    kept: dict[str, Any] = files.settled({"name": "hall", "units": "inches", "surface": [surface]})[
        "surface"
    ][0]
    return kept


def test_only_the_outline_that_is_asked_for_counts() -> None:
    """What is filled in for the other ways is left out."""
    given = PLAIN | {"outline": "plain", "heights": [{"at": "0"}], "corners": [["0", "0"]], "gable": GABLE}
    assert set(filled(given).table) == {"id", "width", "height", "framing"}


def test_a_gable_is_written_as_its_corners() -> None:
    """From the lower left one round."""
    table = filled({"id": "end", "outline": "gable", "gable": GABLE, "framing": STUDS}).table
    assert table["corners"] == [
        ["0", "0"],
        ["16 ft", "0"],
        ["16 ft", "8 ft"],
        ["8 ft", "11 ft 6"],
        ["0", "8 ft"],
    ]


def test_a_gable_whose_slopes_begin_at_the_floor_is_a_triangle() -> None:
    """It has no upright sides."""
    given = {"outline": "gable", "gable": GABLE | {"sides": "0 ft"}, "framing": STUDS}
    assert filled(given).table["corners"] == [["0", "0"], ["16 ft", "0"], ["8 ft", "11 ft 6"]]


def test_a_gable_without_its_ridge_is_a_rectangle_so_far() -> None:
    """So that something can be drawn."""
    given = {"outline": "gable", "gable": {"width": "16 ft", "sides": "8 ft"}, "framing": STUDS}
    assert filled(given).table["corners"] == [["0", "0"], ["16 ft", "0"], ["16 ft", "8 ft"], ["0", "8 ft"]]
    assert lacks_of(given) == [
        "The place of the ridge is not filled in yet.",
        "The height of the ridge is not filled in yet.",
    ]


@pytest.mark.parametrize(
    "surface",
    [
        PLAIN,
        PLAIN | {"framing": {"solid": True, "thickness": "3/4 in"}},
        PLAIN | {"framing": STUDS | {"centres": ["3", "31-1/2"], "opened": True, "wood": "spruce"}},
        {
            "id": "a",
            "heights": [{"at": "0", "height": "95"}, {"at": "144", "height": "96"}],
            "framing": STUDS,
        },
        {
            "id": "a",
            "corners": [["0", "0"], ["9", "0"], ["9", "9"], ["4", "5"], ["0", "9"]],
            "framing": SOLID,
        },
        {"id": "a", "corners": [["0", "0"], ["9", "0"], ["9", "9"], ["0", "9"]], "framing": SOLID},
        {"id": "a", "corners": [["0", "0"], ["0", "9"], ["9", "9"]], "framing": SOLID},
        {"id": "a", "corners": [["0", "0"], ["9", "0"], ["12", "9"]], "framing": SOLID},
        {"id": "a", "corners": [["0", "0"], ["9", "0"], ["4", "9"]], "framing": SOLID},
        PLAIN
        | {
            "keep_out": [{"vertical": "20", "width": "2"}],
            "cut_out": [{"centre": ["9", "9"], "width": "2", "height": "3"}],
        },
    ],
    ids=[
        "plain",
        "solid",
        "listed",
        "heights",
        "butterfly",
        "corners",
        "clockwise",
        "leaning",
        "triangle",
        "parts",
    ],
)
def test_a_surface_comes_back_from_its_form_as_it_was(surface: dict[str, Any]) -> None:
    """Whatever its outline and its backing."""
    kept = settled(surface)
    again = filled(as_form(kept, READ))
    assert again.lacks == ()
    assert settled(again.table) == kept


def test_the_wall_of_the_example_is_shown_as_a_gable() -> None:
    """Its corners are those of one."""
    surface = example_job(files).definition["surface"][0]
    form = as_form(surface, READ)
    assert form["outline"] == "gable"
    assert form["gable"] == {"width": "16' 0\"", "sides": "8' 0\"", "ridge_at": "8' 0\"", "ridge": "11' 6\""}
    assert settled(filled(form).table) == surface


@pytest.mark.parametrize(
    ("corners", "shown_as"),
    [
        ([["0", "0"], ["9", "0"], ["4", "9"]], "gable"),
        ([["0", "0"], ["9", "0"], ["12", "9"]], "corners"),
        ([["0", "0"], ["9", "0"], ["9", "9"], ["4", "5"], ["0", "9"]], "corners"),
        ([["0", "0"], ["9", "0"], ["9", "9"], ["4", "12"], ["0", "8"]], "corners"),
    ],
)
def test_only_corners_of_a_gable_are_shown_as_one(corners: list[list[str]], shown_as: str) -> None:
    """Its ridge lies between sides of one height, and above them."""
    kept = settled({"id": "a", "corners": corners, "framing": SOLID})
    assert as_form(kept, READ)["outline"] == shown_as


def test_solid_backing_takes_no_studs_along() -> None:
    """What was filled in for studs before is left out."""
    table = filled(PLAIN | {"backing": "solid", "framing": STUDS | {"thickness": "18 mm"}}).table
    assert table["framing"] == {"solid": True, "thickness": "18 mm"}


@pytest.mark.parametrize(
    ("given", "sentences"),
    [
        ({"framing": STUDS}, ["The width is not filled in yet.", "The height is not filled in yet."]),
        ({"outline": "heights", "framing": STUDS}, ["The height at both ends is not filled in yet."]),
        ({"outline": "corners", "framing": STUDS}, ["The corners are not filled in yet."]),
        (PLAIN | {"framing": {"first_centre": "16"}}, ["“Then every” is not filled in yet."]),
        (
            PLAIN | {"framing": {}},
            ["What the nails go into is not filled in yet: where the studs are, or solid backing."],
        ),
        (
            PLAIN | {"cut_out": [{"width": "2", "height": "3"}]},
            ["Socket or pipe 1: its place is not filled in yet."],
        ),
        (
            PLAIN | {"keep_out": [{"left": "2", "height": "3", "what": "pipe"}]},
            [
                "No-nail place pipe: its bottom is not filled in yet.",
                "No-nail place pipe: its width is not filled in yet.",
            ],
        ),
    ],
)
def test_what_is_lacking_is_told(given: dict[str, Any], sentences: list[str]) -> None:
    """Where a definition could have it in several ways, so that no key of it is missing."""
    assert lacks_of(given) == sentences


def test_a_surface_without_a_name_is_called_after_its_kind() -> None:
    """With a number where there is one already."""
    assert filled({"kind": "ceiling"}).table["id"] == "ceiling"
    assert filled({}, taken=("wall",)).table["id"] == "wall 2"
    assert free_name("wall", ["wall", "wall 2"]) == "wall 3"


@pytest.mark.parametrize(
    ("text", "comma", "parts"),
    [
        ("15\n31-1/2\n\n", False, ["15", "31-1/2"]),
        ("15; 31-1/2;", False, ["15", "31-1/2"]),
        ("15, 31-1/2, ", False, ["15", "31-1/2"]),
        ("1,200", False, ["1,200"]),
        ("38,5; 80", True, ["38,5", "80"]),
        ("38,5, 80", True, ["38,5, 80"]),
    ],
)
def test_centres_are_parted_but_no_number_is(text: str, comma: bool, parts: list[str]) -> None:  # noqa: FBT001 - as told
    """A comma within a number parts nothing, whatever it means there."""
    assert parts_of(text, decimal_comma=comma) == parts


@pytest.mark.parametrize(
    "given",
    [
        {"framing": "studs", "opening": "door", "cut_out": {"x": "1"}, "gable": "high", "kind": ["wall"]},
        {"outline": ["gable"], "backing": {"solid": "true"}, "corners": "0, 0", "keep_out": ["here"]},
    ],
)
def test_what_no_form_sends_is_left_to_be_refused(given: dict[str, Any]) -> None:
    """It raises nothing by itself."""
    assert files.read_definition({"name": "x", "units": "mm", "surface": [filled(given).table]}).problems
