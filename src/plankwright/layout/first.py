"""A first layout, within a moment: course by course from the start side, with a little chance.

Each course takes the height that wastes least wood for the area that it covers.
"""

import random
from collections.abc import Sequence

from plankwright.layout.butting import joints_near
from plankwright.layout.filling import fill_run
from plankwright.layout.plan import Plan, PlannedCourse, PlannedPiece, Stick
from plankwright.layout.sticks import without
from plankwright.layout.strips import Strips
from plankwright.measure import Nm
from plankwright.model import JointPolicy

_HEIGHTS_TRIED = 10
"""How many heights are tried for a course."""

_SPREADS = (0.0, 0.1, 0.3, 0.6)
"""By how much chance may change what a height counts for; one of these is drawn for each layout."""

_COURSE_PRICE = 0.02
"""Added to the share of a course that is wasted, so that chance also tells where nothing is."""


def build(strips: Strips, sticks: Sequence[Stick], chance: random.Random) -> Plan:
    """Lay out a whole surface once, from its start side.

    Parameters
    ----------
    strips
        The surface.
    sticks
        The wood at hand.
    chance
        Perturbs the choice of heights; the same state gives the same plan.

    Returns
    -------
    Plan
        Covers the surface from start to end; what no stick could cover is marked bare.
    """
    return extend(strips, sticks, (), chance)


def extend(strips: Strips, sticks: Sequence[Stick], below: Plan, chance: random.Random) -> Plan:
    """Lay out what is left of a surface above the courses given.

    Parameters
    ----------
    strips
        The surface.
    sticks
        The wood that the courses given have left.
    below
        Courses from the start side that stay as they are.
    chance
        Perturbs the choice of heights.

    Returns
    -------
    Plan
        The courses given, and those above them.
    """
    left, courses = list(sticks), list(below)
    low = below[-1].high if below else strips.start
    spread = chance.choice(_SPREADS)
    while low < strips.must_end:
        tried: list[tuple[float, PlannedCourse]] = []
        for height in _some(_heights(strips, left, low), chance):
            course, price = _course(strips, left, low, low + height, courses)
            area = height * max(1, sum(run.length for run in strips.runs(low, low + height)))
            figure = (price / area + _COURSE_PRICE) * (1 + spread * chance.random())
            tried.append((figure, course))
        _, best = min(tried, key=lambda option: option[0])
        courses.append(best)
        left = without(left, best, strips.rules)
        low = best.high
    return tuple(courses)


def _heights(strips: Strips, sticks: Sequence[Stick], low: Nm) -> list[Nm]:
    """Give the heights worth trying for the next course: the widths at hand, and what ends well."""
    narrowest = strips.rules.narrowest_course_nm
    widths = {stick.width for stick in sticks if stick.width >= narrowest}
    widest = max(widths, default=narrowest)
    remaining = strips.may_end - low
    wanted = {*widths, *strips.sawn, remaining, strips.must_end - low, remaining // 2, remaining // 3}
    for hole in strips.must_holes:
        wanted |= {hole.high - low, hole.low - low}
    if not widths:
        wanted |= {min(remaining, narrowest)}
    return sorted(
        height
        for height in wanted
        if narrowest <= height <= widest
        and low + height <= strips.may_end
        and (low + height >= strips.must_end or strips.may_end - low - height >= narrowest)
    ) or [remaining]


def _some(heights: list[Nm], chance: random.Random) -> list[Nm]:
    """Give a few of the heights, so that a layout takes a moment only."""
    return heights if len(heights) <= _HEIGHTS_TRIED else sorted(chance.sample(heights, _HEIGHTS_TRIED))


def _course(
    strips: Strips, sticks: Sequence[Stick], low: Nm, high: Nm, others: Sequence[PlannedCourse]
) -> tuple[PlannedCourse, float]:
    """Fill a strip as well as the sticks allow, and price it."""
    left: list[Stick] = list(sticks)
    pieces: list[PlannedPiece] = []
    bare: list[tuple[Nm, Nm]] = []
    price = 0.0
    near = joints_near(strips, low, high, others) if strips.rules.joints is JointPolicy.STAGGER else []
    for run in strips.runs(low, high):
        filled = fill_run(run, high - low, left, near, strips.rules)
        pieces.extend(filled.pieces)
        bare.extend(filled.bare)
        price += filled.price
        left = without(left, PlannedCourse(low, high, filled.pieces), strips.rules)
    return PlannedCourse(low, high, tuple(pieces), tuple(bare)), price
