"""Reading a tally, row by row: a board each, or several that are alike."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import islice
from pathlib import Path

from plankwright.errors import BadInputError, Problem
from plankwright.files.disk import read_bytes
from plankwright.files.doubts import remark_board, remark_lots, remark_pile, remark_woods
from plankwright.files.headings import is_heading, read_headings
from plankwright.files.notation import Notation
from plankwright.files.report import Report, Where
from plankwright.files.sentences import quoted
from plankwright.files.tally_row import RowReader
from plankwright.files.tally_sheet import BookError, read_sheet
from plankwright.files.tally_table import below_titles, boards_only, row_numbers, within_table
from plankwright.files.tally_text import Row, decoded, rows_of
from plankwright.measure import Unit
from plankwright.model import Board, Lot
from plankwright.model.rules import Rules

_MOST_BOARDS = 10_000
_MOST_ROWS = 20_000
_FEW_COMMAS = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class TallyReading:
    """What a tally holds.

    Parameters
    ----------
    boards
        The boards, in the order of the file.
    remarks
        What is doubtful: nothing that stops the work, but somebody should look.
    """

    boards: tuple[Board, ...]
    remarks: tuple[Problem, ...]


def read_tally(
    path: Path, *, unit: Unit | None, decimal_comma: bool = False, rules: Rules = Rules()
) -> TallyReading:
    """Read a tally, a CSV file or a workbook.

    Parameters
    ----------
    path
        The file; a workbook when its name ends in .xlsx.
    unit
        Unit of a number that has none, where the heading names none either.
    decimal_comma
        Whether the comma is the decimal mark in text.
    rules
        They say which boards are of doubtful use.

    Returns
    -------
    TallyReading
        The boards, and what is doubtful about them.

    Raises
    ------
    BadInputError
        With every problem of the file.
    FileTroubleError
        If the file is missing or cannot be read.
    """
    boards, report = gather_boards(path, Notation(unit=unit, decimal_comma=decimal_comma), rules)
    if report.problems:
        raise BadInputError(report.problems)
    return TallyReading(boards=boards, remarks=report.remarks)


def gather_boards(
    path: Path, notation: Notation, rules: Rules, lots: Sequence[Lot] = ()
) -> tuple[tuple[Board, ...], Report]:
    """Read as many boards of a tally as can be read, and report on all of it.

    Parameters
    ----------
    path
        The file; a workbook when its name ends in .xlsx.
    notation
        How its lengths are written.
    rules
        They say which boards are of doubtful use.
    lots
        What is known of lots.

    Returns
    -------
    tuple
        The boards that could be read, and the report; they must not be used when it holds problems.

    Raises
    ------
    FileTroubleError
        If the file is missing or cannot be read.
    """
    in_sheet = path.suffix.lower() == ".xlsx"
    report = Report(path.name, _place_of_row if in_sheet else _place_of_line)
    content = read_bytes(path)
    rows = _sheet(content, report) if in_sheet else _text(content, report)
    if not rows:
        if not report.problems:
            report.refuse((), "the tally is empty: give it a row of headings and a row for each board")
        return (), report
    first, rows = below_titles(rows, report)
    headings = read_headings(first.cells)
    for sentence in headings.problems:
        report.refuse((first.number,), sentence)
    if headings.left_out:
        report.remark(
            (first.number,), f"these columns are not read: {', '.join(map(quoted, headings.left_out))}"
        )
    if headings.problems:
        return (), report
    rows = boards_only(rows, first, report)
    if in_sheet:
        rows = within_table(rows, headings.count, report)
    reader = RowReader(headings, notation, report, lots)
    boards = _boards(rows, reader, report)
    if reader.unnamed:
        first_unnamed = reader.unnamed[0]
        report.remark(
            (first_unnamed,),
            f"rows without an id: {len(reader.unnamed)}; their boards are called after the row, like "
            f"r{first_unnamed}: write that on them",
        )
    _tell_commas(report, notation)
    _check_ids(boards, report)
    if not boards and not report.problems:
        report.refuse((), "the tally holds no boards: give each one a row below the headings")
    for number, board in boards:
        remark_board(board, (number,), report, rules=rules)
    remark_pile(boards, report)
    remark_lots(boards, lots, report)
    remark_woods(boards, report)
    return tuple(board for _, board in boards), report


def _text(content: bytes, report: Report) -> list[Row]:
    if content.startswith(b"PK\x03\x04"):
        report.refuse((), "this is a workbook, not CSV: save it as .xlsx, with a name that ends so")
        return []
    try:
        text, guessed = decoded(content)
    except ValueError:
        report.refuse((), "this is no text file: save the tally as CSV in UTF-8")
        return []
    if guessed:
        report.remark(
            (),
            "the file is not UTF-8 and was read as Windows text: look whether marks such as ½ came through",
        )
    rows = list(islice(rows_of(text, is_heading), _MOST_ROWS + 1))
    if len(rows) > _MOST_ROWS:
        report.refuse((), f"there are more than {_MOST_ROWS} rows: keep the tally in a file of its own")
        return []
    return rows


def _sheet(content: bytes, report: Report) -> list[Row]:
    try:
        sheet = read_sheet(content)
    except BookError as trouble:
        report.refuse((), str(trouble))
        return []
    if sheet.not_read:
        report.remark((), f"one sheet is read, and not {', '.join(map(quoted, sheet.not_read))}")
    if sheet.hidden:
        report.remark((), f"rows that are hidden are read all the same: {row_numbers(sheet.hidden)}")
    return list(sheet.rows)


def _boards(rows: Iterable[Row], reader: RowReader, report: Report) -> list[tuple[int, Board]]:
    """Read every row; give each board with the row that it stands in."""
    boards: list[tuple[int, Board]] = []
    for row in rows:
        boards += [(row.number, board) for board in reader.read(row)]
        if len(boards) > _MOST_BOARDS:
            report.refuse(
                (row.number,), f"there are more than {_MOST_BOARDS} boards up to here: check the quantities"
            )
            break
    return boards


def _tell_commas(report: Report, notation: Notation) -> None:
    """Say once, and first, what mends a file that writes its decimals with a comma throughout."""
    commas = sum("comma" in problem.what and "decimal mark" in problem.what for problem in report.problems)
    if commas >= _FEW_COMMAS and not notation.decimal_comma:
        report.refuse(
            (),
            f"{commas} lengths hold a comma: if it is the decimal mark throughout, say decimal_comma = true "
            "in job.toml, or --decimal-comma for a tally alone",
        )


def _check_ids(boards: list[tuple[int, Board]], report: Report) -> None:
    first_with: dict[str, tuple[int, str]] = {}
    for number, board in boards:
        first, written = first_with.setdefault(board.id.lower(), (number, board.id))
        if (first, written) == (number, board.id):
            continue
        before = report.place((first,))
        if written == board.id:
            report.refuse(
                (number,), f"id {board.id} is used before, in {before}: no two boards may share one"
            )
        else:
            report.remark((number,), f"id {board.id} is easily taken for {written}, in {before}")


def _place_of_line(where: Where) -> tuple[str, int | None]:
    return _place("line", where)


def _place_of_row(where: Where) -> tuple[str, int | None]:
    return _place("row", where)


def _place(word: str, where: Where) -> tuple[str, int | None]:
    return (f"{word} {where[0]}", int(where[0])) if where else ("", None)
