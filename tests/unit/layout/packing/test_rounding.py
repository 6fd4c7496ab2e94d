"""From mixtures to whole sticks: best fit and dives."""

import random
from collections.abc import Sequence

import pytest

from plankwright.layout.packing.columns import Columns, Cut
from plankwright.layout.packing.effort import Work
from plankwright.layout.packing.kinds import Assortment, NeedKind, StickKind
from plankwright.layout.packing.rounding import bare_area, dived, filled, wood_spent


def assortment(needs: Sequence[tuple[int, int]], sticks: Sequence[tuple[int, int]]) -> Assortment:
    """Make kinds of (length, how many), all of width 1, cut without a kerf."""
    return Assortment(
        [NeedKind(length, 1, hidden=False, count=count) for length, count in needs],
        [StickKind(length, 1, hidden_only=False, count=count) for length, count in sticks],
        kerf=0,
        tolerance=0,
    )


def by_place(place: int) -> tuple[int, ...]:
    """Serve the kinds in the order in which they are given."""
    return (place,)


def test_piece_goes_where_it_leaves_least() -> None:
    """Forty goes beside sixty, not beside fifty, and no third stick is cut."""
    choice = assortment([(60, 1), (50, 1), (40, 1)], [(100, 3)])
    cuts = filled(choice, [Cut(0, ((1, 1),), 1), Cut(0, ((0, 1),), 1)], by_place)
    assert cuts == [Cut(0, ((1, 1),), 1), Cut(0, ((0, 1), (2, 1)), 1)]


def test_shortest_fresh_stick_is_cut() -> None:
    """A stick that is just long enough is taken before a longer one."""
    choice = assortment([(60, 1)], [(100, 1), (70, 1), (50, 1)])
    assert filled(choice, [], by_place) == [Cut(1, ((0, 1),), 1)]


def test_surplus_of_a_pattern_is_not_cut() -> None:
    """Of three sticks that could give two pieces each, one and a half are needed for three."""
    choice = assortment([(40, 3)], [(100, 3)])
    cuts = filled(choice, [Cut(0, ((0, 2),), 3)], by_place)
    assert cuts == [Cut(0, ((0, 2),), 1), Cut(0, ((0, 1),), 1)]


def test_what_fits_nowhere_stays_bare() -> None:
    """The second long piece finds no stick, and its area is told."""
    choice = assortment([(60, 2)], [(100, 1)])
    cuts = filled(choice, [], by_place)
    assert bare_area(choice, cuts) == 60
    assert wood_spent(choice, cuts) == 100


@pytest.mark.parametrize("chance", [None, random.Random(5)])  # noqa: S311 - chance, not secrecy
def test_dive_comes_up_with_whole_sticks(chance: random.Random | None) -> None:
    """Three needs of which two fit a stick: a dive, by lot or not, ends at two sticks."""
    choice = assortment([(40, 3)], [(100, 5)])
    cuts = dived(Columns(choice, [1000]), Work(100.0, lambda: False), chance, too_dear=10_000, enough=0)
    assert cuts is not None
    assert wood_spent(choice, cuts) == 200
    assert bare_area(choice, cuts) == 0


def test_dive_that_cannot_be_cheap_enough_is_given_up() -> None:
    """One and a half sticks are the least, so nothing cheaper is looked for."""
    choice = assortment([(40, 3)], [(100, 5)])
    assert dived(Columns(choice, [1000]), Work(100.0, lambda: False), None, too_dear=150, enough=0) is None


def test_dive_leaves_bare_what_no_stick_gives() -> None:
    """It ends when no pattern is of use any more."""
    choice = assortment([(60, 3)], [(100, 2)])
    cuts = dived(Columns(choice, [1000]), Work(100.0, lambda: False), None, too_dear=10_000, enough=0)
    assert cuts is not None
    assert bare_area(choice, cuts) == 60


def test_stopped_dive_keeps_what_it_has() -> None:
    """Whoever stops at once has cut nothing."""
    choice = assortment([(60, 3)], [(100, 2)])
    assert dived(Columns(choice, [1000]), Work(100.0, lambda: True), None, too_dear=10_000, enough=0) == []
