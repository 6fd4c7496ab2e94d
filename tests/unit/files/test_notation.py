"""Lengths in files: text, bare numbers, and nothing else."""

import pytest

from plankwright.files.notation import Notation, number_text
from plankwright.measure import INCH, METRE, MILLIMETRE, LengthError, Unit

INCHES = Notation(unit=Unit.INCH)


@pytest.mark.parametrize(
    ("value", "nm"),
    [
        ("7' 3-5/8\"", INCH * 701 // 8),
        (87.625, INCH * 701 // 8),
        (3, 3 * INCH),
        (0.1, INCH // 10),
        ("2226 mm", 2226 * MILLIMETRE),
    ],
)
def test_text_and_numbers_are_read(value: object, nm: int) -> None:
    """A bare number is in the unit of the file; text may name its own."""
    assert INCHES.read(value) == nm


def test_a_number_has_a_point_even_where_text_has_a_comma() -> None:
    """TOML and JSON know points only; a decimal comma is for text."""
    notation = Notation(unit=Unit.METRE, decimal_comma=True)
    assert notation.read(2.226) == notation.read("2,226 m") == 2226 * METRE // 1000


@pytest.mark.parametrize("value", [True, None, [], {}, float("nan"), float("inf"), 10**400, -1e13, -1])
def test_anything_else_is_refused(value: object) -> None:
    """Truth, nothing, lists and endless numbers measure nothing, and no length is negative."""
    with pytest.raises(LengthError):
        INCHES.read(value)


@pytest.mark.parametrize(
    ("number", "text"), [(3, "3"), (3.0, "3"), (87.1, "87.1"), (1e-7, "0.0000001"), (1e9, "1000000000")]
)
def test_numbers_are_written_out(number: float, text: str) -> None:
    """No exponent and no binary noise."""
    assert number_text(number) == text
