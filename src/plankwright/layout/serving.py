"""Serve the surfaces of a job with wood: where there is plenty, several at a time, side by side."""

import random
from collections.abc import Iterable, Sequence
from dataclasses import replace

from plankwright.layout.abreast import lay_abreast
from plankwright.layout.corners import Unfolded
from plankwright.layout.crew import Crew
from plankwright.layout.dealing import area_of, deal, served_together
from plankwright.layout.one_surface import Laid, Turn, boards_of, lay_surface
from plankwright.layout.plan import Plan, Stick
from plankwright.layout.result import Effort, Progress, Watch
from plankwright.layout.sticks import free_sticks
from plankwright.model import Job

_MENDING_SHARE = 0.5
"""Share of the effort, besides, that a surface may take to cover what its share of the wood left bare."""


class Serving:
    """The surfaces of a job, and how they are laid out so far.

    Parameters
    ----------
    job
        The job.
    surfaces
        Its surfaces, the most important first, those that are linked as one.
    stock
        The wood before anything is cut.
    spares
        Ids of the boards that are held back.
    effort
        How long to search for each surface.
    seed
        The same job, effort and seed give the same, whoever the crew is.
    watch
        Who follows it and may stop it.
    crew
        Who lays out what can be laid out side by side.
    """

    def __init__(
        self,
        job: Job,
        surfaces: Sequence[Unfolded],
        stock: Sequence[Stick],
        spares: Sequence[str],
        *,
        effort: Effort,
        seed: int,
        watch: Watch,
        crew: Crew,
    ) -> None:
        self.job, self.surfaces, self.stock, self.spares = job, surfaces, stock, frozenset(spares)
        self.effort, self.seed, self.watch, self.crew = effort, seed, watch, crew
        self.needs = [int(surface.strips.must.area) for surface in surfaces]
        self.laid: dict[int, Laid] = {}

    def serve(self) -> list[Laid]:
        """Lay out all surfaces, as many at a time as there is plenty of wood for.

        Returns
        -------
        list of Laid
            In the order of the job. Together they cut no wood twice.
        """
        waiting = list(range(len(self.surfaces)))
        while waiting:
            before = self._plan_of(self.laid)
            left = free_sticks(self.stock, before, self.job.rules)
            counted = self._usable(boards_of(before), left)
            count = served_together([self.needs[number] for number in waiting], area_of(left))
            now, waiting = waiting[:count], waiting[count:]
            self._lay_first(now, left, counted)
            if count > 1:
                self._mend(now, counted)
                waiting = sorted((*waiting, *self._put_first(now)))
        return [self.laid[number] for number in range(len(self.surfaces))]

    def _lay_first(self, now: Sequence[int], left: Sequence[Stick], counted: tuple[int, ...]) -> None:
        """Lay surfaces out with the wood that there is, dealt out to them where they are several."""
        cut_into = boards_of(self._plan_of(self.laid))
        chance = random.Random(f"{self.seed} {now[0]} dealt")  # noqa: S311 - chance, not secrecy
        shares = deal(left, [self.needs[number] for number in now], chance) if len(now) > 1 else [tuple(left)]
        turns = [
            Turn(
                number=number,
                stock=share,
                cut_into=cut_into,
                counted=counted,
                shared=len(now) > 1,
                seed=f"{self.seed} {self._id(number)}",
                work=self._work(number),
                seen=self.watch.sees,
            )
            for number, share in zip(now, shares, strict=True)
        ]
        self.laid |= self._shared_out(turns) if len(turns) > 1 else self._laid_abreast(turns[0])
        at_once = Watch(report=self.watch.report, stopped=lambda: True)
        for turn in turns:
            # What was not begun before somebody stopped it gets a first layout.
            if turn.number not in self.laid:
                self.laid[turn.number] = lay_surface(self.job, turn, at_once)

    def _laid_abreast(self, turn: Turn) -> dict[int, Laid]:
        """Lay out one surface; nothing when somebody stopped that before it was begun."""
        laid = lay_abreast(self.job, turn, self.effort.searches, self.crew, self.watch)
        if laid is None:
            return {}
        self._report_done(turn.number, laid)
        return {turn.number: laid}

    def _shared_out(self, turns: Sequence[Turn]) -> dict[int, Laid]:
        """Lay out several; those that were begun before somebody stopped it."""
        found: dict[int, Laid] = {}
        for place, laid in self.crew.share_out(lay_surface, self.job, turns, watch=self.watch):
            found[turns[place].number] = laid
            self._report_done(turns[place].number, laid)
        return found

    def _report_done(self, number: int, laid: Laid) -> None:
        self.watch.report(
            Progress(surface_id=self._id(number), stage="done", done=1.0, best=laid.best, bound=laid.bound)
        )

    def _mend(self, now: Sequence[int], counted: tuple[int, ...]) -> None:
        """Lay out further what its share left bare, with the wood that nobody has cut, dealt out anew."""
        bare = [number for number in now if self._hopes(number)]
        if not bare:
            return
        left = free_sticks(self.stock, self._plan_of(self.laid), self.job.rules)
        # What is left of its own boards is its own.
        own = {number: self.laid[number].boards for number in bare}
        common = [stick for stick in left if not any(stick.board in boards for boards in own.values())]
        chance = random.Random(f"{self.seed} {now[0]} mended")  # noqa: S311 - chance, not secrecy
        shares = deal(common, [self.laid[number].best.bare_nm2 for number in bare], chance)
        turns: list[Turn] = []
        for number, share in zip(bare, shares, strict=True):
            boards = own[number] | {stick.board for stick in share}
            turn = self._further(number, self._others([number]), "mended")
            turns.append(
                replace(
                    turn,
                    stock=tuple(stick for stick in turn.stock if stick.board in boards),
                    counted=counted,
                    shared=True,
                    work=_MENDING_SHARE * turn.work,
                )
            )
        self._keep_better(turns)

    def _put_first(self, now: Sequence[int]) -> list[int]:
        """Let what is still bare take wood from what comes after it, which is laid out anew then.

        Returns
        -------
        list of int
            The surfaces that lost wood.
        """
        again: list[int] = []
        for place, number in enumerate(now):
            later = [other for other in now[place + 1 :] if other in self.laid]
            if number in again or not later or not self._hopes(number):
                continue
            before = self.laid[number]
            self._keep_better([self._further(number, self._others([number, *later]), "put first")])
            if self.laid[number] is before:
                continue
            lost = [other for other in later if self.laid[other].boards & self.laid[number].boards]
            for other in lost:
                del self.laid[other]
            again += lost
        return again

    def _further(self, number: int, others: Plan, why: str) -> Turn:
        """Give a turn to go on from what is laid, with all that others leave."""
        plan = self.laid[number].plan
        left, cut_into = free_sticks(self.stock, others, self.job.rules, plan), boards_of(others)
        return Turn(
            number=number,
            stock=tuple(left),
            cut_into=cut_into,
            counted=self._usable(cut_into, left),
            shared=False,
            seed=f"{self.seed} {self._id(number)} {why}",
            work=self._work(number),
            plan=plan,
            seen=self.watch.sees,
        )

    def _keep_better(self, turns: Sequence[Turn]) -> None:
        for number, laid in self._shared_out(turns).items():
            if laid.best.bare_nm2 < self.laid[number].best.bare_nm2:
                self.laid[number] = laid

    def _hopes(self, number: int) -> bool:
        """Whether more of a surface might be covered, and nobody has stopped that."""
        laid = self.laid[number]
        return laid.best.bare_nm2 > laid.bound.bare_nm2 and not self.watch.stopped()

    def _others(self, but: Sequence[int]) -> Plan:
        return self._plan_of(number for number in self.laid if number not in but)

    def _plan_of(self, numbers: Iterable[int]) -> Plan:
        return tuple(course for number in sorted(numbers) for course in self.laid[number].plan)

    def _usable(self, cut_into: frozenset[int], left: Sequence[Stick]) -> tuple[int, ...]:
        """Give the boards that a bound counts on, given what is cut for other surfaces.

        A board that is cut into counts as whole while an offcut worth keeping is left of it, so the bound
        holds, if loosely; a board of which only scrap is left no longer counts.
        """
        of_use = {stick.board for stick in left}
        return tuple(
            place
            for place, board in enumerate(self.job.boards)
            if board.id not in self.spares and (place in of_use or place not in cut_into)
        )

    def _work(self, number: int) -> float:
        """Give how long to search for a surface, or for linked ones together. [s]"""
        return self.effort.seconds * len(self.surfaces[number].walls)

    def _id(self, number: int) -> str:
        return self.surfaces[number].id
