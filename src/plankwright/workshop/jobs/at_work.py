"""A job that is worked on: whether its layout still fits, what is to be cut, and what is to be hung.

Working that out takes a second on a large job, and whoever steps from board to board asks for it at each
step. So it is kept for the next look, until anything about the job is another.
"""

import threading
from collections import OrderedDict
from collections.abc import Mapping
from functools import cached_property

from plankwright.model import NOTHING_DONE, Job, Standing
from plankwright.workshop.check_layout import check_layout
from plankwright.workshop.go_together import (
    BoardsMissingError,
    OtherLayoutError,
    SurfacesMissingError,
    demand_boards,
    demand_same_surfaces,
    work_on,
)
from plankwright.workshop.jobs.kept import KeptJob, KeptLayout
from plankwright.workshop.jobs.next_step import (
    BoardStep,
    SurfaceStep,
    boards_to_cut,
    surfaces_to_hang,
)
from plankwright.workshop.jobs.pieces_at_hand import PieceAtHand, pieces_at_hand
from plankwright.workshop.jobs.ports import Store
from plankwright.workshop.jobs.tally_boards import fingerprint
from plankwright.workshop.jobs.tell_waiting import tell_waiting
from plankwright.workshop.keep_left_over import LeftOver, gather_left_over
from plankwright.workshop.list_work import tell_marking
from plankwright.workshop.ports import Files
from plankwright.workshop.tell_work import found_since
from plankwright.workshop.wording import listed


class AtWork:
    """A job, the layout that it is worked by, and what is still to be done; each worked out when asked for.

    Parameters
    ----------
    job
        The job.
    by
        The layout that it is worked by.
    standing
        How far it has come.
    found
        Boards that were found since work began.
    """

    def __init__(
        self, job: Job, by: KeptLayout, standing: Standing = NOTHING_DONE, found: tuple[str, ...] = ()
    ) -> None:
        self.job, self.by, self.standing, self.found = job, by, standing, found

    @cached_property
    def faults(self) -> tuple[str, ...]:
        """Why the layout does not fit any more, in sentences; nothing when it may be worked by."""
        return tuple(map(str, check_layout(self.job, self.by.layout, self.standing).faults))

    @cached_property
    def hindrance(self) -> str:
        """Say why what is left cannot be laid out anew; empty when it can."""
        try:
            demand_boards(self.job, self.standing)
            demand_same_surfaces(self.job, self.by.layout)
        except BoardsMissingError as trouble:
            return f"{trouble}"
        except OtherLayoutError as trouble:
            laid = listed(trouble.laid) if trouble.laid else "no surface"
            return (
                f"The layout is of {laid}, but the job has {listed(trouble.asked)}: have all of it laid out "
                "anew. Once work has begun, what was added is laid out as a job of its own."
            )
        return ""

    @cached_property
    def boards(self) -> tuple[BoardStep, ...]:
        """The boards in the order in which they are cut."""
        return boards_to_cut(self.job, self.by.layout, self.standing)

    @cached_property
    def marking(self) -> tuple[str, ...]:
        """How a board is marked before it is cut, and where the blade goes, in sentences."""
        return tell_marking(self.job)

    @cached_property
    def damp(self) -> str:
        """Say that boards have to wait for the moisture of the room; empty when none is known to."""
        return tell_waiting(self.job, self.by.layout, self.standing)

    @cached_property
    def surfaces(self) -> tuple[SurfaceStep, ...]:
        """The surfaces, course by course."""
        return surfaces_to_hang(self.job, self.by.layout, self.standing)

    @cached_property
    def pieces(self) -> Mapping[str, PieceAtHand]:
        """The pieces that something can happen to, by what they go by in a form."""
        return pieces_at_hand(self.job, self.by.layout, self.standing)

    @cached_property
    def left_over(self) -> LeftOver:
        """What is left once all hangs."""
        return gather_left_over(self.job, self.by.layout, self.standing)

    @property
    def hung(self) -> int:
        """How many pieces hang."""
        return sum(len(row.course.pieces) for row in self.standing.hung)

    @property
    def all_hang(self) -> bool:
        """Whether every piece of the layout hangs."""
        return all(
            piece.label in self.standing.hung_labels(laid.surface_id)
            for laid in self.by.layout.surfaces
            for piece in laid.pieces
        )


class _Shelf:
    """Keeps what was worked out last, of a few jobs."""

    def __init__(self, most: int) -> None:
        self._most = most
        self._lock = threading.Lock()
        self._kept: OrderedDict[tuple[str, int, str], AtWork] = OrderedDict()

    def get(self, key: tuple[str, int, str]) -> AtWork | None:
        with self._lock:
            if key in self._kept:
                self._kept.move_to_end(key)
            return self._kept.get(key)

    def put(self, key: tuple[str, int, str], at_work: AtWork) -> None:
        with self._lock:
            self._kept[key] = at_work
            while len(self._kept) > self._most:
                self._kept.popitem(last=False)


_SHELF = _Shelf(most=8)


def at_work(kept: KeptJob, files: Files, store: Store) -> AtWork | None:
    """Give a job as it is worked on; nothing when there is no layout to work by.

    Parameters
    ----------
    kept
        The job.
    files, store
        Who reads its definition, and who keeps its layout.

    Raises
    ------
    BadInputError
        With every problem that keeps it from being a job.
    SurfacesMissingError
        If pieces hang on surfaces that it no longer has.
    """
    if kept.layout_id is None:
        return None
    key = kept.id, kept.layout_id, fingerprint((kept.definition, kept.boards, kept.work))
    known = _SHELF.get(key)
    if known is not None:
        return known
    job = files.read_definition(kept.definition, kept.boards).job
    work = work_on(job, kept.work)
    made = AtWork(job, store.layout(kept.id, kept.layout_id), work.standing, found_since(job, work))
    _SHELF.put(key, made)
    return made


__all__ = ["AtWork", "SurfacesMissingError", "at_work"]
