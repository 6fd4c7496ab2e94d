"""Lengths and areas as a carpenter reads them; expected texts are worked by hand."""

import pytest

from plankwright.measure import (
    FOOT,
    INCH,
    METRE,
    MILLIMETRE,
    SIXTY_FOURTH,
    System,
    TapeStyle,
    write_area,
    write_exact,
    write_inches,
    write_length,
)

SIXTEENTHS = TapeStyle(system=System.IMPERIAL)
THIRTY_SECONDS = TapeStyle(system=System.IMPERIAL, denominator=32)
METRIC = TapeStyle(system=System.METRIC)
HALVES = TapeStyle(system=System.METRIC, millimetre_step=MILLIMETRE // 2)


@pytest.mark.parametrize(
    ("sixty_fourths", "text"),
    [
        (0, '0"'),
        (1, '0"'),
        (2, '1/16"'),
        (32, '1/2"'),
        (40, '5/8"'),
        (60, '15/16"'),
        (63, '1"'),
        (64, '1"'),
        (3 * 64 + 40, '3-5/8"'),
        (11 * 64 + 60, '11-15/16"'),
        (11 * 64 + 62, "1' 0\""),
        (12 * 64, "1' 0\""),
        (12 * 64 + 40, "1' 0-5/8\""),
        (87 * 64 + 40, "7' 3-5/8\""),
        (96 * 64, "8' 0\""),
    ],
)
def test_writes_feet_inches_and_nearest_sixteenth(sixty_fourths: int, text: str) -> None:
    """Fractions are in lowest terms, half a step goes up, and a full inch or foot is carried."""
    assert write_length(sixty_fourths * SIXTY_FOURTH, SIXTEENTHS) == text


def test_denominator_sets_how_finely_is_written() -> None:
    """The same length, to 1/2, 1/16, 1/32 and 1/64."""
    nm = 3 * INCH + 41 * SIXTY_FOURTH
    written = [
        write_length(nm, TapeStyle(system=System.IMPERIAL, denominator=denominator))
        for denominator in (1, 2, 16, 32, 64)
    ]
    assert written == ['4"', '3-1/2"', '3-5/8"', '3-21/32"', '3-41/64"']


@pytest.mark.parametrize(
    ("nm", "whole", "half"),
    [
        (0, "0 mm", "0 mm"),
        (2_225_675_000, "2226 mm", "2225.5 mm"),
        (2_225_250_000, "2225 mm", "2225.5 mm"),
        (2_225_249_999, "2225 mm", "2225 mm"),
        (500_000, "1 mm", "0.5 mm"),
        (499_999, "0 mm", "0.5 mm"),
    ],
)
def test_writes_millimetres_to_whole_or_half(nm: int, whole: str, half: str) -> None:
    """A metric tape has its own steps, and no trailing zeros."""
    assert write_length(nm, METRIC) == whole
    assert write_length(nm, HALVES) == half


def test_writes_all_inches_for_the_saw() -> None:
    """At the fence nobody wants to multiply by twelve."""
    assert write_inches(2_225_675_000, SIXTEENTHS) == '87-5/8"'
    assert write_inches(8 * FOOT, SIXTEENTHS) == '96"'
    assert write_inches(0, SIXTEENTHS) == '0"'
    assert write_inches(2_225_675_000, METRIC) == "2226 mm"


@pytest.mark.parametrize(
    ("nm", "imperial", "metric"),
    [
        (0, '0"', "0 mm"),
        (2_225_675_000, "7' 3-5/8\"", "2225.675 mm"),
        (SIXTY_FOURTH, '1/64"', "0.396875 mm"),
        (SIXTY_FOURTH + 1, "0.396876 mm", "0.396876 mm"),
        (2_226_000_000, "2226 mm", "2226 mm"),
        (1, "0.000001 mm", "0.000001 mm"),
        (1_500_000, "1.5 mm", "1.5 mm"),
    ],
)
def test_writes_exactly_what_is_there(nm: int, imperial: str, metric: str) -> None:
    """A fraction where a 64th holds it, decimals of a millimetre where not, whatever the tape's step."""
    assert write_exact(nm, SIXTEENTHS) == imperial
    assert write_exact(nm, METRIC) == metric


@pytest.mark.parametrize(
    ("nm2", "imperial", "metric"),
    [
        (0, "0.0 sq ft", "0.00 m²"),
        (96 * FOOT**2, "96.0 sq ft", "8.92 m²"),
        (FOOT**2 // 20, "0.1 sq ft", "0.00 m²"),
        (FOOT**2 // 20 - 1, "0.0 sq ft", "0.00 m²"),
        (METRE**2, "10.8 sq ft", "1.00 m²"),
        (METRE**2 // 200, "0.1 sq ft", "0.01 m²"),
        (METRE**2 // 200 - 1, "0.1 sq ft", "0.00 m²"),
    ],
)
def test_writes_areas(nm2: int, imperial: str, metric: str) -> None:
    """A 12 x 8 ft wall is 96 sq ft or 96 x 0.3048² = 8.9187 m²; a square metre is 10.7639 sq ft."""
    assert write_area(nm2, SIXTEENTHS) == imperial
    assert write_area(nm2, METRIC) == metric


def test_negative_is_the_positive_behind_a_minus() -> None:
    """A difference is read like a length; what rounds to nothing has no sign."""
    assert write_length(-2_225_675_000, SIXTEENTHS) == "-7' 3-5/8\""
    assert write_length(-2_225_675_000, METRIC) == "-2226 mm"
    assert write_inches(-2_225_675_000, THIRTY_SECONDS) == '-87-5/8"'
    assert write_exact(-SIXTY_FOURTH, SIXTEENTHS) == '-1/64"'
    assert write_area(-(FOOT**2), SIXTEENTHS) == "-1.0 sq ft"
    assert write_length(-1, SIXTEENTHS) == '0"'
    assert write_area(-1, METRIC) == "0.00 m²"
