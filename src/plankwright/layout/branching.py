"""Whole numbers in a linear programme, by branch and bound that is ended by looks and not by the clock."""

import math
from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass

import highspy
import numpy as np

from plankwright.layout.silent import SilentHighs

_STEP_WORK, _STEP_COLUMN_WORK = 6e-5, 7e-9
"""Seconds of a common machine that a step of the solver takes, and besides for each column, as measured
once."""

_LOOK_WORK, _WORKING_LOOKS = 2.5e-6, 50
"""Seconds of a common machine for each column that go between two looks, as measured once; after so many
looks little goes between them."""

_NEARLY_WHOLE = 1e-5
"""A number that is off by more is not whole."""

_SAFETY_S = 180.0
"""A search that hangs is ended after so long; looks end it in any normal case. [s]"""


@dataclass(frozen=True, slots=True)
class Care:
    """How carefully whole numbers are sought.

    Parameters
    ----------
    gap
        What is dearer than the best by no more than this share is good enough.
    looks
        How often the search looks up before it is ended.
    without
        Which of the solver's own small searches are left out, where they take long and find little.
    """

    gap: float
    looks: int
    without: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Branched:
    """What was found.

    Parameters
    ----------
    values
        Of each column; none when no whole ones were found.
    price
        What they cost; infinite when none were found.
    spent
        Work that it took. [s]
    """

    values: Sequence[float]
    price: float
    spent: float


def branched(
    programme: highspy.HighsLp,
    whole: Collection[int],
    care: Care,
    seed: int,
    over: Callable[[], bool],
    *,
    left_out: Collection[int] = (),
    start: Sequence[float] = (),
) -> Branched:
    """Find values of which some are whole.

    Parameters
    ----------
    programme
        As the solver has it.
    whole
        Columns that must be whole.
    care
        How carefully.
    seed
        For the solver.
    over
        Whether to stop.
    left_out
        Columns that are not used.
    start
        Values of the columns to start with, if there are such.
    """
    solver = SilentHighs()
    solver.passModel(programme)
    columns = np.array(list(whole), dtype=np.int32)
    kinds = np.full(len(columns), int(highspy.HighsVarType.kInteger), dtype=np.uint8)
    solver.changeColsIntegrality(len(columns), columns, kinds)
    for column in left_out:
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
        solution.col_value = list(start)
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
    a_step = _STEP_WORK + _STEP_COLUMN_WORK * programme.num_col_
    a_look = _LOOK_WORK * programme.num_col_
    spent = a_step * max(0, info.simplex_iteration_count) + a_look * min(looks, _WORKING_LOOKS)
    feasible = info.primal_solution_status == int(highspy.SolutionStatus.kSolutionStatusFeasible)
    # A search that is ended may leave the last solution in parts.
    if not feasible or info.max_integrality_violation > _NEARLY_WHOLE:
        return Branched((), math.inf, spent)
    return Branched(tuple(solver.getSolution().col_value), float(info.objective_function_value), spent)
