"""From parts of courses, ways and cuts to whole ones, by branch and bound among those that are known.

Ways are known in plenty once the programme was dived down: it asks for others as soon as some are settled.
"""

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import TypeVar

import highspy
import numpy as np

from plankwright.layout.silent import SilentHighs
from plankwright.layout.whole.programme import Programme, Sawn, Track

_Key = TypeVar("_Key")

_WHOLE = 1e-6
"""How far from a whole number the solver may leave one."""

_ALMOST = 0.75
"""Ways used this much are rounded up together."""

_ROUNDS = 1
"""How often further ways and cuts are asked for after each step."""

_STEP_WORK = 1.2e-8
"""Seconds of a common machine that a step of the solver takes for each column, as measured once."""

_SAFETY_S = 60.0
"""A search that hangs is ended after so long; looks end it in any normal case. [s]"""


@dataclass(frozen=True, slots=True)
class _Care:
    """How carefully whole numbers are sought.

    Parameters
    ----------
    gap
        What is dearer than the best by no more than this share is good enough.
    looks
        How often the search looks up before it is ended.
    dear
        Columns that would raise the price by more than this share are left out.
    without
        Which of the solver's own small searches are left out, as they take long here and find little.
    """

    gap: float
    looks: int
    dear: float = math.inf
    without: tuple[str, ...] = ()


_COUNTS = (
    _Care(gap=0.03, looks=40, dear=3e-3, without=("rens",)),
    _Care(gap=0.03, looks=40, dear=3e-2, without=("rens",)),
)
"""Numbers of courses; the second where the first finds none."""

_WAYS = _Care(gap=3e-3, looks=400, dear=5e-3, without=("rens", "rins", "root_reduced_cost"))
_CUTS = _Care(gap=2e-3, looks=30)


def whole_counts(programme: Programme, seed: int, over: Callable[[], bool]) -> dict[int, int] | None:
    """Choose whole numbers of courses, as well as the ways and cuts known so far tell.

    Parameters
    ----------
    programme
        That counts its courses, as solved.
    seed
        For the solver.
    over
        Whether to stop.

    Returns
    -------
    dict or None
        How many courses there are of each kind; nothing when none were found.
    """
    for care in _COUNTS:
        counts = _whole(programme, programme.counts, care, seed, over)
        if counts is not None:
            return counts
    return None


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
    chosen = _whole(programme, programme.tracks, _WAYS, seed, over, start)
    ways = dived if chosen is None else chosen
    for track, column in programme.tracks.items():
        programme.bound(column, ways.get(track, 0), ways.get(track, 0))
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
    return _whole(programme, programme.sawn, _CUTS, seed, over) or {}


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
    care: _Care,
    seed: int,
    over: Callable[[], bool],
    start: Sequence[float] = (),
) -> dict[_Key, int] | None:
    """Find values of which some are whole by branch and bound, from some to start with if there are such.

    Nothing when none were found.
    """
    solver = SilentHighs()
    solver.passModel(programme.model())
    whole = np.array(list(columns.values()), dtype=np.int32)
    solver.changeColsIntegrality(
        len(whole), whole, np.full(len(whole), int(highspy.HighsVarType.kInteger), dtype=np.uint8)
    )
    used = {column for column, value in enumerate(start) if value > _WHOLE}
    for column in programme.idle(care.dear):
        if column not in used:
            solver.changeColBounds(column, 0.0, 0.0)
    for option, value in (
        ("threads", 1),
        ("output_flag", False),
        ("mip_rel_gap", care.gap),
        ("random_seed", seed % 2**31),
        ("time_limit", _SAFETY_S),
        *((f"mip_heuristic_run_{search}", False) for search in care.without),
    ):
        solver.setOptionValue(option, value)
    if start:
        solution = highspy.HighsSolution()
        solution.col_value = [*start, *[0.0] * (programme.columns - len(start))]
        solver.setSolution(solution)
    looks = 0

    def watch(event: highspy.highs.HighsCallbackEvent) -> None:
        nonlocal looks
        looks += 1
        if looks > care.looks or over():
            event.interrupt()

    solver.cbMipInterrupt += watch
    solver.run()
    info = solver.getInfo()
    programme.spent += _STEP_WORK * programme.columns * max(0, info.simplex_iteration_count)
    if info.primal_solution_status != int(highspy.SolutionStatus.kSolutionStatusFeasible):
        return None
    values = solver.getSolution().col_value
    return {key: round(values[column]) for key, column in columns.items() if values[column] > 1 / 2}
