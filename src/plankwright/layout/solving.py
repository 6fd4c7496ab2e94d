"""CP-SAT as all that use it do: the same answer on every machine, and ended when somebody wants no more."""

import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager

from ortools.sat.python import cp_model

SECOND = 1.5
"""Seconds of a common machine for each deterministic second of the solver, as measured once."""

_ASKED_EVERY_S = 0.1
"""How often whoever watches is asked. [s]"""


def solver_for(work: float, seed: int) -> cp_model.CpSolver:
    """Give a solver that always gives the same answer.

    Parameters
    ----------
    work
        How much to do at most. [deterministic seconds]
    seed
        For its choices.
    """
    solver = cp_model.CpSolver()
    solver.parameters.max_deterministic_time = work
    solver.parameters.random_seed = seed
    # Several workers race each other, and who wins depends on the machine; one always gives the same answer.
    solver.parameters.num_workers = 1
    # The solver's own handler ends the process when Ctrl-C comes; ours asks whoever watches to stop.
    solver.parameters.catch_sigint_signal = False
    return solver


@contextmanager
def stopping(solver: cp_model.CpSolver, stopped: Callable[[], bool]) -> Iterator[None]:
    """Ask from beside a running solver whether somebody wants it to stop, since it calls nobody for long."""
    over = threading.Event()

    def ask() -> None:
        while not over.wait(_ASKED_EVERY_S):
            if stopped():
                solver.stop_search()

    asking = threading.Thread(target=ask, daemon=True)
    asking.start()
    try:
        yield
    finally:
        over.set()
        asking.join()
