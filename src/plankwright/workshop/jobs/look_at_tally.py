"""The tally as it is looked at: newest first, found by mark or lot, with what is doubtful about it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from plankwright.errors import Problem
from plankwright.measure import TapeStyle, write_length
from plankwright.model import Board, Flaw
from plankwright.model.board import lot_key
from plankwright.workshop.jobs.kept import KeptJob
from plankwright.workshop.jobs.leaf_words import on_screen
from plankwright.workshop.wording import capital

WITHOUT_LOT = "–"
"""Asks for boards that are of no lot."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardRow:
    """What a list shows of a board.

    Parameters
    ----------
    id, size, lot, note
        As tallied; the size is length, width and thickness.
    flaws
        Its flaws in a few words; empty when it has none.
    """

    id: str
    size: str
    lot: str
    note: str
    flaws: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LotCount:
    """A lot, and how many boards are of it; boards of no lot come under `WITHOUT_LOT`."""

    lot: str
    boards: int


@dataclass(frozen=True, slots=True, kw_only=True)
class TallyView:
    """The tally, or what was looked for in it.

    Parameters
    ----------
    rows
        The boards that are shown, the newest first.
    first
        How many stand before them.
    found, boards
        How many were found, and how many there are.
    lots
        Every lot, in the order in which they first come up.
    """

    rows: tuple[BoardRow, ...]
    first: int
    found: int
    boards: int
    lots: tuple[LotCount, ...]

    @property
    def shown(self) -> int:
        """How many are shown, those before them counted in."""
        return self.first + len(self.rows)


@dataclass(frozen=True, slots=True, kw_only=True)
class Doubt:
    """Something doubtful about the tally.

    Parameters
    ----------
    sentence
        What it is.
    board_id
        The board that it is about; empty when it is about several.
    """

    sentence: str
    board_id: str = ""


def look_at_tally(
    kept: KeptJob, tape: TapeStyle, *, find: str = "", lot: str = "", first: int = 0, most: int = 50
) -> TallyView:
    """Look at the tally.

    Parameters
    ----------
    kept
        The job.
    tape
        How lengths are written.
    find
        A part of the mark or the note of the boards that are looked for; the one that is called just so comes
        first.
    lot
        Their lot; empty for all.
    first, most
        How many are left out at the beginning, and how many are shown at the most.
    """
    words = find.casefold()
    found = [
        board
        for board in reversed(kept.boards)
        if _is_meant(board, words) and (not lot or _is_of(board, lot))
    ]
    if words:
        found.sort(key=lambda board: board.id.casefold() != words)
    rows = tuple(row_of(board, tape) for board in found[first : first + most])
    return TallyView(
        rows=rows, first=first, found=len(found), boards=len(kept.boards), lots=tuple(_lots(kept.boards))
    )


def row_of(board: Board, tape: TapeStyle) -> BoardRow:
    """Give what a list shows of a board."""
    return BoardRow(
        id=board.id,
        size=size_of(board, tape),
        lot=board.lot,
        note=board.note,
        flaws="; ".join(_told(flaw, board, tape) for flaw in board.flaws),
    )


def size_of(board: Board, tape: TapeStyle) -> str:
    """Say how large a board is."""
    width = write_length(board.width_start_nm, tape)
    if board.tapered:
        width = f"{width} to {write_length(board.width_end_nm, tape)}"
    return f"{write_length(board.length_nm, tape)} × {width} × {write_length(board.thickness_nm, tape)}"


def doubts_about(remarks: Sequence[Problem], kept: KeptJob) -> tuple[Doubt, ...]:
    """Give what is doubtful about the boards of a job, of all that is doubtful about it."""
    places = {f"board {board.id}": board.id for board in kept.boards}
    return tuple(
        Doubt(sentence=capital(on_screen(remark.what)), board_id=places.get(remark.place, ""))
        for remark in remarks
        if not remark.place or remark.place in places
    )


def _is_meant(board: Board, words: str) -> bool:
    return words in board.id.casefold() or words in board.note.casefold()


def _is_of(board: Board, lot: str) -> bool:
    return board.lot_key == ("" if lot == WITHOUT_LOT else lot_key(lot))


def _lots(boards: Sequence[Board]) -> Iterator[LotCount]:
    counts: dict[str, int] = {}
    names: dict[str, str] = {}
    for board in boards:
        names.setdefault(board.lot_key, board.lot or WITHOUT_LOT)
        counts[board.lot_key] = counts.get(board.lot_key, 0) + 1
    for key, name in names.items():
        yield LotCount(lot=name, boards=counts[key])


def _told(flaw: Flaw, board: Board, tape: TapeStyle) -> str:
    face = f", {flaw.face} only" if flaw.face else ""
    if (flaw.start_nm, flaw.end_nm) == (0, board.length_nm):
        return f"{flaw.what} all along{face}"
    start, end = write_length(flaw.start_nm, tape), write_length(flaw.end_nm, tape)
    return f"{start} to {end} {flaw.what}{face}"
