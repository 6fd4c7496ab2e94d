"""From parts of ways and cuts to whole ones: ways by diving down the programme, cuts by branch and bound."""

import math
from collections.abc import Callable

import highspy
import numpy as np

from plankwright.layout.silent import SilentHighs
from plankwright.layout.whole.programme import Programme, Sawn, Track

_WHOLE = 1e-6
"""How far from a whole number the solver may leave one."""

_ALMOST = 0.75
"""Ways used this much are rounded up together."""

_ROUNDS = 1
"""How often further ways and cuts are asked for after each step."""

_CHOICES = 2
"""So many ways are looked at for each step."""

_LITTLE = 0.02
"""A step that costs no more than this share of a middling stick is taken at once."""

_LOOKS = 60
"""How often the whole-number search looks up before it is ended."""

_LOOK_WORK = 0.1
"""Seconds of a common machine from one look up to the next, as measured once."""

_GAP = 2e-3
"""Cuts that are dearer than the best by no more than this share are good enough."""

_SAFETY_S = 60.0
"""A whole-number search that hangs is ended after so long; looks end it in any normal case. [s]"""


def whole_ways(programme: Programme, over: Callable[[], bool]) -> dict[Track, int]:
    """Round the ways, the most used first, with the programme solved and grown anew after each step.

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
    least: dict[Track, int] = {}
    little = _LITTLE * programme.question.wood_area / programme.unit / max(1, len(programme.question.sticks))
    while True:
        price = programme.grow(_ROUNDS)
        values = programme.values
        used = {track: values[column] for track, column in programme.tracks.items()}
        parts = {track: use - math.floor(use + _WHOLE) for track, use in used.items()}
        left = [track for track, part in parts.items() if part > _WHOLE]
        if not left or over():
            whole = {track: math.floor(use + _WHOLE) for track, use in used.items() if use > 1 - _WHOLE}
            for track, column in programme.tracks.items():
                programme.bound(column, whole.get(track, 0), whole.get(track, 0))
            return whole
        left.sort(key=lambda track: (parts[track], track), reverse=True)
        sure = [track for track in left if parts[track] >= _ALMOST]
        steps = [sure, *([track] for track in left[:_CHOICES])]
        prices: list[tuple[float, list[Track]]] = []
        for step in filter(None, steps):
            for track in step:
                programme.bound(programme.tracks[track], math.floor(used[track] + _WHOLE) + 1)
            prices.append((programme.solve(), step))
            for track in step:
                programme.bound(programme.tracks[track], least.get(track, 0))
            if prices[-1][0] <= price + little:
                break
        for track in min(prices, key=lambda tried: tried[0])[1]:
            least[track] = math.floor(used[track] + _WHOLE) + 1
            programme.bound(programme.tracks[track], least[track])


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
    columns = np.array(list(programme.sawn.values()), dtype=np.int32)
    solver = SilentHighs()
    solver.passModel(programme.model())
    whole = np.full(len(columns), int(highspy.HighsVarType.kInteger), dtype=np.uint8)
    solver.changeColsIntegrality(len(columns), columns, whole)
    for option, value in (
        ("threads", 1),
        ("output_flag", False),
        ("mip_rel_gap", _GAP),
        ("random_seed", seed % 2**31),
        ("time_limit", _SAFETY_S),
    ):
        solver.setOptionValue(option, value)
    looks = 0

    def watch(event: highspy.highs.HighsCallbackEvent) -> None:
        nonlocal looks
        looks += 1
        if looks > _LOOKS or over():
            event.interrupt()

    solver.cbMipInterrupt += watch
    solver.run()
    programme.spent += _LOOK_WORK * looks
    if solver.getInfo().primal_solution_status != int(highspy.SolutionStatus.kSolutionStatusFeasible):
        return {}
    values = list(solver.getSolution().col_value)
    return {sawn: round(values[column]) for sawn, column in programme.sawn.items() if values[column] > 1 / 2}
