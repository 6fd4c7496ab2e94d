"""What is wrong with a form is told in words that a form has."""

from typing import Any

import pytest

from plankwright import files
from plankwright.errors import Problem
from plankwright.workshop.jobs.form_words import part_of, troubles_of

WALL: dict[str, Any] = {"id": "wall", "width": "12 ft", "height": "8 ft", "framing": {"solid": True}}
OWN = ("surface", 0)


def told_of(**more: Any) -> list[tuple[tuple[str | int, ...], str, bool]]:  # noqa: ANN401 - any key of a surface
    """Give what is told of a wall."""
    table = WALL | more
    problems = files.read_definition({"name": "hall", "units": "inches", "surface": [table]}).problems
    own = [problem for problem in problems if problem.path[:2] == OWN]
    return [(one.path, one.sentence, one.lacking) for one in troubles_of(own, table, OWN)]


def test_what_is_missing_is_lacking_and_named_by_its_part() -> None:
    """Nobody is told to add a key to a file."""
    door = {"id": "door", "left": "1 ft", "bottom": "0", "width": "3 ft"}
    assert told_of(opening=[door]) == [
        (("opening", 0, "height"), "Opening door: the height is not filled in yet.", True)
    ]


@pytest.mark.parametrize(
    ("more", "sentence"),
    [
        (
            {"width": "12 cubits"},
            "Width “12 cubits” has an unknown unit, cubits: write ' or ft, \" or in, mm, cm or m.",
        ),
        (
            {"opening": [{"left": "20 ft", "bottom": "0", "width": "3 ft", "height": "7 ft"}]},
            "Opening 1 lies wholly outside the surface: check where it is measured from.",
        ),
        (
            {"concealed": [{"left": "20 ft", "bottom": "0", "width": "3 ft", "height": "7 ft"}]},
            "Fixture 1 lies wholly outside the surface: check where it is measured from.",
        ),
        (
            {"framing": {"first_centre": "20", "spacing": "16"}},
            (
                "“First centre” lies beyond the spacing, so that one would be missing before it: "
                "measure to the first one."
            ),
        ),
        (
            {"framing": {"centres": ["15", "9 cubits"]}},
            (
                "What the nails go into: centre 2 “9 cubits” has an unknown unit, cubits: "
                "write ' or ft, \" or in, mm, cm or m."
            ),
        ),
        (
            {"cut_out": [{"centre": ["5"], "width": "2", "height": "2"}]},
            "Socket or pipe 1: both lengths are needed.",
        ),
        (
            {"framing": {"centres": ["5"], "runs": "horizontal"}},
            (
                "What the nails go into runs level like the courses, so no board would cross it: "
                "turn the courses, or fix strips across the framing and list those, or fix solid backing."
            ),
        ),
    ],
)
def test_what_is_wrong_is_told_as_a_form_has_it(more: dict[str, Any], sentence: str) -> None:
    """Without brackets, quotes and keys."""
    (told,) = (sentence for _, sentence, lacking in told_of(**more) if not lacking)
    assert told == sentence


def test_a_problem_of_another_part_is_told_without_a_field() -> None:
    """It stands in another form."""
    problem = Problem(file="the job", place="surface b", what="it is too small", path=("surface", 1, "width"))
    (trouble,) = troubles_of([problem], WALL, OWN)
    assert (trouble.path, trouble.sentence) == ((), "Surface b: it is too small.")


@pytest.mark.parametrize(
    ("path", "part"),
    [
        (("keep_out", 0, "width"), "no-nail place water pipe"),
        (("corners", 2, 1), "corner 3"),
        (("room", "damp", "humidity"), "air in the damp season"),
        (("gable", "ridge"), "height of the ridge"),
        (("width",), ""),
    ],
)
def test_a_path_is_said_in_words(path: tuple[str | int, ...], part: str) -> None:
    """By the name of what it leads to, or its number."""
    assert part_of(path, {"keep_out": [{"what": "water pipe"}]}) == part
