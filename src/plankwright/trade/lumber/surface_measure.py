"""Surface measure: whole square feet a board, as random widths are tallied."""

from collections.abc import Iterable
from fractions import Fraction

from plankwright.measure import FOOT, INCH, Nm

_HALF = Fraction(1, 2)


def exact_surface_measure(width_nm: Nm, length_nm: Nm) -> Fraction:
    """Give the surface measure of a board before it is rounded.

    Parameters
    ----------
    width_nm
        With its fractions. [nm]
    length_nm
        Cut down to whole feet. [nm]

    Returns
    -------
    Fraction
        [square feet]

    References
    ----------
    See `facts.SURFACE_MEASURE`.
    """
    return Fraction(width_nm, INCH) * (length_nm // FOOT) / 12


def surface_measures(sizes: Iterable[tuple[Nm, Nm]]) -> tuple[int, ...]:
    """Give the surface measures of boards in the order in which they are tallied.

    Parameters
    ----------
    sizes
        Width and length of each. [nm]

    Returns
    -------
    tuple of int
        Rounded to the whole foot; one that ends in a half goes up the first time, down the next, and so on.
        [square feet]

    References
    ----------
    See `facts.HALVES`.

    Examples
    --------
    >>> surface_measures([(6 * INCH, 9 * FOOT)] * 3)
    (5, 4, 5)
    """
    measured: list[int] = []
    up = True
    for width_nm, length_nm in sizes:
        exact = exact_surface_measure(width_nm, length_nm)
        whole = exact.__floor__()
        rest = exact - whole
        if rest == _HALF:
            measured.append(whole + up)
            up = not up
        else:
            measured.append(whole + (rest > _HALF))
    return tuple(measured)
