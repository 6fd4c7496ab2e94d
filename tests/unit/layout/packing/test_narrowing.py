"""All patterns that a solution of some cost can use, and the choice among them."""

from itertools import product

import pytest

from plankwright.layout.packing import narrowing
from plankwright.layout.packing.columns import SCALE, Columns
from plankwright.layout.packing.effort import Work
from plankwright.layout.packing.kinds import Assortment, NeedKind, Pattern, StickKind
from plankwright.layout.packing.narrowing import can_narrow, chosen, narrowed

LENGTHS = {44: 2, 24: 3, 22: 4, 21: 1, 17: 3, 8: 2}


def programme(sticks: int = 9, kept_from: int | None = None) -> Columns:
    """Give a small programme, its bound proven as well as prices can."""
    needs = [NeedKind(length, 1, hidden=False, count=count) for length, count in LENGTHS.items()]
    kinds = [StickKind(100, 1, hidden_only=False, count=sticks, kept_from=kept_from)]
    columns = Columns(Assortment(needs, kinds, kerf=0, tolerance=0), [10_000] * len(needs))
    columns.generate([need.count for need in needs], [sticks], plenty())
    return columns


def plenty() -> Work:
    """Give more work than is needed."""
    return Work(100.0, lambda: False)


@pytest.mark.parametrize("cost", [300, 400, 500])
def test_every_pattern_near_enough_is_listed_and_no_other(cost: int) -> None:
    """Trying all patterns gives the same list."""
    columns = programme()
    counts = [need.count for need in columns.assortment.needs]
    gap = cost * SCALE // columns.unit + 1 - columns.proof.scaled
    expected: set[Pattern] = set()
    for taken in product(*(range(count + 1) for count in counts)):
        pattern = tuple((need, count) for need, count in enumerate(taken) if count)
        worth = sum(columns.proof.prices[need] * count for need, count in pattern)
        room = columns.assortment.room_left(0, pattern)
        if pattern and room >= 0 and SCALE + columns.proof.rents[0] - worth <= gap:
            expected.add(pattern)
    found = narrowed(columns, cost, plenty())
    assert found is not None
    assert len(found) == len(set(found))
    assert {pattern for _, pattern in found} == expected


def test_choice_serves_every_need_just_once() -> None:
    """Four sticks are enough, and the pieces that they give are those asked for."""
    columns = programme()
    patterns = narrowed(columns, 400, plenty())
    assert patterns is not None
    cuts = chosen(columns, patterns, 400, 1, plenty())
    assert cuts
    assert sum(cut.count for cut in cuts) == 4
    for need, kind in enumerate(columns.assortment.needs):
        assert sum(dict(cut.pattern).get(need, 0) * cut.count for cut in cuts) == kind.count


def test_that_there_is_no_choice_is_told_apart_from_not_knowing() -> None:
    """Three sticks hold no more than 300 of 326; a search that may not begin settles nothing."""
    columns = programme()
    patterns = narrowed(columns, 400, plenty())
    assert patterns is not None
    assert chosen(columns, patterns, 300, 1, plenty()) == []
    assert chosen(columns, [], 300, 1, plenty()) == []


def test_too_many_patterns_are_not_listed(monkeypatch: pytest.MonkeyPatch) -> None:
    """Nor is it gone on with when listing takes too many steps, or no work is left."""
    columns = programme()
    assert narrowed(columns, 500, Work(0.0, lambda: False)) is None
    monkeypatch.setattr(narrowing, "_MOST_PATTERNS", 3)
    assert narrowed(columns, 500, plenty()) is None
    monkeypatch.setattr(narrowing, "_MOST_PATTERNS", 10**6)
    monkeypatch.setattr(narrowing, "_MOST_STEPS", 3)
    assert narrowed(columns, 500, plenty()) is None


def test_where_part_of_a_stick_is_kept_patterns_cannot_be_listed() -> None:
    """Their cost depends on what is left then."""
    assert can_narrow(programme())
    assert not can_narrow(programme(kept_from=20))
