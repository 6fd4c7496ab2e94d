"""What is tried."""

from plankwright.layout.break_proof import Trial, one_by_one, random_losses

BOARDS = ("A", "B", "C", "D", "E")


def test_each_board_is_lost_alone() -> None:
    """In the order given."""
    assert one_by_one(BOARDS[:2]) == (Trial(lost=("A",)), Trial(lost=("B",)))


def test_by_lot_every_board_is_lost_once() -> None:
    """In some order."""
    for trial in random_losses(BOARDS, 10, 0):
        assert sorted(trial.lost) == list(BOARDS)


def test_the_same_seed_gives_the_same_draws() -> None:
    """Another one gives others, and more draws leave the first as they are."""
    assert random_losses(BOARDS, 8, 7)[:5] == random_losses(BOARDS, 5, 7)
    assert random_losses(BOARDS, 5, 7) != random_losses(BOARDS, 5, 8)
    assert len(set(random_losses(BOARDS, 20, 7))) > 10


def test_no_board_is_more_likely_to_be_the_first() -> None:
    """Each of five is first in about a fifth of 2000 draws: within five standard deviations of 400."""
    first = [trial.lost[0] for trial in random_losses(BOARDS, 2000, 3)]
    assert all(abs(first.count(board) - 400) < 5 * (2000 * 0.2 * 0.8) ** 0.5 for board in BOARDS)
