"""What of a surface is done: what hangs, and what is cut and has only to be hung."""

from collections.abc import Iterator, Mapping
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


def to_hang(layout: Layout, standing: Standing) -> Iterator[tuple[str, Piece]]:
    """Give each piece of a layout that does not hang yet, with the id of its surface."""
    for part in layout.surfaces:
        hanging = standing.hung_labels(part.surface_id)
        yield from ((part.surface_id, piece) for piece in part.pieces if piece.label not in hanging)


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
        (surface_id, piece.label)
        for surface_id, piece in to_hang(layout, standing)
        if part_of(piece) in ready
    )
