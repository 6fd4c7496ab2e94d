"""Whole numbers in a linear programme, any that will do, by CP-SAT with the programme beside it.

Where the question is one of yes or no, propagation settles in a second or two much that branch and bound does
not settle in several; where the best is sought, branch and bound is used.
"""

import math
from collections.abc import Callable, Collection, Mapping, Sequence

import highspy
import numpy as np
from ortools.sat.python import cp_model

from plankwright.layout.branching import Branched
from plankwright.layout.solving import SECOND, solver_for, stopping

_PARTS = 100
"""Prices are told to so many parts of a unit."""

_MOST = 1000
"""No column is used more often."""

_ROW_WORK = 2e-5
"""Work to write one number of the programme down: a guess on the high side, not measured. [s]"""

_WHOLE = 1e-6


def any_whole(
    programme: highspy.HighsLp,
    work: float,
    seed: int,
    over: Callable[[], bool],
    *,
    left_out: Collection[int] = (),
    limits: Sequence[tuple[Mapping[int, int], int]] = (),
) -> Branched:
    """Find whole values of all columns, cheap rather than dear but not the cheapest.

    Parameters
    ----------
    programme
        As the other solver has it. Its rows have whole entries, and no column is below zero.
    work
        How long to look. [deterministic seconds]
    seed
        For the solver.
    over
        Whether to stop.
    left_out
        Columns that are not used.
    limits
        Further rows: what columns weigh, and how much they may weigh together.

    Raises
    ------
    ValueError
        If a row has an entry in parts: our fault.
    """
    model, columns, size = _model(programme, left_out, limits)
    solver = solver_for(work, seed % 2**31)
    # Columns are many and alike: what presolve probes for is found sooner by the search itself.
    solver.parameters.symmetry_level = 0
    solver.parameters.cp_model_probing_level = 0
    # The programme in parts says where to look; without it next to nothing is found.
    solver.parameters.linearization_level = 2
    solver.parameters.stop_after_first_solution = True
    with stopping(solver, over):
        status = solver.solve(model)
    if status == cp_model.MODEL_INVALID:
        raise ValueError(model.validate())
    spent = _ROW_WORK * size + SECOND * solver.response_proto.deterministic_time
    if status not in {cp_model.OPTIMAL, cp_model.FEASIBLE}:
        return Branched((), math.inf, spent)
    values = [0.0] * programme.num_col_
    for number, column in columns.items():
        values[number] = float(solver.value(column))
    return Branched(tuple(values), solver.objective_value / _PARTS + programme.offset_, spent)


def _model(
    programme: highspy.HighsLp,
    left_out: Collection[int],
    limits: Sequence[tuple[Mapping[int, int], int]],
) -> tuple[cp_model.CpModel, dict[int, cp_model.IntVar], int]:
    """Write the programme down; give the columns that may be used, and how many numbers there are."""
    model, out = cp_model.CpModel(), set(left_out)
    columns = {
        number: model.new_int_var(int(np.ceil(least - _WHOLE)), int(min(most, _MOST)), "")
        for number, (least, most) in enumerate(zip(programme.col_lower_, programme.col_upper_, strict=True))
        if number not in out
    }
    entries = _entries(programme)
    for row, numbers in entries.items():
        used = [(columns[number], value) for number, value in numbers if number in columns]
        least, most = programme.row_lower_[row], programme.row_upper_[row]
        if used and (np.isfinite(least) or np.isfinite(most)):
            model.add_linear_constraint(
                cp_model.LinearExpr.weighted_sum(
                    [column for column, _ in used], [value for _, value in used]
                ),
                int(np.ceil(least - _WHOLE)) if np.isfinite(least) else cp_model.INT32_MIN,
                int(np.floor(most + _WHOLE)) if np.isfinite(most) else cp_model.INT32_MAX,
            )
    for weights, most in limits:
        used = [(columns[number], weight) for number, weight in weights.items() if number in columns]
        model.add(
            cp_model.LinearExpr.weighted_sum([column for column, _ in used], [value for _, value in used])
            <= most
        )
    model.minimize(
        cp_model.LinearExpr.weighted_sum(
            list(columns.values()), [round(_PARTS * programme.col_cost_[number]) for number in columns]
        )
    )
    return model, columns, sum(map(len, entries.values()))


def _entries(programme: highspy.HighsLp) -> dict[int, list[tuple[int, int]]]:
    """Give for each row the columns in it, each with its entry."""
    matrix = programme.a_matrix_
    starts, others = np.array(matrix.start_), np.array(matrix.index_)
    values = np.array(matrix.value_)
    whole = np.rint(values).astype(np.int64)
    if np.abs(values - whole).max(initial=0.0) > _WHOLE:
        raise ValueError("a row has an entry in parts")
    own = np.repeat(np.arange(len(starts) - 1), np.diff(starts))
    by_column = matrix.format_ == highspy.MatrixFormat.kColwise
    rows, numbers = (others, own) if by_column else (own, others)
    entries: dict[int, list[tuple[int, int]]] = {row: [] for row in range(programme.num_row_)}
    for row, number, value in zip(rows.tolist(), numbers.tolist(), whole.tolist(), strict=True):
        entries[row].append((number, value))
    return entries
