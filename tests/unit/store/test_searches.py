"""Searches are kept as far as they have come."""

from dataclasses import replace

import pytest

from kept_jobs import whole_job
from plankwright.store import Book
from plankwright.workshop.jobs.kept import KeptLayout, KeptSearch, Made, NotThereError, SearchState
from village import small_layout


def begun(book: Book, job_id: str = "") -> KeptSearch:
    """Begin a search."""
    job_id = job_id or book.add(whole_job()).id
    return book.begin_search(
        KeptSearch(job_id=job_id, made=Made.AROUND, effort="90s", seed=3, wishes='{"pins": []}')
    )


def test_a_search_is_read_as_it_was_begun(book: Book) -> None:
    """With its number and its time; it runs."""
    search = begun(book)
    assert search.id
    assert search.begun_at
    assert search.state is SearchState.RUNNING
    assert book.search(search.id) == search
    assert book.last_search(search.job_id) == search


def test_how_far_it_is_is_kept(book: Book) -> None:
    """The best layout stays until there is a better one."""
    search = begun(book)
    book.note_search(search.id, stage="laying", done=0.25, told="all covered", best=small_layout())
    book.note_search(search.id, stage="mending", done=0.5, told="one joint", best=None)
    now = book.search(search.id)
    assert (now.stage, now.done, now.told) == ("mending", 0.5, "one joint")
    assert now.best == small_layout()
    other = replace(small_layout(), seed=1)
    book.note_search(search.id, stage="mending", done=0.75, told="no joint", best=other)
    assert book.search(search.id).best == other


@pytest.mark.parametrize("state", [SearchState.DONE, SearchState.STOPPED, SearchState.FAILED])
def test_how_it_ended_is_kept(book: Book, state: SearchState) -> None:
    """With the layout that came of it, or what went wrong, and when."""
    search = begun(book)
    laid = book.keep_layout(search.job_id, KeptLayout(layout=small_layout(), made=Made.AROUND))
    book.note_search(search.id, stage="laying", done=0.25, told="all covered", best=small_layout())
    book.end_search(replace(search, state=state, layout_id=laid.id, trouble="It was late."))
    ended = book.search(search.id)
    assert (ended.state, ended.layout_id, ended.trouble) == (state, laid.id, "It was late.")
    assert ended.ended_at >= ended.begun_at
    assert ended.best == small_layout()


def test_the_last_search_of_a_job_is_the_one_that_was_begun_last(book: Book) -> None:
    """There may be none."""
    one, other = book.add(whole_job()), book.add(whole_job())
    begun(book, one.id)
    last = begun(book, one.id)
    assert book.last_search(one.id) == last
    assert book.last_search(other.id) is None


@pytest.mark.parametrize("number", [0, 999, 2**63, -(2**64)])
def test_a_search_that_is_not_there_is_told(book: Book, number: int) -> None:
    """Also by a number that is larger than any."""
    with pytest.raises(NotThereError, match="There is no such search"):
        book.search(number)


def test_a_search_for_a_job_that_is_not_there_is_not_begun(book: Book) -> None:
    """In the words for jobs that are not there."""
    with pytest.raises(NotThereError, match="There is no such job"):
        begun(book, "nobody")


def test_what_ran_when_the_app_ended_is_told_as_cut_off(book: Book) -> None:
    """How others ended stays as it is."""
    running, done = begun(book), begun(book)
    book.note_search(running.id, stage="laying", done=0.25, told="all covered", best=small_layout())
    book.end_search(replace(done, state=SearchState.DONE))
    assert book.cut_off_searches() == 1
    cut = book.search(running.id)
    assert cut.state is SearchState.CUT_OFF
    assert cut.ended_at
    assert cut.best == small_layout()
    assert book.search(done.id).state is SearchState.DONE
    assert book.cut_off_searches() == 0
