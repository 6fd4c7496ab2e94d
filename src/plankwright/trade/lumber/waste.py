"""What waste means when wood is bought."""

from fractions import Fraction


def to_buy(needed: Fraction, waste: Fraction) -> Fraction:
    """Give how much is bought so that enough is left.

    Parameters
    ----------
    needed
        What has to be left, in any unit.
    waste
        Share of what is bought that is lost, less than 1.

    Returns
    -------
    Fraction
        In the unit of what is needed.

    Raises
    ------
    ValueError
        If all of it or more is lost.

    References
    ----------
    See `facts.WASTE`.

    Examples
    --------
    >>> round(to_buy(Fraction(100), Fraction(3, 10)))
    143
    """
    if not 0 <= waste < 1:
        raise ValueError(f"a waste of {float(waste):.0%} leaves nothing: it is less than all")
    return needed / (1 - waste)
