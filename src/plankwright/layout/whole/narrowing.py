"""Fewer heights of courses: pieces of courses that are alike in height can take each other's places."""

from collections import Counter
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import replace

from plankwright.layout.rows import Stack
from plankwright.layout.whole.programme import Programme
from plankwright.measure import Nm

_FEW = (8, 7, 6, 5)
"""So many heights are kept at the most, one after the other."""

_LOST = 0.1
"""The commonest are not kept where ripping others down to them would lose more than this share."""


def narrowed(programme: Programme) -> Iterator[tuple[Nm, ...]]:
    """Keep a few heights: by turns the commonest, and those that others are ripped down to with least loss.

    In parts of boards any height will do, and a dozen or more are used; in whole boards, what is cut for a
    course that stands alone with its height cannot be hung anywhere else. Where boards come in a few widths
    those are found by what they cover; where nearly each has a width of its own no height covers much.

    Parameters
    ----------
    programme
        That counts its courses, as solved. Those that keep their places count where there are no others.

    Yields
    ------
    tuple of int
        In rising order. [nm]
    """
    covered = _covered(programme)
    for most in _FEW:
        common = [height for height, _ in covered.most_common(most)]
        if _lost(covered, sorted(covered), common) <= _LOST * covered.total():
            yield tuple(sorted(common))
        yield tuple(least_ripped(covered, most - 1))


def only(stack: Stack, kept: Collection[Nm]) -> Stack:
    """Give courses of some heights only; those that stay are as they were."""
    rows = (
        row
        if row.strip is not None
        else replace(row, heights=tuple(filter(set(kept).__contains__, row.heights)))
        for row in stack.rows
    )
    return replace(stack, rows=tuple(row for row in rows if row.heights))


def least_ripped(covered: Mapping[Nm, int], most: int) -> Sequence[Nm]:
    """Give the heights at which least is lost when each other is ripped down to the next lower of them.

    Parameters
    ----------
    covered
        What courses of each height cover; all of it is lost that is lower than any that is kept. [nm]
    most
        How many are kept at the most. Dynamic programming goes by the highest of them.

    Returns
    -------
    sequence of int
        In rising order. [nm]
    """
    heights = sorted(covered)
    # By the highest that is kept: what is lost of all lower ones, and what is kept.
    best: list[tuple[float, tuple[Nm, ...]]] = [
        (_lost(covered, heights[:place], ()), (height,)) for place, height in enumerate(heights)
    ]
    for _ in range(1, most):
        best = [
            min(
                best[place],
                *(
                    (lost + _lost(covered, heights[lower + 1 : place], kept), (*kept, height))
                    for lower, (lost, kept) in enumerate(best[:place])
                ),
                key=lambda choice: choice[0],
            )
            if place
            else best[place]
            for place, height in enumerate(heights)
        ]
    ends = (
        (lost + _lost(covered, heights[place + 1 :], kept), kept) for place, (lost, kept) in enumerate(best)
    )
    return min(ends, default=(0.0, ()))[1]


def _covered(programme: Programme) -> Counter[Nm]:
    """Give how much of the surface courses of each height cover. [nm]"""
    question, values = programme.question, programme.values
    covered = Counter[Nm]()
    for kind, column in programme.counts.items():
        if question.stack.fixed or question.row_of(kind).strip is None:
            height = question.course_heights[question.kinds[kind].height]
            covered[height] += round(values[column] * height)
    return +covered


def _lost(covered: Mapping[Nm, int], heights: Sequence[Nm], kept: Collection[Nm]) -> float:
    """Give what is lost of some heights when each is ripped to the highest kept one below. [nm]"""
    return sum(
        covered[height] * (1 - max((lower for lower in kept if lower <= height), default=0) / height)
        for height in heights
    )
