"""The book as a whole: settings, and what is said when its file cannot be used."""

import inspect
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from kept_jobs import bare_job, whole_job
from plankwright import files
from plankwright.store import Book, StoreError, open_book
from plankwright.workshop.jobs.kept import KeptLayout, KeptSearch, Made
from village import small_layout

LAID = KeptLayout(layout=small_layout(), made=Made.SEARCHED)
SEARCH = KeptSearch(job_id="abc", made=Made.SEARCHED, effort="glance")

CALLS: dict[str, Callable[[Book], object]] = {
    "cards": lambda book: book.cards(),
    "job": lambda book: book.job("abc"),
    "add": lambda book: book.add(whole_job()),
    "change": lambda book: book.change("abc", "a step", lambda _job: bare_job()),
    "changes": lambda book: book.changes("abc"),
    "undo": lambda book: book.undo("abc"),
    "redo": lambda book: book.redo("abc"),
    "taken_back": lambda book: book.taken_back("abc"),
    "put_away": lambda book: book.put_away("abc"),
    "bring_back": lambda book: book.bring_back("abc"),
    "forget": lambda book: book.forget("abc"),
    "keep_layout": lambda book: book.keep_layout("abc", LAID),
    "layouts": lambda book: book.layouts("abc"),
    "layout": lambda book: book.layout("abc", 1),
    "begin_search": lambda book: book.begin_search(SEARCH),
    "note_search": lambda book: book.note_search(1, stage="", done=0.5, told="", best=None),
    "end_search": lambda book: book.end_search(SEARCH),
    "search": lambda book: book.search(1),
    "last_search": lambda book: book.last_search("abc"),
    "cut_off_searches": lambda book: book.cut_off_searches(),
    "setting": lambda book: book.setting("word", lambda: "x"),
    "put_setting": lambda book: book.put_setting("word", "x"),
}
"""Each thing that can be asked of a book."""


def public_methods(kind: type[Any]) -> set[str]:
    """Name what can be called on objects of a kind, but for the ways to the file itself."""
    named = {name for name, _ in inspect.getmembers(kind, inspect.isfunction) if not name.startswith("_")}
    return named - {"reading", "writing"}


def test_everything_that_can_be_asked_is_asked_here() -> None:
    """Else a new method would not be tried on a file that cannot be used."""
    assert set(CALLS) == public_methods(Book)


@pytest.mark.usefixtures("locked")
@pytest.mark.parametrize("name", CALLS)
def test_a_file_that_is_in_use_is_one_sentence(path: Path, name: str) -> None:
    """Whatever is asked."""
    with pytest.raises(StoreError) as told:
        CALLS[name](Book(path, files))
    assert str(told.value) == (
        f"{path} is in use by another program for too long: close that one, or try again."
    )


@pytest.mark.parametrize("name", CALLS)
def test_a_file_that_was_spoilt_is_one_sentence(path: Path, book: Book, name: str) -> None:
    """Whatever is asked; as when a disk fails while the app is open."""
    path.write_bytes(b"spoilt " * 2_000)
    with pytest.raises(StoreError) as told:
        CALLS[name](book)
    assert str(told.value) == f"{path} is no file of jobs: name another one, or restore a backup."


@pytest.mark.parametrize("name", CALLS)
def test_a_folder_that_went_away_is_one_sentence(path: Path, name: str) -> None:
    """As when a stick is pulled out."""
    gone = path.parent / "stick" / "jobs.db"
    with pytest.raises(StoreError) as told:
        CALLS[name](Book(gone, files))
    assert str(told.value) == f"{gone} cannot be opened: check the folder, and that it may be written."


def test_a_setting_stays_as_it_was_first(path: Path, book: Book) -> None:
    """Also when the book is opened again."""
    words = iter(["first", "second"])
    assert book.setting("word", lambda: next(words)) == "first"
    assert book.setting("word", lambda: next(words)) == "first"
    assert open_book(path, files).setting("word", lambda: next(words)) == "first"
    assert book.setting("another", lambda: next(words)) == "second"


def test_a_setting_is_set_anew(path: Path, book: Book) -> None:
    """Whether there was one or not."""
    book.put_setting("word", "first")
    book.put_setting("word", "second")
    assert book.setting("word", lambda: "third") == "second"
    assert open_book(path, files).setting("word", lambda: "third") == "second"


def test_what_was_kept_is_there_when_the_file_is_opened_again(path: Path, book: Book) -> None:
    """By another program too, while this one has it open."""
    job = book.add(whole_job())
    assert open_book(path, files).job(job.id) == job
    assert book.job(job.id) == job
