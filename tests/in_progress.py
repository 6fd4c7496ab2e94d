"""A job in progress: four courses of eight feet, two of them of two pieces, and boards to spare."""

from dataclasses import replace
from typing import Any

from builders import board, course, job, layout, piece, surface_layout, wall
from plankwright.check import recount
from plankwright.model import Job, Layout, MarkKind, Rules, Work
from plankwright.workshop.mark_work import Happened, Measured, begin_work, mark_work

WALL = wall(96, 24)
RULES = Rules(expansion_gap_nm=0)
FULL = (8, 24, 40, 56, 72, 88)


def begun_job(*more: str) -> Job:
    """Give six boards and as many more as are named, all of 97 by 6-1/4 in but one that is longer."""
    boards = [board(name, 97, 6.25) for name in ("A", "B", "C", "D", *more)]
    return job(WALL, [*boards, board("long", 150, 6.25), board("wide", 97, 12.5)], RULES)


def begun_layout() -> Layout:
    """Give a layout of it: A, then B and the start of the long one, then C, then D and the long one again."""
    laid = surface_layout(
        WALL,
        course(1, (0, 6), piece(WALL, "1a A", (0, 96), (0, 6), nailed_at=FULL)),
        course(
            2,
            (6, 12),
            piece(WALL, "2a B", (0, 56), (6, 12), nailed_at=(8, 24, 40, 55.5)),
            piece(WALL, "2b long", (56, 96), (6, 12), nailed_at=(56.5, 72, 88)),
        ),
        course(3, (12, 18), piece(WALL, "3a C", (0, 96), (12, 18), nailed_at=FULL)),
        course(
            4,
            (18, 24),
            piece(WALL, "4a D", (0, 40), (18, 24), nailed_at=(8, 24, 39.5)),
            piece(WALL, "4b long", (40, 96), (18, 24), at=(40.625, 0.125), nailed_at=(40.5, 56, 72, 88)),
        ),
    )
    return layout(replace(laid, score=recount(begun_job(), laid)))


def happened(word: str, *names: str, **more: Any) -> Happened:  # noqa: ANN401 - any further field
    """Say what happened."""
    return Happened(kind=MarkKind(word), names=names, **more)


def marked(*events: Happened, work: Work | None = None, of: Job | None = None) -> Work:
    """Mark one thing after another on the job."""
    whose = of or begun_job()
    done = work or begin_work(whose)
    for event in events:
        done = mark_work(whose, begun_layout(), done, event)
    return done


__all__ = ["Measured", "begun_job", "begun_layout", "happened", "marked"]
