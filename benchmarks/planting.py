"""Plant a layout: a perfect cover of a wall, cut into pieces that lie on the boards of a pile."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from random import Random

from benchmarks.lumber import SawnBoard
from plankwright.layout.plan import PlannedCourse, PlannedPiece
from plankwright.layout.strips import Strips
from plankwright.layout.writing import write_surface
from plankwright.measure import Nm
from plankwright.model import Board, Bound, Job, Layout

Key = tuple[int, int]
"""A piece: the place of its row, and its place in the row."""


@dataclass(frozen=True, slots=True)
class Row:
    """A course of a cover.

    Parameters
    ----------
    low, high
        Its edges, from the start side. [nm]
    ends
        For each piece, where it starts and ends along the course. [nm]
    width
        Of the wood that it is ripped from, no less than its height. [nm]
    lots
        For each piece, which lot it is from.
    """

    low: Nm
    high: Nm
    ends: tuple[tuple[Nm, Nm], ...]
    width: Nm
    lots: tuple[int, ...]


def shuffled(boards: Sequence[SawnBoard], chance: Random) -> list[SawnBoard]:
    """Put boards in an order that tells nothing, and number them in it.

    Parameters
    ----------
    boards
        The boards, spare ones included.
    chance
        For the order.
    """
    mixed = list(boards)
    chance.shuffle(mixed)
    return [
        replace(sawn, board=replace(sawn.board, id=f"B{number:03d}"))
        for number, sawn in enumerate(mixed, start=1)
    ]


def boards_of(pile: Sequence[SawnBoard]) -> tuple[Board, ...]:
    """Give the boards alone."""
    return tuple(sawn.board for sawn in pile)


def planted_layout(job: Job, strips: Strips, rows: Sequence[Row], pile: Sequence[SawnBoard]) -> Layout:
    """Write the planted cover down as a layout of the job, with nails, labels and score.

    Parameters
    ----------
    job
        With the boards of the pile in its order, and one surface.
    strips
        That surface.
    rows
        From the start side on.
    pile
        The boards; each piece lies on one of them, under its key. Where it does not, the wall is bare.

    Returns
    -------
    Layout
        Not yet checked.
    """
    places = {key: place for place, sawn in enumerate(pile) for key in sawn.places}
    plan = tuple(
        PlannedCourse(
            row.low,
            row.high,
            tuple(
                PlannedPiece(
                    pile[places[number, piece]].stick(
                        (number, piece),
                        places[number, piece],
                        (end - start, row.high - row.low),
                        strips.capacity.rip,
                    ),
                    start,
                    end,
                )
                for piece, (start, end) in enumerate(row.ends)
                if (number, piece) in places
            ),
            tuple(ends for piece, ends in enumerate(row.ends) if (number, piece) not in places),
        )
        for number, row in enumerate(rows)
    )
    return Layout(job_name=job.name, surfaces=(write_surface(job, strips, plan, Bound()),))
