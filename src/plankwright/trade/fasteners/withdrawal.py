"""How hard a nail is pulled out again."""

import math

_LBF_COEFFICIENT = 7850.0
_N_COEFFICIENT = 54.12
_DESIGN_LBF_COEFFICIENT = 1380.0
_EXPONENT = 2.5


def withdrawal_n(gravity: float, diameter_mm: float, bite_mm: float) -> float:
    """Give the load that pulls a bright common nail out of the side grain of seasoned wood.

    Parameters
    ----------
    gravity
        Specific gravity of the wood that holds the point: ovendry mass over volume at 12 % moisture.
    diameter_mm
        Of the nail. [mm]
    bite_mm
        How far it reaches into that wood. [mm]

    Returns
    -------
    float
        Ultimate load. [N]

    References
    ----------
    Wood Handbook, chapter 8; see `facts.WITHDRAWAL`.
    """
    return _N_COEFFICIENT * math.pow(gravity, _EXPONENT) * diameter_mm * bite_mm


def withdrawal_lbf(gravity: float, diameter_in: float, bite_in: float) -> float:
    """Give the same in pounds-force for a nail in inches, as the handbook states it apart."""
    return _LBF_COEFFICIENT * math.pow(gravity, _EXPONENT) * diameter_in * bite_in


def design_withdrawal_lbf(ovendry_gravity: float, diameter_in: float, bite_in: float) -> float:
    """Give the load that a nail is designed for, a fifth of the older ultimate load.

    Parameters
    ----------
    ovendry_gravity
        Specific gravity on ovendry mass and ovendry volume, which is not the one of `withdrawal_n`.
    diameter_in, bite_in
        [in]

    References
    ----------
    See `facts.SHARE_OF_ULTIMATE`.

    Examples
    --------
    >>> round(design_withdrawal_lbf(0.45, 0.203, 1.0))
    38
    """
    return _DESIGN_LBF_COEFFICIENT * math.pow(ovendry_gravity, _EXPONENT) * diameter_in * bite_in
