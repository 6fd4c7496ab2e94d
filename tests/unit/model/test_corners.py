"""Which walls can be linked, and what is said of those that cannot."""

from dataclasses import replace
from typing import Any

import pytest

from builders import board, box_outline, job, nm, outline, wall
from plankwright.model import (
    Direction,
    Edge,
    InvalidValueError,
    Job,
    Link,
    Surface,
    SurfaceKind,
    corner_heights,
    walls_of,
)

NORTH, EAST, SOUTH = wall(96, 90, id="north"), wall(60, 80, id="east"), wall(90, 90, id="south")


def linked(*links: Link, **changed: Any) -> Job:  # noqa: ANN401 - any field of the eastern wall
    """Link some of three walls, the eastern one changed."""
    walls = (NORTH, replace(EAST, **changed), SOUTH)
    return replace(job(walls, [board("A", 97, 6)]), linked=links)


def test_walls_that_meet_are_linked() -> None:
    """From left to right, whatever their order in the job."""
    work = linked(("south", "north", "east"))
    assert work.beside("north") == ("south", "east")
    assert work.beside("south") == (None, "north")
    assert work.beside("east") == ("north", None)
    assert linked().beside("north") == (None, None)


def test_courses_run_all_round_where_the_first_wall_is_the_last_again() -> None:
    """So the last corner is one like the others."""
    work = linked(("south", "north", "east", "south"))
    assert work.beside("south") == ("east", "north")
    assert work.beside("east") == ("north", "south")
    assert walls_of(*work.linked) == ("south", "north", "east")
    assert walls_of(("north", "east")) == ("north", "east")


@pytest.mark.parametrize(
    ("links", "changed", "told"),
    [
        ((("north", "west"),), {}, "west is no surface of this job"),
        ((("north", "east"), ("east", "south")), {}, "east is linked more than once"),
        ((("north", "south", "east", "south"),), {}, "south is linked more than once"),
        ((("north", "east", "south", "east", "north"),), {}, "east is linked more than once"),
        ((("north", "north"),), {}, "a room of three walls or more: leave out the second north"),
        ((("north", "east", "north"),), {}, "a room of three walls or more: leave out the second north"),
        (
            (("east", "south", "north", "east"),),
            {"outline": outline((0, 0), (60, 0), (60, 80))},
            "the right side of north and the left side of east are not upright",
        ),
        ((("north",),), {}, "needs two walls or more"),
        (((),), {}, "needs two walls or more"),
        ((("north", "east"),), {"kind": SurfaceKind.CEILING}, "east is no wall with horizontal courses"),
        (
            (("north", "east"),),
            {"courses_run": Direction.VERTICAL, "start": Edge.LEFT},
            "east is no wall with horizontal courses",
        ),
        ((("north", "east"),), {"start": Edge.TOP}, "north starts at the bottom and east at the top"),
        (
            (("north", "east"),),
            {"outline": outline((0, 0), (60, 0), (60, 60), (30, 80))},
            "the right side of north and the left side of east are not upright",
        ),
        ((("north", "east"),), {"raised_nm": nm(90)}, "they make no corner"),
    ],
)
def test_what_cannot_be_linked_is_refused(
    links: tuple[Link, ...], changed: dict[str, Any], told: str
) -> None:
    """In a sentence that names the walls."""
    with pytest.raises(InvalidValueError, match=told) as refused:
        linked(*links, **changed)
    assert refused.value.field == "linked"


def test_a_wall_is_not_raised_by_less_than_nothing() -> None:
    """One measures from the lowest."""
    with pytest.raises(InvalidValueError, match="measure from the lowest"):
        wall(96, 90, raised_nm=-1)


@pytest.mark.parametrize(
    ("left", "right", "heights"),
    [
        (NORTH, EAST, (0, 80)),
        (NORTH, replace(EAST, raised_nm=nm(2)), (2, 82)),
        (replace(NORTH, raised_nm=nm(50)), EAST, (50, 80)),
        # A gable of 36 inches at the sides, and a wall with a step in it.
        (wall(96, 1, outline=outline((0, 0), (96, 0), (96, 36), (48, 80), (0, 36))), EAST, (0, 36)),
        (NORTH, wall(60, 1, outline=outline((8, 0), (60, 0), (60, 80), (0, 80), (0, 30), (8, 30))), (30, 80)),
    ],
)
def test_a_corner_is_where_both_sides_are_upright(
    left: Surface, right: Surface, heights: tuple[float, float]
) -> None:
    """At heights above the level that both are raised from."""
    assert corner_heights(left, right) == tuple(map(nm, heights))


def test_the_longest_stretch_of_a_corner_counts() -> None:
    """Where one side is broken by a step."""
    broken = outline((0, 0), (60, 0), (60, 10), (50, 10), (50, 20), (60, 20), (60, 80), (0, 80))
    assert corner_heights(wall(60, 80, outline=broken), EAST) == (nm(20), nm(80))
    assert corner_heights(replace(NORTH, outline=box_outline(96, 5)), replace(EAST, raised_nm=nm(5))) is None
