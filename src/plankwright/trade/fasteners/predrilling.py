"""How wide a hole is drilled for a nail near the end of an old board."""

import math

from plankwright.measure import SIXTY_FOURTH, Nm, round_down
from plankwright.trade.fasteners.facts import DENSE_GRAVITY, HOLE_SHARE, HOLE_SHARE_DENSE
from plankwright.trade.fasteners.nails import Nail


def widest_hole_nm(nail: Nail, gravity: float | None) -> Nm:
    """Give the widest hole that still lets a nail hold.

    Parameters
    ----------
    nail
        The nail.
    gravity
        Specific gravity of the board; nothing where it is not known, which counts as light.

    Returns
    -------
    int
        [nm]
    """
    dense = gravity is not None and gravity > DENSE_GRAVITY.value
    return math.floor(nail.diameter_nm * (HOLE_SHARE_DENSE if dense else HOLE_SHARE).value)


def drill_bit_nm(nail: Nail, gravity: float | None) -> Nm:
    """Give the widest drill bit of whole 64ths of an inch that makes no wider hole than that. [nm]"""
    return round_down(widest_hole_nm(nail, gravity), SIXTY_FOURTH)
