"""Serving several surfaces: side by side where there is plenty, and the first before the others."""

import random
from collections.abc import Sequence
from dataclasses import replace
from importlib import import_module

import pytest

from many_walls import Backwards, long_boards_for_one, plenty
from plankwright.check import check_layout, faults
from plankwright.layout import Effort, Progress, Result, Verdict, Watch, lay_out, verdict
from plankwright.layout.crew import ALONE, Crew
from plankwright.layout.plan import Stick
from plankwright.model import Job, Layout, SurfaceLayout

_MOMENT = Effort(name="moment", seconds=0.3)


@pytest.fixture
def all_to_the_last(monkeypatch: pytest.MonkeyPatch) -> None:
    """Deal all wood to the last of those that share it."""

    def unfair(
        sticks: Sequence[Stick], needs: Sequence[int], _chance: random.Random
    ) -> tuple[tuple[Stick, ...], ...]:
        return (*[()] * (len(needs) - 1), tuple(sticks))

    monkeypatch.setattr(import_module("plankwright.layout.serving"), "deal", unfair)


def laid(job: Job, crew: Crew = ALONE, watch: Watch | None = None) -> Result:
    """Lay out a job, and see that it is right."""
    result = lay_out(job, effort=_MOMENT, crew=crew, watch=watch)
    assert not faults(check_layout(job, result.layout))
    return result


def verdicts(layout: Layout) -> list[Verdict]:
    """Say for each surface whether the pile is enough."""
    return [verdict(surface) for surface in layout.surfaces]


def test_whoever_lays_them_out_and_in_whatever_order_the_layout_is_the_same() -> None:
    """There is plenty for all three walls."""
    job, crew = plenty(), Backwards()
    layout = laid(job, crew).layout
    assert layout == laid(job).layout
    assert crew.asked == [3]
    assert layout.covers_everything


def test_linked_walls_share_the_wood_as_one() -> None:
    """Two of the three walls meet at a corner."""
    crew = Backwards()
    layout = laid(replace(plenty(), linked=(("wall-1", "wall-2"),)), crew).layout
    assert crew.asked == [2]
    assert layout.covers_everything


def test_where_wood_is_short_one_comes_after_the_other() -> None:
    """The first may choose from all of it."""
    crew = Backwards()
    layout = laid(replace(plenty(), boards=plenty().boards[:10]), crew).layout
    assert crew.asked == [1, 1, 1]
    assert verdicts(layout)[0] is Verdict.ENOUGH


@pytest.mark.usefixtures("all_to_the_last")
def test_what_a_share_leaves_bare_is_mended_with_what_is_left_over() -> None:
    """Two get no wood at all, and are covered all the same with what the third leaves."""
    crew = Backwards()
    layout = laid(plenty(), crew).layout
    assert crew.asked[:2] == [3, 2]
    assert layout.covers_everything


@pytest.mark.usefixtures("all_to_the_last")
def test_the_first_takes_what_it_needs_from_those_after_it() -> None:
    """The second was given all long boards, and only with them a wall can be covered: it is laid out anew."""
    crew = Backwards()
    layout = laid(long_boards_for_one(), crew).layout
    assert crew.asked == [2, 1, 1, 1]
    assert verdicts(layout) == [Verdict.ENOUGH, Verdict.NOT_ENOUGH]


def test_when_it_is_stopped_what_is_laid_out_is_kept_and_the_others_get_a_first_layout() -> None:
    """Stopped once the first to be done is done."""
    seen: list[Progress] = []

    def done() -> bool:
        return any(progress.stage == "done" for progress in seen)

    result = laid(plenty(), Backwards(), Watch(report=seen.append, stopped=done))
    assert result.stopped
    assert all(surface.courses for surface in result.layout.surfaces)
    assert [progress.surface_id for progress in seen if progress.stage == "done"] == ["wall-3"]


def test_progress_is_told_of_every_surface() -> None:
    """Each comes to its end."""
    seen: list[Progress] = []
    laid(plenty(), watch=Watch(report=seen.append))
    done = [progress.surface_id for progress in seen if progress.stage == "done"]
    assert done == ["wall-1", "wall-2", "wall-3"]


@pytest.mark.parametrize("linked", [(), (("wall-1", "wall-2"),)])
def test_the_best_so_far_of_every_surface_is_seen(linked: tuple[tuple[str, ...], ...]) -> None:
    """Each by itself breaks no rule, and linked ones come together."""
    job = replace(plenty(), linked=linked)
    seen: list[tuple[SurfaceLayout, ...]] = []

    def look(progress: Progress) -> None:
        if progress.laid:
            seen.append(progress.laid)

    result = laid(job, watch=Watch(report=look, sees=True))
    assert {one.surface_id for told in seen for one in told} == {surface.id for surface in job.surfaces}
    for told in seen:
        ids = tuple(one.surface_id for one in told)
        assert ids in {*linked, *((surface.id,) for surface in job.surfaces)}
        part = replace(
            job,
            surfaces=tuple(surface for surface in job.surfaces if surface.id in ids),
            linked=linked if len(ids) > 1 else (),
        )
        assert not faults(check_layout(part, Layout(job_name=job.name, surfaces=told)))
    assert result.layout == laid(job).layout


def test_nobody_sees_boards_that_are_only_wished_for() -> None:
    """A layout with the boards that would close it is made at the end, and is no best so far."""
    job = long_boards_for_one()
    used: set[str] = set()
    watch = Watch(
        report=lambda told: used.update(piece.board_id for one in told.laid for piece in one.pieces),
        sees=True,
    )
    assert laid(job, watch=watch).wanted
    assert used
    assert used <= {board.id for board in job.boards}


def test_nothing_is_seen_by_who_does_not_ask() -> None:
    """Writing a layout down takes time."""
    told: list[Progress] = []
    laid(plenty(), watch=Watch(report=told.append))
    assert told
    assert not any(progress.laid for progress in told)
