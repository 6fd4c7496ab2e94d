"""The rows of a workbook tally, its numbers as bare numbers and what a spreadsheet spoils told apart."""

import datetime as dt
import io
import warnings
from collections.abc import Iterator
from typing import Any

import openpyxl

from plankwright.files.notation import number_text
from plankwright.files.tally_text import Row
from plankwright.measure import LengthError

_MOST_COLUMNS = 100
_MOST_ROWS = 20_000


def sheet_rows(content: bytes) -> tuple[list[Row], list[str]]:
    """Give the rows of the first sheet of a workbook that are neither empty nor a comment.

    Parameters
    ----------
    content
        An .xlsx file.

    Returns
    -------
    tuple
        The rows, the first one holding the headings, and the names of further sheets that are not empty.

    Raises
    ------
    ValueError
        If it is no workbook that can be read.
    """
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # openpyxl warns of styles and rules that it does not keep
        try:
            book = openpyxl.load_workbook(io.BytesIO(content), read_only=True, data_only=True)
            try:
                first, *others = book.worksheets
                return list(_rows(first)), [sheet.title for sheet in others if any(_rows(sheet))]
            finally:
                book.close()
        except Exception as trouble:  # openpyxl lets through whatever its zip, XML and number parsers raise
            raise ValueError("it cannot be read as a workbook") from trouble


def _rows(sheet: Any) -> Iterator[Row]:  # noqa: ANN401 - the read-only sheet has no public type
    sheet.reset_dimensions()  # what the file says of its size may be wrong
    for number, cells in enumerate(sheet.iter_rows(max_col=_MOST_COLUMNS, max_row=_MOST_ROWS), start=1):
        texts, troubles = [], {}
        for position, cell in enumerate(cells):
            text, trouble = _text(cell.value, str(getattr(cell, "number_format", "")))
            texts.append(text)
            if trouble:
                troubles[position] = trouble
        while texts and not texts[-1]:
            texts.pop()
        first = texts[0] if texts else ""
        if texts and not (first.startswith("#") and first != "#"):
            yield Row(number=number, cells=tuple(texts), troubles=troubles)


def _text(value: Any, number_format: str) -> tuple[str, str]:  # noqa: ANN401, PLR0911 - a cell holds anything
    """Give a cell as text, and what is wrong with it."""
    if value is None:
        return "", ""
    if isinstance(value, dt.date | dt.time | dt.timedelta):
        return str(value), (
            "holds a date or a time, which a spreadsheet makes of fractions such as 3/4: "
            "format the cell as text and type it again"
        )
    if isinstance(value, bool):
        return str(value), "holds true or false, where text or a number is needed"
    if isinstance(value, int | float):
        if "%" in number_format:
            return f"{100 * value:g} %", "holds a percentage, where text or a plain number is needed"
        try:
            return number_text(value), ""
        except LengthError as trouble:
            return str(value), str(trouble)
    text = str(value).strip()
    if text.startswith("#") and text.endswith(("!", "?", "/A")):
        return text, f"holds the spreadsheet's error {text}: mend the formula, or type the value"
    return text, ""
