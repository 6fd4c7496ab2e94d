"""Layouts are kept with the answers that came with them."""

from dataclasses import replace

import pytest

from kept_jobs import whole_job
from plankwright.model import EdgeKind, EdgeProfile
from plankwright.store import Book
from plankwright.workshop.ask_enough import ask_enough
from plankwright.workshop.jobs.kept import KeptLayout, Made, NotThereError
from village import short_result, small_job, small_layout, small_result

NOT_ENOUGH = ask_enough(small_job(), short_result())


@pytest.mark.parametrize("result", [small_result(), short_result()])
def test_a_layout_is_read_as_it_was_kept(book: Book, result: object) -> None:
    """With its answer in values and in words, its number and its time."""
    found = short_result() if result == short_result() else small_result()
    job = book.add(whole_job())
    kept = book.keep_layout(
        job.id,
        KeptLayout(
            layout=replace(found.layout, seed=7, effort="a glance"),
            made=Made.AGAIN,
            answer=ask_enough(small_job(), found),
            news=("Piece 1a stays; “2a” is new.",),
            minds=("A rip is narrow.", "Another."),
        ),
    )
    assert kept.id
    assert kept.at
    assert book.layout(job.id, kept.id) == kept


def test_boards_that_are_wanted_are_kept_with_their_milling(book: Book) -> None:
    """They are part of the answer."""
    (wanted,) = NOT_ENOUGH.wanted
    milled = replace(wanted, profile=EdgeProfile(kind=EdgeKind.SHIPLAP, reach_nm=6_350_000))
    answer = replace(NOT_ENOUGH, wanted=(milled,), stopped=True)
    job = book.add(whole_job())
    kept = book.keep_layout(job.id, KeptLayout(layout=small_layout(), made=Made.SEARCHED, answer=answer))
    assert book.layout(job.id, kept.id).answer == answer


def test_a_layout_that_was_brought_along_has_no_answer(book: Book) -> None:
    """And nothing else that only a search knows."""
    job = book.add(whole_job())
    kept = book.keep_layout(job.id, KeptLayout(layout=small_layout(), made=Made.BROUGHT))
    assert book.layout(job.id, kept.id) == kept
    assert kept.answer is None


def test_the_layouts_of_a_job_come_with_the_newest_first(book: Book) -> None:
    """And none of another job."""
    one, other = book.add(whole_job()), book.add(whole_job())
    kept = [
        book.keep_layout(job.id, KeptLayout(layout=small_layout(), made=Made.SEARCHED))
        for job in (one, other, one)
    ]
    assert book.layouts(one.id) == (kept[2], kept[0])
    assert book.layouts("nobody") == ()


@pytest.mark.parametrize("number", [0, -1, 999, 2**63, -(2**64)])
def test_a_layout_that_is_not_there_is_told(book: Book, number: int) -> None:
    """Also by a number that is larger than any."""
    job = book.add(whole_job())
    with pytest.raises(NotThereError, match="There is no such layout of this job"):
        book.layout(job.id, number)


def test_a_layout_of_another_job_is_not_there(book: Book) -> None:
    """Its number alone leads nowhere."""
    one, other = book.add(whole_job()), book.add(whole_job())
    kept = book.keep_layout(one.id, KeptLayout(layout=small_layout(), made=Made.SEARCHED))
    with pytest.raises(NotThereError):
        book.layout(other.id, kept.id)


def test_the_number_of_a_layout_is_never_used_again(book: Book) -> None:
    """An address must never lead to another one later."""
    one, other = book.add(whole_job()), book.add(whole_job())
    first = book.keep_layout(one.id, KeptLayout(layout=small_layout(), made=Made.SEARCHED))
    book.put_away(one.id)
    book.forget(one.id)
    assert book.keep_layout(other.id, first).id > first.id


def test_a_layout_of_a_job_that_was_forgotten_is_not_kept(book: Book) -> None:
    """Its search was still under way then."""
    job = book.add(whole_job())
    book.put_away(job.id)
    book.forget(job.id)
    with pytest.raises(NotThereError):
        book.keep_layout(job.id, KeptLayout(layout=small_layout(), made=Made.SEARCHED))
