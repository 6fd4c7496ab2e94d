"""See to all that follows from where pieces hang and what they are of: edges, shims, what is bare, score."""

from dataclasses import replace

from plankwright.layout.capacity import capacity_of
from plankwright.layout.strips import Strips
from plankwright.layout.writing import finish_surface
from plankwright.model import Job, Layout, Standing


def finish_layout(job: Job, layout: Layout, standing: Standing) -> Layout:
    """Give a layout with edges, shims, what is bare and score stated anew; what hangs stays as it is.

    Parameters
    ----------
    job, layout, standing
        The job, a layout of it whose pieces may have come to be of other boards, and how far it has come.
    """
    capacity = capacity_of(job)
    return replace(
        layout,
        surfaces=tuple(
            finish_surface(job, Strips(job.surface(laid.surface_id), job.rules, capacity), laid, standing)
            for laid in layout.surfaces
        ),
    )
