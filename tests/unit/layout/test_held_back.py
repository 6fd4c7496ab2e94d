"""Which boards are kept as spares."""

from builders import board, flaw
from choosing import plain
from plankwright.layout.held_back import held_back

FIVE = [board(f"A{length}", length, 6) for length in (96, 20, 60, 40, 80)]


def test_nothing_is_kept_unless_asked_for() -> None:
    """As the rules have it at first."""
    assert held_back(FIVE, plain()) == ()


def test_boards_of_middling_size_are_kept() -> None:
    """Neither the longest, which are scarce, nor the shortest, which stand in for few."""
    assert held_back(FIVE, plain(hold_back=1)) == ("A60",)
    assert held_back(FIVE, plain(hold_back=3)) == ("A40", "A60", "A80")


def test_no_more_are_kept_than_there_are() -> None:
    """All five of five, if ten are asked for."""
    assert sorted(held_back(FIVE, plain(hold_back=10))) == sorted(each.id for each in FIVE)


def test_a_board_that_gives_nothing_is_no_spare() -> None:
    """Rotten from end to end."""
    rotten = board("R", 60, 6, flaws=(flaw(0, 60),))
    assert held_back([rotten], plain(hold_back=1)) == ()


def test_what_is_usable_counts_not_what_there_is() -> None:
    """Eighty inches half of which are rotten lie between 20 and 60."""
    half = board("H", 80, 6, flaws=(flaw(0, 40),))
    assert held_back([FIVE[1], half, FIVE[2]], plain(hold_back=1)) == ("H",)
