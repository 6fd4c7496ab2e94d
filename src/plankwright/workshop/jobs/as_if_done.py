"""What stays taken for hung, and what is left out for lost, so that the rest can be laid out around it."""

from collections.abc import Collection, Iterable
from dataclasses import replace

from plankwright.layout.parting import PieceKey
from plankwright.model import Job, Layout, Mark, MarkKind, SawnBoard, Standing, Work
from plankwright.workshop.mark_work import Happened, mark_work


def as_if_done(
    job: Job,
    layout: Layout,
    work: Work,
    *,
    staying: Collection[PieceKey],
    losing: Collection[PieceKey],
    without: Iterable[str],
) -> Work:
    """Mark what stays as hung, and what is left out as lost.

    Parameters
    ----------
    job, layout, work
        The job, a layout of it, and what was really marked.
    staying
        Surface and label of pieces that are taken for hung.
    losing
        Those of pieces whose wood others have taken.
    without
        Ids of boards that are taken for lost, as far as nothing is cut from them yet.
    """
    as_if = _without(work, tuple(without))
    there = _less(layout, losing)
    for laid in there.surfaces:
        labels = tuple(piece.label for piece in laid.pieces if (laid.surface_id, piece.label) in staying)
        if labels:
            hung = Happened(kind=MarkKind.HUNG, names=labels, surface_id=laid.surface_id)
            as_if = mark_work(job, there, as_if, hung)
    return as_if


def shimmed_as(standing: Standing, layout: Layout) -> Standing:
    """Give the same with everything that hangs shimmed as a layout has it."""
    shims = {
        (laid.surface_id, piece.label): piece.shim_nm for laid in layout.surfaces for piece in laid.pieces
    }
    rows = []
    for row in standing.hung:
        pieces = (
            replace(piece, shim_nm=shims.get((row.surface_id, piece.label), piece.shim_nm))
            for piece in row.course.pieces
        )
        rows.append(replace(row, course=replace(row.course, pieces=tuple(pieces))))
    return replace(standing, hung=tuple(rows))


def _without(work: Work, boards: tuple[str, ...]) -> Work:
    """Take what is left of boards for gone; of those that are whole still, each is as good as a spare."""
    if not boards:
        return work
    sawn = work.standing.sawn
    mark = Mark(
        kind=MarkKind.LOST,
        what=" ".join(boards),
        boards=tuple(SawnBoard(board_id=board_id) for board_id in boards),
        lost=tuple(board_id for board_id in boards if board_id not in sawn),
    )
    return work.marked(mark)


def _less(layout: Layout, keys: Collection[PieceKey]) -> Layout:
    return replace(
        layout,
        surfaces=tuple(
            replace(
                laid,
                courses=tuple(
                    replace(
                        course,
                        pieces=tuple(
                            piece for piece in course.pieces if (laid.surface_id, piece.label) not in keys
                        ),
                    )
                    for course in laid.courses
                ),
            )
            for laid in layout.surfaces
        ),
    )
