"""Two pieces swap boards at once where nothing else has to change; else the rest goes around them."""

from dataclasses import replace

import pytest

from builders import flaw, nm
from in_progress import begun_job, begun_layout, happened, marked
from plankwright.check import check_layout, faults
from plankwright.layout.again import lay_again
from plankwright.layout.result import EFFORTS, Verdict
from plankwright.model import Job, Part, Severity, part_of
from plankwright.workshop.ask_enough import ask_enough
from plankwright.workshop.jobs.kept import KeptLayout, Made, RefusedError
from plankwright.workshop.jobs.lay_around import lay_around
from plankwright.workshop.jobs.swap_pieces import Swapped, swap_pieces
from plankwright.workshop.jobs.wishes import NO_WISHES, PieceWish, Wishes
from plankwright.workshop.mark_work import begin_work
from village import short_result, small_job, small_layout
from wishing import piece_at

KEPT = KeptLayout(id=3, layout=begun_layout(), made=Made.SEARCHED)


def swapped(one: str, other: str, work_on: Job | None = None, wishes: Wishes = NO_WISHES) -> Swapped:
    """Swap two pieces of the job in progress."""
    return swap_pieces(work_on or begun_job(), KEPT, None, wishes, (("wall", one), ("wall", other)))


def wish(label: str, board_id: str) -> PieceWish:
    """Name a piece and a board."""
    return PieceWish(surface_id="wall", label=label, board_id=board_id)


def wood(laid: KeptLayout, label: str) -> Part:
    """Give what of its board a piece is."""
    return part_of(piece_at(laid.layout, ("wall", label)))


def test_pieces_of_one_size_just_have_each_others_wood() -> None:
    """The layout is there at once, with its answer, checked and not kept yet."""
    done = swapped("1a", "3a")
    assert done.wishes == Wishes(put=(wish("1a", "C"), wish("3a", "A")))
    assert done.laid is not None
    assert (done.laid.id, done.laid.made) == (0, Made.SWAPPED)
    assert wood(done.laid, "1a") == wood(KEPT, "3a")
    assert wood(done.laid, "3a") == wood(KEPT, "1a")
    for label in ("2a", "2b", "4a", "4b"):
        assert piece_at(done.laid.layout, ("wall", label)) == piece_at(KEPT.layout, ("wall", label))
    assert not faults(check_layout(begun_job(), done.laid.layout))
    assert done.laid.answer is not None
    assert done.laid.answer.verdict is Verdict.ENOUGH
    assert done.laid.news == ("1a is cut from board C now and 3a from board A; all else stays as it was.",)


def test_a_longer_piece_takes_wood_that_lies_free_beside_the_other() -> None:
    """4a is 40 inches, 2a 56, and board D has enough beyond 4a."""
    done = swapped("2a", "4a")
    assert done.laid is not None
    assert (wood(done.laid, "2a").board_id, wood(done.laid, "2a").length_nm) == ("D", nm(56))
    assert (wood(done.laid, "4a").board_id, wood(done.laid, "4a").length_nm) == ("B", nm(40))


def test_a_piece_that_needs_more_than_the_other_leaves_is_laid_out_around() -> None:
    """2a would fit on the long board only if 4b gave way."""
    work_on = begun_job("X", "Y")
    done = swapped("3a", "2b", work_on)
    assert done.laid is None
    assert done.wishes == Wishes(put=(wish("3a", "long"), wish("2b", "C")))
    around = lay_around(
        work_on,
        KEPT.layout,
        begin_work(work_on),
        done.wishes,
        again=lay_again,
        effort=EFFORTS["glance"],
    )
    assert around.wishes == done.wishes
    assert around.result.layout.covers_everything


def test_pieces_beside_which_something_would_no_longer_go_are_laid_out_around() -> None:
    """Board C is thicker here than the long one that 2b beside 2a is of."""
    boards = tuple(
        replace(each, thickness_nm=nm(1)) if each.id == "C" else each for each in begun_job().boards
    )
    done = swapped("3a", "2a", replace(begun_job(), boards=boards))
    assert done.laid is None
    assert done.wishes == Wishes(put=(wish("3a", "B"), wish("2a", "C")))


def test_what_was_wished_of_them_before_is_taken_back() -> None:
    """Whatever else was wished stays wished."""
    before = Wishes(kept=(wish("1a", "A"), wish("4a", "D")), without=("wide",))
    done = swapped("1a", "3a", wishes=before)
    assert done.wishes == Wishes(
        kept=(wish("4a", "D"),), put=(wish("1a", "C"), wish("3a", "A")), without=("wide",)
    )


@pytest.mark.parametrize(
    ("one", "other", "told"),
    [
        ("1a", "9z", "There is no piece 9z in this layout, or no longer."),
        ("2b", "4b", "2b and 4b are both cut from board long."),
        ("1a", "1a", "Choose another piece to swap boards with 1a."),
    ],
)
def test_what_cannot_be_swapped_is_refused(one: str, other: str, told: str) -> None:
    """In one clear sentence."""
    with pytest.raises(RefusedError) as refused:
        swapped(one, other)
    assert str(refused.value) == told


def test_a_board_that_is_too_short_for_the_other_piece_is_told_of() -> None:
    """2b would do with it, but not 3a."""
    boards = tuple(
        replace(each, length_nm=nm(60)) if each.id == "long" else each for each in begun_job().boards
    )
    with pytest.raises(
        RefusedError, match=r"The longest sound stretch of board long is 4' 11\", and 3a is 8' 0"
    ):
        swapped("3a", "2b", replace(begun_job(), boards=boards))


def test_pieces_that_are_cut_are_not_swapped() -> None:
    """Nor are pieces that hang."""
    work = marked(happened("hung", "1"), happened("cut", "3a"))
    for one, told in (("1a", "1a hangs already"), ("3a", "3a is cut already")):
        with pytest.raises(RefusedError, match=told):
            swap_pieces(begun_job(), KEPT, work, NO_WISHES, (("wall", one), ("wall", "4a")))


def test_a_blemish_is_hung_where_it_does_not_show() -> None:
    """Where neither face will do, the boards are not swapped."""
    stained = replace(begun_job().boards[2], flaws=(flaw(70, 75, Severity.BLEMISH),))
    boards = tuple(stained if each.id == "C" else each for each in begun_job().boards)
    with pytest.raises(RefusedError, match="a blemish would show"):
        swapped("1a", "3a", replace(begun_job(), boards=boards))


def test_the_answer_from_before_goes_on_to_say_what_is_wanted() -> None:
    """What is bare is as it was."""
    answer = ask_enough(small_job(), short_result())
    kept = KeptLayout(layout=small_layout(), made=Made.SEARCHED, answer=answer)
    done = swap_pieces(small_job(), kept, None, NO_WISHES, (("wall", "1a"), ("wall", "2a")))
    assert done.laid is not None
    assert done.laid.answer is not None
    assert done.laid.answer.wanted == answer.wanted
