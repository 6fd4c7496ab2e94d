"""Rows written as a workbook: nothing that a spreadsheet would run, numbers as numbers, the same bytes."""

import io

import openpyxl
import pytest

from plankwright.files.workbook import Cell, number_or_text, workbook


def cells(content: bytes) -> list[list[object]]:
    """Read a workbook back."""
    (sheet,) = openpyxl.load_workbook(io.BytesIO(content)).worksheets
    return [[cell.value for cell in row] for row in sheet.iter_rows()]


def test_rows_stand_below_their_headings() -> None:
    """Text as text, numbers as numbers, and what is empty is empty."""
    content = workbook("tally", ["id", "length", "note"], [["7", 97.25, ""], ["8", 3, "knot"]])
    assert cells(content) == [["id", "length", "note"], ["7", 97.25, None], ["8", 3, "knot"]]


@pytest.mark.parametrize("cell", ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", '=HYPERLINK("x")'])
def test_no_cell_is_a_formula(cell: str) -> None:
    """However it begins, it is text that does not begin as a formula does."""
    (sheet,) = openpyxl.load_workbook(io.BytesIO(workbook("t", ["a"], [[cell]]))).worksheets
    written = sheet["A2"]
    assert written.data_type == "s"
    assert written.value == f"'{cell}"


def test_what_no_workbook_can_hold_is_left_out() -> None:
    """A control character would make the whole file unreadable."""
    assert cells(workbook("t", ["a"], [["kn\x07ot"]])) == [["a"], ["knot"]]


def test_the_same_rows_give_the_same_bytes(monkeypatch: pytest.MonkeyPatch) -> None:
    """Whenever they are written."""
    before = workbook(
        "t",
        ["a"],
        [
            [
                "b",
            ]
        ],
    )
    monkeypatch.setattr("time.time", lambda: 2_000_000_000.0)
    monkeypatch.setattr("time.localtime", lambda *_: (2033, 5, 18, 3, 33, 20, 2, 138, 0))
    assert workbook("t", ["a"], [["b"]]) == before


def test_headings_stay_in_sight_and_rows_can_be_sorted() -> None:
    """As somebody with two hundred boards wants it."""
    (sheet,) = openpyxl.load_workbook(io.BytesIO(workbook("t", ["a", "b"], [["1", "2"]]))).worksheets
    assert sheet.freeze_panes == "A2"
    assert sheet.auto_filter.ref == "A1:B2"


@pytest.mark.parametrize(
    ("text", "cell"), [("3", 3), ("8.5", 8.5), ("", ""), ("3/4", "3/4"), ("F12", "F12"), ("inf", "inf")]
)
def test_only_a_plain_number_becomes_one(text: str, cell: Cell) -> None:
    """Anything else stays as it is written."""
    assert number_or_text(text) == cell
