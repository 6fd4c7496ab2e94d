"""A job, what was marked on it and the layout that it is worked by must go together."""

import pickle
from dataclasses import replace

import pytest

from builders import wall
from in_progress import begun_job, begun_layout, happened, marked
from plankwright.model import Layout
from plankwright.workshop.go_together import (
    BoardsMissingError,
    OtherLayoutError,
    SurfacesMissingError,
    demand_boards,
    demand_same_surfaces,
    work_on,
)


@pytest.mark.parametrize("word", ["hung", "cut"])
def test_surfaces_that_pieces_hang_on_must_stay_in_the_job(word: str) -> None:
    """Also what is only cut was cut for one."""
    work = marked(happened(word, "1"))
    renamed = replace(begun_job(), surfaces=(wall(96, 24, id="loft"),))
    with pytest.raises(SurfacesMissingError, match=r"Pieces hang on surface wall .* as before") as missing:
        work_on(renamed, work)
    assert str(pickle.loads(pickle.dumps(missing.value))) == str(missing.value)  # noqa: S301 - our own
    assert work_on(begun_job(), work) is work


def test_nothing_marked_yet_is_work_too() -> None:
    """With the boards that are there."""
    work = work_on(begun_job(), None)
    assert not work.standing.begun
    assert work.boards == tuple(board.id for board in begun_job().boards)


def test_boards_that_are_lost_may_be_out_of_the_tally() -> None:
    """As long as no piece hangs of them."""
    standing = marked(happened("lost", "B"), happened("hung", "1")).standing
    left = tuple(board for board in begun_job().boards if board.id != "B")
    demand_boards(replace(begun_job(), boards=left), standing)
    with pytest.raises(BoardsMissingError, match="board A hang"):
        demand_boards(replace(begun_job(), boards=left[1:]), standing)


def test_a_layout_is_of_the_surfaces_of_the_job() -> None:
    """Neither of fewer nor of one twice."""
    demand_same_surfaces(begun_job(), begun_layout())
    (laid,) = begun_layout().surfaces
    twice = Layout(job_name="village hall", surfaces=(laid, laid))
    with pytest.raises(OtherLayoutError, match="is of wall and wall, but the job has wall") as other:
        demand_same_surfaces(begun_job(), twice)
    assert str(pickle.loads(pickle.dumps(other.value))) == str(other.value)  # noqa: S301 - our own
