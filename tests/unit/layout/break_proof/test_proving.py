"""When it is sure that nothing can be found."""

from dataclasses import replace

import pytest

from at_stake import one_long_board, twins
from corner import corner_job
from in_progress import begun_job, happened, marked
from plankwright.layout.break_proof import surely_too_little, without
from plankwright.model import NOTHING_DONE, Standing


def lose(*boards: str) -> Standing:
    """Lose some boards of a job that nobody has begun."""
    standing = NOTHING_DONE
    for board in boards:
        standing = without(standing, board)
    return standing


@pytest.mark.parametrize(
    ("lost", "proven"),
    [((), False), (("A", "B", "spare-1"), False), (("A", "B", "spare-1", "spare-2"), True)],
)
def test_two_boards_are_enough_and_one_is_not(lost: tuple[str, ...], proven: bool) -> None:  # noqa: FBT001 - given
    """Of five alike."""
    job, _ = twins(3)
    assert surely_too_little(job, lose(*lost)) is proven


def test_a_board_that_alone_is_long_enough_is_proven_to_be_needed() -> None:
    """The others are area enough, and too short."""
    job, _ = one_long_board()
    assert surely_too_little(job, lose("long"))
    assert not surely_too_little(job, lose("left", "right"))


def test_linked_walls_are_to_be_covered_together() -> None:
    """Either of them could be alone."""
    standing = lose("spare1", "spare2", "north1")
    assert surely_too_little(corner_job(), standing)
    assert not surely_too_little(replace(corner_job(), linked=()), standing)
    assert not surely_too_little(corner_job(), NOTHING_DONE)


def test_nothing_is_proven_once_something_hangs() -> None:
    """What hangs is held to no rule, and no bound knows of it."""
    gone = [happened("lost", board) for board in ("B", "C", "D", "long", "wide")]
    assert surely_too_little(begun_job(), marked(*gone).standing)
    assert not surely_too_little(begun_job(), marked(happened("hung", "1"), *gone).standing)


def test_what_was_cut_from_a_lost_board_is_counted_on() -> None:
    """As the whole board, which is more than there is, and so proves less."""
    gone = [happened("lost", board) for board in ("B", "C", "D", "wide")]
    cut = happened("cut", "2b", "4b")
    assert surely_too_little(begun_job(), marked(*gone, happened("lost", "long")).standing)
    standing = marked(cut, *gone, happened("lost", "long")).standing
    assert not surely_too_little(begun_job("X", "Y"), standing)
