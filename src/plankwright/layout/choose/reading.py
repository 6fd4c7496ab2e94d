"""What the solver found, as pieces cut from sticks."""

from collections import defaultdict
from dataclasses import dataclass

from ortools.sat.python import cp_model

from plankwright.layout.choose.model import Candidate, Model
from plankwright.layout.plan import PlannedPiece
from plankwright.layout.rows import Row
from plankwright.layout.sticks import cut_from
from plankwright.measure import Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class RowCuts:
    """The courses of one kind and height, not yet told apart.

    Parameters
    ----------
    row
        The kind.
    height, given_up
        Height of each, and how much of it all of them together lose to the closing rip. [nm]
    count
        How many courses. [courses]
    pieces, bare
        Of all of them, in no order; the bare stretches (start, end). [nm]
    """

    row: Row
    height: Nm
    given_up: Nm
    count: int
    pieces: tuple[PlannedPiece, ...]
    bare: tuple[tuple[Nm, Nm], ...]


def read_cuts(model: Model, solver: cp_model.CpSolver) -> tuple[RowCuts, ...]:
    """Read the courses out of a solution.

    Parameters
    ----------
    model
        The model.
    solver
        That has solved it.

    Returns
    -------
    tuple of RowCuts
        Of each kind that has courses.
    """
    pieces = _pieces(model, solver)
    cuts = []
    for number, kind in enumerate(model.kinds):
        count = solver.value(model.count[number])
        if not count:
            continue
        given_up = solver.value(model.given_up[number]) if number in model.given_up else 0
        bare = tuple(
            (kind.places[place].at, kind.places[place + 1].at)
            for (of_kind, place), courses in model.bare.items()
            if of_kind == number
            for _ in range(solver.value(courses))
        )
        cuts.append(
            RowCuts(
                row=kind.row,
                height=kind.height,
                given_up=given_up * model.task.grid,
                count=count,
                pieces=tuple(pieces[number]),
                bare=bare,
            )
        )
    return tuple(cuts)


def _pieces(model: Model, solver: cp_model.CpSolver) -> defaultdict[int, list[PlannedPiece]]:
    """Cut the chosen pieces of each lane one after another, and lane beside lane; by kind of course."""
    chosen: defaultdict[tuple[int, int], list[Candidate]] = defaultdict(list)
    for piece in model.pieces:
        for _ in range(solver.value(piece.chosen)):
            chosen[piece.stick, piece.lane].append(piece)
    by_kind: defaultdict[int, list[PlannedPiece]] = defaultdict(list)
    rules = model.task.rules
    for number, stick in enumerate(model.task.sticks):
        across = stick.across_from
        for lane in range(model.lanes[number]):
            along, widest = stick.along_from, 0
            for piece in chosen[number, lane]:
                kind = model.kinds[piece.kind]
                start, end = kind.places[piece.first].at, kind.places[piece.last].at
                width = min(kind.height, stick.across_to - across)
                part = cut_from(stick, along, end - start, across, width)
                by_kind[piece.kind].append(PlannedPiece(part, start, end))
                along += end - start + rules.crosscut_kerf_nm
                widest = max(widest, width)
            across += widest + rules.rip_kerf_nm if widest else 0
    return by_kind
