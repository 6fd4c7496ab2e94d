"""The cut list and the hanging sheets as values, for those who work from a screen instead of paper."""

from plankwright.layout.done import done_on
from plankwright.model import NOTHING_DONE, Job, Layout, Standing
from plankwright.paper.cut_list import LAY_AND_MARK, BoardBlock, beyond_the_mark, cut_list
from plankwright.paper.hanging_sheet import PLAIN, SurfaceSheet, hanging_sheet
from plankwright.workshop.advice.fill_pack import plan_hanging

_DRAWING_WIDTH = 150.0
"""Of the drawings that nobody sees here. [mm]"""


def list_cuts(job: Job, layout: Layout, standing: Standing = NOTHING_DONE) -> tuple[BoardBlock, ...]:
    """List what is done at the saw, board by board in the order of hanging.

    Parameters
    ----------
    job, layout
        The job and a layout of it that was checked.
    standing
        How far the job has come: only what is still to be sawn is told.
    """
    return cut_list(job, layout, _DRAWING_WIDTH, standing)


def tell_marking(job: Job) -> tuple[str, ...]:
    """Say how a board is marked before it is cut, and on which side of a mark the blade goes."""
    return LAY_AND_MARK, beyond_the_mark(job)


def list_hanging(job: Job, layout: Layout, standing: Standing = NOTHING_DONE) -> tuple[SurfaceSheet, ...]:
    """List what hangs where and how, course by course; parameters as in `list_cuts`."""
    planned = plan_hanging(job, layout, standing)
    return tuple(
        hanging_sheet(job, part, done_on(job, part, standing), planned.get(part.surface_id, PLAIN))
        for part in layout.surfaces
    )
