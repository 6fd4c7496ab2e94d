"""The question put to the solver, and its answer."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from ortools.sat.python import cp_model

from plankwright.layout.choose.covering import cover_runs
from plankwright.layout.choose.heights import stack_courses
from plankwright.layout.choose.hint import hint
from plankwright.layout.choose.joints import mind_joints
from plankwright.layout.choose.kinds import kinds_of, lanes_of
from plankwright.layout.choose.model import Candidate, Model
from plankwright.layout.choose.objective import minimise
from plankwright.layout.choose.pieces import list_pieces
from plankwright.layout.choose.reading import RowCuts, read_cuts
from plankwright.layout.choose.task import Prices, Task, Terms, free_of_terms
from plankwright.layout.choose.wood import fit_sticks
from plankwright.layout.plan import Plan, Stick
from plankwright.layout.rows import Stack
from plankwright.layout.solving import solver_for, stopping
from plankwright.layout.strips import Strips
from plankwright.measure import Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """What came of it.

    Parameters
    ----------
    cuts
        For each kind of course and height, the pieces and the bare stretches of all its courses together;
        nothing when no solution was found.
    proven
        Whether no solution of this model has a lower price.
    impossible
        Whether the model has no solution.
    work
        Work done. [deterministic seconds of the solver]
    """

    cuts: tuple[RowCuts, ...] | None
    proven: bool
    impossible: bool
    work: float


class Chooser:
    """The model of one stretch of courses.

    Parameters
    ----------
    strips, sticks, stack, prices, grid, bare_allowed, rip_at_most, lanes, now, terms
        As a `Task` has them.
    """

    def __init__(  # noqa: PLR0913 - a task has so many parts
        self,
        strips: Strips,
        sticks: Sequence[Stick],
        stack: Stack,
        *,
        prices: Prices,
        grid: Nm,
        bare_allowed: bool = True,
        rip_at_most: Nm | None = None,
        lanes: int = 2,
        now: Plan = (),
        terms: Terms = free_of_terms,
    ) -> None:
        self.stack = stack
        task = Task(
            strips=strips,
            sticks=tuple(sticks),
            stack=stack,
            prices=prices,
            grid=grid,
            bare_allowed=bare_allowed,
            rip_at_most=rip_at_most,
            lanes=lanes,
            now=now,
            terms=terms,
        )
        self._model = Model(task, kinds_of(task), lanes_of(task))
        for state in (list_pieces, cover_runs, stack_courses, fit_sticks, mind_joints, minimise, hint):
            state(self._model)

    @property
    def pieces(self) -> Sequence[Candidate]:
        """Every piece that may be cut."""
        return self._model.pieces

    @property
    def size(self) -> int:
        """How many pieces may be cut, and stretches from place to place stay bare."""
        return len(self._model.pieces) + len(self._model.bare)

    def solve(self, work: float, seed: int, stopped: Callable[[], bool] = lambda: False) -> Choice:
        """Look for the courses of least price.

        Parameters
        ----------
        work
            How much to do at most. [deterministic seconds of the solver]
        seed
            The same task, work and seed give the same choice.
        stopped
            Asked several times a second; once it says yes, the best found so far is given.

        Returns
        -------
        Choice
            The best found.

        Raises
        ------
        ValueError
            If the model is malformed: our fault, and nothing that a search could answer.
        """
        solver = _solver(work, seed)
        with stopping(solver, stopped):
            status = solver.solve(self._model.cp)
        if status == cp_model.MODEL_INVALID:
            raise ValueError(self._model.cp.validate())
        found = status in {cp_model.OPTIMAL, cp_model.FEASIBLE}
        return Choice(
            cuts=read_cuts(self._model, solver) if found else None,
            proven=status == cp_model.OPTIMAL,
            impossible=status == cp_model.INFEASIBLE,
            work=solver.response_proto.deterministic_time,
        )


def _solver(work: float, seed: int) -> cp_model.CpSolver:
    solver = solver_for(work, seed)
    # Stretches are small and many are asked about: the time that presolve would take to probe them, to go
    # over them again and to look for symmetry, which counting courses has taken out, is better spent on more.
    solver.parameters.symmetry_level = 0
    solver.parameters.cp_model_probing_level = 0
    solver.parameters.max_presolve_iterations = 1
    return solver
