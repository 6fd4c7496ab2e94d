"""How heavy wood is, and what carbon it holds."""

from plankwright.trade.lumber.facts import CARBON_DIOXIDE_PER_CARBON, CARBON_SHARE, WATER_KG_M3

_PER_CENT = 100.0


def density_kg_m3(gravity: float, moisture_pct: float) -> float:
    """Give the density of wood.

    Parameters
    ----------
    gravity
        Specific gravity: ovendry mass over volume at that moisture.
    moisture_pct
        [% of dry mass]

    Returns
    -------
    float
        [kg/m³]

    References
    ----------
    See `facts.DENSITY`.

    Examples
    --------
    >>> round(density_kg_m3(0.4, 12.0))
    448
    """
    return WATER_KG_M3.value * gravity * (1 + moisture_pct / _PER_CENT)


def stored_carbon_dioxide_kg(gravity: float, volume_m3: float) -> float:
    """Give the carbon dioxide that the carbon in wood would make.

    Parameters
    ----------
    gravity
        Specific gravity: ovendry mass over volume.
    volume_m3
        [m³]

    Returns
    -------
    float
        [kg]

    References
    ----------
    See `facts.CARBON`.
    """
    return WATER_KG_M3.value * gravity * volume_m3 * CARBON_SHARE.value * CARBON_DIOXIDE_PER_CARBON.value
