"""Whole rows of sticks: dives down the programme find them, and branch and bound chooses among them."""

import math
from collections import defaultdict
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from plankwright.layout.branching import Care, branched
from plankwright.layout.end_to_end.programme import Filling, Pool, Programme

_WHOLE = 1e-6
"""How far from a whole number the solver may leave one."""

_ROUNDS = 5
"""How often further rows are asked for after each step of a dive."""

_CARE = Care(gap=0.0, looks=200)

_ENOUGH = 2e-3
"""What is dearer than in parts by no more than this share is good enough."""

_SURE = (1.0, 0.9, 0.8, 0.7, 0.6)
"""From which use on rows are settled together in a dive, one dive after another."""


@dataclass(frozen=True, slots=True)
class Chosen:
    """What was found.

    Parameters
    ----------
    rows
        For each row of the pool, the fillings that were chosen for it, not more than there are such runs.
    spent
        Work that it took. [s]
    """

    rows: Mapping[int, tuple[Filling, ...]]
    spent: float


def best_rows(pool: Pool, *, work: float, seed: int, stopped: Callable[[], bool]) -> Chosen:
    """Fill as much as possible, then with as little wood as possible.

    Parameters
    ----------
    pool
        What is to be filled, and with what.
    work
        No dive is begun after so much. [s]
    seed
        For the solver.
    stopped
        Whether to stop.
    """
    programme = Programme(pool)
    if not pool.rows or not pool.wood:
        return Chosen({}, 0.0)
    least = programme.grow()
    best, fillings = math.inf, dict[int, list[Filling]]()
    for tries, sure in enumerate(_SURE):
        if best <= least * (1 + _ENOUGH) or programme.spent > work or stopped():
            break
        _dive(programme, stopped, sure)
        price, found = _among_known(programme, seed + tries, stopped)
        if price < best:
            best, fillings = price, found
    return Chosen({number: tuple(some) for number, some in fillings.items()}, programme.spent)


def _dive(programme: Programme, stopped: Callable[[], bool], sure: float) -> None:
    """Settle the most used row again and again, so that the programme asks for what would go with it."""
    least: dict[int, int] = {}
    while not stopped():
        values = programme.values
        used = {column: values[column] for column in programme.fillings.values()}
        parts = {column: use - math.floor(use + _WHOLE) for column, use in used.items()}
        left = sorted(
            (column for column, part in parts.items() if part > _WHOLE),
            key=lambda column: (-parts[column], column),
        )
        if not left:
            break
        for column in [column for column in left if parts[column] >= sure] or left[:1]:
            least[column] = math.floor(used[column] + _WHOLE) + 1
            programme.bound(column, least[column])
        if not math.isfinite(programme.grow(_ROUNDS)):
            break
    for column in least:
        programme.bound(column, 0)
    programme.grow()


def _among_known(
    programme: Programme, seed: int, stopped: Callable[[], bool]
) -> tuple[float, dict[int, list[Filling]]]:
    """Choose whole rows among those that are known."""
    chosen = branched(programme.model(), range(programme.columns), _CARE, seed, stopped)
    programme.spent += chosen.spent
    found: dict[int, list[Filling]] = defaultdict(list)
    for (number, filling), column in programme.fillings.items() if chosen.values else ():
        found[number] += [filling] * round(chosen.values[column])
    return chosen.price, found
