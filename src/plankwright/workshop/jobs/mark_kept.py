"""Mark what happened with a job that is kept, against the layout that it is worked by."""

from collections.abc import Iterable, Sequence
from dataclasses import replace

from plankwright.layout.parting import PieceKey
from plankwright.model import Job, Layout, Mark, MarkKind, Standing, Work, part_of
from plankwright.workshop.find_pieces import Found, find_pieces
from plankwright.workshop.jobs.kept import KeptJob, KeptLayout, StaleError
from plankwright.workshop.mark_work import Happened, MarkError, WoodGoneError, begin_work, mark_work
from plankwright.workshop.wording import listed

_OTHER_LAYOUT = (
    "The layout is another one since this was shown to you, so nothing was marked: look at what is to be "
    "done now, and mark it there."
)
_FEW = 3
"""So many labels are told one by one."""

_TOLD = {
    MarkKind.CUT: "cut",
    MarkKind.HUNG: "hung",
    MarkKind.BROKE: "broke",
    MarkKind.MISCUT: "cut wrong",
    MarkKind.DOWN: "taken down",
    MarkKind.LOST: "lost",
}


def mark_kept(kept: KeptJob, job: Job, by: KeptLayout, happened: Sequence[Happened]) -> KeptJob:
    """Mark what happened.

    Parameters
    ----------
    kept
        The job.
    job
        The same, as it is read.
    by
        The layout that was shown to whoever marks.
    happened
        One thing after another. What is marked already, as by a second tap or on another phone, is left out.

    Returns
    -------
    KeptJob
        The same with the marks.

    Raises
    ------
    StaleError
        If it is worked by another layout by now.
    MarkError, MeasureError
        If it cannot have happened.
    """
    if kept.layout_id != by.id:
        raise StaleError(_OTHER_LAYOUT)
    work = kept.work or begin_work(job)
    before = work
    for one in happened:
        work = _marked(job, by.layout, work, one)
    return kept if work is before else replace(kept, work=work)


def happened_to(kind: MarkKind, keys: Iterable[PieceKey]) -> tuple[Happened, ...]:
    """Say that something happened to pieces: of each surface at once, since a label is one of its surface."""
    by_surface: dict[str, list[str]] = {}
    for surface_id, label in keys:
        by_surface.setdefault(surface_id, []).append(label)
    return tuple(
        Happened(kind=kind, names=tuple(labels), surface_id=surface_id)
        for surface_id, labels in by_surface.items()
    )


def tell_happened(happened: Sequence[Happened], *, several: bool) -> str:
    """Say in a few words what happened, such as "1a and 1b hung".

    Parameters
    ----------
    happened
        What happened.
    several
        Whether the job has more surfaces than one, each with a piece 1a of its own.
    """
    return listed(
        [_tell(one, f" on {one.surface_id}" if several and one.surface_id else "") for one in happened]
    )


def _tell(happened: Happened, where: str) -> str:
    names = [f"course {name}" if name.isdecimal() else name for name in happened.names]
    which = listed(names) if len(names) <= _FEW else f"{names[0]} to {names[-1]}"
    if happened.measured is not None and happened.measured.edge_nm is not None:
        return f"{which}{where} hung as measured"
    board = "board " if happened.kind is MarkKind.LOST else ""
    return f"{board}{which}{where} {_TOLD[happened.kind]}"


def _marked(job: Job, layout: Layout, work: Work, happened: Happened) -> Work:
    rest = _still_to_mark(layout, work.standing, happened)
    if rest is None:
        return work
    try:
        return mark_work(job, layout, work, rest)
    except MarkError as trouble:
        if work.marks and _is_told_by(work.marks[-1], layout, rest):
            return work
        if isinstance(trouble, WoodGoneError):
            raise MarkError(
                f"{trouble.label} is laid out from wood of board {trouble.board_id} that is no longer there: "
                "have what is left laid out anew first."
            ) from trouble
        raise


def _is_told_by(mark: Mark, layout: Layout, happened: Happened) -> bool:
    """Tell whether a mark says just what happened, as after a second tap."""
    if (mark.kind, mark.what) != (happened.kind, " ".join(happened.names)):
        return False
    if happened.surface_id is None:
        return True
    touched = {board.board_id for board in mark.boards}
    keys = {*mark.gone, *(cut.key for cut in mark.cut)} | {
        (laid.surface_id, piece.label)
        for laid in layout.surfaces
        for piece in laid.pieces
        if piece.board_id in touched
    }
    return any((happened.surface_id, name) in keys for name in happened.names)


def _still_to_mark(layout: Layout, standing: Standing, happened: Happened) -> Happened | None:
    """Leave out pieces that are marked as cut or hung already; nothing when all of them are."""
    if happened.kind not in {MarkKind.CUT, MarkKind.HUNG} or happened.measured is not None:
        return happened
    try:
        found = find_pieces(layout, happened.names, happened.surface_id)
    except LookupError:
        return happened
    labels = [one.piece.label for one in found if not _is_marked(standing, one, happened.kind)]
    return replace(happened, names=tuple(labels)) if labels else None


def _is_marked(standing: Standing, one: Found, kind: MarkKind) -> bool:
    surface_id, label = one.key
    if label in standing.hung_labels(surface_id):
        return True
    return kind is MarkKind.CUT and any(
        cut.key == one.key and cut.part == part_of(one.piece) for cut in standing.cut
    )
