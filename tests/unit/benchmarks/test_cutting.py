"""Lists whose optimum is known, and whether it is reached."""

import pytest

from benchmarks.cutting_lists import ToCut, ToJoin
from benchmarks.families import cutting
from benchmarks.family import Row
from benchmarks.questions.cutting import figures, measure
from plankwright.layout import Effort


@pytest.mark.parametrize("seed", range(9))
def test_what_was_cut_up_is_the_optimum(seed: int) -> None:
    """The pieces add up to just that much board, so nothing less can do, and no more can be reached."""
    case = cutting.instance(seed)
    assert case == cutting.instance(seed)
    assert case.optimum
    if isinstance(case, ToJoin):
        assert sum(case.pieces) == case.optimum * case.length
    else:
        per_unit = {stock.cost * 1000 // stock.length for stock in case.stock}
        assert len(per_unit) == 1
        assert sum(case.pieces) * per_unit.pop() == case.optimum * 1000


@pytest.mark.parametrize("seed", range(3))
def test_the_optimum_is_reached_and_proven(seed: int) -> None:
    """One list of each kind, through the whole search and the checker."""
    case = cutting.instance(seed)
    row = measure(case, Effort(name="test", seconds=10.0))
    assert row["best"] == row["bound"] == case.optimum
    assert not row["faults"]


def test_first_fit_is_told_where_boards_are_equal() -> None:
    """It is no better than the optimum, and unknown elsewhere."""
    told = [
        measure(case, Effort(name="test", seconds=0.1))["first_fit"]
        for case in map(cutting.instance, range(2))
    ]
    case = cutting.instance(0)
    assert isinstance(case, ToCut)
    assert told[0] >= case.optimum
    assert told[1] is None


def _row(*, reached: bool, proven: bool, first_fit: int | None = None) -> Row:
    return {"reached": reached, "proven": proven, "first_fit": first_fit, "optimum": 20, "time_s": 1.0}


def test_figures_count_what_was_reached_and_what_was_proven() -> None:
    """49 of 50 are enough to be reached, 45 to be proven; one fewer is not."""
    rows = [_row(reached=place != 0, proven=place >= 5, first_fit=20 + place % 2) for place in range(50)]
    reached, proven, _ = figures(rows, {})
    assert (reached.met, proven.met) == (True, True)
    assert reached.value.startswith("49 of 50")
    assert reached.baselines["by eye"].startswith("25 of 50")
    rows = [_row(reached=place > 1, proven=place > 5) for place in range(50)]
    reached, proven, _ = figures(rows, {})
    assert (reached.met, proven.met) == (False, False)
