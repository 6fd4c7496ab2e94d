"""Groups of walls round whose corners courses run."""

from typing import Any

import pytest

from builders import studs, wall
from kept_jobs import bare_job
from plankwright import files
from plankwright.errors import BadInputError
from plankwright.model import Direction, Edge, SurfaceKind
from plankwright.workshop.jobs.kept import KeptJob, StaleError
from plankwright.workshop.jobs.link_surfaces import (
    as_groups,
    groups_filled_in,
    link_surfaces,
    links_of,
    may_be_linked,
)
from plankwright.workshop.jobs.measure_surfaces import put_surface
from plankwright.workshop.jobs.tally_boards import fingerprint


def walls(*names: str) -> KeptJob:
    """Give a job with walls of these names."""
    kept = bare_job()
    for name in names:
        table: dict[str, Any] = {"id": name, "width": "96", "height": "90", "framing": {"solid": True}}
        kept = put_surface(kept, files, table, None)
    return kept


def mark(kept: KeptJob) -> str:
    """Give the fingerprint of the groups as they are shown."""
    return fingerprint(links_of(kept.definition))


def test_groups_come_back_from_their_form_as_they_were() -> None:
    """All round the room too."""
    groups = [["north", "east"], ["a", "b", "c", "a"]]
    assert groups_filled_in({"linked": as_groups(groups)}) == groups


def test_a_group_that_nothing_is_filled_in_of_is_none() -> None:
    """Nor is what no form sends."""
    assert groups_filled_in({"linked": [{"round": "true"}, {"wall": "north"}, "x"]}) == []
    assert groups_filled_in({}) == []


def test_walls_are_linked_and_parted_again() -> None:
    """An empty form takes the groups away."""
    kept = walls("north", "east")
    linked = link_surfaces(kept, files, [["north", "east"]], mark(kept))
    assert linked.definition["linked"] == [["north", "east"]]
    assert "linked" not in link_surfaces(linked, files, [], mark(linked)).definition


@pytest.mark.parametrize("group", [["north"], ["north", "attic"], ["north", "east", "north"]])
def test_a_group_that_makes_no_corner_is_refused_in_words(group: list[str]) -> None:
    """Without the key of the file."""
    kept = walls("north", "east")
    with pytest.raises(BadInputError) as refused:
        link_surfaces(kept, files, [group], mark(kept))
    assert not refused.value.problems[0].what.lower().startswith("linked")


def test_groups_that_somebody_else_changed_are_not_written_over() -> None:
    """They are shown anew first."""
    with pytest.raises(StaleError):
        link_surfaces(walls("north", "east"), files, [], "another")


def test_only_walls_with_level_courses_are_offered() -> None:
    """No others run round a corner."""
    upright = wall(
        96,
        96,
        id="upright",
        courses_run=Direction.VERTICAL,
        start=Edge.LEFT,
        framing=studs(9, runs=Direction.HORIZONTAL),
    )
    ceiling = wall(96, 96, id="ceiling", kind=SurfaceKind.CEILING)
    assert may_be_linked([wall(96, 96, id="north"), upright, ceiling]) == ("north",)
