"""The layout: the answer in words, the drawing, its pieces one by one, and layouts made before."""

from starlette.responses import Response
from starlette.routing import Route

from plankwright.errors import BadInputError
from plankwright.web.mishaps import sentences_of
from plankwright.web.screens.layout_compare import compare, show_kept, show_map
from plankwright.web.screens.layout_page import kept_layout, layout_page
from plankwright.web.screens.layout_pieces import show_piece
from plankwright.web.screens.layout_wishes import (
    choose_board,
    swap,
    take_back,
    wish_for_board,
    wish_to_keep,
    wish_without,
)
from plankwright.web.visit import Visit, page
from plankwright.workshop.jobs.choose_layout import work_by
from plankwright.workshop.jobs.kept import KeptJob, RefusedError, StaleError
from plankwright.workshop.jobs.see_layout import faults_now, standing_of


def show_layout(visit: Visit) -> Response:
    """Show the layout that is worked by."""
    return layout_page(visit)


def show_other(visit: Visit) -> Response:
    """Show another layout of the job."""
    return layout_page(visit, kept_layout(visit, str(visit.request.path_params["number"])))


def choose(visit: Visit) -> Response:
    """Work by another layout, if it fits the job as it is now."""
    laid = kept_layout(visit, str(visit.request.path_params["number"]))
    seen, files = visit.text("seen"), visit.desk.bench.files

    def taken(kept: KeptJob) -> KeptJob:
        if seen != str(kept.layout_id or ""):
            raise StaleError
        job = files.read_definition(kept.definition, kept.boards).job
        faults = faults_now(job, laid.layout, standing_of(kept))
        if faults:
            raise RefusedError(
                "\n".join(("This layout does not fit the job as it is now, so nothing was changed.", *faults))
            )
        return work_by(kept, laid.id)

    try:
        visit.change("another layout taken", taken)
    except (BadInputError, RefusedError) as trouble:
        return layout_page(visit, laid, status=422, problems=sentences_of(trouble))
    return visit.go_to_job("layout")


ROUTES: list[Route] = [
    page("/jobs/{job_id}/layout", show_layout),
    page("/jobs/{job_id}/layout/kept", show_kept),
    page("/jobs/{job_id}/layout/compare", compare),
    page("/jobs/{job_id}/layout/kept/{number}", show_other),
    page("/jobs/{job_id}/layout/kept/{number}/maps/{place}.svg", show_map),
    page("/jobs/{job_id}/layout/kept/{number}/work-by", choose, "POST"),
    page("/jobs/{job_id}/layout/pieces/{place}/{label:path}", show_piece),
    page("/jobs/{job_id}/layout/boards/{place}/{label:path}", choose_board),
    page("/jobs/{job_id}/layout/wishes/keep", wish_to_keep, "POST"),
    page("/jobs/{job_id}/layout/wishes/put", wish_for_board, "POST"),
    page("/jobs/{job_id}/layout/wishes/without", wish_without, "POST"),
    page("/jobs/{job_id}/layout/wishes/swap", swap, "POST"),
    page("/jobs/{job_id}/layout/wishes/take-back", take_back, "POST"),
]
