"""What can hurt on this job."""

from collections import defaultdict

from plankwright.measure import FOOT, write_area
from plankwright.model import Board, NailsLeft, Paint, SurfaceKind, Treatment
from plankwright.model.board import lot_key
from plankwright.paper.leaf import Leaf, Part
from plankwright.trade.hazards.situation import PaintedLot, Situation
from plankwright.trade.hazards.warnings import Hazard, hazards_of
from plankwright.trade.readying.signs import shows_paint
from plankwright.trade.readying.telltale import words_of
from plankwright.trade.source import Said
from plankwright.workshop.ports import Known

_NO_LOT = "boards of no lot"


def watch_out(job: Known) -> tuple[Hazard, ...]:
    """Give the hazards of a job, in the order in which they are met.

    Parameters
    ----------
    job
        With what is known of its lots, its house and its boards.
    """
    return hazards_of(situation_of(job))


def situation_of(job: Known) -> Situation:
    """Gather what of a job decides which hazards it has."""
    by_lot: defaultdict[str, list[Board]] = defaultdict(list)
    for board in job.boards:
        if board.treatment is Treatment.NONE:
            by_lot[board.lot_key].append(board)
    return Situation(
        lots=tuple(_lot(job, boards) for boards in by_lot.values()),
        house_built=job.house_built,
        treated=tuple(
            (board.id, board.treatment) for board in job.boards if board.treatment is not Treatment.NONE
        ),
        woods=tuple(
            sorted(
                {board.species for board in job.boards if board.species and board.treatment is Treatment.NONE}
            )
        ),
        layers=tuple(dict.fromkeys(layer.what for surface in job.surfaces for layer in surface.between)),
        ceilings=tuple(surface.id for surface in job.surfaces if surface.kind is SurfaceKind.CEILING),
        unseen=tuple(surface.id for surface in job.surfaces if not surface.framing.opened),
        keep_outs=sum(len(surface.keep_outs) for surface in job.surfaces),
        tasks=tuple(task.name for task in job.tasks),
        nails_in=tuple(board.id for board in job.boards if board.nails is not NailsLeft.CHECKED),
        measured=bool(job.surfaces),
    )


def _lot(job: Known, boards: list[Board]) -> PaintedLot:
    known = next((lot for lot in job.lots if lot_key(lot.name) == boards[0].lot_key), None)
    paint = Paint.UNKNOWN if known is None else known.paint
    seen = [board for board in boards if shows_paint(words_of(board))]
    # Of a lot that is said to be unpainted only these boards are in doubt.
    face_nm2 = sum(board.face_area_nm2 for board in (seen if paint is Paint.NONE else boards))
    return PaintedLot(
        name=boards[0].lot or _NO_LOT,
        built=None if known is None else known.built,
        paint=paint,
        area=write_area(face_nm2, job.tape),
        face_ft2=face_nm2 / FOOT**2,
        seen=tuple(board.id for board in seen),
    )


def hazards_leaf(hazards: tuple[Hazard, ...]) -> Leaf:
    """Tell the hazards of a job.

    Parameters
    ----------
    hazards
        As found.
    """
    return Leaf(
        title="What can hurt you",
        headline=Said(
            "Read this before you pull, cut and nail. It is a reminder, and no advice that fits your "
            "building: local codes and licensed trades decide."
        ),
        parts=tuple(Part(title=hazard.what, said=hazard.said) for hazard in hazards),
    )
