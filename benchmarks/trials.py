"""Lay out a job in one way or another, and measure what came of it and what it took."""

import sys
from collections.abc import Callable
from typing import TypeVar

from benchmarks.clock import Moment
from benchmarks.family import Row
from plankwright.check import check_layout, faults
from plankwright.crews.cores import Cores
from plankwright.layout import lay_out
from plankwright.layout.result import Effort, Progress, Result, Watch
from plankwright.model import Job, Layout

T = TypeVar("T")
SEED = 0
"""Of the search; the seed of an instance is another."""

CORES = 2
"""What the figures are asked for."""


def timed(do: Callable[[], T]) -> tuple[T, Row]:
    """Do something, and give what came of it, and the time that it took. [s]"""
    start = Moment()
    done = do()
    return done, {"time_s": start.since_s(), "clock_s": start.clock_s(), "work_s": start.work_s()}


def peak_mib(processes: int = 1) -> float | None:
    """Give the most memory that this process has held so far. [MiB]

    Parameters
    ----------
    processes
        How many processes it had work for it at a time, where they were more than one: each of them counts as
        though it had held as much as the largest did, all at the same time.

    Returns
    -------
    float or None
        Nothing where the system does not tell.
    """
    try:
        import resource  # noqa: PLC0415 - Windows has no such module
    except ImportError:
        return None
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    if processes > 1:
        peak += processes * resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss
    return peak / 2**20 if sys.platform == "darwin" else peak / 2**10


def judged(job: Job, layout: Layout) -> Row:
    """Give the score of a layout, all surfaces together, and the faults that the checker finds."""
    scores = [surface.score for surface in layout.surfaces]
    return {
        "bare_nm2": sum(score.bare_nm2 for score in scores),
        "joints": sum(score.joints_in_sight for score in scores),
        "wood_nm2": sum(score.wood_spent_nm2 for score in scores),
        "covers": layout.covers_everything,
        "faults": [str(fault) for fault in faults(check_layout(job, layout))],
    }


def first_layout_s(job: Job, effort: Effort) -> float:
    """Give how long it takes from a job to the first layout that the checker has let pass. [s]"""
    seen: list[bool] = []

    def report(progress: Progress) -> None:
        if progress.best is not None:
            seen.append(True)

    def do() -> Row:
        watch = Watch(report=report, stopped=lambda: bool(seen))
        return judged(job, lay_out(job, effort=effort, seed=SEED, watch=watch).layout)

    _, took = timed(do)
    return float(took["time_s"])


class Follower:
    """Watches a search: when its best came, and where its time went.

    Parameters
    ----------
    enough
        Whether to stop at the first layout that leaves nothing bare.
    cores
        In how many processes the search goes on. Where there are several, their work is not known before they
        have ended, and the clock counts.
    """

    def __init__(self, *, enough: bool = False, cores: int = 1) -> None:
        self.enough, self.cores = enough, cores
        self.started = self.since = Moment()
        self.stages: dict[str, float] = {}
        self.best_s = 0.0
        self._stage = "before the first report"
        self._best: dict[str, tuple[int, ...]] = {}

    def watch(self) -> Watch:
        """Give what the search reports to."""
        return Watch(report=self._report, stopped=self._stopped)

    def end(self) -> None:
        """Count the time of the last stage."""
        self._count()

    def _since(self, moment: Moment) -> float:
        return moment.clock_s() if self.cores > 1 else moment.since_s()

    def _report(self, progress: Progress) -> None:
        self._count()
        self._stage = progress.stage
        if progress.best is not None:
            score = progress.best
            best = (score.bare_nm2, score.joints_in_sight, score.wood_spent_nm2)
            if self._best.get(progress.surface_id) != best:
                self._best[progress.surface_id] = best
                self.best_s = self._since(self.started)

    def _stopped(self) -> bool:
        return self.enough and any(best[0] == 0 for best in self._best.values())

    def _count(self) -> None:
        self.stages[self._stage] = self.stages.get(self._stage, 0.0) + self._since(self.since)
        self.since = Moment()


def ours(job: Job, effort: Effort, *, enough: bool = False, cores: int = 1) -> tuple[Row, Result]:
    """Lay out a job with the search.

    Parameters
    ----------
    job, effort
        What to lay out, and how long to search.
    enough
        Whether to stop at the first layout that leaves nothing bare.
    cores
        In how many processes it searches side by side.
    """
    follower, crew = Follower(enough=enough, cores=cores), Cores(cores)
    result, took = timed(lambda: lay_out(job, effort=effort, seed=SEED, watch=follower.watch(), crew=crew))
    follower.end()
    peak = peak_mib(cores)
    row, checking = timed(lambda: judged(job, result.layout))
    bounds = [surface.bound for surface in result.layout.surfaces]
    row |= took | {
        "check_s": checking["time_s"],
        "best_s": follower.best_s,
        "stages": follower.stages,
        "peak_mib": peak,
        "bound_bare_nm2": sum(bound.bare_nm2 for bound in bounds),
        "bound_joints": sum(bound.joints_in_sight for bound in bounds),
        "bound_wood_nm2": sum(bound.wood_spent_nm2 for bound in bounds),
    }
    return row, result


def baseline(job: Job, lay: Callable[[Job], Layout]) -> Row:
    """Lay out a job in some other way."""
    layout, took = timed(lambda: lay(job))
    return judged(job, layout) | took
