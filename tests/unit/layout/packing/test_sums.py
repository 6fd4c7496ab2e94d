"""What whole sticks cost: sums of their costs, and the cheapest that hold so much."""

from collections.abc import Sequence
from itertools import product

from hypothesis import given
from hypothesis import strategies as st

from plankwright.layout.packing.kinds import Assortment, NeedKind, StickKind
from plankwright.layout.packing.sums import Supplies, least_sum, supplies_by_size


def assortment(needs: Sequence[tuple[int, int]], sticks: Sequence[tuple[int, int]]) -> Assortment:
    """Make kinds of (length, how many), all of width 1, cut without a kerf, of which nothing is kept."""
    return Assortment(
        [NeedKind(length, 1, hidden=False, count=count) for length, count in needs],
        [StickKind(length, 1, hidden_only=False, count=count) for length, count in sticks],
        kerf=0,
        tolerance=0,
    )


parts = st.lists(st.tuples(st.integers(1, 30), st.integers(0, 3)), min_size=1, max_size=4)


@given(parts, st.integers(0, 200))
def test_least_sum_is_the_least_of_all(some: list[tuple[int, int]], bound: int) -> None:
    """Trying every choice gives the same, unless all parts together are too little."""
    sums = {
        sum(size * taken for (size, _), taken in zip(some, choice, strict=True))
        for choice in product(*(range(count + 1) for _, count in some))
    }
    enough = [total for total in sums if total >= bound]
    assert least_sum(some, bound) >= bound
    if enough:
        assert least_sum(some, bound) == min(enough)


@given(parts, st.lists(st.integers(0, 40), min_size=4, max_size=4), st.integers(0, 150))
def test_cheapest_supply_is_the_cheapest_of_all(
    some: list[tuple[int, int]], worths: list[int], asked: int
) -> None:
    """Trying every choice of sticks finds none that is worth as much and costs less."""
    choice = assortment([(1, 1)], some)
    worths = worths[: len(some)]
    costs = [
        sum(size * taken for (size, _), taken in zip(some, taken_each, strict=True))
        for taken_each in product(*(range(count + 1) for _, count in some))
        if sum(worth * taken for worth, taken in zip(worths, taken_each, strict=True)) >= asked
    ]
    least = Supplies(choice, worths, asked).least
    assert (least is None) == (not costs)
    if least is not None:
        assert least.cost == min(costs)
        assert sum(worth * taken for worth, taken in zip(worths, least.sticks, strict=True)) >= asked


def test_pieces_that_cannot_fill_a_stick_count_it_for_less() -> None:
    """Six pieces of 40 fill 80 of each stick of 100, so three sticks are needed, not two and a half."""
    supplies = supplies_by_size(assortment([(40, 6)], [(100, 9)]))
    assert supplies is not None
    assert supplies.least is not None
    assert supplies.least.sticks == (3,)


def test_sticks_are_counted_whole() -> None:
    """A length of 130 takes sticks of 100 and 60: two of 60 are too little, and two of 100 too much."""
    supplies = supplies_by_size(assortment([(10, 13)], [(100, 2), (60, 2)]))
    assert supplies is not None
    assert supplies.least is not None
    assert supplies.least.cost == 160
    assert supplies.within(159).sticks == (0, 2)
    assert supplies.within(10**9).sticks == (2, 2)


def test_nothing_is_told_where_part_of_a_stick_is_kept() -> None:
    """What is spent is no sum of whole sticks then."""
    choice = Assortment(
        [NeedKind(40, 1, hidden=False, count=1)],
        [StickKind(100, 1, hidden_only=False, count=1, kept_from=30)],
        kerf=0,
        tolerance=0,
    )
    assert supplies_by_size(choice) is None
