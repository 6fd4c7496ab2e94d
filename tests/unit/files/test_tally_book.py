"""A tally as a workbook is read as the same tally."""

import io
from pathlib import Path

import openpyxl
import pytest

from builders import board, flaw, nm
from kept_jobs import DEFINITION
from plankwright.files import read_definition, read_tally
from plankwright.measure import Unit
from plankwright.model import Board, EdgeKind, EdgeProfile, NailsLeft


def book(*boards: Board, units: str = "inches") -> bytes:
    """Write boards as a workbook."""
    return read_definition({**DEFINITION, "units": units}, boards).tally_xlsx()


BOARDS = (
    board("07", 97.0625, 5.25, lot="floor", flaws=(flaw(10, 12.5),), moisture_pct=9.5),
    board("F12", 60, 4, note="=odd", nails=NailsLeft.CHECKED),
    board("T", 40, 6, profile=EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25))),
)


def test_it_is_read_as_the_same_boards(tmp_path: Path) -> None:
    """Their marks, sizes, flaws and words, and nothing is added by the columns of numbers."""
    file = tmp_path / "tally.xlsx"
    file.write_bytes(book(*BOARDS))
    assert read_tally(file, unit=Unit.INCH).boards == BOARDS


@pytest.mark.parametrize(
    ("units", "heading", "sizes"),
    [
        ("inches", "length, decimal in", (97.0625, 5.25, 0.75)),
        ("mm", "length, decimal mm", (2465.3875, 133.35, 19.05)),
    ],
)
def test_sizes_are_numbers_in_the_unit_of_the_tape(
    units: str, heading: str, sizes: tuple[float, ...]
) -> None:
    """So that a spreadsheet can add them up."""
    (sheet,) = openpyxl.load_workbook(io.BytesIO(book(*BOARDS, units=units))).worksheets
    (headings, first, *_) = ([cell.value for cell in row] for row in sheet.iter_rows())
    at = headings.index(heading)
    assert tuple(first[at : at + 3]) == sizes
