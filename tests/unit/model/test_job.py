"""What a job demands of its boards and lots."""

from dataclasses import replace

import pytest

from builders import board, flaw, job, wall
from plankwright.model import Board, Job, Lot, Paint, Treatment
from plankwright.model.validity import InvalidValueError

TREATED = Lot(name="Deck", treatment=Treatment.ARSENATE)


def of_deck(**more: object) -> Board:
    """Make a board of the treated lot."""
    return board("A", 96, 6, lot="deck", **more)


def with_lots(*boards: Board, lots: tuple[Lot, ...]) -> Job:
    """Make a job that knows something of its lots."""
    return replace(job(wall(96, 16), boards), lots=lots)


def test_a_board_of_a_treated_lot_is_not_hung_for_want_of_a_word() -> None:
    """It must be treated itself, or somebody must have said that it is not."""
    with pytest.raises(InvalidValueError, match="of a treated lot, but not treated themselves: A: give each"):
        with_lots(of_deck(), board("B", 96, 6), lots=(TREATED,))


@pytest.mark.parametrize(
    "right",
    [
        of_deck(untreated=True),
        of_deck(treatment=Treatment.ARSENATE, flaws=(flaw(0, 96),)),
        of_deck(treatment=Treatment.UNKNOWN, flaws=(flaw(0, 96),)),
        board("A", 96, 6),
    ],
)
def test_boards_that_a_job_with_a_treated_lot_takes(right: Board) -> None:
    """Said to be untreated, treated with whatever, or of no such lot."""
    assert with_lots(right, lots=(TREATED,)).boards == (right,)


def test_no_board_is_both() -> None:
    """Treated and said to be untreated."""
    with pytest.raises(InvalidValueError, match="both treated and untreated"):
        of_deck(untreated=True, treatment=Treatment.ARSENATE, flaws=(flaw(0, 96),))


@pytest.mark.parametrize("written", ["village hall", "Village Hall", " village  hall "])
def test_a_lot_however_it_is_written(written: str) -> None:
    """Case and spaces make no other lot of it."""
    hall = Lot(name="Village hall", paint=Paint.LEAD)
    one = board("A", 96, 6, lot=written)
    assert one.lot_key == "village hall"
    assert with_lots(one, lots=(hall,)).lot_of(one) == hall


def test_what_is_said_twice_of_a_lot() -> None:
    """Whatever the spaces: nobody could tell which holds."""
    with pytest.raises(InvalidValueError, match="used more than once: hall"):
        with_lots(lots=(Lot(name="Hall"), Lot(name="hall ")))
