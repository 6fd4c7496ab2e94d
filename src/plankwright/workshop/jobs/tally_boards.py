"""Take the tally board by board: add, mend, take out, and guess what the next one is called."""

import hashlib
import re
from collections import Counter
from collections.abc import Collection, Sequence
from dataclasses import replace

from plankwright.model import Board
from plankwright.workshop.jobs.kept import KeptJob, NotThereError, RefusedError, StaleError
from plankwright.workshop.wording import listed

MOST_BOARDS = 10_000
"""As many as a tally in a file may hold. [boards]"""

_NUMBERED = re.compile(r"(?P<stem>.*?)(?P<number>\d+)", re.DOTALL)

_COUNTED = re.compile(r"(?P<stem>.*\d)-(?P<number>[1-9]\d{0,4})", re.DOTALL)


def fingerprint(value: object) -> str:
    """Give a short mark that is another one as soon as anything about a value is."""
    return hashlib.sha256(repr(value).encode()).hexdigest()[:16]


def board_of(kept: KeptJob, board_id: str) -> Board:
    """Give a board of the tally.

    Raises
    ------
    NotThereError
        If it has none of that id.
    """
    for board in kept.boards:
        if board.id == board_id:
            return board
    raise NotThereError(f"There is no board {board_id} in the tally, or no longer.")


def add_boards(kept: KeptJob, boards: Sequence[Board]) -> KeptJob:
    """Add boards at the end of the tally.

    Raises
    ------
    RefusedError
        If a board of that id is there already, two come with the same one, or there are too many.
    """
    taken, new = {board.id for board in kept.boards}, Counter(board.id for board in boards)
    twice = [name for name, many in new.items() if many > 1 or name in taken]
    if twice:
        free = next_id({*taken, *new}, twice[0])
        raise RefusedError(
            f"There is a board {listed(twice)} already: write another mark on this one, such as {free}."
        )
    if len(taken) + len(boards) > MOST_BOARDS:
        raise RefusedError(f"There are more than {MOST_BOARDS} boards: begin another job for the rest.")
    return replace(kept, boards=(*kept.boards, *boards))


def change_board(kept: KeptJob, board_id: str, seen: str, board: Board) -> KeptJob:
    """Put a board in place of what it was tallied as.

    Parameters
    ----------
    kept
        The job.
    board_id
        What it was called.
    seen
        Its fingerprint as it was shown to whoever changes it.
    board
        What it is.

    Raises
    ------
    NotThereError
        If there is no such board any more.
    StaleError
        If it is another one than was shown.
    RefusedError
        If it would be called like another, or pieces of it are cut and it would be called otherwise.
    """
    _demand_as_seen(board_of(kept, board_id), seen)
    if board.id != board_id:
        if any(other.id == board.id for other in kept.boards):
            raise RefusedError(f"There is a board {board.id} already: write another mark on this one.")
        _demand_uncut(kept, board_id, "must be called as before")
    return replace(kept, boards=tuple(board if other.id == board_id else other for other in kept.boards))


def take_out_board(kept: KeptJob, board_id: str, seen: str) -> KeptJob:
    """Take a board out of the tally.

    Parameters
    ----------
    kept
        The job.
    board_id, seen
        The board, and its fingerprint as it was shown.

    Raises
    ------
    NotThereError
        If there is no such board any more.
    StaleError
        If it is another one than was shown.
    RefusedError
        If pieces of it are cut.
    """
    _demand_as_seen(board_of(kept, board_id), seen)
    _demand_uncut(kept, board_id, "must stay in the tally; if what is left of it is lost, mark that")
    return replace(kept, boards=tuple(board for board in kept.boards if board.id != board_id))


def next_id(taken: Collection[str], last: str) -> str:
    """Guess what the next board is called: the last one's mark, counted up to the first that is free.

    Parameters
    ----------
    taken
        Marks that are used.
    last
        The mark of the last one; empty when there is none.

    Returns
    -------
    str
        Such as F13 after F12, or 08 after 07.
    """
    match = _NUMBERED.fullmatch(last)
    stem, digits = (match["stem"], match["number"]) if match else (f"{last}-" if last else "", "0")
    number = int(digits) + 1
    while (name := f"{stem}{number:0{len(digits)}d}") in taken:
        number += 1
    return name


def next_mark(boards: Sequence[Board]) -> str:
    """Guess what the board after those of a tally is called.

    Boards that were added as several alike are marked 17-1, 17-2 and so on; after the last of them comes 18.

    Parameters
    ----------
    boards
        The tally; the next one comes at its end.
    """
    taken = {board.id for board in boards}
    last = boards[-1].id if boards else ""
    return next_id(taken, _of_alike(boards) or last)


def _of_alike(boards: Sequence[Board]) -> str:
    """Give the mark that the last boards share, counted from one and alike; empty when it is not so."""
    match = _COUNTED.fullmatch(boards[-1].id) if boards else None
    many = min(int(match["number"]), len(boards) + 1) if match else 0
    if match is None or not 1 < many <= len(boards):
        return ""
    shared = match["stem"]
    alike = [
        replace(boards[-1], id=f"{shared}-{number}") == board
        for number, board in enumerate(boards[-many:], start=1)
    ]
    return shared if all(alike) else ""


def _demand_as_seen(board: Board, seen: str) -> None:
    if fingerprint(board) != seen:
        raise StaleError


def _demand_uncut(kept: KeptJob, board_id: str, otherwise: str) -> None:
    if kept.work is not None and board_id in kept.work.standing.sawn:
        raise RefusedError(f"Pieces of board {board_id} are cut or hang: it {otherwise}.")
