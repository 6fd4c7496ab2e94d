"""Count along while boards are tallied: how many courses they cover at a quick look, and what is short.

A quick look is a few first layouts. Where one covers everything there is enough; where none does, nothing is
proven: a search looks far longer, and often covers more.
"""

import random
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from functools import lru_cache
from statistics import median_low

from plankwright.layout.capacity import capacity_of
from plankwright.layout.corners import Unfolded, lay_flat
from plankwright.layout.first import build
from plankwright.layout.held_back import held_back
from plankwright.layout.plan import Plan, PlannedCourse, Stick
from plankwright.layout.short_runs import shortest_of_use
from plankwright.layout.sticks import free_sticks, whole_sticks
from plankwright.measure import Nm, TapeStyle, write_area
from plankwright.model import Job, Rules
from plankwright.workshop.wording import capital, counted, listed

_LOOKS = 3
"""So many first layouts are tried; each takes about a tenth of a second."""

_WORTH_TELLING = 0.1
"""What is short for a smaller share of what is bare is not told."""


class Short(StrEnum):
    """What a pile is short on, in the words of whoever looks for more of it."""

    WOOD = "wood altogether"
    LONG = "long boards"
    WIDE = "wide boards"
    CLEAN = "boards without blemishes"
    MATES = "boards alike in thickness and edge"
    FITTING = "boards that fit between the joints"


@dataclass(frozen=True, slots=True, kw_only=True)
class SurfaceCount:
    """How far the boards reach on a surface, or on linked ones together.

    Parameters
    ----------
    name
        What the user calls it.
    covered
        Courses that are covered from end to end.
    in_part
        Courses that are covered in part.
    courses
        How many courses it takes.
    about
        Whether that is a guess, from the courses that are there, since nothing reaches the last of them.
    """

    name: str
    covered: int
    in_part: int
    courses: int
    about: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class CourseCount:
    """How far the boards reach at a quick look.

    Parameters
    ----------
    surfaces
        In order of importance.
    bare_nm2
        What it leaves bare altogether. [nm²]
    short
        What is short, most of it first.
    untouched
        Boards that nothing is cut from.
    """

    surfaces: tuple[SurfaceCount, ...]
    bare_nm2: int
    short: tuple[Short, ...]
    untouched: int

    @property
    def enough(self) -> bool:
        """Whether everything is covered."""
        return not self.bare_nm2


@lru_cache(maxsize=8)
def count_courses(job: Job) -> CourseCount:
    """Count the courses that the boards of a job cover, at a quick look.

    Parameters
    ----------
    job
        The job. The same one gives the same count, and it is looked at once only.

    Returns
    -------
    CourseCount
        Of the best of a few first layouts.
    """
    capacity = capacity_of(job)
    surfaces = lay_flat(job, capacity)
    spares = held_back(job.boards, job.rules, capacity)
    shortest = shortest_of_use([wall.strips for each in surfaces for wall in each.walls], job.rules)
    stock = [
        stick
        for place, board in enumerate(job.boards)
        if board.id not in spares
        for stick in whole_sticks(board, place, job.rules, capacity, shortest=shortest)
    ]
    plans = _best_look(surfaces, stock, job.rules)
    used = {piece.stick.board for plan in plans for course in plan for piece in course.pieces}
    return CourseCount(
        surfaces=tuple(
            _counted(listed(surface.ids), plan, stock, job.rules)
            for surface, plan in zip(surfaces, plans, strict=True)
        ),
        bare_nm2=_bare_nm2(plans),
        short=_short(plans, stock, job.rules),
        untouched=len(job.boards) - len(used),
    )


def tell_count(count: CourseCount, tape: TapeStyle) -> tuple[str, ...]:
    """Say how far the boards reach.

    Parameters
    ----------
    count
        How far.
    tape
        How areas are written.

    Returns
    -------
    tuple of str
        First the answer, then what it is worth.
    """
    several = len(count.surfaces) > 1
    parts = [f"{each.name}: {_how_many(each)}" if several else _how_many(each) for each in count.surfaces]
    if count.enough:
        left = f"{counted(count.untouched, 'board')} to spare" if count.untouched else "no board to spare"
        return (
            f"Enough for {'; '.join(parts)}, with {left}.",
            "That is a quick look; the layout still finds which board goes where best.",
        )
    short = f", short on {listed([*count.short])}" if count.short else ""
    if not any(each.covered or each.in_part for each in count.surfaces):
        return (f"Nothing can be hung of these boards yet{short}.",)
    return (
        f"Enough for {'; '.join(parts)}{short}.",
        *(f"{capital(_in_part(each, several=several))}." for each in count.surfaces if each.in_part),
        f"At a quick look {write_area(count.bare_nm2, tape)} stays bare.",
        "That proves nothing yet: the layout decides, which looks far longer and often covers more.",
    )


def _how_many(count: SurfaceCount) -> str:
    if count.covered == count.courses:
        return f"all {count.courses} courses" if count.courses > 1 else "the one course"
    about = "about " if count.about else ""
    return f"{count.covered or 'none'} of {about}{count.courses} course{'' if count.courses == 1 else 's'}"


def _in_part(count: SurfaceCount, *, several: bool) -> str:
    where = f" of {count.name}" if several else ""
    verb = "is" if count.in_part == 1 else "are"
    return f"{counted(count.in_part, 'more course')}{where} {verb} covered in part"


def _best_look(surfaces: Sequence[Unfolded], stock: Sequence[Stick], rules: Rules) -> tuple[Plan, ...]:
    """Give the plans that leave least bare, each surface with the wood that those before it leave."""
    best: tuple[Plan, ...] | None = None
    for number in range(_LOOKS):
        chance = random.Random(f"look {number}")  # noqa: S311 - chance, not secrecy
        plans: tuple[Plan, ...] = ()
        for surface in surfaces:
            left = free_sticks(stock, _together(plans), rules)
            plans = (*plans, build(surface.strips, left, chance))
        if best is None or _bare_nm2(plans) < _bare_nm2(best):
            best = plans
        if not _bare_nm2(best):
            break
    return best or ()


def _together(plans: Iterable[Plan]) -> Plan:
    return tuple(course for plan in plans for course in plan)


def _bare_nm2(plans: Iterable[Plan]) -> int:
    return sum(course.bare_area for course in _together(plans))


def _counted(name: str, plan: Plan, stock: Sequence[Stick], rules: Rules) -> SurfaceCount:
    """Count the courses of a plan; how many its bare end would take follows from those below."""
    laid = [course for course in plan if course.pieces]
    empty = sum(course.height for course in plan if course.bare and not course.pieces)
    usual = [course.height for course in laid] or [stick.width for stick in stock]
    height = max(median_low(usual or [rules.narrowest_course_nm]), rules.narrowest_course_nm)
    missing = max(1, round(empty / height)) if empty else 0
    in_part = sum(1 for course in laid if course.bare)
    return SurfaceCount(
        name=name,
        covered=len(laid) - in_part,
        in_part=in_part,
        courses=len(laid) + missing,
        about=missing > 0,
    )


def _short(plans: Sequence[Plan], stock: Sequence[Stick], rules: Rules) -> tuple[Short, ...]:
    """Say what is short, from what is bare and what is left to cover it with."""
    bare = _bare_nm2(plans)
    if not bare:
        return ()
    left = free_sticks(stock, _together(plans), rules)
    areas: Counter[Short] = Counter()
    for course in _together(plans):
        for start, end, needed in _stretches(course, rules):
            why = _why(course.height, needed, bare, stock, left, rules)
            areas[why] += course.height * (end - start)
    return tuple(why for why, area in areas.most_common() if area >= _WORTH_TELLING * bare)


def _stretches(course: PlannedCourse, rules: Rules) -> Iterator[tuple[Nm, Nm, Nm]]:
    """Give what is bare of a course without a gap, and the shortest piece that would help there."""
    together: list[list[tuple[Nm, Nm]]] = []
    for start, end in course.bare:
        if together and together[-1][-1][1] == start:
            together[-1].append((start, end))
        else:
            together.append([(start, end)])
    for parts in together:
        whole = parts[-1][1] - parts[0][0]
        of_use = [end - start for start, end in parts if end - start >= rules.shortest_piece_nm]
        yield parts[0][0], parts[-1][1], min(of_use, default=whole)


def _why(
    height: Nm, length: Nm, bare_nm2: int, stock: Sequence[Stick], left: Sequence[Stick], rules: Rules
) -> Short:
    """Say why nothing covers a stretch: first what the whole pile lacks, then what is left of it."""
    for wood in (stock, left):
        if wood is left and sum(stick.length * stick.width for stick in left) < bare_nm2:
            return Short.WOOD
        wide = [stick for stick in wood if stick.makes(height, rules.width_tolerance_nm)]
        if not wide:
            return Short.WIDE if stock else Short.WOOD
        long = [stick for stick in wide if stick.length >= length]
        if not long:
            return Short.LONG
        if all(stick.hidden_only for stick in long):
            return Short.CLEAN
    sorts = {(stick.thickness, stick.profile) for stick in stock}
    return Short.MATES if len(sorts) > 1 else Short.FITTING
