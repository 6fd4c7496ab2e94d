"""How far a job has come: what is measured, laid out, cut and hung, and what needs a look."""

from dataclasses import dataclass

from plankwright.errors import Problem
from plankwright.workshop.jobs.at_work import SurfacesMissingError, at_work
from plankwright.workshop.jobs.kept import KeptJob, KeptLayout, KeptSearch, SearchState
from plankwright.workshop.jobs.ports import Store
from plankwright.workshop.ports import Files

_NOT_YET = "is measured yet"
"""Ends what is no mistake, only still to come: it is told on the road and not among what needs a look."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StandOfJob:
    """How far a job has come.

    Parameters
    ----------
    boards
        How many are tallied.
    surfaces
        What those are called that are measured.
    problems
        What is wrong with what was measured; nothing can be laid out before it is mended.
    remarks
        What is doubtful about it.
    layout
        The layout that is worked by, if there is one.
    faults
        Why that layout fits no longer; empty when it does.
    search
        The search that was begun last, if there was one.
    pieces, cut, hung
        How many pieces the layout has; of those how many are cut, hung ones among them, and how many hang.
    begun
        Whether anything was cut, hung or lost.
    """

    boards: int
    surfaces: tuple[str, ...]
    problems: tuple[Problem, ...] = ()
    remarks: tuple[Problem, ...] = ()
    layout: KeptLayout | None = None
    faults: tuple[str, ...] = ()
    search: KeptSearch | None = None
    pieces: int = 0
    cut: int = 0
    hung: int = 0
    begun: bool = False

    @property
    def searching(self) -> KeptSearch | None:
        """The search that is under way, if there is one."""
        return self.search if self.search is not None and self.search.state is SearchState.RUNNING else None

    @property
    def in_vain(self) -> KeptSearch | None:
        """The search that was begun last, if it came to nothing and no layout was made since."""
        search = self.search
        if search is None or search.state not in {SearchState.FAILED, SearchState.CUT_OFF}:
            return None
        return None if self.layout is not None and self.layout.at > search.begun_at else search


def stand_of_job(kept: KeptJob, files: Files, store: Store) -> StandOfJob:
    """Say how far a job has come.

    Parameters
    ----------
    kept
        The job.
    files, store
        Who reads its definition, and who keeps its layout.
    """
    reading = files.read_definition(kept.definition, kept.boards)
    layout = None if kept.layout_id is None else store.layout(kept.id, kept.layout_id)
    cut, hung = _done(kept, layout)
    return StandOfJob(
        boards=len(kept.boards),
        surfaces=tuple(surface.id for surface in reading.surfaces),
        problems=tuple(found for found in reading.problems if not found.what.endswith(_NOT_YET)),
        remarks=reading.remarks,
        layout=layout,
        # What is no job any more is told of by its problems.
        faults=() if reading.problems else _faults(kept, files, store),
        search=store.last_search(kept.id),
        pieces=0 if layout is None else len(layout.layout.pieces),
        cut=cut,
        hung=hung,
        begun=kept.begun,
    )


def _faults(kept: KeptJob, files: Files, store: Store) -> tuple[str, ...]:
    """Say why a layout fits no longer."""
    try:
        at = at_work(kept, files, store)
    except SurfacesMissingError as trouble:
        return (str(trouble),)
    return () if at is None else at.faults


def _done(kept: KeptJob, layout: KeptLayout | None) -> tuple[int, int]:
    """Count the pieces of a layout that are cut, hung ones among them, and those that hang."""
    if kept.work is None or layout is None:
        return 0, 0
    standing = kept.work.standing
    hang = {(row.surface_id, piece.label) for row in standing.hung for piece in row.course.pieces}
    cut = hang | {cut.key for cut in standing.cut}
    pieces = {(part.surface_id, piece.label) for part in layout.layout.surfaces for piece in part.pieces}
    return len(cut & pieces), len(hang & pieces)
