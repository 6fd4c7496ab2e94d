"""What no layout gets round: the clear wood that the boards hold, rounded up.

However the saw goes, every line along a board is cut into pieces with a kerf between them, so the wood is
counted as lines of some length, and for each length the width of board that holds such lines.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from plankwright.layout.bound_lines import ROUNDING, gap_allowed
from plankwright.layout.sticks import clear_runs, usable_width
from plankwright.measure import Nm
from plankwright.model import Board, Rules

_TAPER_STEPS = 4
"""Into how many strips the slant of a tapered board is parted."""

_WIDTHS = 12
"""More widths than this are counted as so many, each as the widest of its group."""


@dataclass(frozen=True, slots=True, order=True)
class Wood:
    """Lines of clear wood that are alike.

    Parameters
    ----------
    length
        Of each. [nm]
    widest
        No piece on them covers a greater height. [nm]
    """

    length: Nm
    widest: Nm


def wood_of(boards: Sequence[Board], rules: Rules, least: Nm) -> dict[Wood, Nm]:
    """Give what the boards hold for pieces of a least length.

    Parameters
    ----------
    boards
        Those that may be used.
    rules
        For what is lost at ends and edges, and for what pieces may fall short of the height that they cover.
    least
        No piece is shorter. [nm]

    Returns
    -------
    dict of Wood to Nm
        For each kind of line the height of wall that its pieces cover together, at the most. [nm]
    """
    heights: Counter[Wood] = Counter()
    for board in boards:
        for run in clear_runs(board, rules):
            for wood, height in _strips(board, run, rules):
                if wood.length >= least and height > 0:
                    heights[wood] += height
    return _in_groups(heights)


def usable_area(boards: Sequence[Board], rules: Rules) -> int:
    """Give the area of all clear wood, rounded up. [nm²]"""
    total = Fraction(0)
    for board in boards:
        for start, end in clear_runs(board, rules):
            narrow, wide = _widths(board, (start, end), rules)
            if wide > 0:
                total += Fraction((end - start) * (max(0, narrow) + wide), 2)
    return -(-total.numerator // total.denominator)


def _widths(board: Board, run: tuple[Nm, Nm], rules: Rules) -> tuple[Nm, Nm]:
    """Give how much of the width can be used at the narrow and at the wide end of a clear run. [nm]"""
    ends = [usable_width(board, (along, along), rules) for along in run]
    narrow, wide = sorted(high - low + 4 * ROUNDING for low, high in ends)
    return narrow, wide


def _strips(board: Board, run: tuple[Nm, Nm], rules: Rules) -> Iterator[tuple[Wood, Nm]]:
    narrow, wide = _widths(board, run, rules)
    least = max(1, rules.narrowest_course_nm - rules.width_tolerance_nm - 4 * ROUNDING)
    if wide < least:
        return
    # Each piece covers a gap more than its width; of that the rip between two on one board takes a share.
    gap = gap_allowed(rules)
    shared = min(gap, max(0, rules.rip_kerf_nm - ROUNDING))
    more = Fraction(least + gap, least + shared)
    length = run[1] - run[0]
    edges = [0, max(0, narrow)]
    if wide > edges[1]:
        edges += [narrow + (wide - narrow) * step // _TAPER_STEPS for step in range(1, _TAPER_STEPS + 1)]
        edges = sorted({max(0, edge) for edge in edges})
    for low, high in pairwise(edges):
        reach = length if low <= narrow else -(-length * (wide - low) // (wide - narrow))
        height = more * (high - low + (shared if low == 0 else 0))
        yield Wood(reach, wide + gap), -(-height.numerator // height.denominator)


def _in_groups(heights: dict[Wood, Nm]) -> dict[Wood, Nm]:
    widths = sorted({wood.widest for wood in heights})
    size = -(-len(widths) // _WIDTHS)
    widest = {
        width: widths[min(len(widths), place // size * size + size) - 1] for place, width in enumerate(widths)
    }
    grouped: Counter[Wood] = Counter()
    for wood, height in heights.items():
        grouped[Wood(wood.length, widest[wood.widest])] += height
    return dict(grouped)
