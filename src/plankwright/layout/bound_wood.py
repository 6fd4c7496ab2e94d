"""What no layout gets round: the clear wood that the boards hold, rounded up.

However the saw goes, every line along a board is cut into pieces with a kerf between them, so the wood is
counted as lines of some length, and for each length the width of board that holds such lines.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise
from math import ceil, floor

from plankwright.layout.bound_lines import ROUNDING, gap_allowed
from plankwright.layout.offcuts import clear_runs, usable_across
from plankwright.measure import Nm
from plankwright.model import Board, Rules

_TAPER_STEPS = 4
"""Into how many strips the slant of a tapered board is parted."""

SHARE = 2**20
"""Shares of a line are told in parts of it by this."""

_WIDTHS = 12
"""More widths than this are counted as so many, each as the widest of its group."""


@dataclass(frozen=True, slots=True)
class Wood:
    """Lines of clear wood that are alike.

    Parameters
    ----------
    length
        Of each. [nm]
    widest
        No piece on them covers a greater height of wall. [nm]
    lost
        Shared out over the lines of a board, what is lost of it besides once it is cut into. [nm]
    share
        How much of a line is wood rather than gap, in parts of it by `SHARE`.
    height
        The height of wall that pieces side by side on all such lines cover together, at the most. [nm]
    """

    length: Nm
    widest: Nm
    lost: Nm
    share: int
    height: Nm


def wood_of(boards: Sequence[Board], rules: Rules, least: Nm) -> tuple[Wood, ...]:
    """Give what the boards hold for pieces of a least length.

    Parameters
    ----------
    boards
        Those that may be used.
    rules
        For what is lost at ends and edges, and for the gaps that count as none.
    least
        No piece is shorter. [nm]

    Returns
    -------
    tuple of Wood
        Each kind once, in order.
    """
    found = [
        wood
        for board in boards
        for wood in _lines_of(board, rules)
        if wood.length >= least and wood.height > 0
    ]
    return _alike(_in_groups(found))


def usable_area(boards: Sequence[Board], rules: Rules) -> int:
    """Give the area of all clear wood, rounded up. [nm²]"""
    total = sum(_trapezoid(board, run, rules) for board in boards for run in clear_runs(board, rules))
    return -(-total // 2)


def narrowest_piece(rules: Rules) -> Nm:
    """Give the least width of a piece. [nm]"""
    return rules.narrowest_course_nm - rules.width_tolerance_nm - 4 * ROUNDING


def _trapezoid(board: Board, run: tuple[Nm, Nm], rules: Rules) -> int:
    """Give twice the usable area of a clear run. [nm²]"""
    narrow, wide = widths(board, run, rules)
    return (run[1] - run[0] + 16 * ROUNDING) * (max(0, narrow) + max(0, wide))


def widths(board: Board, run: tuple[Nm, Nm], rules: Rules) -> tuple[Nm, Nm]:
    """Give how much of the width can be used at the narrow and at the wide end of a clear run. [nm]"""
    ends = [usable_across(board, rules, (along, along)) for along in run]
    narrow, wide = sorted(high - low + 4 * ROUNDING for low, high in ends)
    return narrow, wide


def _lines_of(board: Board, rules: Rules) -> Iterator[Wood]:
    # Each piece covers a gap more than its width; of that the rip between two on one board takes a share.
    gap, least = gap_allowed(rules), narrowest_piece(rules)
    shared = min(gap, max(0, rules.rip_kerf_nm - ROUNDING))
    more = Fraction(least + gap, least + shared)
    runs = [run for run in clear_runs(board, rules) if widths(board, run, rules)[1] >= least]
    usable = -(-sum(_trapezoid(board, run, rules) for run in runs) // 2)
    covered = sum(ceil(more * (widths(board, run, rules)[1] + shared)) for run in runs)
    for run in runs:
        narrow, wide = widths(board, run, rules)
        # Where a board tapers to almost nothing, what is cut off its tip is not counted as spent.
        share = 0 if narrow < least else floor(Fraction(SHARE * narrow, narrow + shared) / more)
        lost = max(0, board.face_area_nm2 - usable) // covered
        for length, low, high in _strips(board, run, rules):
            height = ceil(more * (high - low + (shared if low == 0 else 0)))
            yield Wood(length, wide + gap, lost, share, height)


def _strips(board: Board, run: tuple[Nm, Nm], rules: Rules) -> Iterator[tuple[Nm, Nm, Nm]]:
    """Part a clear run lengthwise: the longest line of each strip, and from where to where it lies across."""
    length, (narrow, wide) = run[1] - run[0], widths(board, run, rules)
    slant = [narrow + (wide - narrow) * step // _TAPER_STEPS for step in range(_TAPER_STEPS + 1)]
    for low, high in pairwise(sorted({0, *(max(0, edge) for edge in slant)})):
        yield length if low <= narrow else -(-length * (wide - low) // (wide - narrow)), low, high


def _in_groups(found: Sequence[Wood]) -> list[Wood]:
    widths = sorted({wood.widest for wood in found})
    size = -(-len(widths) // _WIDTHS)
    groups = [widths[start : start + size] for start in range(0, len(widths), size or 1)]
    widest = {width: group[-1] for group in groups for width in group}
    return [replace(wood, widest=widest[wood.widest]) for wood in found]


def _alike(found: Sequence[Wood]) -> tuple[Wood, ...]:
    heights: Counter[tuple[Nm, Nm, Nm, int]] = Counter()
    for wood in found:
        heights[wood.length, wood.widest, wood.lost, wood.share] += wood.height
    return tuple(Wood(*kind, heights[kind]) for kind in sorted(heights))
