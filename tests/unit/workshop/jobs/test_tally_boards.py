"""The tally is taken board by board, and nobody writes over what another saw last."""

from collections.abc import Callable
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from any_boards import piles
from builders import board
from kept_jobs import bare_job, plain, whole_job, work_after
from plankwright.errors import ExitCode
from plankwright.model import Board, MarkKind
from plankwright.workshop.jobs.kept import KeptJob, NotThereError, RefusedError, StaleError
from plankwright.workshop.jobs.tally_boards import (
    MOST_BOARDS,
    add_boards,
    board_of,
    change_board,
    fingerprint,
    next_id,
    next_mark,
    take_out_board,
)

TWO = bare_job("porch", plain("A"), plain("B"))
CUT = replace(whole_job(), work=work_after((MarkKind.CUT, "1a")))


def names_of(job: KeptJob) -> list[str]:
    """Give what the boards are called."""
    return [one.id for one in job.boards]


def test_boards_are_added_at_the_end() -> None:
    """In the order in which they come."""
    assert names_of(add_boards(TWO, [plain("D"), plain("C")])) == ["A", "B", "D", "C"]
    assert add_boards(TWO, []) == TWO


@pytest.mark.parametrize(("names", "free"), [(["B"], "B-1"), (["C", "A"], "A-1")])
def test_a_mark_that_is_used_is_refused_with_one_that_is_free(names: list[str], free: str) -> None:
    """Nothing of what came with it is added."""
    with pytest.raises(RefusedError, match=f"There is a board . already: .* such as {free}"):
        add_boards(TWO, [plain(name) for name in names])


def test_two_boards_that_come_with_the_same_mark_are_refused() -> None:
    """One of them would be lost."""
    with pytest.raises(RefusedError, match="There is a board C already"):
        add_boards(TWO, [plain("C"), plain("D"), plain("C")])


def test_a_mark_offered_is_not_that_of_another_that_comes() -> None:
    """It would be refused in turn."""
    numbered = bare_job("porch", plain("F1"))
    with pytest.raises(RefusedError, match=r"such as F3\."):
        add_boards(numbered, [plain("F1"), plain("F2")])


def test_there_are_no_more_boards_than_a_file_may_hold() -> None:
    """Else the job could not be brought along again."""
    one = plain("A")
    full = replace(TWO, boards=tuple(replace(one, id=str(number)) for number in range(MOST_BOARDS)))
    with pytest.raises(RefusedError, match="more than 10000 boards: begin another job"):
        add_boards(full, [plain("A")])
    assert len(add_boards(replace(full, boards=full.boards[1:]), [plain("A")]).boards) == MOST_BOARDS


def test_a_board_is_found_by_its_mark() -> None:
    """One that is not there is told."""
    assert board_of(TWO, "B") == plain("B")
    with pytest.raises(NotThereError, match="There is no board C in the tally, or no longer"):
        board_of(TWO, "C")


def test_a_board_is_changed_in_its_place() -> None:
    """Its mark too."""
    longer = board("A", 120, 5.25)
    changed = change_board(TWO, "A", fingerprint(plain("A")), longer)
    assert changed.boards == (longer, plain("B"))
    assert names_of(change_board(TWO, "A", fingerprint(plain("A")), plain("X"))) == ["X", "B"]


def test_a_board_that_somebody_changed_meanwhile_is_not_written_over() -> None:
    """Neither changed nor taken out."""
    seen = fingerprint(board("A", 60, 5.25))
    acts: list[Callable[[], object]] = [
        lambda: change_board(TWO, "A", seen, plain("A")),
        lambda: take_out_board(TWO, "A", seen),
        lambda: change_board(TWO, "A", "", plain("A")),
    ]
    for act in acts:
        with pytest.raises(StaleError, match="nothing was written over"):
            act()


def test_a_board_that_somebody_took_out_meanwhile_is_not_there() -> None:
    """It does not come back by being changed."""
    acts: list[Callable[[], object]] = [
        lambda: change_board(TWO, "C", fingerprint(plain("C")), plain("C")),
        lambda: take_out_board(TWO, "C", fingerprint(plain("C"))),
    ]
    for act in acts:
        with pytest.raises(NotThereError):
            act()


def test_two_boards_are_never_called_alike() -> None:
    """By changing one either."""
    with pytest.raises(RefusedError, match="There is a board B already"):
        change_board(TWO, "A", fingerprint(plain("A")), plain("B"))


def test_a_board_is_taken_out() -> None:
    """The others stay."""
    assert take_out_board(TWO, "A", fingerprint(plain("A"))).boards == (plain("B"),)


def test_a_board_that_pieces_are_cut_of_stays_and_keeps_its_mark() -> None:
    """What hangs must be known; its sizes may be mended, and other boards are free."""
    seen = fingerprint(board_of(CUT, "A"))
    with pytest.raises(RefusedError, match="Pieces of board A are cut or hang: it must stay in the tally"):
        take_out_board(CUT, "A", seen)
    with pytest.raises(RefusedError, match="it must be called as before"):
        change_board(CUT, "A", seen, plain("X"))
    noted = replace(board_of(CUT, "A"), note="by the door")
    assert board_of(change_board(CUT, "A", seen, noted), "A") == noted
    assert names_of(take_out_board(CUT, "B", fingerprint(board_of(CUT, "B")))) == ["A", "C"]


@pytest.mark.parametrize(
    ("taken", "last", "following"),
    [
        ([], "", "1"),
        ([], "F12", "F13"),
        (["F13", "F14"], "F12", "F15"),
        ([], "07", "08"),
        ([], "099", "100"),
        ([], "D16-9", "D16-10"),
        ([], "stage", "stage-1"),
        (["stage-1"], "stage", "stage-2"),
        ([], "F12b", "F12b-1"),
        (["1"], "", "2"),
    ],
)
def test_the_next_mark_is_guessed_from_the_last(taken: list[str], last: str, following: str) -> None:
    """Counted up to the first that is free."""
    assert next_id(taken, last) == following


@pytest.mark.parametrize(
    ("names", "following"),
    [
        ([], "1"),
        (["17"], "18"),
        (["16", "17-1", "17-2", "17-3"], "18"),
        (["18", "17-1", "17-2"], "19"),
        (["17-1"], "17-2"),
        (["17-2", "17-3"], "17-4"),
        (["17-2", "17-1"], "17-3"),
        (["A-1", "A-2"], "A-3"),
        (["1-99999"], "1-100000"),
    ],
)
def test_after_several_alike_comes_the_next_number(names: list[str], following: str) -> None:
    """They were counted from one, in a row."""
    assert next_mark([plain(name) for name in names]) == following


def test_boards_that_are_not_alike_are_counted_on() -> None:
    """Somebody counts the boards of a bundle."""
    assert next_mark([plain("17-1"), board("17-2", 96, 5.25)]) == "17-3"


@given(st.lists(st.sampled_from(["F1", "F2", "F3", "F", "F-1", "9", "10", ""])), st.text(max_size=30))
def test_the_next_mark_is_always_free(taken: list[str], last: str) -> None:
    """Whatever the last one is."""
    assert next_id(taken, last) not in taken


@given(piles(2), piles(2))
@settings(max_examples=30)
def test_fingerprints_are_alike_only_of_what_is_alike(one: list[Board], other: list[Board]) -> None:
    """However little differs."""
    assert (fingerprint(one) == fingerprint(other)) == (one == other)


def test_refusals_are_bad_input() -> None:
    """A form is shown again with them."""
    for error in (RefusedError("x"), StaleError(), NotThereError()):
        assert error.exit_code == ExitCode.BAD_INPUT
        assert str(error)
