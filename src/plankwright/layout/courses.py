"""Courses told apart: from so many pieces of each kind of course to courses in their places."""

import random
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from plankwright.layout.butting import can_butt, joints_of, match, too_near
from plankwright.layout.choose import RowCuts
from plankwright.layout.plan import Plan, PlannedCourse, PlannedPiece
from plankwright.layout.rows import Stack
from plankwright.layout.runs import Run
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
    rank: int = 0


def courses_from(
    strips: Strips,
    stack: Stack,
    cuts: Sequence[RowCuts],
    *,
    grid: Nm,
    chance: random.Random,
    like: Plan = (),
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
    like
        Courses whose order is kept where that will do.

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
            for loose in _parted(strips, cut, cut.height)
        )
        return plan if _sound(strips, plan, stack) else None
    loose = [course for cut in cuts for course in _parted(strips, cut, cut.height // grid * grid)]
    if like:
        plan = _stacked(strips, stack, _ranked(loose, like), None)
        if _sound(strips, plan, stack) and _meet(strips, plan):
            return plan
    for _ in range(_ORDERS_TRIED):
        plan = _stacked(strips, stack, loose, chance)
        if _sound(strips, plan, stack) and _meet(strips, plan):
            return plan
    return None


def _parted(strips: Strips, cut: RowCuts, height: Nm) -> list[_Loose]:
    """Part the pieces of a kind into its courses, by walking each from end to end."""
    pieces, bare = defaultdict(list), defaultdict(list)
    for piece in cut.pieces:
        pieces[piece.start].append(piece)
    for stretch in cut.bare:
        bare[stretch[0]].append(stretch)
    courses, given_up = [], cut.given_up
    for _ in range(cut.count):
        hung: list[PlannedPiece] = []
        left_bare: list[_Stretch] = []
        for run in cut.row.runs:
            at, after_piece = run.start, False
            while at < run.end:
                # A piece follows what is bare and what is bare a piece, as far as there are such, so
                # that no more pieces butt than were counted.
                after_piece = bool(pieces[at]) and not (after_piece and bare[at])
                if after_piece:
                    hung.append(pieces[at].pop())
                    at = hung[-1].end
                else:
                    left_bare.append(bare[at].pop())
                    at = left_bare[-1][1]
        share = min(given_up, max(0, height - strips.rules.narrowest_course_nm))
        given_up -= share
        bands = (cut.row.first_band, cut.row.last_band)
        courses.append(_Loose(bands, height - share, tuple(hung), _merged(left_bare)))
    return courses


def _ranked(loose: Sequence[_Loose], like: Plan) -> list[_Loose]:
    """Give each course the place of the one with most pieces in common with it, or else one that is free."""
    left = list(loose)
    ranked: list[_Loose] = []
    free: list[int] = []
    for rank, course in enumerate(like):
        shared = [len(_woods(course.pieces) & _woods(other.pieces)) for other in left]
        if any(shared):
            ranked.append(replace(left.pop(shared.index(max(shared))), rank=rank))
        else:
            free.append(rank)
    free += [len(like)] * len(left)
    return [*ranked, *(replace(course, rank=rank) for course, rank in zip(left, free, strict=False))]


def _woods(pieces: Sequence[PlannedPiece]) -> set[tuple[int, Nm, Nm]]:
    """Give the boards of pieces, with from where to where each reaches along its course."""
    return {(piece.stick.board, piece.start, piece.end) for piece in pieces}


def _stacked(strips: Strips, stack: Stack, loose: Sequence[_Loose], chance: random.Random | None) -> Plan:
    """Stack courses from the start side, band by band.

    Within a band the next is one that keeps its joints in sight apart from those below, if there is one: any
    such, or without chance the first by rank. The last course of all is ripped, or let reach under the trim,
    to end where the stretch ends.
    """
    left = sorted(loose, key=lambda course: (course.bands, course.height))
    courses: list[PlannedCourse] = []
    low = stack.low
    below = next((course for course in stack.beside if course.high == low), None)
    while left:
        here = [course for course in left if course.bands == left[0].bands]
        if chance is None:
            here.sort(key=lambda course: course.rank)
        else:
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
        width = min(wood.width, height) if wood.rippable else wood.width
        part = cut_from(wood, wood.along_from, wood.length, wood.across_from, width)
        pieces.append(PlannedPiece(part, piece.start, piece.end))
    ordered = tuple(sorted(pieces, key=lambda piece: piece.start))
    return PlannedCourse(low, low + height, ordered, course.bare)


def _sound(strips: Strips, plan: Plan, stack: Stack) -> bool:
    """Whether courses as placed respect what depends on their exact places."""
    rules = strips.rules
    if any(course.height < rules.narrowest_course_nm for course in plan):
        return False
    if not all(_fits(strips, course) and _wide_enough(course, rules.width_tolerance_nm) for course in plan):
        return False
    if rules.joints is not JointPolicy.STAGGER:
        return True
    every = sorted((*plan, *stack.beside), key=lambda course: course.low)
    return not any(
        lower.high == upper.low and too_near(strips, lower, upper) for lower, upper in pairwise(every)
    )


def _meet(strips: Strips, plan: Plan) -> bool:
    """Whether joints that are in sight where the courses come to lie may be, and their pieces match."""
    seen = any(not hidden for course in plan for _, hidden in joints_of(strips, course))
    return not (seen and strips.rules.joints is JointPolicy.NEVER) and all(
        match(strips, course) for course in plan
    )


def _fits(strips: Strips, course: PlannedCourse) -> bool:
    """Whether a course covers what its strip asks, and its pieces can butt where they do."""
    runs = strips.runs(course.low, course.high)
    blemished = [(piece.start, piece.end) for piece in course.pieces if piece.stick.hidden_only]
    stretches = [(piece.start, piece.end) for piece in course.pieces]
    covered = sum(end - start for start, end in (*stretches, *course.bare))
    return (
        covered == sum(run.length for run in runs)
        and all(any(_hangs(strips, run, *stretch) for run in runs) for stretch in stretches)
        and all(any(run.hides(*stretch) for run in runs) for stretch in blemished)
        and all(any(run.start <= start and end <= run.end for run in runs) for start, end in course.bare)
    )


def _wide_enough(course: PlannedCourse, tolerance: Nm) -> bool:
    """Whether the pieces of a course are as wide as it, or narrower by no more than the tolerance."""
    return all(0 <= course.height - piece.stick.width <= tolerance for piece in course.pieces)


def _hangs(strips: Strips, run: Run, start: Nm, end: Nm) -> bool:
    """Whether a piece lies in a run, and fills it alone or can butt where joints may fall."""
    places = {run.start, run.end, *(joint.at for joint in run.joints)}
    alone = (start, end) == (run.start, run.end)
    return {start, end} <= places and (alone or can_butt(start, end, run.nails, strips.rules))


def _merged(stretches: Sequence[_Stretch]) -> tuple[_Stretch, ...]:
    """Join bare stretches that touch."""
    merged: list[_Stretch] = []
    for start, end in sorted(stretches):
        if merged and merged[-1][1] == start:
            merged[-1] = (merged[-1][0], end)
        else:
            merged.append((start, end))
    return tuple(merged)
