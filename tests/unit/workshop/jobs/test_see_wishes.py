"""What is wished of a layout, and what can be chosen, as a screen shows it."""

from dataclasses import replace

from builders import board
from kept_jobs import work_after
from plankwright.model import NOTHING_DONE, Job, MarkKind
from plankwright.workshop.jobs.see_wishes import asked_of, board_choices, swap_choices
from plankwright.workshop.jobs.wishes import NO_WISHES, PieceWish, Wishes
from village import small_job, small_layout

KEEP = PieceWish(surface_id="wall", label="1a", board_id="A")
PUT = PieceWish(surface_id="wall", label="2a", board_id="C")


def test_a_wish_says_whether_it_is_so_already() -> None:
    """1a is of board A now; 2a is not of C, and nothing is cut from C."""
    asked = asked_of(
        small_job(), small_layout(), NOTHING_DONE, Wishes(kept=(KEEP,), put=(PUT,), without=("B",))
    )
    assert [(wish.words, wish.holds) for wish in asked.told] == [
        ("1a stays where it is", True),
        ("board C for piece 2a", False),
        ("without board B", False),
    ]
    assert asked.open
    assert not asked_of(small_job(), small_layout(), NOTHING_DONE, Wishes(kept=(KEEP,))).open


def test_a_wish_that_cannot_be_granted_says_why() -> None:
    """It is told of all the same, to be taken back."""
    gone = replace(PUT, board_id="gone")
    asked = asked_of(small_job(), small_layout(), NOTHING_DONE, Wishes(put=(gone,)))
    assert len(asked.told) == len(asked.dropped) == 1


def test_nothing_wished_is_nothing_told() -> None:
    """And nothing is open."""
    asked = asked_of(small_job(), small_layout(), NOTHING_DONE, NO_WISHES)
    assert (asked.told, asked.dropped, asked.open) == ((), (), False)


def test_boards_to_choose_tell_how_they_look() -> None:
    """Those that look like the one that the piece is of come first."""
    boards = [replace(one, lot="floor", tone="dark") for one in small_job().boards]
    boards.append(replace(board("D", 97, 5.25), lot="stage"))
    job: Job = replace(small_job(), boards=tuple(boards))
    choices = board_choices(job, small_layout(), NOTHING_DONE, ("wall", "1a"), NO_WISHES)
    assert {one.id for one in choices} == {"B", "C", "D"}
    assert [one.alike for one in choices] == [True, True, False]
    assert (choices[-1].id, choices[-1].looks) == ("D", "lot stage")
    assert choices[-1].size == '8\' 1" × 5-1/4"'


def test_pieces_to_swap_with_are_of_other_boards_and_not_sawn() -> None:
    """Of two pieces, the other one; nothing once that hangs."""
    job, laid = small_job(), small_layout()
    assert [(one.surface, one.label) for one in swap_choices(job, laid, NOTHING_DONE, 0, "1a")] == [(0, "2a")]
    standing = work_after((MarkKind.HUNG, "1a")).standing
    assert swap_choices(job, laid, standing, 0, "2a") == ()
    assert swap_choices(job, laid, NOTHING_DONE, 0, "9z") == ()
