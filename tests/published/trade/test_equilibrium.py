"""The moisture equation against the table that was printed of it, cell by cell, and other points."""

import csv
from pathlib import Path

import pytest

from plankwright.measure import to_celsius, to_fahrenheit
from plankwright.trade.moisture.equilibrium import equilibrium_pct, humidity_for_pct

TABLE = Path(__file__).with_name("equilibrium_table.csv")
LARGEST_CELSIUS, LARGEST_FAHRENHEIT = 0.06, 0.07
"""How far the equation may be from a cell of the table, which is printed to a tenth. [points]"""


# The handbook states the coefficients of equation 4-5 for degrees Fahrenheit apart: constant, linear, square.
W_F = (330.0, 0.452, 0.00415)
K_F = (0.791, 0.000463, -0.000000844)
K1_F = (6.34, 0.000775, -0.0000935)
K2_F = (1.09, 0.0284, -0.0000904)


def fahrenheit_pct(temperature_f: float, humidity_pct: float) -> float:
    """Work the equation out with the other set, to hold against the table and against the program."""
    w, k, k1, k2 = (
        constant + linear * temperature_f + square * temperature_f**2
        for constant, linear, square in (W_F, K_F, K1_F, K2_F)
    )
    h = humidity_pct / 100
    dissolved = k * h / (1 - k * h)
    hydrated = (k1 * k * h + 2 * k1 * k2 * k**2 * h**2) / (1 + k1 * k * h + k1 * k2 * k**2 * h**2)
    return 1800 / w * (dissolved + hydrated)


def cells() -> list[tuple[float, float, float]]:
    """Every cell: temperature [°F], humidity [%], moisture [%]."""
    lines = [line for line in TABLE.read_text("utf-8").splitlines() if not line.startswith("#")]
    humidities, *rows = csv.reader(lines)
    return [
        (float(row[0]), float(humidity), float(cell))
        for row in rows
        for humidity, cell in zip(humidities[1:], row[1:], strict=True)
    ]


def test_the_whole_table_was_carried_over() -> None:
    """Eighteen temperatures by nineteen humidities; no cell twice."""
    found = cells()
    assert len(found) == 342
    assert len({(temperature, humidity) for temperature, humidity, _ in found}) == 342


@pytest.mark.parametrize(("temperature_f", "humidity", "printed"), cells())
def test_every_cell_of_the_table(temperature_f: float, humidity: float, printed: float) -> None:
    """Wood Handbook, FPL-GTR-190 (2010), Table 4-2 (read), with both sets of coefficients."""
    celsius = equilibrium_pct(to_celsius(temperature_f), humidity)
    assert celsius == pytest.approx(printed, abs=LARGEST_CELSIUS)
    assert fahrenheit_pct(temperature_f, humidity) == pytest.approx(printed, abs=LARGEST_FAHRENHEIT)


@pytest.mark.parametrize("temperature_f", range(30, 101, 5))
@pytest.mark.parametrize("humidity", range(1, 100, 7))
def test_both_sets_of_coefficients_agree(temperature_f: int, humidity: int) -> None:
    """The handbook states them apart; over the temperatures of a house they differ by under 0.02 points."""
    celsius = equilibrium_pct(to_celsius(temperature_f), humidity)
    assert fahrenheit_pct(temperature_f, humidity) == pytest.approx(celsius, abs=0.02)


@pytest.mark.parametrize(
    ("temperature_c", "humidity", "printed"),
    [
        # Wood Handbook, FPL-GTR-282 (2021), section 4.8 as quoted (read): two outdoor climates.
        (5.0, 85.0, 18.47),
        (2.0, 83.0, 17.66),
    ],
)
def test_worked_examples(temperature_c: float, humidity: float, printed: float) -> None:
    """Points that the handbook works out with two decimals."""
    assert equilibrium_pct(temperature_c, humidity) == pytest.approx(printed, abs=0.01)


def test_points_that_tell_wrong_coefficients_apart() -> None:
    """Slips met in public code give 8.73, 7.15, 9.47 or 13.83 here; the equation gives what the table has."""
    assert fahrenheit_pct(70.0, 50.0) == pytest.approx(9.25, abs=0.01)
    assert equilibrium_pct(to_celsius(70.0), 50.0) == pytest.approx(9.25, abs=0.01)
    assert equilibrium_pct(60.0, 80.0) == pytest.approx(13.56, abs=0.01)


@pytest.mark.parametrize(("humidity", "moisture"), [(30, 6), (50, 9), (65, 12), (80, 16)])
def test_the_rule_of_thumb(humidity: float, moisture: float) -> None:
    """Trade magazine, woodworkingnetwork.com rh-equivalent (read): whole numbers, within half a point."""
    assert equilibrium_pct(20.0, humidity) == pytest.approx(moisture, abs=0.5)


@pytest.mark.parametrize(("moisture", "humidity"), [(6, 28.8), (8, 41.8), (11, 60.0), (12, 65.0)])
def test_the_inverse(moisture: float, humidity: float) -> None:
    """Computed once from the equation at 20 °C; going there and back gives the same."""
    found = humidity_for_pct(20.0, moisture)
    assert found == pytest.approx(humidity, abs=0.06)
    assert equilibrium_pct(20.0, found) == pytest.approx(moisture, abs=1e-5)


def test_more_water_than_air_can_give() -> None:
    """No humidity keeps wood at 40 %: the inverse ends at 100."""
    assert humidity_for_pct(20.0, 40.0) == pytest.approx(100.0)


@pytest.mark.parametrize("humidity", [-0.1, 100.1])
def test_humidities_that_cannot_be(humidity: float) -> None:
    """Below nothing and above saturation there is no answer."""
    with pytest.raises(ValueError, match="between 0 and 100"):
        equilibrium_pct(20.0, humidity)


def test_temperatures_there_and_back() -> None:
    """32 °F is 0 °C, and 212 is 100, by definition."""
    assert to_celsius(32.0) == pytest.approx(0.0)
    assert to_celsius(212.0) == pytest.approx(100.0)
    assert to_fahrenheit(to_celsius(68.0)) == pytest.approx(68.0)
