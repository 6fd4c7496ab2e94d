"""A board as the cells of a tally's row, read and written one at a time."""

from collections.abc import Mapping, Sequence

from plankwright.errors import BadInputError
from plankwright.files.headings import COLUMNS, Headings
from plankwright.files.notation import Notation
from plankwright.files.report import Report, whole_file
from plankwright.files.tally_csv import flaw_text, moisture_text, own_flaws
from plankwright.files.tally_row import RowReader
from plankwright.files.tally_text import Row
from plankwright.model import Board, EdgeKind, Lot, Treatment

COLUMN_NAMES = tuple(COLUMNS)
"""Every column that a row may fill."""

_HEADINGS = Headings(
    at={column: place for place, column in enumerate(COLUMN_NAMES)},
    count=len(COLUMN_NAMES),
    units={},
    left_out=(),
    problems=(),
)


def read_boards(cells: Mapping[str, str], notation: Notation, lots: Sequence[Lot] = ()) -> tuple[Board, ...]:
    """Read a board, or several that are alike, from the cells of one row.

    Parameters
    ----------
    cells
        By column, as somebody wrote them; what is missing is empty.
    notation
        How lengths are written.
    lots
        What is known of lots: boards of a treated one are treated.

    Returns
    -------
    tuple of Board
        As many as the quantity says.

    Raises
    ------
    BadInputError
        With every problem of the row.
    """
    report = Report("this board", whole_file)
    row = Row(number=1, cells=tuple(cells.get(column, "").strip() for column in COLUMN_NAMES), troubles={})
    boards = RowReader(_HEADINGS, notation, report, lots).read(row)
    if report.problems:
        raise BadInputError(report.problems)
    return tuple(boards)


def cells_of(board: Board, notation: Notation) -> dict[str, str]:
    """Give a board as the cells of a row that is read as just that board.

    Parameters
    ----------
    board
        The board.
    notation
        How lengths are written.
    """
    square = board.profile.kind is EdgeKind.SQUARE
    told = board.treatment is not Treatment.NONE or board.untreated
    return {
        "id": board.id,
        "lot": board.lot,
        "species": board.species,
        "length": notation.write(board.length_nm),
        "width": notation.write(board.width_start_nm),
        "width other end": notation.write(board.width_end_nm) if board.tapered else "",
        "thickness": notation.write(board.thickness_nm),
        "edge": board.profile.kind.value,
        "tongue": "" if square else notation.write(board.profile.reach_nm),
        "flaws": "; ".join(
            flaw_text(flaw, notation.write(flaw.start_nm), notation.write(flaw.end_nm))
            for flaw in own_flaws(board)
        ),
        "tone": board.tone,
        "note": board.note,
        "moisture": moisture_text(board),
        "nails": "" if board.nails is None else board.nails.value,
        "treatment": board.treatment.value if told else "",
        "quantity": "",
    }
