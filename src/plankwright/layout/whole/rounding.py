"""From parts of courses, ways and cuts to whole ones, by branch and bound among those that are known.

Ways are known in plenty once the programme was dived down: it asks for others as soon as some are settled.
"""

import math
from collections.abc import Callable, Mapping, Sequence
from typing import TypeVar

from plankwright.layout.branching import Care, branched
from plankwright.layout.propagating import any_whole
from plankwright.layout.whole.programme import Programme, Sawn, Track

_Key = TypeVar("_Key")

_WHOLE = 1e-6
"""How far from a whole number the solver may leave one."""

_ALMOST = 0.75
"""Ways used this much are rounded up together."""

_ROUNDS = 1
"""How often further ways and cuts are asked for after each step."""

_WAYS = Care(gap=3e-3, looks=400, without=("rens", "rins", "root_reduced_cost"))
_CUTS = Care(gap=2e-3, looks=30)

_NEARLY, _NEXT_BEST, _NEARLY_CUT = 1e-2, 10, 1e-3
"""Before ways and cuts are chosen together, so many ways along each run come in that would raise the price by
no more than this share each, and cuts that would raise it by no more than that."""

_DEAR_TOGETHER, _DEAR_WAYS, _DEAR_CUTS = 5e-3, 5e-3, 5e-2
"""Columns that would raise the price by more than these shares are left out when ways and cuts are chosen
together, and each by themselves."""


def whole_together(
    programme: Programme,
    work: float,
    seed: int,
    over: Callable[[], bool],
    *,
    bare: float = 0.0,
) -> tuple[dict[Track, int], dict[Sawn, int]] | None:
    """Choose whole ways and cuts together.

    Parameters
    ----------
    programme
        Held to whole numbers of courses; as solved, no more is bare than may be. Further ways
        and cuts come in.
    work
        How long to look. [deterministic seconds]
    seed
        For the solver.
    over
        Whether to stop.
    bare
        How much may stay bare. [square steps]

    Returns
    -------
    tuple or None
        How often each way is gone, and how many sticks are cut in each way; nothing when that was not found.
    """
    programme.widen_ways(_NEARLY, _NEXT_BEST)
    programme.grow()
    programme.widen_cuts(_NEARLY_CUT)
    programme.solve()
    stays = programme.bare_areas()
    dear = set(programme.idle(_DEAR_TOGETHER))
    found = any_whole(
        programme.model(),
        work,
        seed,
        over,
        left_out=(dear - set(stays)) if bare else (dear | set(stays)),
        limits=[(stays, math.floor(bare))] if bare else (),
    )
    programme.spent += found.spent
    if not found.values:
        return None
    return _used(programme.tracks, found.values), _used(programme.sawn, found.values)


def whole_ways(programme: Programme, seed: int, over: Callable[[], bool]) -> dict[Track, int]:
    """Choose whole ways, the wood for them still in parts.

    Parameters
    ----------
    programme
        Held to whole numbers of courses; it is left held to the ways.
    seed
        For the solver.
    over
        Whether to stop.

    Returns
    -------
    dict
        How often each way is gone; fewer than there are courses where runs are left bare or it was stopped.
    """
    dived = _dive(programme, over)
    start = programme.values
    for column in programme.tracks.values():
        programme.bound(column, 0)
    programme.grow()
    chosen = _whole(programme, programme.tracks, _WAYS, seed, over, dear=_DEAR_WAYS, start=start)
    ways = dived if chosen is None else chosen
    _hold(programme, ways)
    return ways


def dived_ways(programme: Programme, over: Callable[[], bool]) -> dict[Track, int]:
    """Choose whole ways one after another, the wood for them still in parts: soon, but much may stay bare.

    Parameters
    ----------
    programme
        Held to whole numbers of courses; it is left held to the ways.
    over
        Whether to stop.

    Returns
    -------
    dict
        How often each way is gone; fewer than there are courses where runs are left bare or it was stopped.
    """
    ways = _dive(programme, over)
    _hold(programme, ways)
    return ways


def whole_cuts(programme: Programme, seed: int, over: Callable[[], bool]) -> dict[Sawn, int]:
    """Choose whole numbers of cuts for the ways that the programme is held to.

    Parameters
    ----------
    programme
        Held to whole ways.
    seed
        For the solver.
    over
        Whether to stop.

    Returns
    -------
    dict
        How many sticks are cut in each way.
    """
    programme.grow()
    return _whole(programme, programme.sawn, _CUTS, seed, over, dear=_DEAR_CUTS) or {}


def _hold(programme: Programme, ways: Mapping[Track, int]) -> None:
    for track, column in programme.tracks.items():
        programme.bound(column, ways.get(track, 0), ways.get(track, 0))


def _dive(programme: Programme, over: Callable[[], bool]) -> dict[Track, int]:
    """Settle the ways, the most used first, with the programme solved and grown anew after each step."""
    least: dict[Track, int] = {}
    while True:
        programme.grow(_ROUNDS)
        values = programme.values
        used = {track: values[column] for track, column in programme.tracks.items()}
        parts = {track: use - math.floor(use + _WHOLE) for track, use in used.items()}
        left = [track for track, part in parts.items() if part > _WHOLE]
        if not left or over():
            return {track: math.floor(use + _WHOLE) for track, use in used.items() if use > 1 - _WHOLE}
        left.sort(key=lambda track: (parts[track], track), reverse=True)
        sure = [track for track in left if parts[track] >= _ALMOST]
        for track in sure or left[:1]:
            least[track] = math.floor(used[track] + _WHOLE) + 1
            programme.bound(programme.tracks[track], least[track])


def _whole(
    programme: Programme,
    columns: Mapping[_Key, int],
    care: Care,
    seed: int,
    over: Callable[[], bool],
    *,
    dear: float = math.inf,
    start: Sequence[float] = (),
) -> dict[_Key, int] | None:
    """Find whole values of some columns, those too dear left out; nothing when none were found."""
    used = {column for column, value in enumerate(start) if value > _WHOLE} | set(programme.bare_areas())
    padded = [*start, *[0.0] * (programme.columns - len(start))] if start else ()
    found = branched(
        programme.model(),
        columns.values(),
        care,
        seed,
        over,
        left_out=[column for column in programme.idle(dear) if column not in used],
        start=padded,
    )
    programme.spent += found.spent
    return _used(columns, found.values) if found.values else None


def _used(columns: Mapping[_Key, int], values: Sequence[float]) -> dict[_Key, int]:
    """Give how often columns are used, those that are."""
    return {key: round(values[column]) for key, column in columns.items() if values[column] > 1 / 2}
