"""Small lengths, temperatures, volumes, masses and forces as text, in the units that go with a tape."""

from dataclasses import replace

from plankwright.measure.length import (
    FINEST_DENOMINATOR,
    FOOT,
    INCH,
    METRE,
    MILLIMETRE,
    Nm,
    System,
    TapeStyle,
)
from plankwright.measure.writing import write_inches

_POUNDS_PER_KG = 2.2046226
_POUNDS_FORCE_PER_NEWTON = 0.22480894
_FEW = 10.0


def write_small(nm: float, style: TapeStyle) -> str:
    """Write a length that is less than the finest mark of a tape may show.

    Parameters
    ----------
    nm
        The length. [nm]
    style
        The tape; only its system counts.

    Returns
    -------
    str
        `0.06 in` or `1.5 mm`.
    """
    if style.system is System.METRIC:
        return f"{nm / MILLIMETRE:.1f} mm"
    return f"{nm / INCH:.2f} in"


def write_fine(nm: Nm, style: TapeStyle) -> str:
    """Write a shim, a step or a drill bit more finely than a tape tells lengths: 1/32 in is none of 1/16.

    Parameters
    ----------
    nm
        The thickness. [nm]
    style
        The tape; only its system counts.

    Returns
    -------
    str
        To the 64th of an inch or the tenth of a millimetre: `3/64"` or `1.2 mm`.
    """
    if style.system is System.METRIC:
        return write_small(nm, style)
    return write_inches(nm, replace(style, denominator=FINEST_DENOMINATOR))


def to_celsius(fahrenheit: float) -> float:
    """Turn degrees Fahrenheit into degrees Celsius."""
    return (fahrenheit - 32.0) / 1.8


def to_fahrenheit(celsius: float) -> float:
    """Turn degrees Celsius into degrees Fahrenheit."""
    return celsius * 1.8 + 32.0


def write_temperature(celsius: float, style: TapeStyle) -> str:
    """Write a temperature in whole degrees: `68 °F` or `20 °C`.

    Parameters
    ----------
    celsius
        [°C]
    style
        The tape; only its system counts.
    """
    if style.system is System.METRIC:
        return f"{celsius:.0f} °C"
    return f"{to_fahrenheit(celsius):.0f} °F"


def write_volume(m3: float, style: TapeStyle) -> str:
    """Write a volume: `10.38 cu ft` or `0.294 m³`.

    Parameters
    ----------
    m3
        [m³]
    style
        The tape; only its system counts.
    """
    if style.system is System.METRIC:
        return f"{m3:,.3f} m³"
    return f"{m3 * (METRE / FOOT) ** 3:,.2f} cu ft"


def write_mass(kg: float, style: TapeStyle) -> str:
    """Write a mass: `125 lb` or `57 kg`, with one decimal below ten.

    Parameters
    ----------
    kg
        [kg]
    style
        The tape; only its system counts.
    """
    amount, unit = (kg, "kg") if style.system is System.METRIC else (kg * _POUNDS_PER_KG, "lb")
    return f"{amount:.1f} {unit}" if amount < _FEW else f"{amount:,.0f} {unit}"


def write_force(newtons: float, style: TapeStyle) -> str:
    """Write a force: `75 lbf` or `330 N`.

    Parameters
    ----------
    newtons
        [N]
    style
        The tape; only its system counts.
    """
    if style.system is System.METRIC:
        return f"{newtons:,.0f} N"
    return f"{newtons * _POUNDS_FORCE_PER_NEWTON:,.0f} lbf"
