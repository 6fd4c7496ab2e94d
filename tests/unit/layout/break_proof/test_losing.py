"""Which boards can be lost, and what there is without one."""

from at_stake import one_long_board, twins
from builders import nm
from in_progress import begun_job, begun_layout, happened, marked
from plankwright.layout.break_proof import boards_at_risk, boards_to_cut, without
from plankwright.model import NOTHING_DONE


def test_every_board_with_wood_of_use_can_be_lost() -> None:
    """A board too short to be hung is no loss."""
    job, layout = one_long_board()
    assert boards_at_risk(job, layout, NOTHING_DONE) == ("left", "right", "spare-1", "spare-2", "long")


def test_only_boards_that_the_layout_uses_are_to_be_cut() -> None:
    """In the order in which it does."""
    _, layout = one_long_board()
    assert boards_to_cut(layout, NOTHING_DONE) == ("left", "right", "long")


def test_what_hangs_or_is_cut_is_not_to_be_cut_any_more() -> None:
    """But what is left of a board that was cut into is."""
    standing = marked(happened("hung", "1"), happened("cut", "2b")).standing
    assert boards_to_cut(begun_layout(), standing) == ("B", "C", "D", "long")
    standing = marked(happened("hung", "1"), happened("cut", "2b", "4b")).standing
    assert boards_to_cut(begun_layout(), standing) == ("B", "C", "D")


def test_a_board_that_hangs_cannot_be_lost_nor_one_that_is_lost() -> None:
    """A has no wood left once its course hangs; the wide one is gone."""
    standing = marked(happened("hung", "1"), happened("lost", "wide")).standing
    assert boards_at_risk(begun_job(), begun_layout(), standing) == ("B", "C", "D", "long")


def test_what_was_cut_from_a_lost_board_is_still_there() -> None:
    """As when it is marked as lost."""
    cut = happened("cut", "2b")
    lost = without(marked(cut).standing, "long")
    assert lost == marked(cut, happened("lost", "long")).standing
    assert [each.piece.label for each in lost.cut] == ["2b"]


def test_a_board_is_lost_but_once() -> None:
    """And nothing else changes."""
    once = without(NOTHING_DONE, "A")
    assert once.lost == once.sawn == ("A",)
    assert without(once, "A") == once


def test_the_layout_at_stake_is_right() -> None:
    """The boards of the job are as long as the tests say."""
    job, _ = twins(3)
    assert [board.id for board in job.boards if board.length_nm >= nm(96)] == [
        *("A", "B", "spare-1", "spare-2", "spare-3")
    ]
