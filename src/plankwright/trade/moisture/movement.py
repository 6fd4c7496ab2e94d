"""Shrinkage and swelling across the grain between two moistures."""

from plankwright.trade.moisture.facts import (
    COEFFICIENTS_FROM_PCT,
    COEFFICIENTS_TO_PCT,
    LONGITUDINAL_TOTAL_PCT,
    WATER_FULL_PCT,
)

_PER_CENT = 100.0


def change_by_coefficient(size: float, coefficient: float, from_pct: float, to_pct: float) -> float:
    """Give how far a size across the grain changes, by its coefficient.

    Parameters
    ----------
    size
        At the first moisture, in any unit.
    coefficient
        Radial or tangential. [per point of moisture]
    from_pct, to_pct
        Moistures, both within 6 to 14. [% of dry mass]

    Returns
    -------
    float
        More than nothing where it swells, in the unit of the size.

    Raises
    ------
    ValueError
        If a moisture lies outside the range of the coefficients.

    References
    ----------
    Wood Handbook, equation 13-2; see `facts.CHANGE`.
    """
    for moisture in (from_pct, to_pct):
        if not COEFFICIENTS_FROM_PCT <= moisture <= COEFFICIENTS_TO_PCT:
            held = f"{COEFFICIENTS_FROM_PCT:g} to {COEFFICIENTS_TO_PCT:g} %"
            raise ValueError(f"{moisture:g} % is outside the {held} that the coefficients hold for")
    return size * coefficient * (to_pct - from_pct)


def change_by_total(
    size: float,
    total_pct: float,
    from_pct: float,
    to_pct: float,
    saturation_pct: float = WATER_FULL_PCT.value,
) -> float:
    """Give how far a size across the grain changes, by its total shrinkage from green to ovendry.

    Parameters
    ----------
    size
        At the first moisture, in any unit.
    total_pct
        Total radial or tangential shrinkage. [% of the green size]
    from_pct, to_pct
        Moistures; above fibre saturation nothing moves. [% of dry mass]
    saturation_pct
        Fibre saturation. [% of dry mass]

    Returns
    -------
    float
        More than nothing where it swells, in the unit of the size.

    References
    ----------
    Wood Handbook, equation 13-3; see `facts.CHANGE_BEYOND`.

    Examples
    --------
    A board of 100 that shrinks by 7 % in all loses just that from green to ovendry:

    >>> change_by_total(100.0, 7.0, 30.0, 0.0)
    -7.0
    """
    start, end = min(from_pct, saturation_pct), min(to_pct, saturation_pct)
    return size * (end - start) / (saturation_pct * _PER_CENT / total_pct - saturation_pct + start)


def change_along(length: float, from_pct: float, to_pct: float) -> float:
    """Give how far a board may change along the grain, at most; boards with crooked grain move more.

    Parameters
    ----------
    length
        At the first moisture, in any unit.
    from_pct, to_pct
        Moistures. [% of dry mass]
    """
    return change_by_total(length, LONGITUDINAL_TOTAL_PCT.value, from_pct, to_pct)


def total_from_coefficient(coefficient: float, saturation_pct: float = WATER_FULL_PCT.value) -> float:
    """Give the total shrinkage that goes with a coefficient.

    Parameters
    ----------
    coefficient
        Radial or tangential. [per point of moisture]
    saturation_pct
        Fibre saturation. [% of dry mass]

    Returns
    -------
    float
        Total shrinkage from green to ovendry. [% of the green size]

    Notes
    -----
    A coefficient is the slope of equation 13-3 at 10 % moisture, C = 1 / (100 f / S - f + 10) with the fibre
    saturation f; this is that, solved for S.
    """
    return _PER_CENT * saturation_pct / (1 / coefficient + saturation_pct - 10.0)


def width_change(
    width: float,
    coefficient: float,
    from_pct: float,
    to_pct: float,
    *,
    total_pct: float | None = None,
    saturation_pct: float = WATER_FULL_PCT.value,
) -> float:
    """Give how far a width changes between any two moistures: by coefficient inside 6 to 14 %, else by total.

    Parameters
    ----------
    width
        At the first moisture, in any unit.
    coefficient
        Of the species. [per point of moisture]
    from_pct, to_pct
        Moistures. [% of dry mass]
    total_pct
        Its total shrinkage; computed from the coefficient when left out. [% of the green size]
    saturation_pct
        Fibre saturation of the species. [% of dry mass]

    Returns
    -------
    float
        More than nothing where it swells, in the unit of the width.
    """
    if within_coefficients(from_pct, to_pct):
        return change_by_coefficient(width, coefficient, from_pct, to_pct)
    total = total_from_coefficient(coefficient, saturation_pct) if total_pct is None else total_pct
    return change_by_total(width, total, from_pct, to_pct, saturation_pct)


def within_coefficients(*moistures_pct: float) -> bool:
    """Tell whether moistures lie where the coefficients hold, so that equation 13-2 is the one used."""
    return all(COEFFICIENTS_FROM_PCT <= one <= COEFFICIENTS_TO_PCT for one in moistures_pct)
