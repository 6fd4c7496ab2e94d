"""The linear solver, quiet, on one thread, and ended by deterministic work."""

import highspy

from plankwright.layout.packing.effort import Work
from plankwright.layout.silent import SilentHighs

_NOTHING = 1e-9
"""Reduced costs below this are none."""

_ROOT_WORK, _BRANCH_WORK = (4e-3, 6e-7), (1.5e-3, 6e-8)
"""What goes by between two times that a whole-number search looks up, before it branches and after: so much,
and so much for each row squared, about. [s]"""

_NEARLY_WHOLE = 1e-5
"""A number that is off by more is not whole."""

_SAFETY_S = 300.0
"""A whole-number search that hangs is ended after so long; work ends it in any normal case. [s]"""


def quiet_solver() -> highspy.Highs:
    """Make a solver that says nothing."""
    solver = SilentHighs()
    solver.setOptionValue("threads", 1)
    solver.setOptionValue("dual_feasibility_tolerance", _NOTHING)
    return solver


def run_solver(solver: highspy.Highs) -> None:
    """Let the solver work.

    Raises
    ------
    RuntimeError
        If it cannot read what we hand it, which is our fault.
    """
    if solver.run() is highspy.HighsStatus.kError:
        raise RuntimeError(f"the solver gave up: {solver.modelStatusToString(solver.getModelStatus())}")


def whole_numbers(solver: highspy.Highs, seed: int, work: Work, *, gap: float = 1e-6) -> list[float]:
    """Solve a model with whole numbers.

    Parameters
    ----------
    solver
        Holds the model.
    seed
        For the solver.
    work
        May be used up.
    gap
        The best is not told from what is better by less.

    Returns
    -------
    list of float
        The values found; none when none were.
    """
    spent = 0.0
    root, branch = (least + more * solver.getNumRow() ** 2 for least, more in (_ROOT_WORK, _BRANCH_WORK))

    def watch(event: highspy.highs.HighsCallbackEvent) -> None:
        nonlocal spent
        spent += root if event.data_out.mip_node_count <= 1 else branch
        if spent > work.left or work.stopped():
            event.interrupt()

    for option, value in (
        ("mip_rel_gap", 0.0),
        ("mip_abs_gap", gap),
        ("random_seed", seed % 2**31),
        ("time_limit", _SAFETY_S),
    ):
        solver.setOptionValue(option, value)
    solver.cbMipInterrupt += watch
    run_solver(solver)
    work.spend(spent)
    info = solver.getInfo()
    feasible = info.primal_solution_status == int(highspy.SolutionStatus.kSolutionStatusFeasible)
    # A search that is ended may leave the last solution in parts.
    if not feasible or info.max_integrality_violation > _NEARLY_WHOLE:
        return []
    return list(solver.getSolution().col_value)


def proved_impossible(solver: highspy.Highs) -> bool:
    """Say whether the solver found that no solution exists, as far as its arithmetic goes."""
    return bool(solver.getModelStatus() == highspy.HighsModelStatus.kInfeasible)
