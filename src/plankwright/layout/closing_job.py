"""The boards that it would take to leave nothing of a job bare, and the layout made with them."""

from collections.abc import Sequence
from dataclasses import replace

from plankwright.layout.corners import Unfolded
from plankwright.layout.grid import grid_for
from plankwright.layout.improve import Search
from plankwright.layout.one_surface import Laid, boards_of, faces_left
from plankwright.layout.plan import Stick
from plankwright.layout.result import Progress, Wanted, Watch
from plankwright.layout.sticks import free_sticks
from plankwright.layout.together import in_all, in_order, write_together
from plankwright.layout.wanted import Closing, close
from plankwright.model import Job, Layout, SurfaceLayout


class ClosingJob:
    """The job with the boards that it would take to leave nothing bare.

    Parameters
    ----------
    job, surfaces
        The job and its surfaces, those together that are linked.
    stock
        The wood before anything is cut.
    watch
        Who may stop it.
    work
        How long to look for little to ask for, for each surface. [s]

    Attributes
    ----------
    wanted
        The boards, as they are asked for.
    """

    def __init__(
        self, job: Job, surfaces: Sequence[Unfolded], stock: Sequence[Stick], watch: Watch, work: float
    ) -> None:
        self.job, self.surfaces, self.stock, self.watch, self.work = job, surfaces, stock, watch, work
        self.boards = list(job.boards)
        self.wanted: list[Wanted] = []
        self.written: list[tuple[SurfaceLayout, ...]] = []
        self.possible = True

    def close(self, laid: Sequence[Laid], as_they_are: Sequence[tuple[SurfaceLayout, ...]]) -> None:
        """Close surface by surface, each with the wood that the others leave, closed already or as found.

        Parameters
        ----------
        laid, as_they_are
            How each was laid out, and that written down.
        """
        plans = [each.plan for each in laid]
        for number, as_it_is in enumerate(as_they_are):
            if not any(course.bare for course in plans[number]):
                self.written.append(as_it_is)
                continue
            others = tuple(course for plan in (*plans[:number], *plans[number + 1 :]) for course in plan)
            left = free_sticks(self.stock, others, self.job.rules, plans[number])
            strips = self.surfaces[number].strips
            search = Search(
                strips,
                left,
                faces_left(self.job.boards, left, boards_of(others)),
                grid_for(strips, left, self.job.tape.system),
                laid[number].chance,
                plans[number],
            )
            closing = self._close_one(self.surfaces[number], search, left, as_it_is)
            if closing is None:
                self.possible = False
                return
            plans[number] = closing.plan

    def _close_one(
        self, surface: Unfolded, search: Search, stock: Sequence[Stick], as_it_is: Sequence[SurfaceLayout]
    ) -> Closing | None:
        score, bound = in_all(as_it_is)
        self.watch.report(
            Progress(surface_id=surface.id, stage="what would close it", done=1.0, best=score, bound=bound)
        )
        closing = close(
            search, stock, self.job.tape, len(self.boards), work=self.work, stopped=self.watch.stopped
        )
        if closing is not None:
            self.boards += [
                replace(board, id=f"wanted-{len(self.boards) - len(self.job.boards) + place}")
                for place, board in enumerate(closing.boards, start=1)
            ]
            self.wanted += closing.wanted
            with_boards = replace(self.job, boards=tuple(self.boards))
            self.written.append(write_together(with_boards, surface, closing.plan))
        return closing

    def closed(self, layout: Layout) -> tuple[Job, Layout] | None:
        """Give the job with those boards and its layout; nothing when none is wanted or none closes it."""
        if not self.wanted or not self.possible:
            return None
        job = replace(self.job, boards=tuple(self.boards))
        return job, replace(layout, surfaces=in_order(job, self.written))
