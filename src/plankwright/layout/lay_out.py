"""From job to layout: its surfaces served with wood, written down, and what would close what stays bare."""

from dataclasses import replace

from plankwright.layout.capacity import capacity_of
from plankwright.layout.closing_job import ClosingJob
from plankwright.layout.corners import lay_flat
from plankwright.layout.crew import ALONE, Crew
from plankwright.layout.held_back import held_back
from plankwright.layout.result import Effort, Result, TooLittle, Watch
from plankwright.layout.serving import Serving
from plankwright.layout.short_runs import shortest_of_use
from plankwright.layout.sticks import whole_sticks
from plankwright.layout.together import in_order, write_together
from plankwright.model import Bound, Job, Layout, SurfaceLayout

_CLOSING_SHARE = 0.3
"""Share of the effort, besides, that looking for a shorter list of further boards may take."""


def lay_out(
    job: Job, *, effort: Effort, seed: int = 0, watch: Watch | None = None, crew: Crew = ALONE
) -> Result:
    """Lay out a job: which board goes where.

    Surfaces are served in their order; what one leaves of the pile is there for the next. Where there is
    plenty of wood several are laid out side by side, each with a share of it. Those that are linked are
    served together, as one.

    Parameters
    ----------
    job
        What to cover, with what, under which rules.
    effort
        How long to search.
    seed
        The same job, effort and seed give the same layout.
    watch
        Follows the search and may stop it; the best so far is given then.
    crew
        Who lays out surfaces side by side; nothing but the time that it takes depends on it.

    Returns
    -------
    Result
        The best layout found, whole or in part; when not whole, the boards that would close it.
    """
    watch = watch or Watch()
    capacity = capacity_of(job)
    spares = held_back(job.boards, job.rules, capacity)
    surfaces = lay_flat(job, capacity)
    shortest = shortest_of_use([wall.strips for each in surfaces for wall in each.walls], job.rules)
    stock = [
        stick
        for place, board in enumerate(job.boards)
        if board.id not in spares
        for stick in whole_sticks(board, place, job.rules, capacity, shortest=shortest)
    ]
    serving = Serving(job, surfaces, stock, spares, effort=effort, seed=seed, watch=watch, crew=crew)
    laid = serving.serve()
    written = [
        tuple(map(_with_bound, write_together(job, surface, each.plan), each.bounds))
        for surface, each in zip(surfaces, laid, strict=True)
    ]
    layout = Layout(job_name=job.name, surfaces=in_order(job, written), seed=seed, effort=effort.name)
    closing = ClosingJob(job, surfaces, stock, watch, _CLOSING_SHARE * effort.seconds)
    closing.close(laid, written)
    return Result(
        layout=layout,
        wanted=tuple(closing.wanted),
        closing=closing.closed(layout),
        held_back=spares,
        stopped=watch.stopped(),
        too_little=tuple(
            TooLittle(surfaces=surface.ids, bare_nm2=each.bound.bare_nm2)
            for surface, each in zip(surfaces, laid, strict=True)
            if len(surface.walls) > 1 and each.bound.bare_nm2
        ),
    )


def _with_bound(layout: SurfaceLayout, bound: Bound) -> SurfaceLayout:
    """Keep the bound, cut down to the score: a layout that was found shows what can be had."""
    score = layout.score
    return replace(
        layout,
        bound=Bound(
            bare_nm2=min(bound.bare_nm2, score.bare_nm2),
            joints_in_sight=min(bound.joints_in_sight, score.joints_in_sight),
            wood_spent_nm2=min(bound.wood_spent_nm2, score.wood_spent_nm2),
        ),
    )
