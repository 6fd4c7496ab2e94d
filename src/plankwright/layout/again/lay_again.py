"""Lay out what is left of a job in progress, with as little change as can be."""

import random
import sys
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from plankwright.layout.again.anew import ask_besides, lay_anew
from plankwright.layout.again.at_hand import AtHand, place_of, wood_at_hand
from plankwright.layout.again.carried import CarriedRow
from plankwright.layout.again.frames import FrameRow, frames_for
from plankwright.layout.again.keeping import kept_plan
from plankwright.layout.again.mending import cover, mend, restore
from plankwright.layout.again.reheighting import reheight
from plankwright.layout.again.repair import Repair, bare_area, before_of
from plankwright.layout.again.round_corners import carried_together
from plankwright.layout.capacity import capacity_of
from plankwright.layout.corners import LaidWall, Unfolded, moved
from plankwright.layout.grid import grid_for
from plankwright.layout.held_back import held_back
from plankwright.layout.labels import Naming
from plankwright.layout.plan import Place, Plan, PlannedPiece, Stick
from plankwright.layout.result import Effort, Progress, Result, Wanted, Watch
from plankwright.layout.short_runs import shortest_of_use
from plankwright.layout.writing import Done, write_surface
from plankwright.model import Bound, Direction, Job, Layout, Piece, Score, Standing, SurfaceLayout

_FRAMES = 4
"""In so many ways of following what hangs, those that keep most, holes are mended."""

_LOST = 1000
"""A piece that cannot stay costs as much as one that is changed."""

_CLOSING_SHARE = 0.3
"""Share of the effort, besides, that looking for further boards may take."""

_NOTHING_SHOWN = (sys.maxsize**2, 0)
"""Worse than any figure."""

_NO_SCORE = Score(bare_nm2=0, joints_in_sight=0, wood_spent_nm2=0, cuts=0)


def lay_again(
    job: Job,
    layout: Layout,
    standing: Standing,
    *,
    effort: Effort,
    seed: int = 0,
    watch: Watch | None = None,
    close: bool = True,
) -> Result:
    """Lay out what is left of a job.

    What hangs stays where it hangs. Of the rest whatever can stays as the layout has it; holes are filled
    with what changes least.

    Parameters
    ----------
    job
        The job, with the boards that were found since.
    layout
        The layout that it was worked by.
    standing
        How far it has come.
    effort
        How long to look at most; it ends as soon as all is covered.
    seed
        The same job, layout, standing, effort and seed give the same result.
    watch
        Follows the search and may stop it.
    close
        Whether further boards are to be asked for where something stays bare.

    Returns
    -------
    Result
        The best found. Of what no layout can beat nothing is claimed.
    """
    return _Again(job, layout, standing, effort, seed, watch or Watch()).result(close=close)


@dataclass(frozen=True, slots=True)
class _Way:
    """A way to follow what hangs: the courses as framed, the wood there is then, and what can stay."""

    frame: tuple[FrameRow, ...]
    at_hand: AtHand
    plan: Plan

    @property
    def kept(self) -> int:
        """How many pieces stay."""
        return sum(len(course.pieces) for course in self.plan)


class _Again:
    """The laying out of a job under way."""

    def __init__(
        self, job: Job, layout: Layout, standing: Standing, effort: Effort, seed: int, watch: Watch
    ) -> None:
        self.job, self.layout, self.standing = job, layout, standing
        self.effort, self.seed, self.watch = effort, seed, watch
        self.capacity = capacity_of(job)
        laid = {surface.surface_id: surface for surface in layout.surfaces}
        self.laid = {
            surface.id: laid.get(surface.id)
            or SurfaceLayout(surface_id=surface.id, courses=(), score=_NO_SCORE)
            for surface in job.surfaces
        }
        together = carried_together(job, self.laid, standing)
        self.surfaces: list[Unfolded] = [surface for surface, _ in together]
        self.rows: list[tuple[CarriedRow, ...]] = [rows for _, rows in together]
        walls = (wall.strips for surface in self.surfaces for wall in surface.walls)
        self.shortest = shortest_of_use(walls, job.rules)
        self.faces = [board.face_area_nm2 for board in job.boards]
        self.sawn = [place for place, board in enumerate(job.boards) if board.id in standing.sawn]
        self.repairs: dict[int, Repair] = {}
        self.shown: dict[int, tuple[int, int]] = {}

    def result(self, *, close: bool) -> Result:
        """Lay out surface by surface; spares are used only where nothing else will do."""
        spares = self._spares()
        plans = self._plans(spares)
        if spares and _bare(plans):
            without, repairs = plans, dict(self.repairs)
            plans = self._plans(())
            if _bare(plans) < _bare(without):
                spares = ()
            else:
                plans, self.repairs = without, repairs
        written: dict[str, SurfaceLayout] = {}
        for number, plan in enumerate(plans):
            written |= self._written(self.job, number, plan)
        layout = Layout(
            job_name=self.job.name, surfaces=self._in_order(written), seed=self.seed, effort=self.effort.name
        )
        wanted, closing = self._closed(plans, layout) if close else ((), None)
        return Result(
            layout=layout,
            wanted=wanted,
            closing=closing,
            held_back=spares,
            stopped=self.watch.stopped(),
        )

    def _closed(
        self, plans: Sequence[Plan], layout: Layout
    ) -> tuple[tuple[Wanted, ...], tuple[Job, Layout] | None]:
        """Give the boards that would close what is bare, and the layout made with them if one was."""
        boards, wanted, closed = list(self.job.boards), list[Wanted](), list(plans)
        written = {laid.surface_id: laid for laid in layout.surfaces}
        for number, plan in enumerate(plans):
            if not bare_area(plan):
                continue
            others = (other for at, each in enumerate(closed) if at != number for other in each)
            repair = replace(self.repairs[number], plan=plan, elsewhere=tuple(others))
            self._report(number, repair, "what would close it", 1.0)
            work = _CLOSING_SHARE * self.effort.seconds
            closing = ask_besides(repair, self.faces, self.job.tape, len(boards), work)
            if closing is None:
                return tuple(wanted), None
            at = len(boards) - len(self.job.boards) + 1
            boards += [
                replace(board, id=f"wanted-{place}") for place, board in enumerate(closing.boards, start=at)
            ]
            wanted += closing.wanted
            closed[number] = closing.plan
            with_boards = replace(self.job, boards=tuple(boards))
            written |= self._written(with_boards, number, closing.plan)
        whole = replace(layout, surfaces=self._in_order(written))
        if not wanted or not whole.covers_everything:
            return tuple(wanted), None
        return tuple(wanted), (replace(self.job, boards=tuple(boards)), whole)

    def _spares(self) -> tuple[str, ...]:
        """Choose the boards to hold back: those that are lost are what some were held back for."""
        used = {piece.board_id for piece in self.layout.pieces} | set(self.standing.sawn)
        whole = [board for board in self.job.boards if board.id not in used]
        count = max(0, self.job.rules.hold_back - len(self.standing.lost))
        return held_back(whole, replace(self.job.rules, hold_back=count), self.capacity)

    def _plans(self, spares: Sequence[str]) -> list[Plan]:
        plans: list[Plan] = []
        for number in range(len(self.rows)):
            plans.append(self._ways(number, spares, _wood(plans))[0].plan)
        for number in range(len(plans)):
            plans[number] = self._mended(number, spares, [*plans[:number], *plans[number + 1 :]])
            if _bare([plans[number]]) and plans[number + 1 :]:
                # What a later surface has planned and not hung may serve this one.
                first = self._mended(number, spares, plans[:number])
                if bare_area(first) < bare_area(plans[number]):
                    plans[number] = first
                    for later in range(number + 1, len(plans)):
                        plans[later] = self._ways(later, spares, _wood(plans[:later]))[0].plan
        return plans

    def _ways(self, number: int, spares: Sequence[str], taken: Sequence[Stick]) -> list[_Way]:
        """Give the ways to follow what hangs, the one first that keeps most."""
        ways = []
        surface = self.surfaces[number]
        for frame in frames_for(surface.strips, self.rows[number]):
            places = self._own_places(number, frame)
            at_hand = wood_at_hand(
                self.job, self.standing, self.capacity, spares, places, shortest=self.shortest
            )
            only_at = {stick: surface.laid(place) for stick, place in at_hand.only_at.items()}
            at_hand = replace(at_hand, only_at=only_at)
            ways.append(_Way(frame, at_hand, kept_plan(surface.strips, frame, at_hand, taken)))
        return sorted(ways, key=lambda way: (-way.kept, bare_area(way.plan)))

    def _own_places(self, number: int, frame: Sequence[FrameRow]) -> set[Place]:
        """Give where pieces in hand could still hang just as they were cut: their courses have not moved."""
        staying = {
            each.low
            for each in frame
            if each.row is not None and (each.row.planned.low, each.row.planned.high) == (each.low, each.high)
        }
        places = {place_of(self.job, cut) for cut in self.standing.cut}
        surface = self.surfaces[number]
        return {place for place in places if place[0] not in surface.ids or surface.laid(place)[3] in staying}

    def _mended(self, number: int, spares: Sequence[str], others: Sequence[Plan]) -> Plan:
        """Mend the holes of a surface with wood that others leave, in the way that changes least."""
        ways = self._ways(number, spares, _wood(others))
        best: tuple[tuple[int, int], Repair] | None = None
        for way in ways[:_FRAMES]:
            # What this way has lost beyond the best must be made up for by fewer changes.
            lost = _LOST * (ways[0].kept - way.kept)
            repair = self._repair(number, way, others)
            if best is not None and best[0] <= (0, lost + repair.least):
                continue
            self._report(number, repair, "what changes least")
            if not mend(repair):
                self._report(number, repair, "other heights")
                if not reheight(repair):
                    cover(repair)
            restore(repair)
            bare, cost = repair.figure
            if best is None or (bare, cost + lost) < best[0]:
                best = (bare, cost + lost), repair
        assert best is not None  # noqa: S101 - there is always a way
        repair = best[1]
        if repair.holes and not repair.over:
            self._report(number, repair, "all that does not hang")
            lay_anew(repair, self.faces)
            restore(repair)
        self.repairs[number] = repair
        self._report(number, repair, "done", 1.0)
        return repair.plan

    def _repair(self, number: int, way: _Way, others: Sequence[Plan]) -> Repair:
        strips = self.surfaces[number].strips
        return Repair(
            strips=strips,
            at_hand=way.at_hand,
            elsewhere=tuple(course for plan in others for course in plan),
            grid=grid_for(strips, way.at_hand.stock, self.job.tape.system),
            chance=random.Random(f"{self.seed} {strips.surface.id}"),  # noqa: S311 - chance, not secrecy
            plan=way.plan,
            hung=self._facts(number),
            before=before_of(way.plan, way.at_hand, self.sawn),
            work=self.effort.seconds,
            stopped=self.watch.stopped,
        )

    def _facts(self, number: int) -> dict[PlannedPiece, Piece]:
        return {piece: fact for row in self.rows[number] for piece, fact in row.facts.items()}

    def _written(self, job: Job, number: int, plan: Plan) -> dict[str, SurfaceLayout]:
        """Write down the plan of surfaces that are laid out together, by their ids."""
        surface, facts = self.surfaces[number], self._facts(number)
        begun = {
            piece: (course.from_nm, course.to_nm)
            for wall in surface.walls
            for course in self.standing.hung_on(wall.surface.id)
            for piece, fact in facts.items()
            if wall.holds(piece.start, piece.end) and fact in course.pieces
        }
        return {
            wall.surface.id: self._written_one(
                job,
                wall,
                folded,
                {
                    moved(piece, -wall.along): fact
                    for piece, fact in facts.items()
                    if wall.holds(piece.start, piece.end)
                },
            )
            for wall, folded in zip(surface.walls, surface.fold(plan, begun), strict=True)
        }

    def _written_one(
        self, job: Job, wall: LaidWall, plan: Plan, hung: Mapping[PlannedPiece, Piece]
    ) -> SurfaceLayout:
        surface_id = wall.surface.id
        done = Done(
            hung=hung,
            edges={
                course.from_nm: (course.from_nm, course.to_nm) for course in self.standing.hung_on(surface_id)
            },
            naming=Naming(
                in_hand={
                    cut.part: cut.piece.label for cut in self.standing.cut if cut.surface_id == surface_id
                },
                before=self.laid[surface_id].courses,
                upright=wall.surface.courses_run is Direction.VERTICAL,
            ),
            standing=self.standing,
        )
        return write_surface(job, wall.strips, plan, Bound(), done)

    def _in_order(self, written: Mapping[str, SurfaceLayout]) -> tuple[SurfaceLayout, ...]:
        """Give layouts in the order of the job."""
        return tuple(written[surface.id] for surface in self.job.surfaces)

    def _report(self, number: int, repair: Repair, stage: str, done: float | None = None) -> None:
        bare, joints = repair.figure[0], repair.joints(repair.plan)
        self.watch.report(
            Progress(
                surface_id=self.surfaces[number].id,
                stage=stage,
                done=min(1.0, repair.spent / repair.work) if done is None else done,
                best=Score(bare_nm2=bare, joints_in_sight=joints, wood_spent_nm2=0, cuts=0),
                bound=Bound(),
                laid=self._to_be_seen(number, repair),
            )
        )

    def _to_be_seen(self, number: int, repair: Repair) -> tuple[SurfaceLayout, ...]:
        """Write down the best so far, if somebody wants to see it and it is better than what was shown."""
        if not self.watch.sees or repair.figure >= self.shown.get(number, _NOTHING_SHOWN):
            return ()
        self.shown[number] = repair.figure
        return tuple(self._written(self.job, number, repair.plan).values())


def _bare(plans: Sequence[Plan]) -> int:
    return sum(map(bare_area, plans))


def _wood(plans: Sequence[Plan]) -> list[Stick]:
    return list(_each_stick(plans))


def _each_stick(plans: Sequence[Plan]) -> Iterator[Stick]:
    for plan in plans:
        for course in plan:
            for piece in course.pieces:
                yield piece.stick
