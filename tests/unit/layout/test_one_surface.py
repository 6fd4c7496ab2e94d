"""The best so far of one surface can be seen while it is searched for, by whoever wants to."""

from dataclasses import replace

import pytest

from builders import board, job, wall
from many_walls import plenty
from plankwright.check import check_layout, faults
from plankwright.layout import Progress, Watch
from plankwright.layout.capacity import capacity_of
from plankwright.layout.figure import ranked
from plankwright.layout.one_surface import Turn, lay_surface
from plankwright.layout.sticks import whole_sticks
from plankwright.model import Job, Layout, Score

_SIZES = [(100, 6.5), (60, 5), (47, 4.5), (62, 6.5), (98, 5.5), (40, 6.5)]
_PLAIN = job(wall(96, 30), [board(f"B{n}", length, width) for n, (length, width) in enumerate(_SIZES * 3)])
_LINKED = replace(plenty(), surfaces=plenty().surfaces[:2], linked=(("wall-1", "wall-2"),))


def told(of: Job, *, seen: bool) -> list[Progress]:
    """Give all that is told while the first surface is laid out, or those that are linked with it."""
    places = range(len(of.boards))
    stock = [
        stick
        for place in places
        for stick in whole_sticks(of.boards[place], place, of.rules, capacity_of(of), shortest=1)
    ]
    turn = Turn(
        number=0,
        stock=tuple(stock),
        cut_into=frozenset(),
        counted=tuple(places),
        shared=False,
        seed="0 wall",
        work=0.3,
        seen=seen,
    )
    heard: list[Progress] = []
    lay_surface(of, turn, Watch(report=heard.append))
    return heard


def rank(score: Score) -> tuple[int, ...]:
    """Say how good a layout is, but for its cuts; the less the better."""
    return ranked((score.bare_nm2, score.joints_in_sight, score.wood_spent_nm2))


@pytest.mark.parametrize("of", [_PLAIN, _LINKED], ids=["plain", "linked"])
def test_what_is_seen_breaks_no_rule(of: Job) -> None:
    """It could be hung; linked surfaces are seen together."""
    shown = [progress.laid for progress in told(of, seen=True) if progress.laid]
    assert shown
    for laid in shown:
        assert [one.surface_id for one in laid] == [surface.id for surface in of.surfaces]
        assert not faults(check_layout(of, Layout(job_name=of.name, surfaces=laid)))


def test_each_that_is_seen_is_better_than_the_one_before() -> None:
    """What is no better is not written down again: only its score is told."""
    heard = told(_PLAIN, seen=True)
    best = [rank(progress.best) for progress in heard if progress.laid and progress.best]
    assert len(best) > 1
    assert best == sorted(set(best), reverse=True)
    assert len(heard) > len(best)


def test_what_is_seen_is_what_the_score_is_of() -> None:
    """So that the drawing and the words beside it say the same; wood is counted to the saw cut only later."""
    for progress in told(_PLAIN, seen=True):
        for laid in progress.laid:
            assert progress.best is not None
            score = laid.score
            assert (score.bare_nm2, score.joints_in_sight) == rank(progress.best)[:2]


def test_nobody_is_shown_what_nobody_wants_to_see() -> None:
    """Else every search would take longer; it finds the same."""
    heard = told(_PLAIN, seen=False)
    assert not [progress for progress in heard if progress.laid]
    assert [progress.best for progress in heard] == [progress.best for progress in told(_PLAIN, seen=True)]
