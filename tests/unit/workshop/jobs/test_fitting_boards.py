"""Boards that can give a piece are listed, the best first, each with what it means to take it."""

from dataclasses import replace

import pytest

from builders import board, flaw, nm
from in_progress import begun_job, begun_layout, happened, marked
from plankwright.model import NOTHING_DONE, Board, Job, Standing
from plankwright.workshop.jobs.fitting_boards import FittingBoard, fitting_boards
from plankwright.workshop.jobs.kept import RefusedError
from plankwright.workshop.jobs.wishes import NO_WISHES, PieceWish, Wishes
from porch import porch_job, porch_layout


def fitting(
    work_on: Job, label: str, wishes: Wishes = NO_WISHES, standing: Standing = NOTHING_DONE
) -> dict[str, FittingBoard]:
    """Give the boards that can give a piece, by their ids."""
    found = fitting_boards(work_on, begun_layout(), standing, "wall", label, wishes)
    return {each.board.id: each for each in found}


def words(found: dict[str, FittingBoard]) -> dict[str, str]:
    """Give what is said of each board."""
    return {board_id: each.words for board_id, each in found.items()}


def test_each_board_says_what_it_means_to_take_it() -> None:
    """A whole one to spare, wood that nobody takes, or that of other pieces."""
    assert words(fitting(begun_job(), "2b")) == {
        "wide": "a whole board to spare",
        "D": "from wood that no piece takes",
        "A": "takes the wood of 1a",
        "B": "takes the wood of 2a",
        "C": "takes the wood of 3a",
    }
    assert words(fitting(begun_job(), "3a"))["long"] == "takes the wood of 4b"


def test_boards_that_look_alike_come_first_then_those_that_nobody_misses() -> None:
    """Then those of which the least is wasted."""
    looks = {"C": ("floor", "dark"), "A": ("Floor ", "light"), "B": ("floor", "dark"), "wide": ("", "dark")}
    boards = [
        replace(each, lot=looks[each.id][0], tone=looks[each.id][1])
        for each in begun_job().boards
        if each.id in looks
    ]
    boards += [each for each in begun_job().boards if each.id not in looks]
    boards += [
        board("near", 97, 6.25, lot="floor", tone="Dark"),
        board("long2", 130, 6.25, lot="floor", tone="dark"),
        board("other", 97, 6.25),
    ]
    found = fitting(replace(begun_job(), boards=tuple(boards)), "3a")
    assert list(found) == ["near", "long2", "B", "wide", "A", "other", "D", "long"]
    assert [(each.same_lot, each.same_tone) for each in found.values()] == [
        (True, True),
        (True, True),
        (True, True),
        (False, True),
        (True, False),
        (False, False),
        (False, False),
        (False, False),
    ]
    assert found["near"].waste_nm2 < found["long2"].waste_nm2
    assert found["B"].loses == (("wall", "2a"),)


def test_boards_that_cannot_give_the_piece_are_not_listed() -> None:
    """Nor the one that it is of, nor one that is left out or needed for what stays."""
    work_on = replace(
        begun_job(),
        boards=(
            *begun_job().boards,
            board("short", 60, 6.25),
            board("rotten", 97, 6.25, flaws=(flaw(50, 51),)),
        ),
    )
    assert set(fitting(work_on, "3a")) == {"A", "B", "D", "long", "wide"}
    stays = PieceWish(surface_id="wall", label="1a", board_id="A")
    assert set(fitting(work_on, "3a", Wishes(kept=(stays,), without=("long",)))) == {"B", "D", "wide"}


def test_what_was_wished_of_the_piece_itself_does_not_count() -> None:
    """Else it could not be wished otherwise."""
    for wishes in (
        Wishes(kept=(PieceWish(surface_id="wall", label="3a", board_id="C"),)),
        Wishes(put=(PieceWish(surface_id="wall", label="3a", board_id="wide"),)),
    ):
        assert set(fitting(begun_job(), "3a", wishes)) == {"A", "B", "D", "long", "wide"}


def test_of_boards_that_were_sawn_what_is_left_is_offered() -> None:
    """The end of the long board, once 2b is cut and 4b is to come from elsewhere."""
    standing = marked(happened("cut", "2b"), happened("cut", "4a")).standing
    found = fitting(begun_job(), "4b", standing=standing)
    assert "D" not in found
    assert words(fitting(begun_job(), "2a", standing=standing))["long"] == "takes the wood of 4b"


def test_only_pieces_that_are_still_to_be_cut_can_come_from_elsewhere() -> None:
    """It is said why not."""
    standing = marked(happened("hung", "1"), happened("cut", "3a")).standing
    for label, told in (("1a", "1a hangs already"), ("3a", "3a is cut already"), ("9z", "no piece 9z")):
        with pytest.raises(RefusedError, match=told):
            fitting(begun_job(), label, standing=standing)


def test_a_board_beside_which_nothing_goes_that_stays_is_not_listed() -> None:
    """Here for its thickness."""
    thick: Board = board("thick", 97, 6.25, thickness_nm=nm(1.25))
    work_on = replace(begun_job(), boards=(*begun_job().boards, thick))
    stays = PieceWish(surface_id="wall", label="2b", board_id="long")
    assert "thick" in fitting(work_on, "2a")
    assert "thick" not in fitting(work_on, "2a", Wishes(kept=(stays,)))


def test_nothing_is_offered_that_could_not_be_laid_out() -> None:
    """Under the slope of the porch, or behind its bench; H08 is too narrow everywhere."""
    found = {
        each.label: {
            fit.board.id
            for fit in fitting_boards(porch_job(), porch_layout(), NOTHING_DONE, "porch", each.label)
        }
        for each in porch_layout().pieces
    }
    assert found["6a"] == {"H02", "H03", "H05", "H06"}
    assert found["1a"] == {"H02", "H03", "H04", "H05", "H06", "H07"}
