"""What cannot be granted is refused in one sentence when it is wished, and dropped once it no longer can."""

from dataclasses import replace
from typing import Any

import pytest

from builders import board, crosscut_saw, flaw, job, nm, rip_saw
from in_progress import RULES, WALL, begun_job, begun_layout, happened, marked
from plankwright.model import (
    NOTHING_DONE,
    Board,
    EdgeKind,
    EdgeProfile,
    Face,
    Job,
    Layout,
    Severity,
    Standing,
    Treatment,
)
from plankwright.workshop.jobs.kept import RefusedError
from plankwright.workshop.jobs.make_wishes import keep_piece, leave_out_board, put_board, still_possible
from plankwright.workshop.jobs.wishes import NO_WISHES, PieceWish, Wishes

MILLED = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25))
THE_3A = ("wall", "3a")


def with_board(spare: Board, **more: Any) -> Job:  # noqa: ANN401 - any further field
    """Give the job in progress with one board more."""
    whole = begun_job()
    return replace(whole, boards=(*whole.boards, spare), **more)


def wished(label: str, board_id: str) -> PieceWish:
    """Name a piece and a board."""
    return PieceWish(surface_id="wall", label=label, board_id=board_id)


def why_not(
    work: Job,
    key: tuple[str, str],
    board_id: str,
    *,
    standing: Standing = NOTHING_DONE,
    wishes: Wishes = NO_WISHES,
    layout: Layout | None = None,
) -> str:
    """Give why a board cannot be had for a piece."""
    with pytest.raises(RefusedError) as refused:
        put_board(work, layout or begun_layout(), standing, wishes, key, board_id)
    return str(refused.value)


def test_a_piece_that_stays_is_known_by_its_board() -> None:
    """So that another piece of that label in another layout is not taken for it."""
    wishes = keep_piece(begun_job(), begun_layout(), NOTHING_DONE, NO_WISHES, ("wall", "4b"))
    assert wishes == Wishes(kept=(wished("4b", "long"),))


def test_a_board_that_fits_can_be_put() -> None:
    """Of its own board a piece just stays."""
    put = put_board(begun_job("X"), begun_layout(), NOTHING_DONE, NO_WISHES, THE_3A, "X")
    assert put == Wishes(put=(wished("3a", "X"),))
    kept = put_board(begun_job("X"), begun_layout(), NOTHING_DONE, put, THE_3A, "C")
    assert kept == Wishes(kept=(wished("3a", "C"),))


@pytest.mark.parametrize(
    ("key", "told"),
    [
        (("wall", "9z"), "There is no piece 9z in this layout, or no longer."),
        (("roof", "3a"), "There is no piece 3a in this layout, or no longer."),
        (("wall", "1a"), "1a hangs already."),
    ],
)
def test_only_pieces_that_are_there_and_do_not_hang_can_be_wished_for(
    key: tuple[str, str], told: str
) -> None:
    """One that hangs stays anyway."""
    standing = marked(happened("hung", "1")).standing
    with pytest.raises(RefusedError) as refused:
        keep_piece(begun_job(), begun_layout(), standing, NO_WISHES, key)
    assert str(refused.value) == told
    assert why_not(begun_job(), key, "wide", standing=standing) == told


@pytest.mark.parametrize(
    ("spare", "told"),
    [
        (
            board("X", 60, 6.25),
            "The longest sound stretch of board X is 4' 11\", and 3a is 8' 0\" long.",
        ),
        (
            board("X", 150, 6.25, flaws=(flaw(80, 82),)),
            "The longest sound stretch of board X is 6' 7-1/2\", and 3a is 8' 0\" long.",
        ),
        (
            board("X", 97, 5),
            'Board X gives 4-3/4" of width for 3a; course 3 takes 6".',
        ),
        (
            board("X", 97, 6.25, flaws=(flaw(0, 97),)),
            "No wood of board X is sound.",
        ),
        (
            board("X", 97, 6.25, flaws=(flaw(0, 97),), treatment=Treatment.CREOSOTE),
            "Board X was treated against rot: it never hangs in a house.",
        ),
        (
            board("X", 97, 6.25, flaws=(flaw(40, 50, Severity.BLEMISH),)),
            "Wherever 3a is cut from board X, a blemish would show.",
        ),
        (board("Y", 97, 6.25), "There is no board X in the tally, or no longer."),
    ],
)
def test_a_board_that_cannot_give_the_piece_is_refused(spare: Board, told: str) -> None:
    """In a sentence that says what is wrong with it."""
    assert why_not(with_board(spare), THE_3A, "X") == told


def test_saws_that_cannot_free_the_piece_are_told_of() -> None:
    """Across, along, and where a board is to hang as wide as it is."""
    small = replace(begun_job(), saws=(crosscut_saw(13), rip_saw(4)))
    first = put_board(small, begun_layout(), NOTHING_DONE, NO_WISHES, ("wall", "1a"), "wide")
    assert why_not(small, THE_3A, "wide", wishes=first) == ("The saws listed cannot free 3a from board wide.")
    no_rip = with_board(board("X", 97, 6.5), saws=(crosscut_saw(12),))
    assert why_not(no_rip, THE_3A, "X") == "The saws listed cannot free a piece from board X."
    milled = with_board(board("X", 97, 7, profile=MILLED), saws=(crosscut_saw(12),))
    assert why_not(milled, THE_3A, "X") == (
        'Board X gives 7" of width for 3a; course 3 takes 6", and no saw listed rips it to that.'
    )


def test_the_other_face_is_hung_where_a_blemish_would_show() -> None:
    """Of a square-edged board; a milled one has but one face."""
    blemish = flaw(40, 50, Severity.BLEMISH, face=Face.FRONT)
    put_board(
        with_board(board("X", 97, 6.25, flaws=(blemish,))),
        begun_layout(),
        NOTHING_DONE,
        NO_WISHES,
        THE_3A,
        "X",
    )
    milled = board("X", 97, 6.25, flaws=(blemish,), profile=MILLED)
    assert "a blemish would show" in why_not(with_board(milled), THE_3A, "X")


def test_what_was_done_is_heeded() -> None:
    """A piece that is cut is what it is, and of boards only what is left can be had."""
    cut = marked(happened("cut", "3a")).standing
    assert why_not(begun_job(), THE_3A, "wide", standing=cut) == (
        "3a is cut already: mark what became of it first."
    )
    lost = marked(happened("lost", "wide")).standing
    assert why_not(begun_job(), THE_3A, "wide", standing=lost) == "Board wide is marked as lost."
    hung = marked(happened("hung", "1")).standing
    assert why_not(begun_job(), THE_3A, "A", standing=hung) == "Nothing of use is left of board A."


def test_a_board_must_go_with_what_stays_beside_it() -> None:
    """What does not stay is laid out anew, and is no matter."""
    work = with_board(board("X", 97, 6.25, profile=MILLED))
    key = ("wall", "2a")
    kept = keep_piece(work, begun_layout(), NOTHING_DONE, NO_WISHES, ("wall", "2b"))
    why = why_not(work, key, "X", wishes=kept)
    assert why.startswith(
        "Board X does not go with 2b beside 2a, which stays: pieces that butt in sight need"
    )
    put_board(work, begun_layout(), NOTHING_DONE, NO_WISHES, key, "X")
    thick = with_board(board("X", 97, 6.25, thickness_nm=nm(1)))
    assert "does not go with 2b" in why_not(thick, key, "X", wishes=kept)
    shimmed = replace(thick, rules=replace(RULES, shim_up_to_nm=nm(0.1875)))
    put_board(shimmed, begun_layout(), NOTHING_DONE, kept, key, "X")


def test_boards_that_others_keep_are_not_given_away() -> None:
    """Neither one that is left out nor one that is needed for what stays."""
    left_out = leave_out_board(begun_job(), begun_layout(), NOTHING_DONE, NO_WISHES, "wide")
    assert why_not(begun_job(), THE_3A, "wide", wishes=left_out) == (
        "Board wide is to be left out, so 3a cannot come from it."
    )
    kept = keep_piece(begun_job(), begun_layout(), NOTHING_DONE, NO_WISHES, ("wall", "1a"))
    assert why_not(begun_job(), THE_3A, "A", wishes=kept) == (
        "Pieces that are to stay leave too little of board A for 3a."
    )
    put = put_board(begun_job(), begun_layout(), NOTHING_DONE, kept, ("wall", "4b"), "D")
    for needed, label in (("A", "1a"), ("D", "4b")):
        with pytest.raises(RefusedError, match=f"Board {needed} is wished for {label}"):
            leave_out_board(begun_job(), begun_layout(), NOTHING_DONE, put, needed)


@pytest.mark.parametrize(
    ("board_id", "told"),
    [
        ("gone", "There is no board gone in the tally, or no longer."),
        ("wide", "Board wide is marked as lost: nothing more is cut from it anyway."),
        ("A", "Nothing of use is left of board A: nothing more is cut from it anyway."),
    ],
)
def test_a_board_that_nothing_can_be_cut_from_need_not_be_left_out(board_id: str, told: str) -> None:
    """That is told."""
    standing = marked(happened("hung", "1"), happened("lost", "wide")).standing
    with pytest.raises(RefusedError) as refused:
        leave_out_board(begun_job(), begun_layout(), standing, NO_WISHES, board_id)
    assert str(refused.value) == told


def test_two_boards_can_be_put_in_each_others_places() -> None:
    """Each is free once the other piece has left it."""
    wishes = put_board(begun_job(), begun_layout(), NOTHING_DONE, NO_WISHES, ("wall", "1a"), "C")
    both = put_board(begun_job(), begun_layout(), NOTHING_DONE, wishes, THE_3A, "A")
    assert still_possible(begun_job(), begun_layout(), NOTHING_DONE, both).wishes == both


def test_what_can_be_granted_no_longer_is_dropped_with_a_sentence() -> None:
    """A piece that is gone, hangs or is another one, a board that is gone, lost or used up."""
    wishes = Wishes(
        kept=(wished("1a", "A"), wished("2a", "wide"), wished("3a", "C"), wished("9z", "A")),
        put=(wished("4a", "gone"), wished("4b", "X"), wished("2b", "X")),
        without=("D", "gone", "wide"),
    )
    standing = marked(happened("hung", "1"), happened("lost", "wide")).standing
    sound = replace(begun_job("X"), boards=tuple(_rotten(each) for each in begun_job("X").boards))
    possible = still_possible(sound, begun_layout(), standing, wishes)
    assert possible.wishes == Wishes(put=(wished("4b", "X"),), without=("D",))
    assert [sentence.partition(": no longer possible. ")[::2] for sentence in possible.dropped] == [
        ("1a stays where it is", "1a hangs by now."),
        ("2a stays where it is", "2a is cut from board B in this layout, no longer from wide."),
        (
            "3a stays where it is",
            "As board C is measured now, it no longer gives 3a where it is laid out.",
        ),
        ("9z stays where it is", "There is no piece 9z in this layout."),
        ("Board gone for piece 4a", "There is no board gone in the tally, or no longer."),
        ("Board X for piece 2b", "Pieces that are to stay leave too little of board X for 2b."),
        ("Without board gone", "There is no board gone in the tally, or no longer."),
        ("Without board wide", "Board wide is marked as lost: nothing more is cut from it anyway."),
    ]


def _rotten(each: Board) -> Board:
    return replace(each, flaws=(flaw(50, 52),)) if each.id == "C" else each


def test_wood_that_is_no_longer_there_cannot_stay() -> None:
    """Nor can a piece of which another is in hand under its label."""
    broke = marked(happened("broke", "3a")).standing
    wishes = Wishes(kept=(wished("3a", "C"),))
    possible = still_possible(begun_job(), begun_layout(), broke, wishes)
    assert (possible.wishes, possible.dropped) == (
        NO_WISHES,
        ("3a stays where it is: no longer possible. The wood of 3a is no longer there.",),
    )
    short = marked(happened("miscut", "3a", length_nm=nm(80))).standing
    possible = still_possible(begun_job(), begun_layout(), short, wishes)
    assert possible.wishes == NO_WISHES


def test_a_layout_of_other_surfaces_leaves_no_piece_to_wish_for() -> None:
    """Without an error."""
    elsewhere = job(replace(WALL, id="porch"), begun_job().boards, RULES)
    possible = still_possible(elsewhere, begun_layout(), NOTHING_DONE, Wishes(kept=(wished("3a", "C"),)))
    assert possible.wishes == NO_WISHES
