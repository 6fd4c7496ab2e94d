"""Equilibrium moisture content: what moisture wood comes to in air of a temperature and humidity."""

from typing import NamedTuple

_RESOLUTION_PCT = 1e-6
_FULL = 100.0


class _Set(NamedTuple):
    """Polynomials in the temperature of the four parameters of the equation, constant term first."""

    w: tuple[float, float, float]
    k: tuple[float, float, float]
    k1: tuple[float, float, float]
    k2: tuple[float, float, float]


_CELSIUS = _Set(
    (349.0, 1.29, 0.0135),
    (0.805, 0.000736, -0.00000273),
    (6.27, -0.00938, -0.000303),
    (1.91, 0.0407, -0.000293),
)
_FAHRENHEIT = _Set(
    (330.0, 0.452, 0.00415),
    (0.791, 0.000463, -0.000000844),
    (6.34, 0.000775, -0.0000935),
    (1.09, 0.0284, -0.0000904),
)


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
    return _sorption(_CELSIUS, temperature_c, humidity_pct)


def equilibrium_pct_fahrenheit(temperature_f: float, humidity_pct: float) -> float:
    """Give the same by the coefficients for degrees Fahrenheit, which the handbook states apart.

    Parameters
    ----------
    temperature_f
        Of the air. [°F]
    humidity_pct
        As in `equilibrium_pct`.
    """
    return _sorption(_FAHRENHEIT, temperature_f, humidity_pct)


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


def _sorption(terms: _Set, temperature: float, humidity_pct: float) -> float:
    if not 0.0 <= humidity_pct <= _FULL:
        raise ValueError(f"a relative humidity of {humidity_pct:g} % cannot be: it lies between 0 and 100")
    w, k, k1, k2 = (a + b * temperature + c * temperature**2 for a, b, c in terms)
    kh = k * humidity_pct / _FULL
    first = kh / (1 - kh)
    second = (k1 * kh + 2 * k1 * k2 * kh**2) / (1 + k1 * kh + k1 * k2 * kh**2)
    return 1800 / w * (first + second)
