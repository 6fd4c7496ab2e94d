"""Courses in a row laid out anew at other heights, where no exchange of boards fills a hole."""

from collections.abc import Iterator, Sequence

from plankwright.layout.again.repair import PRICES, Repair, sorted_plan
from plankwright.layout.choose import Chooser
from plankwright.layout.courses import courses_from
from plankwright.layout.rows import free_stack
from plankwright.measure import Nm

_HEIGHTS = 5
"""How many heights beside those in use a stretch may choose from."""

_SIZES = (2, 3, 4, 6, 8, 12, 16)
"""How many courses in a row are looked at, one after the other."""

_WORK = 0.6
"""For one look. [deterministic seconds of the solver]"""


def reheight(repair: Repair) -> bool:
    """Fill holes by laying the courses round them out anew, at any heights. Whether none is left.

    Parameters
    ----------
    repair
        Holding the plan; it is given the better one.
    """
    for size in _SIZES:
        looked: set[tuple[int, int]] = set()
        for number in repair.holes:
            if repair.over:
                return False
            for first, last in _stretches(repair, number, size):
                if (first, last) not in looked:
                    looked.add((first, last))
                    if _look(repair, range(first, last + 1)):
                        if not repair.holes:
                            return True
                        break
    return not repair.holes


def _stretches(repair: Repair, number: int, size: int) -> Iterator[tuple[int, int]]:
    """Give stretches of so many courses about one, of which nothing hangs, as far as the surface is level."""
    free = {
        at
        for at, course in enumerate(repair.plan)
        if not any(piece in repair.hung for piece in course.pieces)
    }
    if number not in free:
        return
    first = last = number
    while first - 1 in free and number - first < size:
        first -= 1
    while last + 1 in free and last - number < size:
        last += 1
    starts = sorted({max(first, min(number - back, last - size + 1)) for back in range(size)})
    for start in starts:
        end = min(start + size - 1, last)
        low, high = repair.plan[start].low, repair.plan[end].high
        if start <= number <= end and repair.strips.level_between(low, high):
            yield start, end


def _look(repair: Repair, chosen: Sequence[int]) -> bool:
    courses = tuple(repair.plan[number] for number in chosen)
    beside = tuple(course for number, course in enumerate(repair.plan) if number not in chosen)
    sticks = repair.free(repair.loose(chosen))
    at_top = chosen[-1] == len(repair.plan) - 1
    ends = (repair.strips.must_end, repair.strips.may_end) if at_top else (courses[-1].high,) * 2
    stack = free_stack(
        repair.strips,
        _heights(repair, [stick.width for stick in sticks], [c.height for c in courses]),
        (courses[0].low, *ends),
        beside,
    )
    if not stack.rows:
        return False
    chooser = Chooser(
        repair.strips,
        sticks,
        stack,
        prices=PRICES,
        grid=repair.grid,
        bare_allowed=False,
        now=courses,
        terms=repair.terms,
    )
    choice = repair.solve(chooser, _WORK)
    if choice.cuts is None:
        return False
    found = courses_from(
        repair.strips, stack, choice.cuts, grid=repair.grid, chance=repair.chance, like=courses
    )
    return found is not None and repair.take(sorted_plan(iter((*beside, *found))))


def _heights(repair: Repair, widths: Sequence[Nm], used: Sequence[Nm]) -> list[Nm]:
    """Give the heights in use, and a few of the widths at hand."""
    narrowest = repair.strips.rules.narrowest_course_nm
    others = sorted({width for width in widths if width >= narrowest} - set(used))
    if len(others) > _HEIGHTS:
        others = repair.chance.sample(others, _HEIGHTS)
    return sorted({*used, *others})
