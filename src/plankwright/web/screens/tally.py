"""The tally: boards measured one after the other, with thumbs and gloves."""

import secrets
from collections.abc import Sequence
from typing import Any

from starlette.responses import PlainTextResponse, Response
from starlette.routing import Route

from plankwright.errors import PlankwrightError
from plankwright.model import Board
from plankwright.web.mishaps import sentences_of, status_of
from plankwright.web.screens import tally_board, tally_brought
from plankwright.web.screens.tally_entry import WORDS, demand_added, read_values, tally_url, typed_entry
from plankwright.web.visit import Visit, page
from plankwright.workshop.jobs.enter_board import (
    Entry,
    boards_of_entry,
    entry_given,
    next_entry,
    same_again,
    tell_added,
)
from plankwright.workshop.jobs.look_at_tally import doubts_about, look_at_tally, row_of, size_of
from plankwright.workshop.jobs.tally_boards import add_boards
from plankwright.workshop.jobs.tally_so_far import tell_reach, tell_totals

_NOT_ADDED_YET = "You have typed a board that is not added yet: add it first."
_AGAIN = "again."
"""How the fields begin that say what one more like the last board is, beside those of the next one."""

_AT_A_TIME = 50
_MOST = 10_000


def show_tally(visit: Visit) -> Response:
    """Show the tally, and what the next board is probably like."""
    return _show(visit)


def add(visit: Visit) -> Response:
    """Add a board, or several that are alike."""
    entry = typed_entry(visit)
    if again := visit.text("again"):
        if entry.begun:
            return _show(visit, status=422, problems=[_NOT_ADDED_YET], typed=entry)
        entry = entry_given(_of_again(visit))
    try:
        boards = boards_of_entry(entry, visit.reading)
        visit.change(tell_added(boards), lambda kept: add_boards(kept, boards))
        if not _by_itself(visit):
            demand_added(visit, boards)
    except PlankwrightError as trouble:
        if _by_itself(visit):
            return PlainTextResponse("\n".join(sentences_of(trouble)), status_of(trouble))
        typed = typed_entry(visit) if again else entry
        return _show(visit, status=status_of(trouble), problems=sentences_of(trouble), typed=typed)
    if _by_itself(visit):
        return PlainTextResponse(f"kept {visit.text('key')}")
    return visit.go(tally_url(visit, added=boards[0].id, last=boards[-1].id))


def read_entry(visit: Visit) -> Response:
    """Say what was understood of a board that is still being filled in, and draw it."""
    return visit.show("tally.html", block="drawn", oob=True, **read_values(typed_entry(visit), visit.reading))


def list_boards(visit: Visit) -> Response:
    """Give the list of boards alone, or what of it comes next."""
    values = _list_values(visit)
    return visit.show("tally.html", block="rows" if values["view"].first else "found", **values)


def count(visit: Visit) -> Response:
    """Say how far the boards reach."""
    sentences = tell_reach(visit.job, visit.reading)
    alone = visit.request.headers.get("hx-request") == "true"
    return visit.show("tally_count.html", block="reach" if alone else "", sentences=sentences)


def take_along(visit: Visit) -> Response:
    """Hand out the tally for a spreadsheet."""
    return visit.download(visit.reading.tally_csv(), f"{visit.job.name} tally.csv", "text/csv; charset=utf-8")


def _of_again(visit: Visit) -> list[tuple[str, str]]:
    """Give the fields of one more like the last board."""
    return [(name.removeprefix(_AGAIN), text) for name, text in visit.fields() if name.startswith(_AGAIN)]


def _by_itself(visit: Visit) -> bool:
    """Whether an entry that waited on a phone is sent by itself, with no page to be shown."""
    return visit.request.headers.get("accept") == "text/plain"


def _show(
    visit: Visit, *, status: int = 200, problems: Sequence[str] = (), typed: Entry | None = None
) -> Response:
    kept, reading = visit.job, visit.reading
    entry = typed or next_entry(kept, reading)
    last = kept.boards[-1] if kept.boards else None
    return visit.show(
        "tally.html",
        status=status,
        problems=problems,
        typed=typed is not None,
        entry=entry,
        key=secrets.token_hex(8),
        mends=visit.text("mends"),
        again=same_again(kept, reading),
        again_key=secrets.token_hex(8),
        last=last and row_of(last, reading.tape),
        species=list(dict.fromkeys(board.species for board in kept.boards if board.species)),
        totals=tell_totals(kept, reading),
        doubts=doubts_about(reading.remarks, kept),
        oob=False,
        words=WORDS,
        **_told(visit),
        **_list_values(visit),
        **read_values(entry, reading),
    )


def _told(visit: Visit) -> dict[str, Any]:
    """Give what is said of the step that brought one here: the boards that were added."""
    first, last = visit.asked("added"), visit.asked("last")
    places = {board.id: place for place, board in enumerate(visit.job.boards)}
    added: tuple[Board, ...] = ()
    if first in places and last in places:
        added = visit.job.boards[places[first] : places[last] + 1]
    size = size_of(added[0], visit.reading.tape) if added else ""
    return {"did": visit.asked("did"), "added": added and tell_added(added), "added_size": size}


def _list_values(visit: Visit) -> dict[str, Any]:
    find, lot = visit.asked("find")[:100], visit.asked("lot")[:100]
    first, most = _number(visit.asked("first"), 0), _number(visit.asked("most"), _AT_A_TIME)
    view = look_at_tally(visit.job, visit.reading.tape, find=find, lot=lot, first=first, most=most)
    return {"view": view, "find": find, "lot": lot, "at_a_time": _AT_A_TIME}


def _number(text: str, otherwise: int) -> int:
    """Read a number out of an address, within reason."""
    if not (text.isascii() and text.isdecimal() and len(text) <= len(str(_MOST))):
        return otherwise
    return min(int(text), _MOST)


ROUTES: list[Route] = [
    page("/jobs/{job_id}/tally", show_tally),
    page("/jobs/{job_id}/tally", add, "POST"),
    page("/jobs/{job_id}/tally/read", read_entry, "POST"),
    page("/jobs/{job_id}/tally/boards", list_boards),
    page("/jobs/{job_id}/tally/count", count),
    page("/jobs/{job_id}/tally/tally.csv", take_along),
    *tally_brought.ROUTES,
    *tally_board.ROUTES,
]
