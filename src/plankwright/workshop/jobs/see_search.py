"""See a search: for how long it has run, and the best that it found, to be worked by if it ended early."""

from dataclasses import replace
from datetime import datetime

from plankwright.layout.capacity import capacity_of
from plankwright.layout.held_back import held_back
from plankwright.layout.result import Result
from plankwright.model import Bound, Job, Layout, Standing, SurfaceLayout
from plankwright.workshop.ask_enough import ask_enough
from plankwright.workshop.check_layout import check_layout
from plankwright.workshop.jobs.kept import KeptLayout, KeptSearch, RefusedError
from plankwright.workshop.tell_remarks import tell_remarks

_MINUTE_S = 60


def running_for(search: KeptSearch, now: datetime) -> str:
    """Say how long a search has run.

    Parameters
    ----------
    search
        The search.
    now
        The time, with its zone.

    Returns
    -------
    str
        Such as "12 s" or "3 min 5 s".
    """
    seconds = max(0, int((now - datetime.fromisoformat(search.begun_at)).total_seconds()))
    minutes, rest = divmod(seconds, _MINUTE_S)
    return f"{minutes} min {rest} s" if minutes else f"{rest} s"


def best_of(job: Job, search: KeptSearch, standing: Standing) -> KeptLayout:
    """Give the best that a search found before it ended early, as a layout to work by.

    Parameters
    ----------
    job
        The job as it is now.
    search
        The search.
    standing
        How far the job has come.

    Returns
    -------
    KeptLayout
        With an answer; not kept yet.

    Raises
    ------
    RefusedError
        If it found none, not of all surfaces, or one that breaks a rule of the job as it is now.
    """
    layout = search.best
    if layout is None:
        raise RefusedError("The search ended before it had found any layout: search again.")
    missing = [surface.id for surface in job.surfaces if surface.id not in _laid(layout)]
    if missing:
        raise RefusedError(
            f"The search had not come to {', '.join(missing)} yet, so there is nothing whole to work by: "
            "search again."
        )
    judged = check_layout(job, layout, standing)
    if judged.faults:
        raise RefusedError(
            "The boards, the surfaces or what is done are not what they were when the search began, and the "
            f"best that it found does not fit any more: search again. {judged.faults[0]}"
        )
    layout = replace(layout, surfaces=tuple(map(_with_bound, layout.surfaces)))
    spares = () if standing.begun else held_back(job.boards, job.rules, capacity_of(job))
    used = {piece.board_id for piece in layout.pieces}
    result = Result(layout=layout, held_back=tuple(name for name in spares if name not in used), stopped=True)
    return KeptLayout(
        layout=layout,
        made=search.made,
        answer=ask_enough(job, result, standing),
        minds=tell_remarks(judged.warnings),
    )


def _laid(layout: Layout) -> frozenset[str]:
    return frozenset(laid.surface_id for laid in layout.surfaces)


def _with_bound(laid: SurfaceLayout) -> SurfaceLayout:
    """Cut the bound down to the score: what was found can be had."""
    score, bound = laid.score, laid.bound
    return replace(
        laid,
        bound=Bound(
            bare_nm2=min(bound.bare_nm2, score.bare_nm2),
            joints_in_sight=min(bound.joints_in_sight, score.joints_in_sight),
            wood_spent_nm2=min(bound.wood_spent_nm2, score.wood_spent_nm2),
        ),
    )
