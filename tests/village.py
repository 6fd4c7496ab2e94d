"""A tiny job and a layout that breaks no rule: two courses of eight feet, a board each, and one to spare."""

from dataclasses import replace

from builders import board, course, job, layout, nm, piece, surface_layout, wall
from plankwright.check import recount
from plankwright.layout.result import Result
from plankwright.model import Framing, Job, Layout, Rules

WALL = wall(96, 10, framing=Framing(solid=True))
RULES = Rules(expansion_gap_nm=0)


def small_job() -> Job:
    """Give three boards, two of which cover the wall."""
    return job(WALL, [board(name, 97, 5.25) for name in ("A", "B", "C")], RULES)


def small_layout() -> Layout:
    """Give a layout that covers the wall with A and B."""
    laid = surface_layout(
        WALL,
        course(1, (0, 5), piece(WALL, "1a A", (0, 96), (0, 5))),
        course(2, (5, 10), piece(WALL, "2a B", (0, 96), (5, 10))),
    )
    return layout(replace(laid, score=recount(small_job(), laid)))


def spoilt_layout() -> Layout:
    """Give the same with its upper board hung an inch too high."""
    (laid,) = small_layout().surfaces
    upper = laid.courses[1]
    (raised,) = (replace(hung, place=replace(hung.place, bottom=nm(6), top=nm(11))) for hung in upper.pieces)
    return layout(replace(laid, courses=(laid.courses[0], replace(upper, pieces=(raised,)))))


def small_result() -> Result:
    """Give what a search would come to."""
    return Result(layout=small_layout())
