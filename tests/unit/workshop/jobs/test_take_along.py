"""A job is taken along as a job folder, and brought along again as the same job."""

import io
import tempfile
import zipfile
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from any_boards import boards
from any_definitions import definitions
from kept_jobs import bare_job, plain, whole_job, work_after
from plankwright import files
from plankwright.model import Board, MarkKind
from plankwright.store import Book, open_book
from plankwright.workshop.jobs.bring_job import bring_job
from plankwright.workshop.jobs.kept import KeptJob, KeptLayout, Made
from plankwright.workshop.jobs.take_along import folder_of, zipped
from village import small_layout

PILE = st.lists(boards(), min_size=1, max_size=4, unique_by=lambda one: one.id.lower())


@pytest.fixture
def book(tmp_path: Path) -> Book:
    """Give an empty book."""
    return open_book(tmp_path / "jobs.db", files)


def in_progress(book: Book) -> KeptJob:
    """Keep a job that is worked on."""
    job = book.add(whole_job())
    laid = book.keep_layout(job.id, KeptLayout(layout=small_layout(), made=Made.SEARCHED))
    work = work_after((MarkKind.HUNG, "1"))
    return book.change(job.id, "worked on", lambda kept: replace(kept, layout_id=laid.id, work=work))


def test_a_job_is_the_files_of_a_folder(book: Book) -> None:
    """As far as there are any."""
    job = in_progress(book)
    assert set(folder_of(job, files, book)) == {"job.toml", "tally.csv", "out/layout.json", "work.json"}
    bare = book.add(bare_job("porch", plain("A")))
    assert set(folder_of(bare, files, book)) == {"job.toml", "tally.csv"}


def test_every_command_reads_what_was_taken_along(book: Book, tmp_path: Path) -> None:
    """It is a job folder like any other."""
    job = in_progress(book)
    with zipfile.ZipFile(io.BytesIO(zipped(folder_of(job, files, book)))) as archive:
        archive.extractall(tmp_path / "village")
    read = files.read_job(tmp_path / "village").job
    assert read.boards == job.boards
    assert files.read_layout(tmp_path / "village" / "out" / "layout.json") == small_layout()
    assert files.read_work(tmp_path / "village") == job.work


def test_a_job_in_progress_comes_back_as_it_went(book: Book) -> None:
    """With its layout and what was marked; on another machine it gets another id."""
    job = in_progress(book)
    packed = zipped(folder_of(job, files, book))
    again = bring_job(files, [("village.zip", packed)]).keep(book)
    assert again.id != job.id
    assert replace(again, id="", layout_id=None) == replace(job, id="", layout_id=None)
    assert again.layout_id is not None
    assert book.layout(again.id, again.layout_id).layout == small_layout()


@given(definitions(), PILE)
@settings(max_examples=25)
def test_any_job_comes_back_as_it_went(definition: dict[str, object], pile: list[Board]) -> None:
    """Every part of its definition, and every board."""
    job = KeptJob(id="", definition=files.settled(definition), boards=tuple(pile))
    if files.read_definition(job.definition, job.boards).problems:  # None of the pile may be left to hang.
        return
    with tempfile.TemporaryDirectory() as made:
        folder = folder_of(job, files, open_book(Path(made) / "jobs.db", files))
    assert bring_job(files, [("any.zip", zipped(folder))]).job == job


def test_the_same_job_gives_the_same_bytes(book: Book) -> None:
    """Whenever it is packed; names stay as they are, also such as no alphabet of ours has."""
    folder = folder_of(in_progress(book), files, book)
    assert zipped(folder) == zipped(folder)
    packed = zipped({"Säle/ü.txt": "ä", "raw.bin": b"\x00\xff"})
    with zipfile.ZipFile(io.BytesIO(packed)) as archive:
        assert archive.namelist() == ["Säle/ü.txt", "raw.bin"]
        assert (archive.read("Säle/ü.txt"), archive.read("raw.bin")) == ("ä".encode(), b"\x00\xff")


def test_spreadsheets_know_the_tally_for_utf_8(book: Book) -> None:
    """By a mark that no other file has."""
    packed = zipped(folder_of(in_progress(book), files, book))
    with zipfile.ZipFile(io.BytesIO(packed)) as archive:
        marked = {name for name in archive.namelist() if archive.read(name).startswith(b"\xef\xbb\xbf")}
    assert marked == {"tally.csv"}
