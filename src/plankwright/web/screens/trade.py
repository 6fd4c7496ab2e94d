"""What the trade knows of a job: hazards, moisture, nails, edges, what to buy."""

from starlette.responses import Response
from starlette.routing import Route

from plankwright.web.visit import Visit, page
from plankwright.workshop.ask_trade import QUESTIONS
from plankwright.workshop.jobs.ask_kept import ask_kept
from plankwright.workshop.jobs.kept import NotThereError


def show_questions(visit: Visit) -> Response:
    """Show what the trade can be asked."""
    laid = visit.job.layout_id is not None
    return visit.show("trade.html", questions=QUESTIONS, laid=laid)


def show_answer(visit: Visit) -> Response:
    """Show one answer of the trade."""
    return _answer(visit, str(visit.request.path_params["name"]))


def show_hazards(visit: Visit) -> Response:
    """Show what can hurt, however little is known of the job yet."""
    return _answer(visit, "hazards")


def _answer(visit: Visit, name: str) -> Response:
    if name not in QUESTIONS:
        raise NotThereError("The trade was not asked that: choose a question from the list.")
    told = ask_kept(name, visit.job, visit.desk.bench.files, visit.desk.store)
    return visit.show("leaf.html", question=QUESTIONS[name], told=told)


ROUTES: list[Route] = [
    page("/jobs/{job_id}/trade", show_questions),
    page("/jobs/{job_id}/trade/{name}", show_answer),
    page("/jobs/{job_id}/hazards", show_hazards),
]
