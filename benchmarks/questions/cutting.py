"""Cutting stock, variable stock and skiving through the whole search: is the optimum reached, and proven?"""

from benchmarks.clock import Moment
from benchmarks.cutting_jobs import cutting_job, joining_job, scale_of
from benchmarks.cutting_lists import Case, ToCut, ToJoin
from benchmarks.family import Row
from benchmarks.trials import SEED
from plankwright.check import check_layout, faults
from plankwright.layout import Effort, lay_out
from plankwright.layout.result import Progress, Watch
from plankwright.model import Job, SurfaceLayout

LIMIT_S = 30.0
"""An instance may take so long, all questions about it together. [s]"""


def measure(case: Case, effort: Effort) -> Row:
    """Look for the optimum of a case.

    Parameters
    ----------
    case
        What is asked; its optimum is only compared with.
    effort
        Of the search; of each one where several are made.

    Returns
    -------
    dict
        Best found, what no layout beats, and whether the first is the optimum, both are, within the time.
    """
    start = Moment()
    best, bound, broken = _cut(case, effort) if isinstance(case, ToCut) else _joined(case, effort)
    took = start.since_s()
    reached, proven = best == case.optimum, bound == case.optimum == best
    return {
        "name": case.name,
        "optimum": case.optimum,
        "best": best,
        "bound": bound,
        "time_s": took,
        "faults": broken,
        "reached": reached and not broken and took <= LIMIT_S,
        "proven": proven and not broken and took <= LIMIT_S,
        "failed": _why(reached=reached, broken=bool(broken), took=took),
    }


def _why(*, reached: bool, broken: bool, took: float) -> str:
    if broken:
        return "breaks a rule"
    if not reached:
        return "optimum not reached"
    return "" if took <= LIMIT_S else "took too long"


def _cut(case: ToCut, effort: Effort) -> tuple[int | None, int, list[str]]:
    """Spend as little as can be: what it costs, what no layout beats, and what the checker finds wrong."""
    cost = scale_of(case.stock).cost
    found, broken = _laid_out(cutting_job(case.name, case.pieces, case.stock), effort, Watch())
    best = None if found.bare else found.score.wood_spent_nm2 // cost
    return best, -(-found.bound.wood_spent_nm2 // cost), broken


def _joined(case: ToJoin, effort: Effort) -> tuple[int | None, int, list[str]]:
    """Ask for ever fewer courses, from what the lengths add up to, until the boards cover them."""
    start, broken = Moment(), list[str]()
    bound: int | None = None
    for courses in range(sum(case.pieces) // case.length, 0, -1):
        answered = _Answered()
        found, wrong = _laid_out(
            joining_job(case.name, case.pieces, case.length, courses), effort, answered.watch()
        )
        broken += wrong
        if bound is None and not found.bound.bare_nm2:
            bound = courses
        if not found.bare:
            return courses, bound or courses, broken
        if start.since_s() > LIMIT_S:
            break
    return None, bound or 0, broken


class _Answered:
    """Stops a search once it is known whether everything can be covered."""

    def __init__(self) -> None:
        self._known = False

    def watch(self) -> Watch:
        return Watch(report=self._report, stopped=lambda: self._known)

    def _report(self, progress: Progress) -> None:
        covered = progress.best is not None and progress.best.bare_nm2 == 0
        self._known |= covered or progress.bound.bare_nm2 > 0


def _laid_out(job: Job, effort: Effort, watch: Watch) -> tuple[SurfaceLayout, list[str]]:
    layout = lay_out(job, effort=effort, seed=SEED, watch=watch).layout
    (surface,) = layout.surfaces
    return surface, [str(fault) for fault in faults(check_layout(job, layout))]
