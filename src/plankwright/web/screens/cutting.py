"""Cutting, a board at a time."""

from collections.abc import Sequence

from starlette.responses import Response
from starlette.routing import Route

from plankwright.errors import PlankwrightError
from plankwright.model import MarkKind
from plankwright.web.screens.mishap_marks import mishap_routes
from plankwright.web.screens.working import (
    lay_anew,
    mark,
    pieces_named,
    put_news_aside,
    to_mark_on,
    to_work_by,
    told_first,
    told_of,
)
from plankwright.web.visit import Visit, page
from plankwright.workshop.jobs.at_work import AtWork
from plankwright.workshop.jobs.kept import RefusedError
from plankwright.workshop.jobs.mark_kept import happened_to
from plankwright.workshop.jobs.next_step import board_after, board_before, board_named


def show_board(visit: Visit) -> Response:
    """Show one board: what is cut of it, step by step."""
    at = to_work_by(visit)
    return at if isinstance(at, Response) else _show(visit, at, visit.asked("board"))


def mark_cut(visit: Visit) -> Response:
    """Mark the pieces of a board as cut, and go on to the next."""
    at = to_mark_on(visit)
    board_id = visit.text("board")
    try:
        pieces = pieces_named(visit, at, ["piece"])
        if not pieces:
            raise RefusedError("Nothing was named that is cut: mark it at its board.")
        after = None if at.faults else board_after(at.boards, board_id)
        happened = happened_to(MarkKind.CUT, [piece.key for piece in pieces])
        return mark(visit, happened, board=after.id if after else "")
    except PlankwrightError as trouble:
        return _show(visit, at, board_id, told_of(at, trouble))


def _show(visit: Visit, at: AtWork, board_id: str, problems: Sequence[str] = ()) -> Response:
    board = board_named(at.boards, board_id)
    return visit.show(
        "cutting.html",
        status=422 if problems else 200,
        **told_first(visit, at),
        problems=problems,
        board=board,
        boards=at.boards,
        done=sum(step.done for step in at.boards),
        after=board_after(at.boards, board.id) if board else None,
        before=board_before(at.boards, board.id) if board else None,
    )


ROUTES: list[Route] = [
    page("/jobs/{job_id}/cutting", show_board),
    page("/jobs/{job_id}/cutting/cut", mark_cut, "POST"),
    page("/jobs/{job_id}/cutting/anew", lay_anew, "POST"),
    page("/jobs/{job_id}/cutting/read", put_news_aside, "POST"),
    *mishap_routes("cutting"),
]
