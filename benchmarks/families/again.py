"""A wall of `real` with half its courses hung by the planted layout, and a board lost that the rest needs."""

from dataclasses import dataclass
from random import Random

from benchmarks.families import real
from benchmarks.instance import Instance
from plankwright.model import Job, Layout, MarkKind, Standing
from plankwright.workshop.mark_work import Happened, begin_work, mark_work


@dataclass(frozen=True, slots=True)
class UnderWay:
    """A job in progress, as its marks tell it, and the board that is lost."""

    job: Job
    layout: Layout
    standing: Standing
    lost: str


def instance(seed: int) -> Instance:
    """Give the wall of `real` with this seed."""
    return real.instance(seed)


def under_way(given: Instance) -> UnderWay:
    """Hang the lower half of the courses, and lose a board that is whole and that the others need.

    Parameters
    ----------
    given
        With a planted layout.

    Raises
    ------
    ValueError
        If nothing was planted.
    """
    if given.planted is None:
        raise ValueError(f"{given.name} has no layout to work by")
    chance = Random(f"again {given.seed}")  # noqa: S311 - chance, not secrecy
    (laid,) = given.planted.surfaces
    half = len(laid.courses) // 2
    work = begin_work(given.job)
    for course in laid.courses[:half]:
        hung = Happened(kind=MarkKind.HUNG, names=(str(course.number),))
        work = mark_work(given.job, given.planted, work, hung)
    needed = {piece.board_id for course in laid.courses[half:] for piece in course.pieces}
    lost = chance.choice(sorted(needed - set(work.standing.sawn)))
    work = mark_work(given.job, given.planted, work, Happened(kind=MarkKind.LOST, names=(lost,)))
    return UnderWay(given.job, given.planted, work.standing, lost)
