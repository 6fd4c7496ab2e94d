"""Volumes in the units that go with a tape."""

import pytest

from plankwright.measure import System, TapeStyle, write_volume


@pytest.mark.parametrize(
    ("m3", "imperial", "metric"),
    [
        (0.0, "0.00 cu ft", "0.000 m³"),
        (0.028316846592, "1.00 cu ft", "0.028 m³"),  # A cubic foot: 0.3048 m, exact by definition, cubed.
        (1.0, "35.31 cu ft", "1.000 m³"),
        (1000.0, "35,314.67 cu ft", "1,000.000 m³"),
    ],
)
def test_volume_goes_with_the_tape(m3: float, imperial: str, metric: str) -> None:
    """Cubic feet beside inches, cubic metres beside millimetres."""
    assert write_volume(m3, TapeStyle(system=System.IMPERIAL)) == imperial
    assert write_volume(m3, TapeStyle(system=System.METRIC)) == metric
