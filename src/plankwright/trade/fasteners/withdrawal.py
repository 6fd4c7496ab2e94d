"""How hard a nail is pulled out again."""

import math

_N_COEFFICIENT = 54.12
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
