"""What now, on linked walls: courses go on running round, as far as what hangs lets them."""

from dataclasses import replace

import pytest

from builders import nm
from corner import corner_job, corner_layout
from plankwright.check import check_layout, faults
from plankwright.layout import Effort
from plankwright.layout.again import ChangeKind, changes_between, lay_again, links_kept
from plankwright.model import NOTHING_DONE, Layout, MarkKind, Standing
from plankwright.workshop.mark_work import Happened, Measured, begin_work, mark_work

MOMENT = Effort(name="moment", seconds=1)
NORTH_AND_EAST = (("north", "east"),)


def hung(*rows: tuple[str, int, float]) -> Standing:
    """Say that courses of a wall hang, so much higher than planned."""
    work = begin_work(corner_job())
    for surface, number, higher in rows:
        happened = Happened(
            kind=MarkKind.HUNG,
            names=(str(number),),
            surface_id=surface,
            measured=Measured(off_nm=nm(higher)) if higher else None,
        )
        work = mark_work(corner_job(), corner_layout(), work, happened)
    return work.standing


def gone_on(standing: Standing) -> Layout:
    """Lay out what is left, and have it checked."""
    result = lay_again(corner_job(), corner_layout(), standing, effort=MOMENT)
    assert not faults(check_layout(corner_job(), result.layout, standing))
    return result.layout


def edges(layout: Layout, surface_id: str) -> list[tuple[float, float]]:
    """Give the edges of the courses of a wall in inches."""
    (laid,) = (each for each in layout.surfaces if each.surface_id == surface_id)
    return [(course.from_nm / nm(1), course.to_nm / nm(1)) for course in laid.courses]


def test_where_nothing_happened_nothing_changes() -> None:
    """On neither wall."""
    layout = gone_on(NOTHING_DONE)
    assert [laid.courses for laid in layout.surfaces] == [laid.courses for laid in corner_layout().surfaces]


def test_a_course_that_came_out_higher_on_one_wall_is_as_high_on_the_other() -> None:
    """Its board there is wide enough; those above follow."""
    standing = hung(("north", 1, 0.25))
    layout = gone_on(standing)
    assert edges(layout, "north")[0] == (0.25, 5.5)
    assert edges(layout, "east") == edges(layout, "north")
    assert layout.covers_everything
    assert links_kept(corner_job(), standing) == NORTH_AND_EAST


def test_what_hangs_on_both_walls_at_one_height_is_followed() -> None:
    """Round the corner."""
    standing = hung(("north", 1, 0.125), ("east", 1, 0.125))
    layout = gone_on(standing)
    assert edges(layout, "east")[0] == (0.25, 5.375)
    assert edges(layout, "east") == edges(layout, "north")


def test_heights_that_are_off_by_less_than_a_gap_count_as_one() -> None:
    """What follows begins above the higher of them, on both walls."""
    standing = hung(("north", 1, 0.03125), ("east", 1, 0))
    layout = gone_on(standing)
    assert edges(layout, "east")[0] == (0.25, 5.25)
    assert edges(layout, "east")[1:] == edges(layout, "north")[1:]
    assert links_kept(corner_job(), standing) == NORTH_AND_EAST


@pytest.mark.parametrize("off", [0.25, -0.25])
def test_walls_whose_courses_hang_at_unlike_heights_go_on_by_themselves(off: float) -> None:
    """No course could run round any more."""
    standing = hung(("north", 1, off), ("east", 1, 0))
    layout = gone_on(standing)
    assert links_kept(corner_job(), standing) == ()
    assert edges(layout, "east") == edges(corner_layout(), "east")
    assert edges(layout, "north")[0] == (0.25, 5.25 + off)


def test_a_lost_board_is_replaced_and_nothing_else_changes() -> None:
    """By a spare one, at the heights that there are."""
    work = begin_work(corner_job())
    lost = Happened(kind=MarkKind.LOST, names=("east2",))
    standing = mark_work(corner_job(), corner_layout(), work, lost).standing
    layout = gone_on(standing)
    changes = changes_between(corner_job(), corner_layout(), layout, standing)
    changed = [(change.surface_id, change.kind) for change in changes if change.moves_something]
    assert changed == [("east", ChangeKind.OTHER_BOARD)]
    assert edges(layout, "east") == edges(layout, "north")


def test_a_wall_that_was_not_laid_out_yet_takes_the_heights_of_the_other() -> None:
    """As when it joins the job later."""
    work = corner_job()
    north = replace(corner_layout(), surfaces=corner_layout().surfaces[:1])
    result = lay_again(work, north, NOTHING_DONE, effort=MOMENT)
    assert not faults(check_layout(work, result.layout))
    assert edges(result.layout, "east") == edges(result.layout, "north") == edges(corner_layout(), "north")
