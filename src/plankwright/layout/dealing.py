"""Deal the wood of a pile out, so that several surfaces can be laid out side by side, each by itself."""

import random
from bisect import bisect_right
from collections import defaultdict
from collections.abc import Sequence
from itertools import accumulate

from plankwright.layout.plan import Stick

PLENTY = 8
"""Surfaces share the wood where each gets so many times the area that it needs: more choice than that hardly
makes a layout better."""

AMPLE, FEW = 3, 4
"""With less choice so few share it where each gets so many times what it needs: then what the first ones show
in joints more, for want of choice, the last ones, which get what is left, show less."""


def served_together(needs: Sequence[int], wood: int) -> int:
    """Say how many surfaces may share the wood.

    Parameters
    ----------
    needs
        What each has to cover, the most important first. [nm²]
    wood
        What there is. [nm²]

    Returns
    -------
    int
        The first so many, and at least one: those that there is plenty for, or a few for which wood is ample.
    """
    plenty, ample = (
        bisect_right([times * need for need in accumulate(needs)], wood) for times in (PLENTY, AMPLE)
    )
    return max(1, plenty, min(ample, FEW))


def area_of(sticks: Sequence[Stick]) -> int:
    """Give the area of sticks. [nm²]"""
    return sum(stick.length * stick.width for stick in sticks)


def deal(
    sticks: Sequence[Stick], needs: Sequence[int], chance: random.Random
) -> tuple[tuple[Stick, ...], ...]:
    """Deal sticks out to surfaces, boards whole.

    Each gets boards of much the same width, as a course is as high as all its boards are wide; the first gets
    the widest. Among boards of one width chance decides, so that short and long ones, thick and thin ones are
    with all alike.

    Parameters
    ----------
    sticks
        What there is.
    needs
        What each surface has to cover: areas are dealt out in proportion. [nm²]
    chance
        The only source of chance: the same state gives the same.

    Returns
    -------
    tuple of tuple of Stick
        For each surface, in the order that they were in. Each stick is there once.
    """
    boards: dict[int, list[Stick]] = defaultdict(list)
    for stick in sticks:
        boards[stick.board].append(stick)
    drawn = chance.sample(sorted(boards), len(boards))
    drawn.sort(key=lambda board: max(stick.width for stick in boards[board]), reverse=True)
    ends, whole = list(accumulate(needs)), area_of(sticks)
    whose: dict[int, int] = {}
    dealt = 0
    for board in drawn:
        area = area_of(boards[board])
        # Whoever is to have the wood that the middle of the board lies in.
        middle = (2 * dealt + area) * ends[-1]
        whose[board] = min(bisect_right([2 * end * whole for end in ends], middle), len(needs) - 1)
        dealt += area
    return tuple(
        tuple(stick for stick in sticks if whose[stick.board] == number) for number in range(len(needs))
    )
