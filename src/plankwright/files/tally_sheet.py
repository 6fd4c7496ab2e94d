"""The rows of a workbook tally, its numbers as bare numbers and what a spreadsheet spoils told apart."""

import datetime as dt
import io
import warnings
import zipfile
from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

import openpyxl

from plankwright.files.headings import heading_row
from plankwright.files.notation import number_text
from plankwright.files.sentences import quoted
from plankwright.files.tally_text import Row, is_comment
from plankwright.measure import LengthError

_LARGEST_UNPACKED = 50_000_000
"""No tally is that large; a workbook may be small only because it is packed. [bytes]"""

_UNCALCULATED = (
    "holds a formula that was never worked out: open the workbook in a spreadsheet program and save it, "
    "or type the value"
)


class BookError(ValueError):
    """A workbook that cannot be read as a tally; the message is a sentence for the user."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """The sheet of a workbook that holds the tally.

    Parameters
    ----------
    rows
        What is neither empty nor a comment.
    hidden
        Numbers of rows among them that the workbook does not show.
    not_read
        Names of further sheets that are not empty.
    """

    rows: tuple[Row, ...]
    hidden: tuple[int, ...]
    not_read: tuple[str, ...]


def read_sheet(content: bytes) -> Sheet:
    """Give the sheet of a workbook that holds the tally: the one that is shown and has its headings.

    Parameters
    ----------
    content
        An .xlsx file.

    Returns
    -------
    Sheet
        It; the first one shown that is not empty, when no sheet has the headings of a tally.

    Raises
    ------
    BookError
        If it is no workbook that can be read, or several sheets hold a tally.
    """
    if not content:
        raise BookError("the file is empty: save the workbook again")
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # openpyxl warns of styles and rules that it does not keep
        try:
            sheets = _sheets(content)
        except BookError:
            raise
        except Exception as trouble:  # openpyxl lets through whatever its zip, XML and number parsers raise
            raise BookError(
                "this cannot be read as a workbook: open it and save it as .xlsx again, or as CSV in UTF-8"
            ) from trouble
    filled = [(sheet, rows) for sheet in sheets if (rows := sheet.rows())]
    shown = [(sheet, rows) for sheet, rows in filled if sheet.shown] or filled
    tallies = [(sheet, rows) for sheet, rows in shown if _is_tally(rows)]
    if len(tallies) > 1:
        names = " and ".join(quoted(sheet.name) for sheet, _ in tallies)
        raise BookError(
            f"the sheets {names} each hold a tally: put all boards on one sheet, or hide what is not meant"
        )
    if not shown:
        return Sheet(rows=(), hidden=(), not_read=())
    chosen, rows = (tallies or shown)[0]
    return Sheet(
        rows=tuple(rows),
        hidden=tuple(row.number for row in rows if row.number in chosen.hidden_rows),
        not_read=tuple(sheet.name for sheet, _ in filled if sheet is not chosen),
    )


def _is_tally(rows: list[Row]) -> bool:
    at = heading_row([row.cells for row in rows])
    return at is not None and at + 1 < len(rows)


def _sheets(content: bytes) -> list["_Sheet"]:
    with zipfile.ZipFile(io.BytesIO(content)) as packed:
        if sum(part.file_size for part in packed.infolist()) > _LARGEST_UNPACKED:
            raise BookError("the workbook is far larger than any tally: keep the tally in one of its own")
    values, formulas = (
        openpyxl.load_workbook(io.BytesIO(content), data_only=data_only, keep_links=False)
        for data_only in (True, False)
    )
    return [_Sheet(sheet, formulas[sheet.title]) for sheet in values.worksheets]


class _Sheet:
    """One sheet, its values beside its formulas, and what is merged or hidden in it."""

    def __init__(self, values: Any, formulas: Any) -> None:  # noqa: ANN401 - read as they come, typed loosely
        self.name: str = values.title
        self.shown: bool = values.sheet_state == "visible"
        # The library's public ways make a cell of every empty place up to the last one that was ever touched.
        self._cells: dict[tuple[int, int], Any] = dict(values._cells)  # noqa: SLF001
        formula_at = {place for place, cell in formulas._cells.items() if cell.data_type == "f"}  # noqa: SLF001
        # Worked out, a formula may come to an empty text; when none comes to anything, none was worked out.
        worked_out = any(self._cells[place].value is not None for place in formula_at)
        self._uncalculated = set() if worked_out else formula_at
        self._shared: set[tuple[int, int]] = set()
        self._from_above: set[tuple[int, int]] = set()
        for merged in values.merged_cells.ranges:
            self._spread(merged)
        self.hidden_rows = {number for number, row in values.row_dimensions.items() if row.hidden}

    def _spread(self, merged: Any) -> None:  # noqa: ANN401 - the range has no public type
        """Let a cell that is merged over several rows hold the same in each, as it looks."""
        top = self._cells.get((merged.min_row, merged.min_col))
        if top is None or top.value is None or merged.min_row == merged.max_row:
            return
        for row in range(merged.min_row, merged.max_row + 1):
            self._cells[row, merged.min_col] = top
            self._shared.add((row, merged.min_col))
            if row > merged.min_row:
                self._from_above.add((row, merged.min_col))

    def rows(self) -> list[Row]:
        columns: defaultdict[int, set[int]] = defaultdict(set)
        for (row, column), cell in self._cells.items():
            if cell.value is not None or (row, column) in self._uncalculated:
                columns[row].add(column)
        # A row is not filled by what is merged into it from above.
        numbers = [row for row in sorted(columns) if {(row, at) for at in columns[row]} - self._from_above]
        read = (self._row(number, columns[number]) for number in numbers)
        return [row for row in read if any(row.cells) and not is_comment(row.cells)]

    def _row(self, number: int, columns: Iterable[int]) -> Row:
        texts, troubles = [""] * max(columns), {}
        for column in columns:
            cell = self._cells[number, column]
            text, trouble = (
                ("=", _UNCALCULATED)
                if (number, column) in self._uncalculated
                else _text(cell.value, str(cell.number_format))
            )
            texts[column - 1] = text
            if trouble:
                troubles[column - 1] = trouble
        shared = frozenset(column - 1 for column in columns if (number, column) in self._shared)
        return Row(number=number, cells=tuple(texts), troubles=troubles, shared=shared)


def _text(value: Any, number_format: str) -> tuple[str, str]:  # noqa: ANN401, PLR0911 - a cell holds anything
    """Give a cell as text, and what is wrong with it."""
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
