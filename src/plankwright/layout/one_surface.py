"""Lay out one surface, or linked ones as one, with the wood that is for it: a first layout, made better.

This is what runs in other processes and on other machines: it takes and gives plain values.
"""

import random
import time
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from plankwright.layout.bounds import bound as bound_of
from plankwright.layout.bounds import sharpened
from plankwright.layout.capacity import capacity_of
from plankwright.layout.corners import Unfolded, lay_one_flat
from plankwright.layout.figure import Figure, figure, ranked
from plankwright.layout.first import build
from plankwright.layout.grid import grid_for
from plankwright.layout.improve import Search
from plankwright.layout.look import dress
from plankwright.layout.plan import Plan, Stick
from plankwright.layout.result import Progress, Watch
from plankwright.layout.strips import Strips
from plankwright.layout.together import write_together
from plankwright.model import Board, Bound, Job, Score, SurfaceLayout

_BEGINNINGS = 24
"""How many first layouts are drawn at most."""

_BEGINNING_SHARE = 0.05
"""Share of the effort that they may take."""

_PACK_SHARE = 0.8
"""Share of the effort that choosing boards for given pieces may take."""

_WHOLE_SHARE = 0.1
"""Share of the effort that a look at the whole surface may take."""

_PATTERN_SHARE = 0.7
"""Share of the effort after which no further cover by patterns is begun."""

_LOOK_SHARE = 0.1
"""Share of the effort, besides, that making the best layout look better may take."""

_LATE = 15.0
"""The clock stops a surface when it takes this many times its effort."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Turn:
    """What a surface is laid out with.

    Parameters
    ----------
    number
        Its place among the surfaces of the job, those that are linked counted as one.
    stock
        The wood that it may use.
    cut_into
        Places in the tally of the boards that others are cut from already.
    counted
        Places in the tally of the boards that the bound counts on.
    shared
        Whether there is more wood than its stock at hand, but for others.
    seed
        All chance comes from it.
    work
        How long to search, in seconds of a common machine. [s]
    plan
        To go on from; nothing when it is laid out for the first time.
    seen
        Whether the best so far is to be told of as a layout.
    """

    number: int
    stock: tuple[Stick, ...]
    cut_into: frozenset[int]
    counted: tuple[int, ...]
    shared: bool
    seed: str
    work: float
    plan: Plan | None = None
    seen: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """What laying out a surface came to.

    Parameters
    ----------
    plan
        The best found.
    best
        What it comes to, but for its cuts.
    bound
        What no layout can beat out of the boards that it counts on.
    bounds
        The same for each surface by itself, where they are linked.
    chance
        As the search left it.
    """

    plan: Plan
    best: Score
    bound: Bound
    bounds: tuple[Bound, ...]
    chance: random.Random

    @property
    def boards(self) -> frozenset[int]:
        """Places in the tally of the boards that it is cut from."""
        return boards_of(self.plan)


def boards_of(plan: Plan) -> frozenset[int]:
    """Give the places in the tally of the boards that a plan is cut from."""
    return frozenset(piece.stick.board for course in plan for piece in course.pieces)


def lay_surface(job: Job, turn: Turn, watch: Watch) -> Laid:
    """Lay out a surface, until it is proven best, or its effort is spent, or somebody stops it.

    Parameters
    ----------
    job
        The job.
    turn
        Which surface, and what it is laid out with. The same turn gives the same.
    watch
        Follows the search and may stop it; the best so far is given then.
    """
    return _SurfaceTask(job, lay_one_flat(job, capacity_of(job), turn.number), turn, watch).run()


def faces_left(boards: Sequence[Board], left: Sequence[Stick], cut_into: frozenset[int]) -> list[int]:
    """Give the face area of each board; of one that is cut into, what of it is left to be used. [nm²]"""
    areas = Counter[int]()
    for stick in left:
        areas[stick.board] += stick.length * stick.width
    return [areas[place] if place in cut_into else board.face_area_nm2 for place, board in enumerate(boards)]


class _SurfaceTask:
    """The search for one surface, or for linked ones together."""

    def __init__(self, job: Job, surface: Unfolded, turn: Turn, watch: Watch) -> None:
        self.job, self.surface, self.strips = job, surface, surface.strips
        self.turn, self.watch = turn, watch
        self.bound = self.goal = Bound()
        self.deadline = time.monotonic() + _LATE * turn.work
        self.shown: Figure | None = None

    def run(self) -> Laid:
        """Search until proven best, spent or stopped."""
        self._report("first layout", 0.0, None)
        turn, chance = self.turn, random.Random(self.turn.seed)  # noqa: S311 - chance, not secrecy
        search = Search(
            self.strips,
            turn.stock,
            faces_left(self.job.boards, turn.stock, turn.cut_into),
            grid_for(self.strips, turn.stock, self.job.tape.system),
            chance,
            build(self.strips, turn.stock, chance) if turn.plan is None else turn.plan,
            self._over,
        )
        self._report("what no layout can beat", 0.0, search)
        self._find_bounds()
        self._begin(search)
        if self._open(search):
            search.repack(_PACK_SHARE * turn.work)
            self._sharpen_bounds(search)
        if self._open(search):
            search.join(_PACK_SHARE * turn.work)
        self._by_patterns(search)
        if self._open(search) and search.figure[:2] > (self.goal.bare_nm2, self.goal.joints_in_sight):
            self._report("the whole surface at once", search.spent / turn.work, search)
            search.whole(_WHOLE_SHARE * turn.work)
        while self._open(search):
            self._report("stretch by stretch", search.spent / turn.work, search)
            search.step()
        self._dress(search, chance)
        bounds = tuple(self._bounds(search))
        return Laid(plan=search.plan, best=_score(search), bound=self.bound, bounds=bounds, chance=chance)

    def _find_bounds(self) -> None:
        """Find what no layout can beat, and what none out of the stock can: the search ends there."""
        if self._over():
            return  # Nobody who has stopped a search waits for that.
        self.bound = self.goal = bound_of(self.strips, self._counted(), self.job.rules, self._over)
        if self.turn.shared:
            self.goal = bound_of(self.strips, self._own(), self.job.rules, self._over)

    def _sharpen_bounds(self, search: Search) -> None:
        self.bound = self._sharpened(self.bound, self.strips, self._counted(), search)
        shared = self.turn.shared
        self.goal = self._sharpened(self.goal, self.strips, self._own(), search) if shared else self.bound

    def _sharpened(self, known: Bound, strips: Strips, boards: Sequence[Board], search: Search) -> Bound:
        if search.prices is None:
            return known
        return sharpened(known, strips, boards, self.job.rules, search.prices)

    def _bounds(self, search: Search) -> Iterator[Bound]:
        """Give what no layout of each surface can beat, each of linked ones by itself with all boards."""
        if len(self.surface.walls) == 1:
            yield self.bound
            return
        for wall in self.surface.walls:
            if self._over():
                yield Bound()
                continue
            known = bound_of(wall.strips, self._counted(), self.job.rules, self._over)
            yield self._sharpened(known, wall.strips, self._counted(), search)

    def _counted(self) -> list[Board]:
        return [self.job.boards[place] for place in self.turn.counted]

    def _own(self) -> list[Board]:
        return [self.job.boards[place] for place in sorted({stick.board for stick in self.turn.stock})]

    def _dress(self, search: Search, chance: random.Random) -> None:
        """Make the best plan look better; unless somebody stops that, only counted work ends it."""
        search.take(
            dress(
                self.job,
                self.strips,
                self.turn.stock,
                search.faces,
                search.plan,
                chance,
                work=_LOOK_SHARE * self.turn.work,
                over=self.watch.stopped,
            )
        )

    def _begin(self, search: Search) -> None:
        """Draw first layouts; one is enough when nothing can beat it."""
        for _ in range(_BEGINNINGS):
            if not self._open(search) or search.spent > _BEGINNING_SHARE * self.turn.work:
                return
            search.begin_again()
            self._report("first layouts", search.spent / self.turn.work, search)

    def _by_patterns(self, search: Search) -> None:
        """Cover the surface by patterns, until all of it is, for a share of the effort at the most."""
        share = _PATTERN_SHARE * self.turn.work
        while self._open(search) and search.figure[0] and search.spent < share:
            self._report("by patterns", search.spent / self.turn.work, search)
            if search.by_patterns() is None:
                break
        if self._open(search) and search.figure[0]:
            search.nearly_by_patterns()

    def _open(self, search: Search) -> bool:
        """Whether there is something left to gain, and time and leave to look for it."""
        bare, joints, wood = search.figure
        if self.turn.cut_into:
            # The bound is on wood as the score counts it: as though nothing had been cut for other surfaces.
            whole = [board.face_area_nm2 for board in self.job.boards]
            *_, wood = figure(self.strips, self.turn.stock, whole, search.plan)
        best = (
            bare <= self.goal.bare_nm2
            and joints <= self.goal.joints_in_sight
            and wood <= self.goal.wood_spent_nm2
        )
        return not (best or search.spent >= self.turn.work or self._over())

    def _over(self) -> bool:
        """Whether the clock or somebody has stopped the search."""
        return time.monotonic() > self.deadline or self.watch.stopped()

    def _report(self, stage: str, done: float, search: Search | None) -> None:
        self.watch.report(
            Progress(
                surface_id=self.strips.surface.id,
                stage=stage,
                done=min(1.0, done),
                best=None if search is None else _score(search),
                bound=self.bound,
                laid=() if search is None else self._to_be_seen(search),
            )
        )

    def _to_be_seen(self, search: Search) -> tuple[SurfaceLayout, ...]:
        """Write down the best so far, if somebody wants to see it and it is better than what was shown."""
        if not self.turn.seen or (self.shown is not None and ranked(search.figure) >= ranked(self.shown)):
            return ()
        self.shown = search.figure
        return write_together(self.job, self.surface, search.plan)


def _score(search: Search) -> Score:
    bare, joints, wood = search.figure
    return Score(bare_nm2=bare, joints_in_sight=joints, wood_spent_nm2=wood, cuts=0)
