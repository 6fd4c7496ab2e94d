"""What the screens of the tally have in common: the fields of a board, and the way back to the tally."""

from collections.abc import Sequence
from typing import Any
from urllib.parse import quote, urlencode

from plankwright.model import Board
from plankwright.web.visit import Visit, job_url
from plankwright.workshop.draw_board import draw_board, tap_scale
from plankwright.workshop.jobs.enter_board import (
    EDGES,
    KINDS,
    NAILS,
    TREATMENTS,
    Entry,
    entry_given,
    read_back,
)
from plankwright.workshop.jobs.kept import StaleError
from plankwright.workshop.ports import DefinitionReading

WORDS = {
    "kinds": KINDS,
    "edges": [(kind.value, word) for kind, word in EDGES.items()],
    "nails": [("", "not looked yet"), *((kind.value, word) for kind, word in NAILS.items())],
    "treatments": [
        ("", "as its lot"),
        *((kind.value, word) for kind, word in TREATMENTS.items()),
    ],
}
"""What can be chosen for a board."""

_SENT_BEFORE = (
    "This page was sent before, so nothing was added this time: look whether it is in the tally, and send it "
    "again if it is not."
)


def typed_entry(visit: Visit) -> Entry:
    """Give the board that was filled in."""
    return entry_given(visit.fields())


def read_values(entry: Entry, reading: DefinitionReading) -> dict[str, Any]:
    """Give what a page says of a board that is being filled in: what was understood, and a drawing."""
    read = read_back(entry, reading)
    if read.board is None:
        return {"read": read, "drawing": "", "taps": None}
    return {
        "read": read,
        "drawing": draw_board(read.board, reading.tape),
        "taps": tap_scale(read.board.length_nm, reading.tape),
    }


def demand_added(visit: Visit, boards: Sequence[Board]) -> None:
    """Refuse to say that boards were added where the same page was sent before, with other boards."""
    if not set(boards) <= set(visit.job.boards):
        raise StaleError(_SENT_BEFORE)


def tally_url(visit: Visit, **more: str) -> str:
    """Give the address of the tally, at which the step that was taken last is told."""
    last = next(iter(visit.desk.store.changes(visit.job_id, 1)), None)
    return f"{job_url(visit.job_id, 'tally')}?{urlencode({'did': last.id if last else '', **more})}"


def board_url(job_id: str, board_id: str) -> str:
    """Give the address of a board, whatever it is called: in a path, marks such as .. would not last."""
    return f"{job_url(job_id, 'tally/board')}?id={quote(board_id, safe='')}"
