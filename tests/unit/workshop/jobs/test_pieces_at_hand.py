"""Pieces are told so that nobody takes one for another."""

import pytest

from plankwright.model import NOTHING_DONE, MarkKind
from plankwright.workshop.jobs.kept import RefusedError
from plankwright.workshop.jobs.mark_kept import happened_to, mark_kept
from plankwright.workshop.jobs.pieces_at_hand import cut_wrong, pieces_at_hand, what_broke
from plankwright.workshop.mark_work import Happened
from two_walls import nm, walls_by, walls_job, walls_layout, walls_worked


def test_each_piece_is_named_with_its_surface_its_board_and_its_size() -> None:
    """In the order of hanging."""
    pieces = pieces_at_hand(walls_job(), walls_layout(), NOTHING_DONE)
    assert list(pieces) == ["1a@north", "2a@north", "2b@north", "1a@south", "2a@south"]
    one = pieces["2b@north"]
    assert (one.name, one.board_id, one.size, one.state) == ("north 2b", "L", '3\' 4" × 5"', "not cut yet")


def test_how_far_each_is() -> None:
    """What hangs, what is cut, and a piece in hand with the size that it really has."""
    kept = mark_kept(walls_worked(), walls_job(), walls_by(), happened_to(MarkKind.HUNG, [("north", "1a")]))
    wrong = Happened(kind=MarkKind.MISCUT, names=("2b",), surface_id="north", length_nm=nm(30))
    kept = mark_kept(kept, walls_job(), walls_by(), [wrong])
    assert kept.work is not None
    pieces = pieces_at_hand(walls_job(), walls_layout(), kept.work.standing)
    assert [(pieces[word].state, pieces[word].size) for word in ("1a@north", "2b@north")] == [
        ("hangs", '8\' 0" × 5"'),
        ("cut", '2\' 6" × 5"'),
    ]


def test_a_piece_cut_wrong_is_told_with_its_size() -> None:
    """As far as that is another one than was laid out."""
    one = pieces_at_hand(walls_job(), walls_layout(), NOTHING_DONE)["2b@north"]
    assert cut_wrong(one, nm(30), None) == Happened(
        kind=MarkKind.MISCUT, names=("2b",), surface_id="north", length_nm=nm(30)
    )


@pytest.mark.parametrize(
    ("length", "width", "told"),
    [
        (None, None, "Say what size"),
        (0, None, "no size"),
        (None, -1, "no size"),
        (nm(41), None, "too long, cut it again"),
        (nm(40), nm(6), "too wide, cut it again"),
    ],
)
def test_a_size_that_is_none_is_refused(length: int | None, width: int | None, told: str) -> None:
    """What is too large is no mishap: it is cut again."""
    one = pieces_at_hand(walls_job(), walls_layout(), NOTHING_DONE)["2b@north"]
    with pytest.raises(RefusedError, match=told):
        cut_wrong(one, length, width)


def test_what_hangs_is_taken_down_before_it_is_told_to_be_cut_wrong() -> None:
    """It cannot be measured where it hangs."""
    kept = mark_kept(walls_worked(), walls_job(), walls_by(), happened_to(MarkKind.HUNG, [("north", "1a")]))
    assert kept.work is not None
    one = pieces_at_hand(walls_job(), walls_layout(), kept.work.standing)["1a@north"]
    with pytest.raises(RefusedError, match="take it down first"):
        cut_wrong(one, nm(30), None)


def test_what_broke_before_it_was_sawn_is_its_board() -> None:
    """Once, however many pieces it was to give; sawn, the pieces are no more."""
    pieces = pieces_at_hand(walls_job(), walls_layout(), NOTHING_DONE)
    both = [pieces["2b@north"], pieces["1a@south"]]
    assert what_broke(both, sawn=False) == (Happened(kind=MarkKind.LOST, names=("L",)),)
    assert what_broke(both, sawn=True) == happened_to(MarkKind.BROKE, [piece.key for piece in both])


def test_whether_it_was_sawn_must_be_said_of_what_is_not_marked_as_cut() -> None:
    """What is marked as cut or hung was sawn, whatever is said of the others."""
    kept = mark_kept(walls_worked(), walls_job(), walls_by(), happened_to(MarkKind.HUNG, [("north", "1a")]))
    assert kept.work is not None
    pieces = pieces_at_hand(walls_job(), walls_layout(), kept.work.standing)
    hung, not_cut = pieces["1a@north"], pieces["2a@north"]
    assert what_broke([hung], sawn=None) == happened_to(MarkKind.BROKE, [hung.key])
    with pytest.raises(RefusedError, match="north 2a is not marked as cut"):
        what_broke([hung, not_cut], sawn=None)
    assert what_broke([hung, not_cut], sawn=False) == (
        *happened_to(MarkKind.BROKE, [hung.key]),
        Happened(kind=MarkKind.LOST, names=("B",)),
    )
