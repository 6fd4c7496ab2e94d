"""Boards that are to wait before they are cut to size or hung are told of in one sentence."""

from dataclasses import replace

import pytest

from plankwright.model import NOTHING_DONE, Job, Lot
from plankwright.workshop.jobs.tell_waiting import tell_waiting
from two_walls import walls_job, walls_layout


def read(**moisture: float) -> Job:
    """Give the job with readings of some of its boards. [% of dry mass]"""
    job = walls_job()
    boards = (replace(board, moisture_pct=moisture.get(board.id)) for board in job.boards)
    return replace(job, boards=tuple(boards))


@pytest.mark.parametrize(
    ("readings", "told"),
    [
        ({}, ""),
        ({"A": 9.0}, ""),
        ({"A": 19.0}, "One board is too damp to be cut to size or hung yet."),
        ({"A": 19.0, "B": 9.0, "L": 18.0}, "Two boards are too damp to be cut to size or hung yet."),
        (
            {"A": 19.0, "B": 3.0},
            "Two boards are too far off the moisture of the room to be cut to size or hung yet.",
        ),
    ],
)
def test_boards_that_wait_are_counted(readings: dict[str, float], told: str) -> None:
    """Nothing is said of those that are near enough, nor where nothing was read."""
    assert tell_waiting(read(**readings), walls_layout(), NOTHING_DONE) == told


def test_boards_that_are_not_used_may_wait() -> None:
    """The layout hangs nothing of them."""
    assert tell_waiting(read(E=19.0), walls_layout(), NOTHING_DONE) == ""


def test_the_spread_of_a_lot_does_not_tell_how_many() -> None:
    """Only that there are some."""
    job = replace(walls_job(), lots=(Lot(name="floor", moisture_pct=(15.0, 20.0)),))
    told = tell_waiting(job, walls_layout(), NOTHING_DONE)
    assert told == "Boards are too damp to be cut to size or hung yet."
