"""How far a job has come, from what is kept of it."""

from dataclasses import replace
from pathlib import Path

import pytest

from at_desk import keep_small_job
from builders import board
from kept_jobs import bare_job, whole_job, work_after
from plankwright import files
from plankwright.model import MarkKind
from plankwright.store import open_book
from plankwright.workshop.jobs.kept import KeptJob, KeptSearch, Made, SearchState
from plankwright.workshop.jobs.ports import Store
from plankwright.workshop.jobs.stand_of_job import StandOfJob, stand_of_job


@pytest.fixture
def store(tmp_path: Path) -> Store:
    """Give a book of jobs."""
    return open_book(tmp_path / "jobs.db", files)


@pytest.fixture
def kept(store: Store, tmp_path: Path) -> KeptJob:
    """Give the small job, with its layout to work by."""
    return keep_small_job(store, tmp_path / "village")


def stand(kept: KeptJob, store: Store) -> StandOfJob:
    """Say how far it has come."""
    return stand_of_job(kept, files, store)


def test_what_is_not_measured_yet_is_no_problem(store: Store) -> None:
    """It is the next thing to do."""
    began = stand(store.add(bare_job()), store)
    assert (began.boards, began.surfaces, began.problems, began.layout) == (0, (), (), None)


def test_what_is_wrong_is_told(store: Store) -> None:
    """More boards are held back than there are."""
    kept = whole_job()
    spoilt = replace(kept, definition={**kept.definition, "rules": {"hold_back": 9}})
    (problem,) = stand(store.add(spoilt), store).problems
    assert "hold" in problem.what


def test_what_is_doubtful_is_told_besides(store: Store) -> None:
    """A board that is far longer than all others is looked at again."""
    odd = [*(board(name, 97, 5.25) for name in "ABCDEFGH"), board("Z", 970, 5.25)]
    found = stand(store.add(whole_job(*odd)), store)
    assert found.problems == ()
    assert any("Z" in remark.place for remark in found.remarks)


def test_a_layout_that_fits_has_no_faults(kept: KeptJob, store: Store) -> None:
    """Two pieces, none of them cut."""
    found = stand(kept, store)
    assert found.surfaces == ("wall",)
    assert (found.faults, found.pieces, found.cut, found.hung, found.begun) == ((), 2, 0, 0, False)


def test_a_layout_that_fits_no_longer_says_why(kept: KeptJob, store: Store) -> None:
    """Its board is no longer in the tally."""
    without = store.change(kept.id, "board A taken out", lambda job: replace(job, boards=job.boards[1:]))
    assert any("board A" in fault for fault in stand(without, store).faults)


def test_hung_pieces_are_cut_ones_too(kept: KeptJob, store: Store) -> None:
    """One hangs, one is in hand."""
    work = work_after((MarkKind.HUNG, "1"), (MarkKind.CUT, "2a"))
    begun = store.change(kept.id, "course 1 hung", lambda job: replace(job, work=work))
    found = stand(begun, store)
    assert (found.pieces, found.cut, found.hung, found.begun) == (2, 2, 1, True)


def test_pieces_on_a_surface_that_is_gone_are_told_of(kept: KeptJob, store: Store) -> None:
    """Nobody can go on as long as it is."""
    work = work_after((MarkKind.HUNG, "1"))
    surface = {**kept.definition["surface"][0], "id": "gable"}
    begun = store.change(
        kept.id,
        "the wall renamed",
        lambda job: replace(job, work=work, definition={**job.definition, "surface": [surface]}),
    )
    (fault,) = stand(begun, store).faults
    assert "wall" in fault


def search_of(kept: KeptJob, store: Store, state: SearchState) -> StandOfJob:
    """Give the stand after a search that is in some state."""
    search = store.begin_search(KeptSearch(job_id=kept.id, made=Made.SEARCHED, effort="glance"))
    if state is not SearchState.RUNNING:
        store.end_search(replace(search, state=state, trouble="It broke down."))
    return stand(store.job(kept.id), store)


def test_a_search_under_way_is_told_of(store: Store) -> None:
    """Until it is over."""
    kept = store.add(whole_job())
    assert stand(kept, store).searching is None
    assert search_of(kept, store, SearchState.RUNNING).searching is not None
    assert search_of(kept, store, SearchState.DONE).searching is None


@pytest.mark.parametrize(
    ("state", "in_vain"),
    [
        (SearchState.RUNNING, False),
        (SearchState.DONE, False),
        (SearchState.STOPPED, False),
        (SearchState.FAILED, True),
        (SearchState.CUT_OFF, True),
    ],
)
def test_a_search_that_came_to_nothing_is_told_of(store: Store, state: SearchState, *, in_vain: bool) -> None:
    """One that was stopped has kept its best."""
    assert (search_of(store.add(whole_job()), store, state).in_vain is not None) == in_vain


def test_a_search_in_vain_is_forgotten_once_there_is_a_newer_layout(kept: KeptJob, store: Store) -> None:
    """What it was for is there."""
    found = search_of(kept, store, SearchState.FAILED)
    assert found.layout is not None
    later = replace(found.layout, at="9999-01-01T00:00:00+00:00")
    assert replace(found, layout=later).in_vain is None
    assert replace(found, layout=replace(later, at="2000-01-01T00:00:00+00:00")).in_vain is not None
