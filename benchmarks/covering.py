"""Cover a wall by chance with courses and joints that keep the rules, whatever wood that may take."""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from random import Random

from benchmarks.planting import Row
from plankwright.layout.butting import can_butt
from plankwright.layout.runs import Run
from plankwright.layout.strips import Strips
from plankwright.measure import INCH, Nm

_HIDDEN_WEIGHT = 4.0
"""How much more often a joint goes behind a fixture where there is one."""

_STUB: Nm = 24 * INCH
_STUB_WEIGHT = 0.3
"""Pieces shorter than that are drawn less often."""

_LEAST_CLOSING: Nm = 3 * INCH
"""The last course is no narrower."""


def cover(
    strips: Strips, widths: Sequence[Nm], longest: Nm, lots: Sequence[float], chance: Random
) -> tuple[Row, ...] | None:
    """Draw a cover of a wall.

    Parameters
    ----------
    strips
        The wall.
    widths
        Of the wood at hand, once straightened. The last course is ripped down from one of them. [nm]
    longest
        No piece is longer. [nm]
    lots
        Weight of each lot. All pieces of a run are from one.
    chance
        The same state gives the same cover.

    Returns
    -------
    tuple of Row or None
        From the start side on; nothing when chance has led to where there is no way on.
    """
    rows: list[Row] = []
    low = strips.start
    near: list[Nm] = []
    while low < strips.may_end:
        height = _height(strips, widths, low, chance)
        if height is None:
            return None
        ends: list[tuple[Nm, Nm]] = []
        drawn: list[int] = []
        shown: list[Nm] = []
        for run in strips.runs(low, low + height):
            parted = _parted(run, near, strips, longest, chance)
            if parted is None:
                return None
            ends += pairwise(parted)
            drawn += chance.choices(range(len(lots)), lots) * (len(parted) - 1)
            hidden = {joint.at for joint in run.joints if joint.hidden}
            shown += [at for at in parted[1:-1] if at not in hidden]
        width = min(width for width in widths if width >= height)
        rows.append(Row(low, low + height, tuple(ends), width, tuple(drawn)))
        low, near = low + height, shown
    return tuple(rows)


def _height(strips: Strips, widths: Sequence[Nm], low: Nm, chance: Random) -> Nm | None:
    """Draw a height that leaves no sliver beside an opening or at the end. [nm]"""
    rest = strips.may_end - low
    if rest <= max(widths) and _clear_of_holes(strips, low, strips.may_end):
        return rest if rest >= _LEAST_CLOSING else None
    fit = [
        width
        for width in widths
        if rest - width >= _LEAST_CLOSING and _clear_of_holes(strips, low, low + width)
    ]
    return chance.choice(fit) if fit else None


def _clear_of_holes(strips: Strips, low: Nm, high: Nm) -> bool:
    """Whether no notch leaves a strip that is narrower than any course."""
    least = strips.rules.narrowest_course_nm
    return all(
        not (low < edge < high) or (edge - low >= least and high - edge >= least)
        for hole in strips.holes
        for edge in (hole.low, hole.high)
    )


def _parted(
    run: Run, near: Sequence[Nm], strips: Strips, longest: Nm, chance: Random
) -> tuple[Nm, ...] | None:
    """Draw where the pieces of a run meet: its start, its joints and its end. [nm]"""
    rules = strips.rules
    places = [
        run.start,
        *(
            joint.at
            for joint in run.joints
            if joint.hidden or all(abs(joint.at - at) >= rules.stagger_nm for at in near)
        ),
        run.end,
    ]
    hidden = {joint.at for joint in run.joints if joint.hidden}
    last = len(places) - 1

    def onward(first: int) -> Iterator[int]:
        for then in range(first + 1, last + 1):
            start, end = places[first], places[then]
            alone = (first, then) == (0, last)
            if end - start <= longest and (alone or can_butt(start, end, run.nails, rules)):
                yield then

    leads = {last}
    for first in range(last - 1, -1, -1):
        if any(then in leads for then in onward(first)):
            leads.add(first)
    if 0 not in leads or run.barred:
        return None
    way = [0]
    while way[-1] != last:
        options = [then for then in onward(way[-1]) if then in leads]
        weights = [
            (_HIDDEN_WEIGHT if places[then] in hidden else 1.0)
            * (_STUB_WEIGHT if places[then] - places[way[-1]] < _STUB else 1.0)
            for then in options
        ]
        way += chance.choices(options, weights)
    return tuple(places[step] for step in way)
