"""A tally written as a workbook, which is read as the same tally; sizes stand there as numbers as well."""

from collections.abc import Iterable

from plankwright.files.board_cells import COLUMN_NAMES, cells_of
from plankwright.files.notation import Notation
from plankwright.files.workbook import Cell, number_or_text, workbook
from plankwright.measure import INCH, MILLIMETRE, System, TapeStyle
from plankwright.model import Board

_SIZES = ("length", "width", "thickness")
_PLACES = 4
"""A sixteenth of an inch has as many. [digits]"""


def tally_xlsx(boards: Iterable[Board], notation: Notation, tape: TapeStyle) -> bytes:
    """Write boards as a workbook.

    Parameters
    ----------
    boards
        The boards.
    notation
        How lengths are written.
    tape
        Whether sizes as numbers, for sums and for sorting, are inches or millimetres.

    Returns
    -------
    bytes
        An .xlsx file: the columns of a tally as text, and behind them sizes as numbers, which no tally has.
    """
    unit, word = (MILLIMETRE, "mm") if tape.system is System.METRIC else (INCH, "in")

    def row(board: Board) -> list[Cell]:
        cells = cells_of(board, notation)
        sizes = (board.length_nm, board.width_start_nm, board.thickness_nm)
        return [
            *(
                number_or_text(cells[column]) if column == "moisture" else cells[column]
                for column in COLUMN_NAMES
            ),
            *(round(size / unit, _PLACES) for size in sizes),
        ]

    headings = [*COLUMN_NAMES, *(f"{size}, decimal {word}" for size in _SIZES)]
    return workbook("tally", headings, map(row, boards))
