"""Linked walls, laid out together."""

from dataclasses import replace

import pytest

import builders
from builders import board, nm, outline, wall
from choosing import plain
from corner import corner_job
from plankwright.check import check_layout, faults
from plankwright.layout import Effort, Progress, Result, Watch, lay_out
from plankwright.layout.result import TooLittle
from plankwright.model import Framing, Job, JointPolicy

MOMENT = Effort(name="moment", seconds=0.5)


def without(job: Job, *names: str) -> Job:
    """Give a job whose pile lacks some boards."""
    return replace(job, boards=tuple(board for board in job.boards if board.id not in names))


def laid_out(job: Job) -> Result:
    """Lay a job out, and have it checked."""
    result = lay_out(job, effort=MOMENT)
    assert not faults(check_layout(job, result.layout))
    return result


@pytest.mark.parametrize("raised", [0, 25_400_000])
def test_courses_run_round(raised: int) -> None:
    """On a level floor and over one that is an inch higher."""
    layout = laid_out(corner_job(raised_nm=raised)).layout
    assert layout.covers_everything
    north, east = ({course.to_nm for course in laid.courses[:-1]} for laid in layout.surfaces)
    assert {seam + raised for seam in east} == north


def test_what_stays_bare_beside_a_sloping_floor_is_told_of_down_to_the_floor() -> None:
    """Though the only piece of its course hangs higher up, where the floor is higher."""
    floor = outline((0, 1), (6, 0), (40, 0), (40, 12), (0, 12))
    walls = (
        replace(wall(40, 12), id="north", framing=Framing(members=(), solid=True)),
        replace(wall(40, 12, outline=floor), id="east", framing=Framing(members=(), solid=True)),
    )
    rules = plain(joints=JointPolicy.COUNT, shortest_piece_nm=nm(2.25), narrowest_course_nm=nm(1 / 2))
    corner = replace(builders.job(walls, [board("A1", 30, 2)], rules), linked=(("north", "east"),))
    layout = lay_out(corner, effort=MOMENT, watch=Watch(stopped=lambda: True)).layout
    assert not faults(check_layout(corner, layout))


def test_they_come_in_the_order_of_the_job() -> None:
    """However they stand round the room."""
    job = corner_job()
    turned = replace(job, surfaces=job.surfaces[::-1])
    assert [laid.surface_id for laid in laid_out(turned).layout.surfaces] == ["east", "north"]


def test_progress_is_told_of_both() -> None:
    """As of one surface."""
    told: list[Progress] = []
    lay_out(corner_job(), effort=MOMENT, watch=Watch(report=told.append))
    assert {progress.surface_id for progress in told} == {"north and east"}


def test_too_little_for_both_is_proven_though_it_is_enough_for_either() -> None:
    """Nothing is claimed of one of them; and the boards that would close it are told."""
    job = without(corner_job(), "spare1", "spare2", "north1")
    result = laid_out(job)
    (short,) = result.too_little
    assert isinstance(short, TooLittle)
    assert short.surfaces == ("north", "east")
    assert 0 < short.bare_nm2 <= sum(laid.score.bare_nm2 for laid in result.layout.surfaces)
    assert [laid.bound.bare_nm2 for laid in result.layout.surfaces] == [0, 0]
    assert result.closing is not None
    more, closed = result.closing
    assert closed.covers_everything
    assert not faults(check_layout(more, closed))


def test_nothing_is_said_to_be_too_little_where_it_is_enough() -> None:
    """Nor of surfaces that are linked to none."""
    assert laid_out(corner_job()).too_little == ()
    alone = replace(without(corner_job(), "spare1", "spare2", "north1"), linked=())
    assert laid_out(alone).too_little == ()
