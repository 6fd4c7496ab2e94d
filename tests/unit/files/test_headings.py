"""Columns are known by whatever people call them."""

import pytest

from plankwright.files.headings import COLUMNS, MEASURED, is_heading, read_headings
from plankwright.measure import Unit


@pytest.mark.parametrize(
    ("heading", "column"),
    [
        ("id", "id"),
        ("#", "id"),
        ("Board No.", "id"),
        ("LENGTH", "length"),
        ("Width_Other-End", "width other end"),
        ("  face   width ", "width"),
        ("Tongue/Lap", "tongue"),
        ("edge-profile", "edge"),
        ("Qty", "quantity"),
        ("Colour", "tone"),
        ("Defects", "flaws"),
    ],
)
def test_headings_are_forgiving(heading: str, column: str) -> None:
    """Case, spaces, underscores, hyphens and usual other names make no difference."""
    assert is_heading(heading)
    assert read_headings((heading,)).at == {column: 0}


@pytest.mark.parametrize(
    ("heading", "unit"),
    [
        ("length (ft)", Unit.FOOT),
        ("Length in inches", Unit.INCH),
        ("length in", Unit.INCH),
        ("length_mm", Unit.MILLIMETRE),
        ("len [cm]", Unit.CENTIMETRE),
        ("Length, m", Unit.METRE),
        ('length "', Unit.INCH),
        ("length", None),
    ],
)
def test_a_heading_may_name_its_unit(heading: str, unit: Unit | None) -> None:
    """A unit behind the name, however it is set off."""
    headings = read_headings((heading, "width", "thickness"))
    assert headings.units.get("length") is unit


def test_no_name_means_two_columns() -> None:
    """Every name that a column goes by is its own."""
    names = [name for column, others in COLUMNS.items() for name in (column, *others)]
    assert len(names) == len(set(names))
    assert set(COLUMNS) >= MEASURED


@pytest.mark.parametrize(
    ("cells", "problem"),
    [
        (
            ("id", "Width", "face width", "length", "thickness"),
            "headings “Width” and “face width” both mean width: keep",
        ),
        (("id", "width", "thickness"), "there is no column length: add it"),
        (("id", "lenght", "width", "thickness"), "there is no column length: add it (or is it lenght?)"),
        (
            ("A1", "96", "5"),
            "the first row has no heading for length, width or thickness: begin the tally with a row of",
        ),
    ],
)
def test_what_is_wrong_with_headings_is_told(cells: tuple[str, ...], problem: str) -> None:
    """Columns twice, missing, mistyped, or no headings at all."""
    (told,) = read_headings(cells).problems
    assert told.startswith(problem)


def test_other_columns_are_left_out() -> None:
    """They are named, and empty headings are not."""
    headings = read_headings(("length", "price", "", "width", "thickness", "splits"))
    assert (headings.left_out, headings.problems, headings.count) == (("price", "splits"), (), 6)
