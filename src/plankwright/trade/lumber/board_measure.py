"""Board feet, one board at a time."""

from fractions import Fraction

from plankwright.measure import FOOT, INCH, Nm
from plankwright.trade.lumber.facts import CUBIC_METRES_PER_BOARD_FOOT, LEAST_THICKNESS_IN

_HUNDREDTHS = 100


def board_feet(thickness_nm: Nm, width_nm: Nm, length_nm: Nm) -> Fraction:
    """Give the board feet of a board, exactly.

    Parameters
    ----------
    thickness_nm
        Less than an inch counts as an inch. [nm]
    width_nm, length_nm
        [nm]

    Returns
    -------
    Fraction
        [board feet]

    References
    ----------
    See `facts.BOARD_FOOT`.

    Examples
    --------
    >>> round(float(board_feet(2 * INCH, 10 * INCH, 14 * FOOT)), 2)
    23.33
    """
    thickness = max(Fraction(thickness_nm, INCH), LEAST_THICKNESS_IN.value)
    return thickness * Fraction(width_nm, INCH) * Fraction(length_nm, FOOT) / 12


def to_hundredth(feet: Fraction) -> Fraction:
    """Round board feet as softwood is tallied: to the hundredth, halves up."""
    return Fraction((feet * _HUNDREDTHS + Fraction(1, 2)).__floor__(), _HUNDREDTHS)


def cubic_metres(feet: Fraction) -> Fraction:
    """Turn board feet into cubic metres. [m³]"""
    return feet * CUBIC_METRES_PER_BOARD_FOOT
