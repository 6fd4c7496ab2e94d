"""Sticks dealt out by the value of pieces."""

import random
from collections import Counter

import pytest

from plankwright.layout.packing.columns import Cut
from plankwright.layout.packing.effort import Work
from plankwright.layout.packing.kinds import Assortment, NeedKind, StickKind
from plankwright.layout.packing.values import Values


def choice(*sticks: StickKind) -> Assortment:
    """Give two pieces of 4 and four of 3, which fill two sticks of 10."""
    needs = [NeedKind(3, 1, hidden=False, count=4), NeedKind(4, 1, hidden=False, count=2)]
    return Assortment(needs, sticks, kerf=0, tolerance=0)


def plenty() -> Work:
    """Give more work than is needed."""
    return Work(10.0, lambda: False)


def values(assortment: Assortment, seed: int = 1) -> Values:
    """Give fresh values."""
    return Values(assortment, random.Random(seed))  # noqa: S311 - chance, not secrecy


def cut_out(cuts: list[Cut] | None) -> Counter[int]:
    """Count the pieces of each kind."""
    assert cuts is not None
    return Counter({need: sum(dict(cut.pattern).get(need, 0) for cut in cuts) for need in (0, 1)})


@pytest.mark.parametrize("seed", range(5))
def test_sticks_are_filled_without_waste(seed: int) -> None:
    """Best fit takes both pieces of 4 first and needs a third stick; values need two."""
    cuts = values(choice(StickKind(10, 1, hidden_only=False, count=3)), seed).deal([4, 2], [3], plenty())
    assert cut_out(cuts) == Counter({0: 4, 1: 2})
    assert cuts is not None
    assert len(cuts) == 2


def test_cheapest_stick_takes_the_rest() -> None:
    """What is left fits a stick of 7 as well as one of 10."""
    sticks = [StickKind(10, 1, hidden_only=False, count=3), StickKind(7, 1, hidden_only=False, count=1)]
    cuts = values(choice(*sticks)).deal([1, 1], [3, 1], plenty())
    assert cuts == [Cut(1, ((0, 1), (1, 1)), 1)]


def test_dealing_that_becomes_too_dear_is_given_up() -> None:
    """Two sticks cost 20, which is not less than 20."""
    dealing = values(choice(StickKind(10, 1, hidden_only=False, count=3)))
    assert dealing.deal([4, 2], [3], plenty(), too_dear=20) is None
    assert dealing.deal([4, 2], [3], plenty(), too_dear=21) is not None


def test_what_no_stick_gives_is_left() -> None:
    """One stick gives ten of the twenty that are asked for."""
    cuts = values(choice(StickKind(10, 1, hidden_only=False, count=1))).deal([4, 2], [1], plenty())
    assert cut_out(cuts) == Counter({0: 2, 1: 1})
