"""Courses of linked walls meet at the corner, as far as both have any there."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Any

import pytest

from builders import board, course, job, layout, nm, opening, outline, piece, rectangle, surface_layout, wall
from plankwright.check import FindingCode, check_layout
from plankwright.model import Edge, EdgeTrim, Framing, HungCourse, Job, Layout, Rules, Standing, Surface

FREE = Rules(expansion_gap_nm=0)
THREE = (0, 5, 10, 15)


def a_wall(name: str, height: float = 15, **more: Any) -> Surface:  # noqa: ANN401 - any further field
    """Make a wall of five feet on solid backing."""
    return wall(60, height, **({"id": name, "framing": Framing(solid=True)} | more))


def hung(
    north: Surface, north_edges: Sequence[float], east: Surface, east_edges: Sequence[float]
) -> tuple[Job, Layout]:
    """Hang a board in each course of two linked walls."""
    laid, boards = [], []
    for wall_, edges in ((north, north_edges), (east, east_edges)):
        courses = []
        for number, across in enumerate(pairwise(edges), start=1):
            name = f"{wall_.id}{number}"
            boards.append(board(name, 61.5, 8.25))
            courses.append(course(number, across, piece(wall_, f"{number}a {name}", (0, 60), across)))
        laid.append(surface_layout(wall_, *courses))
    work = replace(job((north, east), boards, FREE), linked=((north.id, east.id),))
    return work, layout(*laid)


def corners(work: Job, laid: Layout, standing: Standing | None = None) -> list[str]:
    """Give the courses that are found not to meet."""
    found = check_layout(work, laid, standing or Standing())
    return [f"{one.surface_id}: {one.where}" for one in found if one.code is FindingCode.CORNER]


def test_courses_at_the_same_heights_meet() -> None:
    """Edge for edge."""
    assert corners(*hung(a_wall("north"), THREE, a_wall("east"), THREE)) == []


def test_an_edge_inside_a_course_beyond_the_corner_is_found() -> None:
    """Told for both walls, with how far it is off and how far it may be."""
    work, laid = hung(a_wall("north"), THREE, a_wall("east"), (0, 5.25, 10, 15))
    assert corners(work, laid) == ["north: course 1", "east: course 1"]
    (one, _) = (each for each in check_layout(work, laid) if each.code is FindingCode.CORNER)
    assert one.measured == nm(0.25)
    assert one.allowed == FREE.gap_tolerance_nm
    assert one.message == (
        'At the corner it ends 1/4" off the nearest edge of course 1 of east; '
        'courses that run round may be 1/16" off.'
    )


@pytest.mark.parametrize(("off", "is_found"), [(0.0625, False), (0.07, True)])
def test_edges_may_be_off_by_the_gap_tolerance(off: float, *, is_found: bool) -> None:
    """A sixteenth, and no more."""
    found = corners(*hung(a_wall("north"), THREE, a_wall("east"), (0, 5 + off, 10, 15)))
    assert bool(found) is is_found


def test_walls_that_are_not_linked_need_not_meet() -> None:
    """Or that are linked to others."""
    work, laid = hung(a_wall("north"), THREE, a_wall("east"), (0, 5.25, 10, 15))
    assert corners(replace(work, linked=()), laid) == []


@pytest.mark.parametrize("all_round", [False, True])
def test_the_last_corner_of_a_room_is_one_like_the_others(*, all_round: bool) -> None:
    """Where courses run all round: here the first wall and the last are at odds."""
    names = ("north", "east", "south")
    walls = [a_wall(name) for name in names]
    work, laid = hung(walls[0], THREE, walls[2], (0, 5.25, 10, 15))
    bare = replace(work, surfaces=(walls[0], walls[1], walls[2]))
    laid = replace(laid, surfaces=(laid.surfaces[0], surface_layout(walls[1]), laid.surfaces[1]))
    found = corners(replace(bare, linked=((*names, "north") if all_round else names,)), laid)
    assert found == (["south: course 1", "north: course 1"] if all_round else [])


def test_where_a_wall_ends_it_may() -> None:
    """At a lower ceiling, under its trim, and over a raised floor."""
    assert corners(*hung(a_wall("north"), THREE, a_wall("east", 13), (0, 5, 10, 13))) == []
    trimmed = a_wall("east", 15, trim=EdgeTrim(top=nm(3), bottom=nm(2)))
    assert corners(*hung(a_wall("north"), THREE, trimmed, (1, 5, 10, 13))) == []
    raised = a_wall("east", 13, raised_nm=nm(2))
    assert corners(*hung(a_wall("north"), THREE, raised, (0, 3, 8, 13))) == []
    assert corners(*hung(a_wall("north"), THREE, raised, (0, 5, 8, 13))) == [
        "north: course 1",
        "east: course 1",
    ]


def test_courses_from_the_top_are_measured_from_below_as_well() -> None:
    """Walls of unlike heights start at unlike heights."""
    north, east = (a_wall(name, height, start=Edge.TOP) for name, height in (("north", 15), ("east", 17)))
    assert corners(*hung(north, THREE, east, (0, 2, 7, 12, 17))) == []
    assert corners(*hung(north, THREE, east, (0, 3, 7, 12, 17))) == ["east: course 1"]
    assert corners(*hung(north, THREE, east, (0, 2, 8, 12, 17))) == ["north: course 1", "east: course 2"]


def test_nothing_is_asked_where_nothing_hangs_at_the_corner() -> None:
    """In front of a door there, and where it is bare."""
    door = a_wall("east", openings=(opening("door", 0, 0, 20, 12),))
    assert corners(*hung(a_wall("north"), THREE, door, (0, 6, 12, 15))) == []
    assert corners(*hung(a_wall("north"), (0, 5, 13, 15), door, (0, 6, 12, 15))) == ["north: course 2"]
    work, laid = hung(a_wall("north"), (0, 5), a_wall("east"), (0, 5, 9, 15))
    bare = replace(laid.surfaces[0], bare=(rectangle(0, 5, 60, 15),))
    assert corners(work, replace(laid, surfaces=(bare, laid.surfaces[1]))) == []


def test_a_slope_away_from_the_corner_is_no_edge() -> None:
    """A gable goes on upwards where its side ends."""
    gable = a_wall("north", outline=outline((0, 0), (60, 0), (60, 8), (30, 15), (0, 8)))
    assert corners(*hung(gable, THREE, a_wall("east"), THREE)) == []


def standing_with(laid: Layout, *rows: tuple[str, int]) -> Standing:
    """Say that some courses hang."""
    return Standing(
        hung=tuple(
            HungCourse(surface_id=each.surface_id, course=row)
            for each in laid.surfaces
            for row in each.courses
            if (each.surface_id, row.number) in rows
        )
    )


def test_what_hangs_at_unlike_heights_ends_the_link() -> None:
    """On both walls; what hangs on one is still to be met by the other."""
    work, laid = hung(a_wall("north"), THREE, a_wall("east"), (0, 5.25, 10.25, 15))
    both = standing_with(laid, ("north", 1), ("east", 1))
    one = standing_with(laid, ("north", 1))
    assert corners(work, laid, both) == []
    assert corners(work, laid, one) != []


def test_a_layout_that_leaves_a_linked_wall_out_is_not_choked_on() -> None:
    """It is found out for that."""
    work, laid = hung(a_wall("north"), THREE, a_wall("east"), THREE)
    assert corners(work, replace(laid, surfaces=laid.surfaces[:1])) == []
