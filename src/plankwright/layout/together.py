"""Layouts of surfaces that are laid out together: written down, added up, in the order of the job."""

from collections.abc import Sequence

from plankwright.layout.corners import Unfolded
from plankwright.layout.plan import Plan
from plankwright.layout.writing import write_surface
from plankwright.model import Bound, Job, Score, SurfaceLayout


def write_together(job: Job, surface: Unfolded, plan: Plan) -> tuple[SurfaceLayout, ...]:
    """Write down a plan of surfaces that are laid out together.

    Returns
    -------
    tuple of SurfaceLayout
        One for each, from left to right, without a bound.
    """
    plans = zip(surface.walls, surface.fold(plan), strict=True)
    return tuple(write_surface(job, wall.strips, folded, Bound()) for wall, folded in plans)


def in_order(job: Job, written: Sequence[tuple[SurfaceLayout, ...]]) -> tuple[SurfaceLayout, ...]:
    """Give layouts in the order of the job."""
    by_id = {laid.surface_id: laid for together in written for laid in together}
    return tuple(by_id[surface.id] for surface in job.surfaces)


def in_all(together: Sequence[SurfaceLayout]) -> tuple[Score, Bound]:
    """Add up what the layouts of some surfaces come to, and what none of each can beat."""
    scores, bounds = [laid.score for laid in together], [laid.bound for laid in together]
    return (
        Score(
            bare_nm2=sum(score.bare_nm2 for score in scores),
            joints_in_sight=sum(score.joints_in_sight for score in scores),
            wood_spent_nm2=sum(score.wood_spent_nm2 for score in scores),
            cuts=sum(score.cuts for score in scores),
        ),
        Bound(
            bare_nm2=sum(bound.bare_nm2 for bound in bounds),
            joints_in_sight=sum(bound.joints_in_sight for bound in bounds),
            wood_spent_nm2=sum(bound.wood_spent_nm2 for bound in bounds),
        ),
    )
