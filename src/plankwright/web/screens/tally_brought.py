"""Boards that were tallied in a spreadsheet, brought into a tally that is there."""

import secrets
from collections.abc import Sequence

from starlette.responses import Response
from starlette.routing import Route

from plankwright.errors import PlankwrightError
from plankwright.web.mishaps import sentences_of, status_of
from plankwright.web.screens.tally_entry import demand_added, tally_url
from plankwright.web.visit import Visit, page
from plankwright.workshop.jobs.bring_boards import add_brought, bring_boards
from plankwright.workshop.jobs.kept import RefusedError
from plankwright.workshop.wording import counted

_NO_FILE = "No file came along: choose a spreadsheet first."


def show_form(visit: Visit) -> Response:
    """Show how boards are brought along."""
    return _show(visit)


def bring(visit: Visit) -> Response:
    """Add the boards of a spreadsheet."""
    try:
        if len(visit.files.get("file", ())) != 1:
            raise RefusedError(_NO_FILE)
        ((name, content),) = visit.files["file"]
        brought = bring_boards(visit.desk.bench.files, visit.reading, name, content)
        boards = brought.boards
        visit.change(f"{counted(len(boards), 'board')} brought along", lambda kept: add_brought(kept, boards))
        demand_added(visit, boards)
    except PlankwrightError as trouble:
        return _show(visit, status=status_of(trouble), problems=sentences_of(trouble))
    if brought.remarks:
        return _show(visit, brought=len(boards), remarks=[remark.what for remark in brought.remarks])
    return visit.go(tally_url(visit))


def _show(
    visit: Visit,
    *,
    status: int = 200,
    problems: Sequence[str] = (),
    brought: int = 0,
    remarks: Sequence[str] = (),
) -> Response:
    return visit.show(
        "tally_brought.html",
        status=status,
        problems=problems,
        brought=brought,
        remarks=remarks,
        key=secrets.token_hex(8),
    )


ROUTES: list[Route] = [
    page("/jobs/{job_id}/tally/brought", show_form),
    page("/jobs/{job_id}/tally/brought", bring, "POST"),
]
