"""Filling by eye: how a careful carpenter covers a wall without a plan.

Course by course from the start side. For each the height is taken at which the boards at hand waste least;
each run is filled with the least wasteful board, pair or three that keeps the rules; what is cut off goes
back on the pile. Nothing is planned ahead but that no sliver is left at the end.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from benchmarks.fitting import CAREFUL, Care, Eye, Fitted
from plankwright.layout.capacity import capacity_of
from plankwright.layout.held_back import held_back
from plankwright.layout.plan import Plan, PlannedCourse, Stick
from plankwright.layout.reading import read_surface
from plankwright.layout.sticks import free_sticks, whole_sticks
from plankwright.layout.strips import Strips
from plankwright.layout.writing import write_surface
from plankwright.measure import Nm
from plankwright.model import Bound, Job, Layout

_BARE_PRICE = 20.0
"""Leaving bare counts for so much wasted wood of the same area."""

_HEIGHTS_SEEN = 16
"""So many heights are tried for a course: those that there is most wood for."""


@dataclass(frozen=True, slots=True)
class _Try:
    course: PlannedCourse
    left: list[Stick]
    shown: tuple[Nm, ...]
    figure: float


def lay_by_eye(job: Job, care: Care = CAREFUL) -> Layout:
    """Cover the surfaces of a job one after the other by eye.

    Parameters
    ----------
    job
        The job.
    care
        How waste is weighed.

    Returns
    -------
    Layout
        With score; what no board was found for is bare. Not yet checked.
    """
    capacity = capacity_of(job)
    spares = held_back(job.boards, job.rules, capacity)
    left = [
        stick
        for place, board in enumerate(job.boards)
        if board.id not in spares
        for stick in whole_sticks(board, place, job.rules, capacity)
    ]
    written = []
    for surface in job.surfaces:
        strips = Strips(surface, job.rules, capacity)
        plan, left = _cover(strips, left, care)
        written.append(write_surface(job, strips, plan, Bound()))
    return Layout(job_name=job.name, surfaces=tuple(written), effort="by eye")


def go_on_by_eye(job: Job, layout: Layout, hung: int, lost: str) -> Layout:
    """Cover by eye what is left of a job of one surface.

    Parameters
    ----------
    job, layout
        The job, and the layout that it was worked by.
    hung
        How many courses hang, from the start side on.
    lost
        A board that is no longer there.

    Returns
    -------
    Layout
        The hung courses, and those above them. Not yet checked.
    """
    (laid,) = layout.surfaces
    capacity = capacity_of(job)
    strips = Strips(job.surface(laid.surface_id), job.rules, capacity)
    below = read_surface(job, strips, laid)[:hung]
    stock = [
        stick
        for place, board in enumerate(job.boards)
        if board.id != lost
        for stick in whole_sticks(board, place, job.rules, capacity)
    ]
    plan, _ = _cover(strips, free_sticks(stock, below, job.rules), CAREFUL, below)
    return Layout(job_name=job.name, surfaces=(write_surface(job, strips, plan, Bound()),), effort="by eye")


def _cover(strips: Strips, sticks: list[Stick], care: Care, below: Plan = ()) -> tuple[Plan, list[Stick]]:
    courses: list[PlannedCourse] = list(below)
    low, left = (below[-1].high if below else strips.start), sticks
    near = _shown(strips, below[-1]) if below else ()
    while low < strips.must_end:
        best: _Try | None = None
        for height in _heights(strips, left, low):
            tried = _try(strips, left, (low, low + height), near, care)
            if best is None or tried.figure < best.figure:
                best = tried
        if best is None:
            break
        courses.append(best.course)
        low, near, left = best.course.high, best.shown, best.left
    return tuple(courses), left


def _heights(strips: Strips, sticks: Sequence[Stick], low: Nm) -> Iterator[Nm]:
    """Give the heights to try: widths of boards at hand, and what closes the surface. [nm]"""
    narrowest, rest = strips.rules.narrowest_course_nm, strips.may_end - low
    at_hand = Counter[Nm]()
    for stick in sticks:
        if stick.width >= narrowest:
            at_hand[stick.width] += stick.length
    widest = max(at_hand, default=0)
    if rest <= max(widest, narrowest) or not at_hand:
        yield rest
    ways = [width for width, _ in at_hand.most_common() if width == rest or rest - width >= narrowest]
    if ways:
        yield from ways[:_HEIGHTS_SEEN]
    elif rest > widest:
        yield rest // 2


def _try(strips: Strips, sticks: list[Stick], strip: tuple[Nm, Nm], near: Sequence[Nm], care: Care) -> _Try:
    low, high = strip
    left, price, bare = sticks, 0.0, 0
    fitted: list[Fitted] = []
    runs = strips.runs(low, high)
    for run in runs:
        found = Eye(run, high - low, near, strips.rules, care).fit(left)
        fitted.append(found)
        left, price = found.left, price + found.price
        bare += sum(end - start for start, end in found.bare)
    course = PlannedCourse(
        low,
        high,
        tuple(piece for found in fitted for piece in found.pieces),
        tuple(stretch for found in fitted for stretch in found.bare),
    )
    area = (high - low) * max(1, sum(run.length for run in runs))
    return _Try(course, left, _shown(strips, course), (price + _BARE_PRICE * bare * (high - low)) / area)


def _shown(strips: Strips, course: PlannedCourse) -> tuple[Nm, ...]:
    """Give the joints in sight of a course, along it. [nm]"""
    ends = {piece.end for piece in course.pieces}
    return tuple(
        piece.start
        for piece in course.pieces
        if piece.start in ends and not strips.hidden(piece.start, course.low, course.high)
    )
