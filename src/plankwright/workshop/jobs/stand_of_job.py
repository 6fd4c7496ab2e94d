"""How far a job has come, and what to do next."""

from dataclasses import dataclass

from plankwright.errors import Problem
from plankwright.workshop.jobs.kept import KeptJob, KeptLayout, KeptSearch
from plankwright.workshop.jobs.ports import Store
from plankwright.workshop.ports import DefinitionReading


@dataclass(frozen=True, slots=True, kw_only=True)
class StandOfJob:
    """How far a job has come.

    Parameters
    ----------
    boards, surfaces
        How many are measured.
    problems
        What is wrong, or not there yet.
    layout
        The layout that is worked by, if there is one.
    search
        The search that was begun last, if there was one.
    pieces, hung
        How many pieces it has, and how many of them hang.
    """

    boards: int
    surfaces: int
    problems: tuple[Problem, ...]
    layout: KeptLayout | None
    search: KeptSearch | None
    pieces: int
    hung: int

    @property
    def next(self) -> str:
        """The screen on which to go on."""
        if not self.boards:
            return "tally"
        if not self.surfaces:
            return "surfaces"
        if self.layout is None:
            return "layout"
        return "paper" if self.hung >= self.pieces else "hanging" if self.hung else "cutting"


def stand_of_job(kept: KeptJob, reading: DefinitionReading, store: Store) -> StandOfJob:
    """Say how far a job has come.

    Parameters
    ----------
    kept
        The job.
    reading
        What its definition says.
    store
        Who keeps its layout.
    """
    layout = None if kept.layout_id is None else store.layout(kept.id, kept.layout_id)
    hung = 0 if kept.work is None else sum(len(row.course.pieces) for row in kept.work.standing.hung)
    return StandOfJob(
        boards=len(kept.boards),
        surfaces=len(reading.surfaces),
        problems=reading.problems,
        layout=layout,
        search=store.last_search(kept.id),
        pieces=0 if layout is None else len(layout.layout.pieces),
        hung=hung,
    )
