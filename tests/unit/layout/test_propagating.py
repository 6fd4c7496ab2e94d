"""Any whole numbers of a small programme that will do, and none where there are none."""

import itertools
import math

import highspy
import numpy as np
import pytest

from plankwright.layout.branching import Care, branched
from plankwright.layout.propagating import any_whole
from plankwright.layout.silent import SilentHighs


def _cover(least: float, entries: tuple[float, ...] = (3.0, 5.0, 7.0), most: float = 4.0) -> highspy.HighsLp:
    """Things of these sizes, each a few times, that make up just so much; the larger are the dearer."""
    solver = SilentHighs()
    solver.addRow(least, least, 0, np.empty(0, np.int32), np.empty(0))
    for size in entries:
        solver.addCol(size - 1.0, 0.0, most, 1, np.array([0], np.int32), np.array([size]))
    return solver.getLp()


def _never() -> bool:
    return False


@pytest.mark.parametrize("least", range(1, 40))
def test_there_are_whole_numbers_where_every_choice_looked_at_finds_some(least: int) -> None:
    """Against all of 125 choices, one by one."""
    possible = any(3 * a + 5 * b + 7 * c == least for a, b, c in itertools.product(range(5), repeat=3))
    found = any_whole(_cover(least), 1.0, 0, _never)
    assert bool(found.values) == possible
    assert math.isfinite(found.price) == possible
    if possible:
        assert sum(size * value for size, value in zip((3, 5, 7), found.values, strict=True)) == least
        best = branched(_cover(least), range(3), Care(gap=0.0, looks=1000), 0, _never)
        assert found.price >= best.price - 1e-6


def test_columns_that_are_left_out_are_not_used() -> None:
    """Ten is two fives or a three and a seven."""
    assert any_whole(_cover(10), 1.0, 0, _never, left_out=[1]).values == (1.0, 0.0, 1.0)


@pytest.mark.parametrize(("most", "possible"), [(2, True), (1, False)])
def test_further_rows_hold(most: int, possible: bool) -> None:  # noqa: FBT001 - of a table
    """Ten takes two things at the least."""
    found = any_whole(_cover(10), 1.0, 0, _never, limits=[({0: 1, 1: 1, 2: 1}, most)])
    assert bool(found.values) == possible


def test_an_entry_in_parts_is_refused() -> None:
    """It would be told wrongly."""
    with pytest.raises(ValueError, match="in parts"):
        any_whole(_cover(10, (2.5, 5.0, 7.0)), 1.0, 0, _never)


def test_it_is_counted_as_work() -> None:
    """The more there is to write down, the more."""
    small, large = (any_whole(_cover(10, (3.0, 7.0) * times), 1.0, 0, _never) for times in (1, 200))
    assert 0 < small.spent < large.spent
