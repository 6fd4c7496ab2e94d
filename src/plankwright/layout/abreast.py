"""Several searches for one surface, side by side, that differ by chance: the best found is kept."""

from dataclasses import replace

from plankwright.layout.crew import Crew
from plankwright.layout.figure import Figure, ranked
from plankwright.layout.one_surface import Laid, Turn, lay_surface
from plankwright.layout.result import Progress, Watch
from plankwright.model import Job, Score


def lay_abreast(job: Job, turn: Turn, searches: int, crew: Crew, watch: Watch) -> Laid | None:
    """Lay out a surface in several searches.

    Parameters
    ----------
    job, turn
        As for one search; the others have seeds of their own.
    searches
        How many.
    crew
        Who does them; what is found does not depend on it.
    watch
        Follows them as though they were one, and may stop them.

    Returns
    -------
    Laid or None
        The best, the earlier search counting more where two are alike; nothing when it was stopped before any
        was begun.
    """
    turns = [turn, *(replace(turn, seed=f"{turn.seed} {which}") for which in range(2, searches + 1))]
    found: dict[int, Laid] = {}

    def settled() -> bool:
        # Only what the first proves ends the others: whoever comes to an end sooner must not matter.
        return watch.stopped() or (0 in found and _proven(found[0]))

    together = Watch(report=_AsOne(watch).report, stopped=settled)
    found.update(crew.share_out(lay_surface, job, turns, watch=together))
    if not found:
        return None
    return found[min(found, key=lambda place: (_rank(found[place].best), place))]


class _AsOne:
    """Tells whoever watches of several searches as of one: of the best so far, and of the farthest."""

    def __init__(self, watch: Watch) -> None:
        self._watch = watch
        self._best: Score | None = None
        self._done = 0.0

    def report(self, progress: Progress) -> None:
        better = self._best is None or (
            progress.best is not None and _rank(progress.best) < _rank(self._best)
        )
        self._best = min((best for best in (self._best, progress.best) if best), key=_rank, default=None)
        self._done = max(self._done, progress.done)
        laid = progress.laid if better else ()
        self._watch.report(replace(progress, best=self._best, done=self._done, laid=laid))


def _proven(laid: Laid) -> bool:
    """Whether nothing can be better."""
    best, bound = laid.best, laid.bound
    return (
        best.bare_nm2 <= bound.bare_nm2
        and best.joints_in_sight <= bound.joints_in_sight
        and best.wood_spent_nm2 <= bound.wood_spent_nm2
    )


def _rank(score: Score) -> Figure:
    return ranked((score.bare_nm2, score.joints_in_sight, score.wood_spent_nm2))
