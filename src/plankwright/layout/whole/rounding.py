"""From parts of ways and cuts to whole ones: ways by diving down the programme, cuts by branch and bound."""

import math
from collections.abc import Callable, Collection, Sequence

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

_LOOKS = 30
"""How often the whole-number search looks up before it is ended."""

_LOOKS_AT_COUNTS = 40
"""The same where the numbers of courses are sought."""

_LOOK_WORK = 3e-5
"""Seconds of a common machine for each column from one look up to the next, as measured once."""

_GAP = 2e-3
"""Cuts that are dearer than the best by no more than this share are good enough."""

_GAP_OF_COUNTS = 2e-2
"""The same for numbers of courses."""

_DEAR = (3e-3, 3e-2)
"""Columns that would raise the price by more than these shares are left out where numbers of courses are
sought, first by the one, and by the other where that leaves too few."""

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
    while True:
        programme.grow(_ROUNDS)
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
        for track in sure or left[:1]:
            least[track] = math.floor(used[track] + _WHOLE) + 1
            programme.bound(programme.tracks[track], least[track])


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
    for share in _DEAR:
        search = _Search(programme, programme.counts.values(), programme.idle(share), _GAP_OF_COUNTS)
        values = search.run(_LOOKS_AT_COUNTS, seed, over)
        if values is not None:
            break
    else:
        return None
    counts = {kind: round(values[column]) for kind, column in programme.counts.items()}
    return {kind: count for kind, count in counts.items() if count}


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
    values = _Search(programme, programme.sawn.values(), (), _GAP).run(_LOOKS, seed, over)
    if values is None:
        return {}
    return {sawn: round(values[column]) for sawn, column in programme.sawn.items() if values[column] > 1 / 2}


class _Search:
    """Branch and bound on a programme, of which some columns must be whole and others are left out."""

    def __init__(self, programme: Programme, whole: Collection[int], out: Sequence[int], gap: float) -> None:
        self.programme, self.solver = programme, SilentHighs()
        self.solver.passModel(programme.model())
        columns = np.array(list(whole), dtype=np.int32)
        kinds = np.full(len(columns), int(highspy.HighsVarType.kInteger), dtype=np.uint8)
        self.solver.changeColsIntegrality(len(columns), columns, kinds)
        for column in out:
            self.solver.changeColBounds(column, 0.0, 0.0)
        for option, value in (
            ("threads", 1),
            ("output_flag", False),
            ("mip_rel_gap", gap),
            ("time_limit", _SAFETY_S),
        ):
            self.solver.setOptionValue(option, value)

    def run(self, most: int, seed: int, over: Callable[[], bool]) -> Sequence[float] | None:
        """Search for so many looks at the most; give the value of each column, if any were found."""
        self.solver.setOptionValue("random_seed", seed % 2**31)
        looks = 0

        def watch(event: highspy.highs.HighsCallbackEvent) -> None:
            nonlocal looks
            looks += 1
            if looks > most or over():
                event.interrupt()

        self.solver.cbMipInterrupt += watch
        self.solver.run()
        self.programme.spent += _LOOK_WORK * self.programme.columns * looks
        found = self.solver.getInfo().primal_solution_status
        if found != int(highspy.SolutionStatus.kSolutionStatusFeasible):
            return None
        return tuple(self.solver.getSolution().col_value)
