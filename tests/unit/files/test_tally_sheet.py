"""Tallies kept as workbooks, and what spreadsheets do to them."""

import datetime as dt
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from plankwright.errors import BadInputError, Problem
from plankwright.files import TallyReading, read_tally
from plankwright.measure import INCH, Unit

HEADINGS = ("ID", "Length", "Width", "Thickness", "Flaws")


@pytest.fixture
def tally(tmp_path: Path) -> Path:
    """Give the path of a workbook that is not written yet."""
    return tmp_path / "tally.xlsx"


def read(path: Path, *rows: tuple[Any, ...], formats: dict[str, str] | None = None) -> TallyReading:
    """Write a workbook and read it in inches."""
    book = openpyxl.Workbook()
    sheet = book.active
    assert sheet is not None
    for row in rows:
        sheet.append(row)
    for cell, number_format in (formats or {}).items():
        sheet[cell].number_format = number_format
    book.save(path)
    return read_tally(path, unit=Unit.INCH)


def problems(
    path: Path, *rows: tuple[Any, ...], formats: dict[str, str] | None = None
) -> tuple[Problem, ...]:
    """Read a workbook that must be refused."""
    with pytest.raises(BadInputError) as caught:
        read(path, *rows, formats=formats)
    return caught.value.problems


def test_numbers_and_text_are_read(tally: Path) -> None:
    """Numbers are bare numbers, also as ids; comments and empty rows are left out."""
    reading = read(
        tally,
        ("# The pile",),
        HEADINGS,
        (17, 87.625, 6, 0.75, "0-3 rot"),
        (None, None, None, None, None),
        ("# later",),
        ("B", "7' 3-5/8\"", "5-1/2", "3/4", None),
    )
    first, second = reading.boards
    assert (first.id, first.length_nm, first.thickness_nm) == ("17", INCH * 701 // 8, INCH * 3 // 4)
    assert (second.id, second.length_nm, second.width_start_nm) == ("B", INCH * 701 // 8, INCH * 11 // 2)
    assert (len(first.flaws), reading.remarks) == (1, ())


def test_numbers_shown_as_fractions_are_what_they_are(tally: Path) -> None:
    """The format of a cell is only how it looks."""
    (board,) = read(tally, HEADINGS, ("A", 96, 5.5, 0.75, None), formats={"D2": "# ?/?"}).boards
    assert board.thickness_nm == INCH * 3 // 4


@pytest.mark.parametrize(
    ("value", "number_format", "sentence"),
    [
        (
            dt.datetime(2024, 3, 4),  # noqa: DTZ001 - workbooks know no time zones
            "",
            "the thickness holds a date or a time, which a spreadsheet makes of fractions such as 3/4:",
        ),
        (dt.time(3, 4), "", "the thickness holds a date or a time"),
        (0.75, "0%", "the thickness holds a percentage, where text or a plain number is needed"),
        (True, "", "the thickness holds true or false, where text or a number is needed"),
        (
            "#REF!",
            "",
            "the thickness holds the spreadsheet's error #REF!: mend the formula, or type the value",
        ),
        (1e300, "", "the thickness “1e+300” is no length that could be measured"),
        (-1, "", "the thickness “-1” is negative"),
    ],
)
def test_what_spreadsheets_spoil_is_told(
    tally: Path, value: object, number_format: str, sentence: str
) -> None:
    """In the row of the sheet."""
    (problem,) = problems(
        tally, HEADINGS, ("A", 96, 5.5, value, None), formats={"D2": number_format} if number_format else None
    )
    assert (problem.file, problem.place, problem.line) == ("tally.xlsx", "row 2", 2)
    assert problem.what.startswith(sentence)


def test_further_sheets_are_remarked(tally: Path) -> None:
    """Only the first is read; empty ones are no matter."""
    book = openpyxl.Workbook()
    first = book.active
    assert first is not None
    first.append(HEADINGS)
    first.append(("A", 96, 5.5, 0.75))
    book.create_sheet("later").append(HEADINGS)
    book.create_sheet("empty")
    book.save(tally)
    (remark,) = read_tally(tally, unit=Unit.INCH).remarks
    assert remark.what == "only the first sheet is read, not “later”"


@pytest.mark.parametrize("content", [b"", b"id,length", b"PK\x03\x04 and then nothing"])
def test_a_file_that_is_no_workbook_is_told(tally: Path, content: bytes) -> None:
    """Whatever its name says."""
    tally.write_bytes(content)
    with pytest.raises(
        BadInputError, match=r"cannot be read as a workbook: open it and save it as \.xlsx again"
    ):
        read_tally(tally, unit=Unit.INCH)


def test_an_empty_workbook_is_told(tally: Path) -> None:
    """As an empty file is."""
    (problem,) = problems(tally)
    assert problem.what.startswith("the tally is empty")
