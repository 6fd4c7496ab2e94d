"""What the trade says of a job that is kept, however far it has come."""

from dataclasses import replace
from pathlib import Path

import pytest

from at_desk import keep_small_job
from kept_jobs import bare_job, whole_job, work_after
from plankwright import files
from plankwright.model import MarkKind
from plankwright.store import open_book
from plankwright.workshop.ask_trade import QUESTIONS
from plankwright.workshop.jobs.ask_kept import Told, ask_kept
from plankwright.workshop.jobs.kept import KeptJob
from plankwright.workshop.jobs.ports import Store
from village import small_job

OTHERS = [name for name in QUESTIONS if name != "hazards"]
OF_LAYOUT = [name for name in QUESTIONS if QUESTIONS[name].of_layout]
OF_JOB = [name for name in OTHERS if name not in OF_LAYOUT]


@pytest.fixture
def store(tmp_path: Path) -> Store:
    """Give a book of jobs."""
    return open_book(tmp_path / "jobs.db", files)


@pytest.fixture
def kept(store: Store, tmp_path: Path) -> KeptJob:
    """Give the small job, with its layout to work by."""
    return keep_small_job(store, tmp_path / "village")


def ask(name: str, kept: KeptJob, store: Store) -> Told:
    """Ask the trade."""
    return ask_kept(name, kept, files, store)


def test_what_can_hurt_is_told_before_anything_is_measured(store: Store) -> None:
    """Most of all then: before boards are pulled."""
    told = ask("hazards", store.add(bare_job()), store)
    assert told.leaf is not None
    said = {part.title: " ".join(one.text for one in part.said) for part in told.leaf.parts}
    assert "may hold lead" in said["Paint and lead"]
    assert "Old boards may still hold nails" in said["Nails and rust"]
    assert "have it tested" in said["Asbestos"]
    assert "find wires and pipes" in said["Wires and pipes"]
    assert "Local codes and licensed trades decide" in said["Who decides"]


def test_what_can_hurt_is_told_of_a_job_that_has_to_be_mended(store: Store) -> None:
    """From what could be read of it."""
    kept = whole_job()
    told = ask(
        "hazards", store.add(replace(kept, definition={**kept.definition, "rules": {"hold_back": 9}})), store
    )
    assert told.leaf is not None
    assert any("3 boards may still hold nails" in one.text for part in told.leaf.parts for one in part.said)


@pytest.mark.parametrize("name", OTHERS)
def test_without_boards_or_surfaces_it_says_what_is_missing(name: str, store: Store) -> None:
    """And where one measures it."""
    no_boards, no_surfaces = bare_job("a"), bare_job("b", *small_job().boards)
    assert [
        (told.leaf, told.screen)
        for told in (ask(name, store.add(job), store) for job in (no_boards, no_surfaces))
    ] == [(None, "tally"), (None, "surfaces")]


@pytest.mark.parametrize("name", OTHERS)
def test_without_a_layout_only_what_needs_none_is_told(name: str, store: Store) -> None:
    """The rest once it is laid out."""
    told = ask(name, store.add(whole_job()), store)
    assert (told.leaf is None, told.screen) == ((True, "layout") if name in OF_LAYOUT else (False, ""))


@pytest.mark.parametrize("name", OTHERS)
def test_with_a_layout_everything_is_told(name: str, kept: KeptJob, store: Store) -> None:
    """Nothing is missing."""
    told = ask(name, kept, store)
    assert told.leaf is not None
    assert (told.lacks, told.screen) == ("", "")


@pytest.mark.parametrize("name", OTHERS)
def test_nothing_is_told_of_a_layout_that_fits_no_longer(name: str, kept: KeptJob, store: Store) -> None:
    """It would be wrong; what needs none is told without it."""
    without = store.change(kept.id, "board A taken out", lambda job: replace(job, boards=job.boards[1:]))
    told = ask(name, without, store)
    assert (told.leaf is None) == (name in OF_LAYOUT)
    assert told.screen == "layout"
    assert "fits no longer" in told.lacks


@pytest.mark.parametrize("name", OF_JOB)
def test_a_surface_that_pieces_hang_on_may_not_be_gone(name: str, kept: KeptJob, store: Store) -> None:
    """It is said which."""
    surface = {**kept.definition["surface"][0], "id": "gable"}
    gone = store.change(
        kept.id,
        "the wall renamed",
        lambda job: replace(
            job,
            work=work_after((MarkKind.HUNG, "1")),
            definition={**job.definition, "surface": [surface]},
        ),
    )
    told = ask(name, gone, store)
    assert (told.leaf, told.screen) == (None, "surfaces")
    assert "wall" in told.lacks


def test_each_mark_leads_to_its_source(store: Store) -> None:
    """Sentence by sentence."""
    told = ask("hazards", store.add(bare_job()), store)
    assert told.leaf is not None
    for part in told.leaf.parts:
        for said in part.said:
            assert tuple(told.sources[mark - 1] for mark in told.marks(said)) == said.sources


def test_a_question_that_is_none_is_refused(kept: KeptJob, store: Store) -> None:
    """Nothing else is answered in its place."""
    with pytest.raises(KeyError):
        ask("weather", kept, store)
