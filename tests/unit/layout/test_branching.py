"""Whole numbers of a small programme: the best, none, from a start, and none once it was stopped."""

import math

import highspy
import pytest

from plankwright.layout.branching import Care, branched
from plankwright.layout.silent import SilentHighs

_CARE = Care(gap=0.0, looks=100)


def _knapsack(room: float, least: float = 0.0) -> highspy.HighsLp:
    """Three things worth 5, 4 and 3, of size 2, 3 and 1, into so much room; each at most once."""
    solver = SilentHighs()
    solver.addRow(least, room, 0, [], [])
    for worth, size in ((5.0, 2.0), (4.0, 3.0), (3.0, 1.0)):
        solver.addCol(-worth, 0.0, 1.0, 1, [0], [size])
    return solver.getLp()


def test_the_best_whole_numbers_are_found() -> None:
    """Of size 5 the first two are best, worth 9; in parts all three nearly fit."""
    found = branched(_knapsack(5), range(3), _CARE, 0, lambda: False)
    assert found.price == pytest.approx(-9)
    assert [round(value) for value in found.values] == [1, 1, 0]


def test_columns_that_are_left_out_are_not_used() -> None:
    """Without the second the first and third are left, worth 8."""
    found = branched(_knapsack(5), range(3), _CARE, 0, lambda: False, left_out=[1])
    assert found.price == pytest.approx(-8)


def test_a_start_is_no_limit() -> None:
    """From the third alone the best is found as well."""
    found = branched(_knapsack(5), range(3), _CARE, 0, lambda: False, start=[0.0, 0.0, 1.0])
    assert found.price == pytest.approx(-9)


def test_where_there_are_none_none_are_given() -> None:
    """Sizes of 2, 3 and 1 never add up to what lies between 6.2 and 6.8."""
    found = branched(_knapsack(6.8, 6.2), range(3), _CARE, 0, lambda: False)
    assert (found.values, found.price) == ((), math.inf)
