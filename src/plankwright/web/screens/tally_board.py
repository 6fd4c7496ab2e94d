"""One board of the tally: look at it, change what was measured, take it out."""

import secrets
from collections.abc import Sequence

from starlette.responses import Response
from starlette.routing import Route

from plankwright.errors import PlankwrightError
from plankwright.model import Board
from plankwright.web.mishaps import sentences_of, status_of
from plankwright.web.screens.tally_entry import WORDS, board_url, read_values, tally_url, typed_entry
from plankwright.web.visit import Visit, page
from plankwright.workshop.jobs.enter_board import Entry, boards_of_entry, entry_of
from plankwright.workshop.jobs.kept import KeptJob, NotThereError, StaleError
from plankwright.workshop.jobs.look_at_tally import row_of
from plankwright.workshop.jobs.tally_boards import board_of, change_board, fingerprint, take_out_board


def show_board(visit: Visit) -> Response:
    """Show a board as it was tallied."""
    return _show(visit)


def change(visit: Visit) -> Response:
    """Put what was filled in in place of what was tallied, or take the board out."""
    board_id, seen = visit.asked("id"), visit.text("seen")
    if visit.text("do") == "out":
        try:
            visit.change(f"board {board_id} taken out", lambda kept: take_out_board(kept, board_id, seen))
        except PlankwrightError as trouble:
            return _refused(visit, trouble, None)
        return visit.go(tally_url(visit))
    entry = typed_entry(visit)
    try:
        (board,) = boards_of_entry(entry.of_one, visit.reading)
        visit.change(f"board {board_id} changed", lambda kept: _changed(kept, board_id, seen, board))
    except PlankwrightError as trouble:
        return _refused(visit, trouble, entry)
    return visit.go(tally_url(visit))


def find_board(visit: Visit) -> Response:
    """Lead on from the short address of a board."""
    board_id = str(visit.request.path_params["board_id"])
    board_of(visit.job, board_id)
    return visit.go(board_url(visit.job_id, board_id))


def _changed(kept: KeptJob, board_id: str, seen: str, board: Board) -> KeptJob:
    """Change a board; a form that is sent twice finds it as it is to be."""
    return kept if board in kept.boards else change_board(kept, board_id, seen, board)


def _refused(visit: Visit, trouble: PlankwrightError, typed: Entry | None) -> Response:
    """Show the board again, with what was filled in, and as it is now where somebody else has changed it."""
    if isinstance(trouble, NotThereError) and typed is None:
        raise trouble
    return _show(
        visit,
        status=status_of(trouble),
        problems=sentences_of(trouble),
        typed=typed,
        stale=isinstance(trouble, StaleError),
    )


def _show(
    visit: Visit,
    *,
    status: int = 200,
    problems: Sequence[str] = (),
    typed: Entry | None = None,
    stale: bool = False,
) -> Response:
    kept, reading, board_id = visit.job, visit.reading, visit.asked("id")
    board = next((one for one in kept.boards if one.id == board_id), None)
    if board is None and typed is None:
        raise NotThereError(f"There is no board {board_id} in the tally, or no longer.")
    entry = typed or (Entry() if board is None else entry_of(board, reading))
    return visit.show(
        "tally_board.html",
        status=status,
        problems=problems,
        board_id=board_id,
        gone=board is None,
        typed=typed is not None,
        entry=entry,
        # What is written over is what is shown: after a refusal that is the board as it is now.
        seen="" if board is None else fingerprint(board) if stale or not typed else visit.text("seen"),
        now=row_of(board, reading.tape) if board is not None and stale else None,
        key=secrets.token_hex(8),
        lots=list(dict.fromkeys(other.lot for other in kept.boards if other.lot)),
        species=list(dict.fromkeys(other.species for other in kept.boards if other.species)),
        oob=False,
        words=WORDS,
        **read_values(entry, reading),
    )


ROUTES: list[Route] = [
    page("/jobs/{job_id}/tally/board", show_board),
    page("/jobs/{job_id}/tally/board", change, "POST"),
    page("/jobs/{job_id}/tally/{board_id:path}", find_board),
]
