"""What is left over, as a tally for the next surface."""

from starlette.responses import Response
from starlette.routing import Route

from plankwright.measure import round_down, write_inches, write_length
from plankwright.model import Board
from plankwright.web.screens.working import lay_anew, to_work_by
from plankwright.web.visit import Visit, job_url, page
from plankwright.workshop.jobs.at_work import AtWork
from plankwright.workshop.jobs.start_from_left_over import start_from_left_over
from plankwright.workshop.keep_left_over import LEFT_OVER_FILE


def show_left(visit: Visit) -> Response:
    """Show what is left once all hangs."""
    at = to_work_by(visit)
    if isinstance(at, Response):
        return at
    left = at.left_over
    return visit.show(
        "left.html",
        at=at,
        left=left,
        offcuts=[_row(at, board) for board in left.boards if board.id not in left.whole],
        whole=[_row(at, board) for board in left.boards if board.id in left.whole],
    )


def take_along(visit: Visit) -> Response:
    """Hand out what is left as a tally."""
    at = to_work_by(visit)
    if isinstance(at, Response):
        return at
    tally = visit.desk.bench.files.tally_csv(at.left_over.boards, at.job.tape)
    return visit.download(tally, LEFT_OVER_FILE, "text/csv; charset=utf-8")


def begin_job(visit: Visit) -> Response:
    """Begin a job with what is left."""
    at = to_work_by(visit)
    if isinstance(at, Response):
        return at
    begun = start_from_left_over(visit.job, visit.desk.bench.files, at.left_over)
    return visit.go(job_url(visit.desk.store.add(begun).id))


def _row(at: AtWork, board: Board) -> dict[str, str]:
    """Give a board as it stands in the list; rounded down, as in the tally."""
    tape = at.job.tape
    return {
        "id": board.id,
        "length": write_length(round_down(board.length_nm, tape.step_nm), tape),
        "width": write_inches(round_down(board.narrowest_width_nm, tape.step_nm), tape),
        "lot": board.lot,
        "note": board.note,
    }


ROUTES: list[Route] = [
    page("/jobs/{job_id}/left", show_left),
    page("/jobs/{job_id}/left/tally", take_along),
    page("/jobs/{job_id}/left/job", begin_job, "POST"),
    page("/jobs/{job_id}/left/anew", lay_anew, "POST"),
]
