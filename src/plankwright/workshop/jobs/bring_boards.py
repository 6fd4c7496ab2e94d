"""Bring boards that were tallied elsewhere into the tally of a job."""

import tempfile
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from plankwright.errors import FileTroubleError, Problem
from plankwright.model import Board
from plankwright.workshop.jobs.kept import KeptJob, RefusedError
from plankwright.workshop.jobs.tally_boards import add_boards
from plankwright.workshop.ports import DefinitionReading, Files
from plankwright.workshop.wording import listed_at_most

_MOST_NAMED = 6
_TALLIES = (".csv", ".xlsx")


@dataclass(frozen=True, slots=True, kw_only=True)
class BroughtBoards:
    """Boards that were brought along.

    Parameters
    ----------
    boards
        In the order of the file.
    remarks
        What is doubtful about the file itself; what is about a board is told with the tally.
    """

    boards: tuple[Board, ...]
    remarks: tuple[Problem, ...]


def bring_boards(files: Files, reading: DefinitionReading, name: str, content: bytes) -> BroughtBoards:
    """Read the boards of a spreadsheet as those of a job.

    Parameters
    ----------
    files
        Who reads it.
    reading
        The job: how its lengths are written, and what is known of its lots.
    name, content
        The file.

    Raises
    ------
    BadInputError
        With every problem of the file.
    FileTroubleError
        If it is no tally, or cannot be read.
    """
    plain = PurePosixPath(name.replace("\\", "/")).name.strip()
    ending = PurePosixPath(plain).suffix.lower()
    if ending not in _TALLIES:
        raise FileTroubleError(
            f"The file {plain} is no spreadsheet of boards: choose one whose name ends in .csv or .xlsx."
        )
    with tempfile.TemporaryDirectory() as made:
        path = Path(made) / f"tally{ending}"
        path.write_bytes(content)
        tally = files.read_tally(
            path, unit=reading.unit, decimal_comma=reading.decimal_comma, rules=reading.rules
        )
    return BroughtBoards(
        # Read once more as boards of this job, so that those of a treated lot are treated.
        boards=tuple(same for board in tally.boards for same in reading.read_boards(reading.cells_of(board))),
        remarks=tuple(remark for remark in tally.remarks if not remark.what.startswith("board ")),
    )


def add_brought(kept: KeptJob, boards: Sequence[Board]) -> KeptJob:
    """Add boards that were brought along behind those that are there, all of them or none.

    Raises
    ------
    RefusedError
        If boards called like some of them are there already, or there are too many.
    """
    taken = {board.id for board in kept.boards}
    twice = [board.id for board in boards if board.id in taken]
    if twice:
        raise RefusedError(
            f"Boards called {listed_at_most(twice, _MOST_NAMED)} are in the tally already: leave them out of "
            "the spreadsheet if they are the same, or write other marks on them and into it."
        )
    return add_boards(kept, boards)
