"""What the saws at hand can do, and so which wood a board can give."""

from dataclasses import dataclass

from plankwright.layout.offcuts import Stretch
from plankwright.measure import Nm
from plankwright.model import Board, Job, Part, SawKind


@dataclass(frozen=True, slots=True, kw_only=True)
class Capacity:
    """How wide the saws cut; nothing where that is not judged, and zero where no saw is listed for it.

    Parameters
    ----------
    crosscut
        The widest board that is cut across. [nm]
    rip
        The widest strip that is ripped off. [nm]
    """

    crosscut: Nm | None = None
    rip: Nm | None = None


UNLIMITED = Capacity()


def capacity_of(job: Job) -> Capacity:
    """Give what the saws of a job can do."""
    return Capacity(
        crosscut=job.saw_capacity_nm(SawKind.CROSSCUT),
        rip=job.saw_capacity_nm(SawKind.RIP),
    )


def within_reach(
    board: Board, across: Stretch, capacity: Capacity, part: Part | None = None
) -> Stretch | None:
    """Give the strip of a board that the saws can free pieces from, one stretch of it after another.

    Every piece is crosscut. A board wider than the saws crosscut is ripped down first, from end to end, to
    the strip next to its reference edge that they do; without a saw to rip with, a board is hung as wide as
    it is or not at all.

    Parameters
    ----------
    board
        The board.
    across
        What of its width can be used. [nm]
    capacity
        What the saws can do.
    part
        What there is of the board; all of it when left out.

    Returns
    -------
    tuple of int or None
        From where to where across the board; nothing when no piece can be freed. [nm]
    """
    near, far = across
    edge, widest = 0, max(board.width_start_nm, board.width_end_nm)
    if part is not None:
        near, far = across = max(near, part.across_from_nm), min(far, part.across_to_nm)
        edge, widest = part.across_from_nm, min(widest, part.across_to_nm) - part.across_from_nm
    if capacity.crosscut == 0:
        return None
    if capacity.rip == 0:
        as_found = not board.tapered and (near, far) == (edge, edge + widest)
        return across if as_found and (capacity.crosscut is None or widest <= capacity.crosscut) else None
    if capacity.crosscut is None or widest <= capacity.crosscut:
        return across
    return near, min(far, near + capacity.crosscut)
