"""The worthiest pattern of each stick: found exactly, or bounded from above on a grid."""

from collections.abc import Iterator, Sequence
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plankwright.layout.packing import kinds
from plankwright.layout.packing.kinds import Assortment, NeedKind, Pattern, StickKind
from plankwright.layout.packing.patterns import charged, free, worthiest

KERF = 3

kinds_of_needs = st.lists(
    st.builds(NeedKind, st.integers(5, 60), st.integers(1, 3), st.booleans(), st.integers(1, 3)),
    min_size=1,
    max_size=4,
)
kinds_of_sticks = st.lists(
    st.builds(StickKind, st.integers(5, 120), st.integers(1, 3), st.booleans(), st.just(1)),
    min_size=1,
    max_size=3,
)


def assortment(needs: Sequence[NeedKind], sticks: Sequence[StickKind]) -> Assortment:
    """Put kinds together, with a kerf of 3 and no tolerance."""
    return Assortment(needs, sticks, kerf=KERF, tolerance=0)


def all_patterns(choice: Assortment, stick: int) -> Iterator[Pattern]:
    """Give every pattern that a stick can be cut by."""
    for counts in product(*(range(need.count + 1) for need in choice.needs)):
        pattern = tuple((need, count) for need, count in enumerate(counts) if count)
        length = sum(choice.needs[need].length * count for need, count in pattern)
        kerfs = KERF * max(0, sum(counts) - 1)
        long_enough = length + kerfs <= choice.sticks[stick].length
        if long_enough and all(choice.fits(need, stick) for need, _ in pattern):
            yield pattern


def worth(pattern: Pattern, prices: Sequence[int]) -> int:
    """Add up the prices of a pattern's pieces."""
    return sum(prices[need] * count for need, count in pattern)


@given(kinds_of_needs, kinds_of_sticks, st.lists(st.integers(0, 50), min_size=4, max_size=4))
def test_worthiest_pattern_is_the_best_of_all(
    needs: list[NeedKind], sticks: list[StickKind], prices: list[int]
) -> None:
    """On the needs' own unit the dynamic programme equals trying every pattern."""
    choice = assortment(needs, sticks)
    prices = prices[: len(needs)]
    assert choice.exact
    found = worthiest(choice, prices, [need.count for need in needs], free(choice))
    for stick in range(len(sticks)):
        ways = list(all_patterns(choice, stick))
        assert found.gains[stick] == max(worth(way, prices) for way in ways)
        assert found.patterns[stick] in ways
        assert worth(found.patterns[stick], prices) == found.gains[stick]


@given(
    kinds_of_needs,
    kinds_of_sticks,
    st.lists(st.integers(0, 50), min_size=4, max_size=4),
    st.integers(2, 30),
)
def test_coarse_grid_never_underrates_a_stick_nor_overfills_it(
    needs: list[NeedKind], sticks: list[StickKind], prices: list[int], cells: int
) -> None:
    """Where lengths are too fine for exact pricing, worths are bounds and patterns can be cut."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(kinds, "_FINEST", cells)
        patch.setattr(kinds, "_COARSE", cells)
        choice = assortment(needs, sticks)
    prices = prices[: len(needs)]
    found = worthiest(choice, prices, [need.count for need in needs], free(choice))
    for stick in range(len(sticks)):
        ways = list(all_patterns(choice, stick))
        assert found.gains[stick] >= max(worth(way, prices) for way in ways)
        assert found.patterns[stick] in ways


def test_limits_hold_below_the_count() -> None:
    """While a search goes on fewer may be wanted than there were at first."""
    choice = assortment(
        [NeedKind(10, 1, hidden=False, count=9)], [StickKind(100, 1, hidden_only=False, count=1)]
    )
    assert worthiest(choice, [5], [9], free(choice)).patterns == (((0, 7),),)
    assert worthiest(choice, [5], [2], free(choice)).patterns == (((0, 2),),)
    assert worthiest(choice, [5], [0], free(choice)).patterns == ((),)


def test_room_left_counts_a_kerf_for_each_further_piece() -> None:
    """Two pieces of 10 leave 100 - 20 - 2 x 3 for a third, and with its kerf that is 77."""
    choice = assortment(
        [NeedKind(10, 1, hidden=False, count=9)], [StickKind(100, 1, hidden_only=False, count=1)]
    )
    assert choice.room_left(0, ((0, 2),)) - KERF == 74
    assert choice.room_left(0, ((0, 8),)) < 0


@given(kinds_of_needs, st.lists(st.integers(0, 900), min_size=4, max_size=4), st.integers(1, 60))
def test_gain_less_the_wood_spent_is_the_best_of_all(
    needs: list[NeedKind], prices: list[int], kept_from: int
) -> None:
    """With what is kept of a stick taken off its charge, trying every pattern finds nothing better."""
    sticks = [StickKind(90, 3, hidden_only=False, count=1, lost=20, kept_from=kept_from)]
    choice = assortment(needs, sticks)
    prices = prices[: len(needs)]
    found = worthiest(choice, prices, [need.count for need in needs], charged(choice, 1, 1))
    ways = [way for way in all_patterns(choice, 0) if way]
    best = max((worth(way, prices) - choice.cost(0, way) for way in ways), default=-choice.sticks[0].cost)
    assert found.gains[0] >= best
    if found.gains[0] > 0:
        assert found.gains[0] == best
        assert worth(found.patterns[0], prices) - choice.cost(0, found.patterns[0]) == best


def test_haste_gives_a_pattern_that_can_be_cut() -> None:
    """On a coarse table lengths are rounded up."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(kinds, "_COARSE", 10)
        choice = assortment(
            [NeedKind(21, 1, hidden=False, count=9), NeedKind(22, 1, hidden=False, count=0)],
            [StickKind(101, 1, hidden_only=False, count=1)],
        )
    (pattern,) = worthiest(choice, [5, 0], [9, 0], free(choice), hasty=True).patterns
    assert pattern == ((0, 3),)
    assert worthiest(choice, [5, 0], [9, 0], free(choice)).patterns == (((0, 4),),)
