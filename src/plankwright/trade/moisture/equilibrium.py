"""Equilibrium moisture content: what moisture wood comes to in air of a temperature and humidity."""

_RESOLUTION_PCT = 1e-6
_FULL = 100.0

_W = (349.0, 1.29, 0.0135)
_K = (0.805, 0.000736, -0.00000273)
_K1 = (6.27, -0.00938, -0.000303)
_K2 = (1.91, 0.0407, -0.000293)
"""Polynomials in the temperature [°C] of the four parameters of the equation, constant term first."""


def equilibrium_pct(temperature_c: float, humidity_pct: float) -> float:
    """Give the equilibrium moisture content of wood.

    Parameters
    ----------
    temperature_c
        Of the air. [°C]
    humidity_pct
        Relative humidity of the air, 0 to 100. [%]

    Returns
    -------
    float
        [% of dry mass]

    Raises
    ------
    ValueError
        If the humidity is none.

    Notes
    -----
    The two-hydrate sorption equation, with coefficients for degrees Celsius; midway between taking up and
    giving off water, for wood of any species.

    References
    ----------
    Wood Handbook, equation 4-5; see `facts.EMC`.

    Examples
    --------
    >>> round(equilibrium_pct(20.0, 65.0), 1)
    12.0
    """
    if not 0.0 <= humidity_pct <= _FULL:
        raise ValueError(f"a relative humidity of {humidity_pct:g} % cannot be: it lies between 0 and 100")
    w, k, k1, k2 = (a + b * temperature_c + c * temperature_c**2 for a, b, c in (_W, _K, _K1, _K2))
    kh = k * humidity_pct / _FULL
    first = kh / (1 - kh)
    second = (k1 * kh + 2 * k1 * k2 * kh**2) / (1 + k1 * kh + k1 * k2 * kh**2)
    return 1800 / w * (first + second)


def humidity_for_pct(temperature_c: float, moisture_pct: float) -> float:
    """Give the humidity in which wood comes to a moisture content: the inverse of `equilibrium_pct`.

    Parameters
    ----------
    temperature_c
        Of the air. [°C]
    moisture_pct
        Of the wood. [% of dry mass]

    Returns
    -------
    float
        Relative humidity, 0 to 100; 100 for more moisture than air can give. [%]
    """
    low, high = 0.0, _FULL
    while high - low > _RESOLUTION_PCT:
        middle = (low + high) / 2
        if equilibrium_pct(temperature_c, middle) < moisture_pct:
            low = middle
        else:
            high = middle
    return high
