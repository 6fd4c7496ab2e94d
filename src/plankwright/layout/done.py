"""What of a surface is done: what hangs, and what is cut and has only to be hung."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from plankwright.layout.sawing import saw_boards
from plankwright.model import Job, Layout, Piece, Standing, SurfaceLayout, part_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Done:
    """What of a surface is done.

    Parameters
    ----------
    hung
        The pieces that hang already, as they do, by their labels.
    cut
        Labels of those that are cut already and hang just as they were cut.
    """

    hung: Mapping[str, Piece] = field(default_factory=dict)
    cut: frozenset[str] = frozenset()


NOTHING = Done()
"""Of a surface that nobody has begun."""


def done_on(job: Job, laid: SurfaceLayout, standing: Standing) -> Done:
    """Give what of a surface is done.

    Parameters
    ----------
    job
        The job.
    laid
        The layout of one of its surfaces that it goes on by.
    standing
        How far the job has come.
    """
    if not standing.begun:
        return NOTHING
    only = Layout(job_name=job.name, surfaces=(laid,))
    return Done(
        hung=standing.hung_pieces(laid.surface_id),
        cut=frozenset(label for _, label in cut_as_hung(job, only, standing)),
    )


def cut_as_hung(job: Job, layout: Layout, standing: Standing) -> frozenset[tuple[str, str]]:
    """Give the pieces in hand that nothing is done to any more.

    Parameters
    ----------
    job, layout, standing
        The job, the layout that it goes on by, and how far it has come.

    Returns
    -------
    frozenset of tuple of (str, str)
        The id of the surface and the label of each.
    """
    if not standing.cut:
        return frozenset()
    busy = {cuts.part for cuts in saw_boards(job, layout, standing)}
    ready = {cut.part for cut in standing.cut} - busy
    return frozenset(
        (laid.surface_id, piece.label)
        for laid in layout.surfaces
        for piece in laid.pieces
        if part_of(piece) in ready and piece.label not in standing.hung_labels(laid.surface_id)
    )
