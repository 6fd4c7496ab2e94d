"""What trials add up to."""

import pytest

from plankwright.layout.break_proof import Needed, Outcome, Survival, Trial, add_up, one_by_one

SINGLES = one_by_one(("A", "B", "C"))
DRAWS = (Trial(lost=("A", "B", "C")), Trial(lost=("B", "C", "A")), Trial(lost=("C", "A", "B")))
OUTCOMES = {
    0: Outcome(survived=1),
    1: Outcome(survived=0, proven=True),
    2: Outcome(survived=0),
    3: Outcome(survived=1),
    4: Outcome(survived=0),
    5: Outcome(survived=2),
}


def test_boards_are_parted_by_what_was_found() -> None:
    """Those without which nothing was found, each with whether that is proven, and the others."""
    learnt = add_up(SINGLES, DRAWS, OUTCOMES)
    assert learnt.needed == (Needed(board_id="B", proven=True), Needed(board_id="C", proven=False))
    assert learnt.spared == ("A",)
    assert learnt.untried == ()
    assert learnt.survival == Survival(draws=(1, 0, 2))


def test_the_order_in_which_they_came_does_not_matter() -> None:
    """Nor does who came first."""
    backwards = dict(reversed(OUTCOMES.items()))
    assert add_up(SINGLES, DRAWS, backwards) == add_up(SINGLES, DRAWS, OUTCOMES)


def test_what_was_stopped_counts_as_not_tried() -> None:
    """Unless it had lived through everything by then."""
    some = {0: Outcome(survived=0, stopped=True), 1: Outcome(survived=1, stopped=True)}
    learnt = add_up(SINGLES, DRAWS, some | {3: Outcome(survived=2, stopped=True)})
    assert learnt.needed == ()
    assert learnt.spared == ("B",)
    assert learnt.untried == ("A", "C")
    assert learnt.survival is None


@pytest.mark.parametrize(
    ("draws", "spread"), [((4,), (4, 4, 4)), ((5, 0, 3, 1), (0, 1, 5)), ((2, 9, 2, 3, 2), (2, 2, 9))]
)
def test_half_of_the_draws_survive_the_middle(draws: tuple[int, ...], spread: tuple[int, int, int]) -> None:
    """The lower one where there are two middles."""
    survival = Survival(draws=draws)
    assert (survival.least, survival.middle, survival.most) == spread
    assert sum(each >= survival.middle for each in draws) * 2 >= len(draws)
