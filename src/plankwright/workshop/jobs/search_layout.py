"""Search a layout for a job that is kept: from scratch, of what is left, or around what is wished."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from plankwright.check import check_layout, faults
from plankwright.layout.crew import Crew
from plankwright.layout.result import Progress, Watch
from plankwright.model import NOTHING_DONE, Job, Layout, Standing, SurfaceLayout, Work
from plankwright.workshop.ask_enough import ask_enough
from plankwright.workshop.jobs.kept import KeptLayout, Made
from plankwright.workshop.jobs.lay_around import LaidAround, lay_around
from plankwright.workshop.jobs.wishes import NO_WISHES, Wishes
from plankwright.workshop.lay_out import Search, lay_out, read_effort
from plankwright.workshop.mark_work import begin_work
from plankwright.workshop.tell_changes import tell_changes
from plankwright.workshop.tell_progress import tell_progress
from plankwright.workshop.tell_remarks import tell_remarks
from plankwright.workshop.tell_work import tell_work
from plankwright.workshop.what_now import Again, WhatNow, what_now


@dataclass(frozen=True, slots=True, kw_only=True)
class Errand:
    """What a search is to find.

    Parameters
    ----------
    job
        The job.
    made
        From scratch, or what is left of it, or all around what is wished.
    effort, seed
        How long to look, in the user's word, and the seed.
    before
        The layout that the job is worked by, where what is left is laid out.
    work
        What was marked, if anything was.
    wishes
        What the layout has to go round, where it is laid out around something.
    """

    job: Job
    made: Made
    effort: str
    seed: int = 0
    before: Layout | None = None
    work: Work | None = None
    wishes: Wishes = NO_WISHES


@dataclass(frozen=True, slots=True, kw_only=True)
class Sight:
    """What is seen of a search under way.

    Parameters
    ----------
    stage, done
        What is being done, and how far that is from 0 to 1.
    told
        What was found so far, in words.
    best
        The best layout so far, when a better one was found; it breaks no rule.
    """

    stage: str
    done: float
    told: str
    best: Layout | None = None


def search_layout(
    errand: Errand,
    tell: Callable[[Sight], None],
    stopped: Callable[[], bool],
    *,
    search: Search,
    again: Again,
    crew: Crew,
) -> KeptLayout:
    """Search a layout and say what it comes to.

    Parameters
    ----------
    errand
        What to find.
    tell
        Is told how far it is.
    stopped
        Asked often; once it answers yes, the best so far is given.
    search, again, crew
        Who searches.

    Returns
    -------
    KeptLayout
        The layout, which has passed the checker, with its answer; not kept yet.

    Raises
    ------
    LayoutRefusedError, StoppedError, RefusedError
        As `lay_out`, `what_now` and `lay_around` have it.
    """
    watch = Watch(report=_Teller(errand, tell).report, stopped=stopped, sees=True)
    effort = read_effort(errand.effort)
    if errand.made is Made.SEARCHED:
        laid = lay_out(errand.job, search=search, effort=effort, seed=errand.seed, watch=watch, crew=crew)
        return KeptLayout(
            layout=laid.result.layout,
            made=errand.made,
            answer=ask_enough(errand.job, laid.result),
            minds=tell_remarks(laid.warnings),
        )
    work = errand.work or begin_work(errand.job)
    if errand.before is None:
        msg = "what is left can be laid out only with the layout that the job is worked by"
        raise ValueError(msg)
    now: WhatNow | LaidAround
    if errand.made is Made.AROUND:
        now = lay_around(
            errand.job,
            errand.before,
            work,
            errand.wishes,
            again=again,
            effort=effort,
            seed=errand.seed,
            watch=watch,
        )
        first = now.told
    else:
        now = what_now(
            errand.job, errand.before, work, again=again, effort=effort, seed=errand.seed, watch=watch
        )
        first = tell_work(errand.job, errand.before, work)
    return KeptLayout(
        layout=now.result.layout,
        made=errand.made,
        answer=ask_enough(errand.job, now.result, work.standing),
        news=(*first, *tell_changes(errand.job, now.changes)),
        minds=tell_remarks(now.warnings),
    )


class _Teller:
    """Puts together what is seen of the surfaces of a job, each as far as it has come."""

    def __init__(self, errand: Errand, tell: Callable[[Sight], None]) -> None:
        self._errand, self._tell = errand, tell
        self._laid: dict[str, SurfaceLayout] = {}

    def report(self, progress: Progress) -> None:
        """Tell of one step forward."""
        several = len(self._errand.job.surfaces) > 1
        told = tell_progress(progress, self._errand.job.tape)
        self._tell(
            Sight(
                stage=f"{progress.surface_id}: {progress.stage}" if several else progress.stage,
                done=progress.done,
                told=f"{progress.surface_id}: {told}" if several else told,
                best=self._best(progress),
            )
        )

    def _best(self, progress: Progress) -> Layout | None:
        if not progress.laid:
            return None
        self._laid |= {laid.surface_id: laid for laid in progress.laid}
        surfaces = tuple(surface for surface in self._errand.job.surfaces if surface.id in self._laid)
        layout = Layout(
            job_name=self._errand.job.name,
            surfaces=tuple(self._laid[surface.id] for surface in surfaces),
            seed=self._errand.seed,
            effort=self._errand.effort,
        )
        return None if faults_so_far(self._errand.job, layout, self._standing) else layout

    @property
    def _standing(self) -> Standing:
        return NOTHING_DONE if self._errand.work is None else self._errand.work.standing


def faults_so_far(job: Job, layout: Layout, standing: Standing = NOTHING_DONE) -> bool:
    """Tell whether a layout of some of the surfaces of a job breaks a rule."""
    laid = {surface.surface_id for surface in layout.surfaces}
    part = replace(job, surfaces=tuple(surface for surface in job.surfaces if surface.id in laid), linked=())
    return bool(faults(check_layout(part, layout, standing)))
