"""Courses told apart: from so many pieces of each kind of course to courses in their places."""

import random
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from plankwright.layout.butting import too_near
from plankwright.layout.choose import RowCuts
from plankwright.layout.plan import Plan, PlannedCourse, PlannedPiece
from plankwright.layout.rows import Stack
from plankwright.layout.sticks import cut_from
from plankwright.layout.strips import Strips
from plankwright.measure import Nm
from plankwright.model import JointPolicy

_Stretch = tuple[Nm, Nm]

_ORDERS_TRIED = 12
"""How often the order of courses within their bands is drawn anew."""


@dataclass(frozen=True, slots=True)
class _Loose:
    """A course that has its pieces but no place yet."""

    bands: tuple[int, int]
    height: Nm
    pieces: tuple[PlannedPiece, ...]
    bare: tuple[_Stretch, ...]


def courses_from(
    strips: Strips, stack: Stack, cuts: Sequence[RowCuts], *, grid: Nm, chance: random.Random
) -> Plan | None:
    """Put the courses of a choice in their places.

    Parameters
    ----------
    strips, stack
        The surface and the stretch of it.
    cuts
        The pieces, by kind of course.
    grid
        Step of heights. [nm]
    chance
        Breaks ties in the order of courses.

    Returns
    -------
    Plan or None
        Nothing when the courses as placed break a rule that their kind could not know of, such as a keep-out
        that leaves a joint no nail, or joints in sight that could not be staggered.
    """
    if stack.fixed:
        plan = tuple(
            _placed(loose, cut.row.strip[0], cut.height)
            for cut in sorted(cuts, key=lambda cut: cut.row.first_band)
            if cut.row.strip is not None
            for loose in _parted(cut, cut.height)
        )
        return plan if _sound(strips, plan, stack) else None
    loose = [course for cut in cuts for course in _parted(cut, cut.height // grid * grid)]
    for _ in range(_ORDERS_TRIED):
        plan = _stacked(strips, stack, loose, chance)
        if _sound(strips, plan, stack):
            return plan
    return None


def _parted(cut: RowCuts, height: Nm) -> list[_Loose]:
    """Part the pieces of a kind into its courses, by walking from place to place."""
    leaving: dict[Nm, list[PlannedPiece | _Stretch]] = defaultdict(list)
    for piece in cut.pieces:
        leaving[piece.start].append(piece)
    for stretch in cut.bare:
        leaving[stretch[0]].append(stretch)
    courses, given_up = [], cut.given_up
    least = max(1, height // 4)
    for index in range(cut.count):
        pieces, bare = [], []
        for run in cut.row.runs:
            at = run.start
            while at < run.end:
                step = leaving[at].pop()
                if isinstance(step, PlannedPiece):
                    pieces.append(step)
                    at = step.end
                else:
                    bare.append(step)
                    at = step[1]
        share = given_up if index == cut.count - 1 else min(given_up, height - least)
        given_up -= share
        bands = (cut.row.first_band, cut.row.last_band)
        courses.append(_Loose(bands, height - share, tuple(pieces), _merged(bare)))
    return courses


def _stacked(strips: Strips, stack: Stack, loose: Sequence[_Loose], chance: random.Random) -> Plan:
    """Stack courses from the start side, band by band.

    Within a band the next is one that keeps its joints in sight apart from those below, if there is one; the
    last course of all is ripped, or let reach under the trim, to end where the stretch ends.
    """
    left = sorted(loose, key=lambda course: (course.bands, course.height))
    courses: list[PlannedCourse] = []
    low = stack.low
    below = next((course for course in stack.beside if course.high == low), None)
    while left:
        here = [course for course in left if course.bands == left[0].bands]
        chance.shuffle(here)
        chosen = next((course for course in here if _staggered(strips, course, low, below)), here[0])
        left.remove(chosen)
        high = low + chosen.height
        if not left:
            high = min(max(high, stack.must_end), stack.may_end)
        below = _placed(chosen, low, high - low)
        courses.append(below)
        low = high
    return tuple(courses)


def _staggered(strips: Strips, course: _Loose, low: Nm, below: PlannedCourse | None) -> bool:
    """Whether a course could be the next without its joints in sight standing too near those below."""
    if below is None or strips.rules.joints is not JointPolicy.STAGGER:
        return True
    return not too_near(strips, below, _placed(course, low, course.height))


def _placed(course: _Loose, low: Nm, height: Nm) -> PlannedCourse:
    """Put a course in its place, and rip its pieces to the height that it has there."""
    pieces = []
    for piece in course.pieces:
        wood = piece.stick
        width = min(wood.width, height)
        part = cut_from(wood, wood.along_from, wood.length, wood.across_from, width)
        pieces.append(PlannedPiece(part, piece.start, piece.end))
    ordered = tuple(sorted(pieces, key=lambda piece: piece.start))
    return PlannedCourse(low, low + height, ordered, course.bare)


def _sound(strips: Strips, plan: Plan, stack: Stack) -> bool:
    """Whether courses as placed respect what depends on their exact places."""
    rules = strips.rules
    if any(course.height < rules.narrowest_course_nm for course in plan):
        return False
    if not all(_fits(strips, course) for course in plan):
        return False
    if rules.joints is not JointPolicy.STAGGER:
        return True
    every = sorted((*plan, *stack.beside), key=lambda course: course.low)
    return not any(
        lower.high == upper.low and too_near(strips, lower, upper) for lower, upper in pairwise(every)
    )


def _fits(strips: Strips, course: PlannedCourse) -> bool:
    """Whether the pieces of a course end only where runs end or joints may fall, and cover what they must."""
    ends: set[Nm] = set()
    covered = 0
    for run in strips.runs(course.low, course.high):
        ends |= {run.start, run.end, *(joint.at for joint in run.joints)}
        covered += run.length
    stretches = [(piece.start, piece.end) for piece in course.pieces] + list(course.bare)
    return sum(end - start for start, end in stretches) == covered and all(
        start in ends and end in ends for start, end in stretches
    )


def _merged(stretches: Sequence[_Stretch]) -> tuple[_Stretch, ...]:
    """Join bare stretches that touch."""
    merged: list[_Stretch] = []
    for start, end in sorted(stretches):
        if merged and merged[-1][1] == start:
            merged[-1] = (merged[-1][0], end)
        else:
            merged.append((start, end))
    return tuple(merged)
