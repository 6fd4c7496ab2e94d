"""Rules that nobody can mean are refused or remarked on."""

import pytest

from plankwright.errors import Problem
from plankwright.files import read_definition


def told(**rules: str) -> tuple[list[str], list[str]]:
    """Give what is wrong with rules, and what is doubtful about them."""
    surface = {"id": "wall", "width": "8 ft", "height": "4 ft", "framing": {"solid": True}}
    reading = read_definition({"name": "porch", "units": "inches", "rules": rules, "surface": [surface]})

    def of(found: tuple[Problem, ...]) -> list[str]:
        return [one.what for one in found if one.path[:1] == ("rules",)]

    return of(reading.text.report.problems), of(reading.remarks)


@pytest.mark.parametrize("key", ["crosscut_kerf", "rip_kerf"])
def test_a_kerf_that_no_blade_takes_is_refused(key: str) -> None:
    """One of half an inch is not."""
    wrong = f"{key} must be 1/2 in (12.7 mm) or less: no saw blade takes more, so check the unit"
    assert told(**{key: "5 ft"}) == ([wrong], [])
    assert told(**{key: "12.8 mm"}) == ([wrong], [])
    assert told(**{key: "1/2 in"}) == ([], [])


@pytest.mark.parametrize(
    ("key", "usual", "large", "limit"),
    [
        *(
            (key, "12 in", "13 in", "12 in (304.8 mm)")
            for key in ("straight_edge_loss", "end_trim", "nail_edge", "nail_end", "nail_clearance")
        ),
        ("expansion_gap", "2 in", "2-1/8 in", "2 in (50.8 mm)"),
    ],
)
def test_other_sizes_that_are_too_large_are_remarked(key: str, usual: str, large: str, limit: str) -> None:
    """They are somebody's choice, but look like a slip."""
    assert told(**{key: usual}) == ([], [])
    assert told(**{key: large}) == ([], [f"{key} is more than {limit}: check the number and its unit"])


def test_without_a_unit_no_size_is_judged() -> None:
    """It cannot be known what the number means."""
    reading = read_definition({"name": "porch", "rules": {"rip_kerf": 3, "end_trim": 20}, "surface": []})
    assert [found for found in reading.text.report.problems if found.path[:1] == ("rules",)] == []
    assert reading.text.report.remarks == ()
