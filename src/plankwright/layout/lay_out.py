"""From job to layout: a first layout, improved until proven best or the effort is spent, with its bound."""

import random
import time
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace

from plankwright.layout.bounds import bound as bound_of
from plankwright.layout.bounds import sharpened
from plankwright.layout.capacity import capacity_of
from plankwright.layout.corners import Unfolded, lay_flat
from plankwright.layout.first import build
from plankwright.layout.grid import grid_for
from plankwright.layout.held_back import held_back
from plankwright.layout.improve import Search, figure
from plankwright.layout.look import dress
from plankwright.layout.plan import Plan, Stick
from plankwright.layout.result import Effort, Progress, Result, Wanted, Watch
from plankwright.layout.short_runs import shortest_of_use
from plankwright.layout.sticks import free_sticks, whole_sticks
from plankwright.layout.strips import Strips
from plankwright.layout.wanted import Closing, close
from plankwright.layout.writing import write_surface
from plankwright.model import Board, Bound, Job, Layout, Score, SurfaceLayout

_BEGINNINGS = 24
"""How many first layouts are drawn at most."""

_BEGINNING_SHARE = 0.05
"""Share of the effort that they may take."""

_PACK_SHARE = 0.8
"""Share of the effort that choosing boards for given pieces may take."""

_WHOLE_SHARE = 0.1
"""Share of the effort that a look at the whole surface may take."""

_PATTERN_SHARE = 0.35
"""Share of the effort after which no further cover by patterns is begun."""

_LOOK_SHARE = 0.1
"""Share of the effort, besides, that making the best layout look better may take."""

_CLOSING_SHARE = 0.3
"""Share of the effort, besides, that looking for a shorter list of further boards may take."""

_LATE = 15.0
"""The clock stops a surface when it takes this many times its effort."""


def lay_out(job: Job, *, effort: Effort, seed: int = 0, watch: Watch | None = None) -> Result:
    """Lay out a job: which board goes where.

    Surfaces are served in their order; what one leaves of the pile is there for the next. Those that are
    linked are served together, as one.

    Parameters
    ----------
    job
        What to cover, with what, under which rules.
    effort
        How long to search.
    seed
        The same job, effort and seed give the same layout.
    watch
        Follows the search and may stop it; the best so far is given then.

    Returns
    -------
    Result
        The best layout found, whole or in part; when not whole, the boards that would close it.
    """
    watch = watch or Watch()
    capacity = capacity_of(job)
    spares = held_back(job.boards, job.rules, capacity)
    surfaces = lay_flat(job, capacity)
    shortest = shortest_of_use([wall.strips for each in surfaces for wall in each.walls], job.rules)
    stock = [
        stick
        for place, board in enumerate(job.boards)
        if board.id not in spares
        for stick in whole_sticks(board, place, job.rules, capacity, shortest=shortest)
    ]
    done: Plan = ()
    written: list[tuple[SurfaceLayout, ...]] = []
    searches: list[Search] = []
    for surface in surfaces:
        left = free_sticks(stock, done, job.rules)
        cut_into = frozenset(piece.stick.board for course in done for piece in course.pieces)
        usable = _usable(job, spares, cut_into, left)
        task = _SurfaceTask(job, surface, left, cut_into, usable, effort, watch)
        search, bounds = task.run(random.Random(f"{seed} {surface.id}"))  # noqa: S311 - chance, not secrecy
        written.append(tuple(map(_with_bound, _written(job, surface, search.plan), bounds)))
        searches.append(search)
        done += search.plan
    layout = Layout(job_name=job.name, surfaces=_in_order(job, written), seed=seed, effort=effort.name)
    closing = _ClosingJob(job, surfaces, stock, watch, _CLOSING_SHARE * effort.seconds)
    closing.close(searches, written)
    return Result(
        layout=layout,
        wanted=tuple(closing.wanted),
        closing=closing.closed(layout),
        held_back=spares,
        stopped=watch.stopped(),
    )


def _written(job: Job, surface: Unfolded, plan: Plan) -> tuple[SurfaceLayout, ...]:
    """Write down a plan of surfaces that are laid out together."""
    plans = zip(surface.walls, surface.fold(plan), strict=True)
    return tuple(write_surface(job, wall.strips, folded, Bound()) for wall, folded in plans)


def _in_order(job: Job, written: Sequence[tuple[SurfaceLayout, ...]]) -> tuple[SurfaceLayout, ...]:
    """Give the layouts in the order of the job."""
    by_id = {laid.surface_id: laid for together in written for laid in together}
    return tuple(by_id[surface.id] for surface in job.surfaces)


def _in_all(together: Sequence[SurfaceLayout]) -> tuple[Score, Bound]:
    """Add up what the layouts of some surfaces come to, and what none of each can beat."""
    scores, bounds = [laid.score for laid in together], [laid.bound for laid in together]
    return (
        Score(
            bare_nm2=sum(score.bare_nm2 for score in scores),
            joints_in_sight=sum(score.joints_in_sight for score in scores),
            wood_spent_nm2=sum(score.wood_spent_nm2 for score in scores),
            cuts=sum(score.cuts for score in scores),
        ),
        Bound(
            bare_nm2=sum(bound.bare_nm2 for bound in bounds),
            joints_in_sight=sum(bound.joints_in_sight for bound in bounds),
            wood_spent_nm2=sum(bound.wood_spent_nm2 for bound in bounds),
        ),
    )


def _usable(job: Job, spares: Sequence[str], cut_into: frozenset[int], left: Sequence[Stick]) -> list[Board]:
    """Give the boards that the bound of a surface counts on, given what the surfaces before it have taken.

    A board that is cut into counts as whole while an offcut worth keeping is left of it, so the bound holds,
    if loosely; a board of which only scrap is left no longer counts.
    """
    of_use = {stick.board for stick in left}
    return [
        board
        for place, board in enumerate(job.boards)
        if board.id not in spares and (place in of_use or place not in cut_into)
    ]


def _faces_left(boards: Sequence[Board], left: Sequence[Stick], cut_into: frozenset[int]) -> list[int]:
    """Give the face area of each board; of one that is cut into, what of it is left to be used. [nm²]"""
    areas = Counter[int]()
    for stick in left:
        areas[stick.board] += stick.length * stick.width
    return [areas[place] if place in cut_into else board.face_area_nm2 for place, board in enumerate(boards)]


class _ClosingJob:
    """The job with the boards that it would take to leave nothing bare."""

    def __init__(
        self, job: Job, surfaces: Sequence[Unfolded], stock: Sequence[Stick], watch: Watch, work: float
    ) -> None:
        self.job, self.surfaces, self.stock, self.watch, self.work = job, surfaces, stock, watch, work
        self.boards = list(job.boards)
        self.wanted: list[Wanted] = []
        self.written: list[tuple[SurfaceLayout, ...]] = []
        self.possible = True

    def close(self, searches: Sequence[Search], as_they_are: Sequence[tuple[SurfaceLayout, ...]]) -> None:
        """Close surface by surface, each with the wood that the others leave, closed already or as found."""
        plans = [search.plan for search in searches]
        for number, (search, as_it_is) in enumerate(zip(searches, as_they_are, strict=True)):
            if not any(course.bare for course in search.plan):
                self.written.append(as_it_is)
                continue
            others = tuple(course for plan in (*plans[:number], *plans[number + 1 :]) for course in plan)
            closing = self._close_one(
                number, search, free_sticks(self.stock, others, self.job.rules), as_it_is
            )
            if closing is None:
                self.possible = False
                return
            plans[number] = closing.plan

    def _close_one(
        self, number: int, search: Search, stock: Sequence[Stick], as_it_is: Sequence[SurfaceLayout]
    ) -> Closing | None:
        surface = self.surfaces[number]
        score, bound = _in_all(as_it_is)
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
            self.written.append(_written(with_boards, surface, closing.plan))
        return closing

    def closed(self, layout: Layout) -> tuple[Job, Layout] | None:
        """Give the job with those boards and its layout; nothing when none is wanted or none closes it."""
        if not self.wanted or not self.possible:
            return None
        job = replace(self.job, boards=tuple(self.boards))
        return job, replace(layout, surfaces=_in_order(job, self.written))


def _with_bound(layout: SurfaceLayout, bound: Bound) -> SurfaceLayout:
    """Keep the bound, cut down to the score: a layout that was found shows what can be had."""
    score = layout.score
    return replace(
        layout,
        bound=Bound(
            bare_nm2=min(bound.bare_nm2, score.bare_nm2),
            joints_in_sight=min(bound.joints_in_sight, score.joints_in_sight),
            wood_spent_nm2=min(bound.wood_spent_nm2, score.wood_spent_nm2),
        ),
    )


class _SurfaceTask:
    """The search for one surface, or for linked ones together."""

    def __init__(
        self,
        job: Job,
        surface: Unfolded,
        stock: Sequence[Stick],
        cut_into: frozenset[int],
        boards: Sequence[Board],
        effort: Effort,
        watch: Watch,
    ) -> None:
        self.job, self.surface, self.strips, self.stock = job, surface, surface.strips, stock
        self.cut_into, self.boards, self.watch = cut_into, boards, watch
        self.seconds = effort.seconds * len(surface.walls)
        self.bound = Bound()
        self.deadline = time.monotonic() + _LATE * self.seconds

    def run(self, chance: random.Random) -> tuple[Search, tuple[Bound, ...]]:
        """Search until proven best, spent or stopped; give what no layout of each surface can beat, too."""
        self._report("first layout", 0.0, None)
        search = Search(
            self.strips,
            self.stock,
            _faces_left(self.job.boards, self.stock, self.cut_into),
            grid_for(self.strips, self.stock, self.job.tape.system),
            chance,
            build(self.strips, self.stock, chance),
            self._over,
        )
        self._report("what no layout can beat", 0.0, search)
        self.bound = bound_of(self.strips, self.boards, self.job.rules)
        self._begin(search)
        work = self.seconds
        if self._open(search):
            search.repack(_PACK_SHARE * work)
            self.bound = self._sharpened(self.bound, self.strips, search)
        self._by_patterns(search)
        if self._open(search) and search.figure[:2] > (self.bound.bare_nm2, self.bound.joints_in_sight):
            self._report("the whole surface at once", search.spent / work, search)
            search.whole(_WHOLE_SHARE * work)
        while self._open(search):
            self._report("stretch by stretch", search.spent / work, search)
            search.step()
        self._dress(search, chance)
        bounds = tuple(self._bounds(search))
        self._report("done", 1.0, search)
        return search, bounds

    def _bounds(self, search: Search) -> Iterator[Bound]:
        """Give what no layout of each surface can beat, each of linked ones by itself with all boards."""
        if len(self.surface.walls) == 1:
            yield self.bound
            return
        for wall in self.surface.walls:
            known = bound_of(wall.strips, self.boards, self.job.rules)
            yield self._sharpened(known, wall.strips, search)

    def _sharpened(self, known: Bound, strips: Strips, search: Search) -> Bound:
        if search.prices is None:
            return known
        return sharpened(known, strips, self.boards, self.job.rules, search.prices)

    def _dress(self, search: Search, chance: random.Random) -> None:
        """Make the best plan look better; unless somebody stops that, only counted work ends it."""
        search.take(
            dress(
                self.job,
                self.strips,
                self.stock,
                search.faces,
                search.plan,
                chance,
                work=_LOOK_SHARE * self.seconds,
                over=self.watch.stopped,
            )
        )

    def _begin(self, search: Search) -> None:
        """Draw first layouts; one is enough when nothing can beat it."""
        for _ in range(_BEGINNINGS):
            if not self._open(search) or search.spent > _BEGINNING_SHARE * self.seconds:
                return
            search.begin_again()
            self._report("first layouts", search.spent / self.seconds, search)

    def _by_patterns(self, search: Search) -> None:
        """Cover the surface by patterns, until all of it is, for a share of the effort at the most."""
        share = _PATTERN_SHARE * self.seconds
        while self._open(search) and search.figure[0] and search.spent < share:
            self._report("by patterns", search.spent / self.seconds, search)
            if search.by_patterns() is None:
                return

    def _open(self, search: Search) -> bool:
        """Whether there is something left to gain, and time and leave to look for it."""
        bare, joints, wood = search.figure
        if self.cut_into:
            # The bound is on wood as the score counts it: as though nothing had been cut for other surfaces.
            whole = [board.face_area_nm2 for board in self.job.boards]
            *_, wood = figure(self.strips, self.stock, whole, search.plan)
        best = (
            bare <= self.bound.bare_nm2
            and joints <= self.bound.joints_in_sight
            and wood <= self.bound.wood_spent_nm2
        )
        return not (best or search.spent >= self.seconds or self._over())

    def _over(self) -> bool:
        """Whether the clock or somebody has stopped the search."""
        return time.monotonic() > self.deadline or self.watch.stopped()

    def _report(self, stage: str, done: float, search: Search | None) -> None:
        score = None
        if search is not None:
            bare, joints, wood = search.figure
            score = Score(bare_nm2=bare, joints_in_sight=joints, wood_spent_nm2=wood, cuts=0)
        self.watch.report(
            Progress(
                surface_id=self.surface.id, stage=stage, done=min(1.0, done), best=score, bound=self.bound
            )
        )
