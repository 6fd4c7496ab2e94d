"""The look of a layout that is written down, and what became of its milled boards."""

from dataclasses import dataclass
from statistics import median_low

from plankwright.layout.capacity import capacity_of
from plankwright.layout.ground import HAIR
from plankwright.layout.look.eye import Eye, Look
from plankwright.layout.reading import read_surface
from plankwright.layout.strips import Strips
from plankwright.measure import Nm
from plankwright.model import Job, SurfaceLayout

_NARROW = 2
"""A closing course looks like a mistake when most are more than so many times as high. Half a board is common
practice, no source."""


def look_of(job: Job, laid: SurfaceLayout) -> Look:
    """Look at the layout of a surface.

    Parameters
    ----------
    job
        The job.
    laid
        A layout of one of its surfaces that breaks no rule.
    """
    strips = Strips(job.surface(laid.surface_id), job.rules, capacity_of(job))
    return Eye(strips, job.boards).looks_at(read_surface(job, strips, laid))


@dataclass(frozen=True, slots=True, kw_only=True)
class Milled:
    """What became of the face width of milled boards.

    Parameters
    ----------
    whole
        Pieces that hang with all of it; a tongue that is ripped off takes none, as it lies beyond. [pieces]
    narrower_nm
        By how much each piece that is ripped square is narrower than its board, the least first. [nm]
    """

    whole: int
    narrower_nm: tuple[Nm, ...]


def milled_of(job: Job, laid: SurfaceLayout) -> Milled:
    """Count what became of the milled boards of a layout; parameters are those of `look_of`."""
    boards = {board.id: board for board in job.boards if board.profile.milled}
    lost = [
        boards[piece.board_id].narrowest_width_nm - piece.across_to_nm + piece.across_from_nm
        for piece in laid.pieces
        if piece.board_id in boards
    ]
    ripped = sorted(narrower for narrower in lost if narrower > HAIR)
    return Milled(whole=len(lost) - len(ripped), narrower_nm=tuple(ripped))


def narrow_closing_course(job: Job, laid: SurfaceLayout) -> Nm | None:
    """Give the height of the closing course where it is less than half of what most are.

    That cannot be shared with the starter at no cost: what is ripped off beside so narrow a course is mostly
    worth keeping, and what is ripped off beside two half ones is not.

    Parameters
    ----------
    job, laid
        As of `look_of`.

    Returns
    -------
    int or None
        Nothing where it is higher, or where the surface ends in a slope. [nm]
    """
    *others, closing = [course.height_nm for course in laid.courses] or [0]
    if not others or _NARROW * closing >= median_low(others):
        return None
    last = laid.courses[-1]
    strips = Strips(job.surface(laid.surface_id), job.rules, capacity_of(job))
    return closing if strips.level_between(last.from_nm, last.to_nm) else None
