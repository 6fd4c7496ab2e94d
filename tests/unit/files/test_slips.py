"""Cells that are no length but plainly something else."""

import pytest

from plankwright.files.notation import Notation
from plankwright.files.slips import likely_slip
from plankwright.measure import Unit

INCHES = Notation(unit=Unit.INCH)


@pytest.mark.parametrize(
    "text",
    [
        "3-Aug",
        "05.Jul",
        "Mar-08",
        "Aug 3",
        "8. Mrz",
        "03/08/2024",
        "08.03.2024",
        "2024-03-08",
        "2024-03-08 00:00",
    ],
)
def test_a_fraction_that_became_a_date_is_known(text: str) -> None:
    """So says the sentence, since nobody remembers having typed a date."""
    assert "looks like a date, which a spreadsheet makes of fractions" in likely_slip(
        "thickness", text, INCHES
    )


@pytest.mark.parametrize("text", ["5 1/2 - 5", "5-1/2 to 5", "5 1/2→5", "5.5 / 5", '5" -> 4"'])
def test_two_widths_in_one_cell_are_known(text: str) -> None:
    """A tapered board has a column for the other one."""
    assert "write the other into a column width other end" in likely_slip("width", text, INCHES)
    assert likely_slip("length", text, INCHES) == ""


@pytest.mark.parametrize("text", ["n/a", "5-1/2 x 3/4", "7 6", "5 - ?", "about 5", "3 in"])
def test_anything_else_is_nothing_in_particular(text: str) -> None:
    """The reader of lengths has its own sentence for it."""
    assert likely_slip("width", text, INCHES) == ""
