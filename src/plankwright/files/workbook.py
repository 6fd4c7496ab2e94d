"""Rows written as a workbook: text as text, numbers as numbers, nothing that a spreadsheet would run."""

import io
import zipfile
from collections.abc import Iterable, Sequence
from datetime import datetime
from typing import TypeAlias

from openpyxl import Workbook
from openpyxl.cell.cell import ILLEGAL_CHARACTERS_RE
from openpyxl.styles import Font
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.worksheet import Worksheet
from openpyxl.writer.excel import ExcelWriter

from plankwright.files.formulas import harmless

Cell: TypeAlias = str | float
"""What stands in a cell; an empty text leaves it empty."""

_THEN = datetime(1980, 1, 1)  # noqa: DTZ001 - a packed file has no zone
"""The date of every workbook and of all that is packed in it, so that the same rows give the same bytes."""

_NARROWEST, _WIDEST = 6, 48
"""Of a column. [characters]"""


def workbook(title: str, headings: Sequence[str], rows: Iterable[Sequence[Cell]]) -> bytes:
    """Write rows below headings as a workbook of one sheet.

    Parameters
    ----------
    title
        Of the sheet; at most 31 letters, digits and spaces.
    headings
        Of the columns.
    rows
        As many cells in each.

    Returns
    -------
    bytes
        An .xlsx file. Its headings stay in sight, and the same rows give the same bytes.
    """
    book = Workbook()
    book.properties.creator = "Plankwright"
    book.properties.created = book.properties.modified = _THEN
    (sheet,) = book.worksheets
    sheet.title = title
    widths = [len(heading) for heading in headings]
    for number, row in enumerate((headings, *rows), start=1):
        for at, cell in enumerate(row):
            _fill(sheet, number, at + 1, cell)
            widths[at] = max(widths[at], len(str(cell)))
    for at, width in enumerate(widths, start=1):
        letter = get_column_letter(at)
        sheet.cell(row=1, column=at).font = Font(bold=True)
        sheet.column_dimensions[letter].width = min(max(width, _NARROWEST), _WIDEST) + 2
    sheet.freeze_panes = "A2"
    sheet.auto_filter.ref = sheet.dimensions
    sheet.print_title_rows = "1:1"
    return _packed(book)


def number_or_text(cell: str) -> Cell:
    """Give a cell as the number that it is, or as it is."""
    try:
        return float(cell) if "." in cell else int(cell)
    except ValueError:
        return cell


def _fill(sheet: Worksheet, row: int, column: int, content: Cell) -> None:
    if content == "":
        return
    cell = sheet.cell(row=row, column=column)
    if isinstance(content, str):
        cell.value = harmless(ILLEGAL_CHARACTERS_RE.sub("", content))
        cell.number_format = "@"  # Else a spreadsheet makes a date of 3/4 as soon as somebody edits the cell.
    else:
        cell.value = content


def _packed(book: Workbook) -> bytes:
    """Pack a workbook, each file in it at the same date."""
    # The library's own way of saving notes the time.
    written = io.BytesIO()
    with zipfile.ZipFile(written, "w") as archive:
        ExcelWriter(book, archive).write_data()
    packed = io.BytesIO()
    with zipfile.ZipFile(written) as before, zipfile.ZipFile(packed, "w") as after:
        for name in before.namelist():
            entry = zipfile.ZipInfo(name, _THEN.timetuple()[:6])
            entry.compress_type = zipfile.ZIP_DEFLATED
            after.writestr(entry, before.read(name))
    return packed.getvalue()
