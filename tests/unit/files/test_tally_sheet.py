"""Tallies kept as workbooks, and what spreadsheets do to them."""

import datetime as dt
import re
import zipfile
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
    """One without boards is not read, and told; empty ones are no matter."""
    book = openpyxl.Workbook()
    fill(book.active, HEADINGS, ("A", 96, 5.5, 0.75))
    fill(book.create_sheet("later"), HEADINGS)
    book.create_sheet("empty")
    book.save(tally)
    (remark,) = read_tally(tally, unit=Unit.INCH).remarks
    assert remark.what == "one sheet is read, and not “later”"


def fill(sheet: Any, *rows: tuple[Any, ...]) -> None:  # noqa: ANN401 - whatever the library calls active
    """Write rows into a sheet."""
    for row in rows:
        sheet.append(row)


def test_the_sheet_that_holds_the_tally_is_read(tally: Path) -> None:
    """Whatever stands before it, such as a hidden list of words to choose from, or a cover."""
    book = openpyxl.Workbook()
    fill(book.active, ("square",), ("shiplap",))
    assert book.active is not None
    book.active.sheet_state = "hidden"
    fill(book.create_sheet("cover"), ("Boards of the village hall",))
    fill(book.create_sheet("boards"), HEADINGS, ("A", 96, 5.5, 0.75))
    book.active = 2
    book.save(tally)
    reading = read_tally(tally, unit=Unit.INCH)
    assert [board.id for board in reading.boards] == ["A"]
    assert [remark.what for remark in reading.remarks] == ["one sheet is read, and not “Sheet”, “cover”"]


def test_boards_on_two_sheets_are_asked_about(tally: Path) -> None:
    """Half a pile read in silence is a wrong answer; a hidden sheet is not meant."""
    book = openpyxl.Workbook()
    fill(book.active, HEADINGS, ("A", 96, 5.5, 0.75))
    shed = book.create_sheet("shed")
    fill(shed, HEADINGS, ("B", 96, 5.5, 0.75))
    book.save(tally)
    with pytest.raises(
        BadInputError, match="the sheets “Sheet” and “shed” each hold a tally: put all boards"
    ):
        read_tally(tally, unit=Unit.INCH)
    shed.sheet_state = "hidden"
    book.save(tally)
    assert len(read_tally(tally, unit=Unit.INCH).boards) == 1


def test_a_formula_that_was_never_worked_out_is_told(tally: Path) -> None:
    """It looks like an empty cell, and a quantity or a flaw would be lost in silence."""
    headings = (*HEADINGS, "Quantity")
    found = problems(tally, headings, ("A", 96, 5.5, 0.75, '="0-3 rot"', "=1+2"))
    assert [problem.what.partition(" that")[0] for problem in found] == [
        "the quantity holds a formula",
        "the flaws holds a formula",
    ]


def test_a_formula_that_was_worked_out_is_its_value(tally: Path) -> None:
    """Also where that is an empty text: one formula with a value shows that the workbook was worked out."""
    book = openpyxl.Workbook()
    fill(book.active, HEADINGS, ("A", "=90+6", 5.5, 0.75, '=""'))
    book.save(tally)
    with zipfile.ZipFile(tally) as packed:
        parts = {name: packed.read(name) for name in packed.namelist()}
    sheet = "xl/worksheets/sheet1.xml"
    parts[sheet] = re.sub(rb"(<f>90\+6</f>)<v ?/?>(</v>)?", rb"\1<v>96</v>", parts[sheet])
    with zipfile.ZipFile(tally, "w") as packed:
        for name, content in parts.items():
            packed.writestr(name, content)
    (board,) = read_tally(tally, unit=Unit.INCH).boards
    assert (board.length_nm, board.flaws) == (96 * INCH, ())


def test_cells_merged_over_rows_hold_the_same_in_each(tally: Path) -> None:
    """As they look; only how often a quantity counts is not to be seen."""
    book = openpyxl.Workbook()
    sheet = book.active
    assert sheet is not None
    fill(sheet, (*HEADINGS, "Lot", "Qty"), *((mark, 96, 5.5, 0.75, None, None, None) for mark in "ABC"))
    sheet["F2"] = "attic"
    sheet.merge_cells("F2:F3")
    sheet["D2"] = 1
    sheet.merge_cells("D2:D4")
    sheet.merge_cells("A5:F5")
    book.save(tally)
    reading = read_tally(tally, unit=Unit.INCH)
    assert [(board.lot, board.thickness_nm) for board in reading.boards] == [
        ("attic", INCH),
        ("attic", INCH),
        ("", INCH),
    ]
    sheet["G2"] = 2
    sheet.merge_cells("G2:G3")
    book.save(tally)
    with pytest.raises(BadInputError) as caught:
        read_tally(tally, unit=Unit.INCH)
    assert [problem.line for problem in caught.value.problems] == [2, 3]
    assert "the quantity is in a cell merged over several rows" in str(caught.value)


def test_a_cell_merged_over_empty_rows_fills_none_of_them(tally: Path) -> None:
    """They are as empty as they look."""
    book = openpyxl.Workbook()
    sheet = book.active
    assert sheet is not None
    fill(sheet, (*HEADINGS, "Lot"), ("A", 96, 5.5, 0.75, None, "attic"), (), ("B", 96, 5.5, 0.75))
    sheet.merge_cells("F2:F4")
    book.save(tally)
    assert [board.lot for board in read_tally(tally, unit=Unit.INCH).boards] == ["attic", "attic"]


def test_hidden_rows_are_read_and_told(tally: Path) -> None:
    """A filter hides them from the eye, not from the pile."""
    book = openpyxl.Workbook()
    sheet = book.active
    assert sheet is not None
    fill(sheet, HEADINGS, *((f"B{number}", 96, 5.5, 0.75) for number in range(12)))
    for number in range(3, 13):
        sheet.row_dimensions[number].hidden = True
    book.save(tally)
    reading = read_tally(tally, unit=Unit.INCH)
    assert len(reading.boards) == 12
    (remark,) = reading.remarks
    assert remark.what.endswith("are read all the same: 3, 4, 5, 6, 7, 8, 9, 10 and 2 more")


def test_what_stands_beside_the_table_is_told(tally: Path) -> None:
    """It is no cell that lost its quotation marks, as in CSV."""
    reading = read(tally, HEADINGS, ("A", 96, 5.5, 0.75, None, None, "look at this one"))
    (remark,) = reading.remarks
    assert (remark.line, remark.what) == (2, "what stands beside the table, under no heading, is not read")


def test_a_cell_far_below_takes_no_time(tally: Path) -> None:
    """The empty places up to it are not looked at one by one."""
    book = openpyxl.Workbook()
    sheet = book.active
    assert sheet is not None
    fill(sheet, HEADINGS, ("A", 96, 5.5, 0.75))
    sheet.cell(1_048_576, 16_384).number_format = "0.00"
    sheet["A1000000"] = "B"
    book.save(tally)
    with pytest.raises(BadInputError) as caught:
        read_tally(tally, unit=Unit.INCH)
    assert {problem.line for problem in caught.value.problems} == {1_000_000}


def test_a_workbook_that_unpacks_to_far_more_is_refused(tally: Path) -> None:
    """Before it fills the memory."""
    with zipfile.ZipFile(tally, "w", zipfile.ZIP_DEFLATED) as packed:
        packed.writestr("xl/worksheets/sheet1.xml", bytes(50_000_001))
    with pytest.raises(BadInputError, match="far larger than any tally: keep the tally in one of its own"):
        read_tally(tally, unit=Unit.INCH)


def test_an_empty_file_is_told(tally: Path) -> None:
    """It is no broken workbook."""
    tally.write_bytes(b"")
    with pytest.raises(BadInputError, match="the file is empty: save the workbook again"):
        read_tally(tally, unit=Unit.INCH)


@pytest.mark.parametrize("content", [b"id,length", b"PK\x03\x04 and then nothing"])
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
