"""What no layout can beat: the least bare area, the fewest joints in sight, the least wood.

Why these bounds hold is written out in docs/how-it-works.md. They are worked out in whole numbers from prices
that a linear programme finds: how good the prices are decides how high the bounds are, not whether they hold.
"""

from collections.abc import Callable, Sequence
from dataclasses import replace
from math import ceil, pi

from plankwright.layout.bound_lines import ROUNDING, gap_allowed, lines_of
from plankwright.layout.bound_market import Goal, Market
from plankwright.layout.bound_pieces import bound_on_pieces
from plankwright.layout.bound_programme import Programme
from plankwright.layout.bound_wood import usable_area
from plankwright.layout.packing import LengthPrices
from plankwright.layout.strips import Strips
from plankwright.model import Board, Bound, Rules


def bound(
    strips: Strips, boards: Sequence[Board], rules: Rules, stopped: Callable[[], bool] = lambda: False
) -> Bound:
    """Give what no layout of a surface can beat.

    Parameters
    ----------
    strips
        The surface.
    boards
        Those that may be used.
    rules
        What a layout must respect.
    stopped
        Asked now and then; once it says yes, what is proven so far is given.

    Returns
    -------
    Bound
        For layouts out of these boards that break no rule; gaps that count as none are allowed for.
    """
    gap = gap_allowed(rules)
    narrowest = rules.narrowest_course_nm - rules.width_tolerance_nm
    if min(narrowest, rules.shortest_piece_nm) <= gap + 4 * ROUNDING:
        return Bound()  # Courses or pieces so small could hide in gaps: nothing is sure.
    programme = Programme(Market(lines_of(strips), boards, rules), stopped)
    if programme.too_little():
        return _something_bare(strips, boards, rules)
    return Bound(
        joints_in_sight=ceil(programme.least(Goal.JOINTS)), wood_spent_nm2=ceil(programme.least(Goal.WOOD))
    )


def sharpened(
    known: Bound, strips: Strips, boards: Sequence[Board], rules: Rules, prices: Sequence[LengthPrices]
) -> Bound:
    """Raise a bound by what follows for pieces that cannot be jointed, counted whole.

    Parameters
    ----------
    known
        What is known already.
    strips, boards, rules
        The surface, the boards that may be used, and what a layout must respect.
    prices
        Of lengths of pieces, as a search has found them; any will do, good ones make the bound high.
    """
    if known.bare_nm2:
        return known
    pieces = bound_on_pieces(strips, boards, rules, prices)
    if pieces.bare_nm2:
        return _something_bare(strips, boards, rules)
    return replace(known, wood_spent_nm2=max(known.wood_spent_nm2, pieces.wood_spent_nm2))


def _something_bare(strips: Strips, boards: Sequence[Board], rules: Rules) -> Bound:
    """Give how much stays bare at the least where not everything can be covered."""
    # What stays bare holds a gap wider than the tolerance, so a disc as wide.
    disc = int(pi / 4 * rules.gap_tolerance_nm**2)
    to_cover = int(strips.must.area - strips.must.length * ROUNDING)
    return Bound(bare_nm2=max(1, disc, to_cover - usable_area(boards, rules)))
