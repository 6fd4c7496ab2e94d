"""The papers, and the files for other programs."""

from pathlib import PurePath

from starlette.responses import Response
from starlette.routing import Route

from plankwright.errors import BadInputError, PlankwrightError
from plankwright.web.mishaps import sentences_of
from plankwright.web.visit import Visit, page
from plankwright.workshop.check_layout import FaultyLayoutError
from plankwright.workshop.go_together import MissingError
from plankwright.workshop.jobs.kept import RefusedError
from plankwright.workshop.jobs.papers import fit_for_paper, maps_of, pack_of, paper_of
from plankwright.workshop.jobs.stand_of_job import stand_of_job
from plankwright.workshop.jobs.tell_stand import Step, next_steps
from plankwright.workshop.paper_size import PaperSize, usual_size

_KINDS = {
    ".pdf": "application/pdf",
    ".svg": "image/svg+xml",
    ".dxf": "image/vnd.dxf",
    ".csv": "text/csv",
    ".xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
    ".json": "application/json",
    ".zip": "application/zip",
}


def show_paper(visit: Visit) -> Response:
    """Show what can be had on paper and for other programs, or why it cannot be had yet."""
    size = _size(visit) or usual_size(visit.reading.tape)
    why: list[str] = []
    at, status, outdated = None, 200, False
    try:
        at = fit_for_paper(visit.job, visit.desk.bench.files, visit.desk.store)
    except FaultyLayoutError as trouble:
        why, status, outdated = sentences_of(trouble), 409, True
    except (BadInputError, MissingError, RefusedError) as trouble:
        why = sentences_of(trouble)
    return visit.show(
        "paper.html",
        status=status,
        size=size,
        sizes=tuple(PaperSize),
        maps=() if at is None else maps_of(at),
        fits=at is not None,
        begun=visit.job.begun,
        why=why,
        outdated=outdated,
        to_do=None if at is not None or outdated else _next_step(visit),
        pack=None,
    )


def _next_step(visit: Visit) -> Step:
    stand = stand_of_job(visit.job, visit.desk.bench.files, visit.desk.store)
    return next_steps(stand)[0]


def show_pack_ready(visit: Visit) -> Response:
    """Have the pack printed, and say that it is; or why it cannot be."""
    size, why, pack = _size(visit), [], b""
    try:
        at = fit_for_paper(visit.job, visit.desk.bench.files, visit.desk.store)
        pack = pack_of(visit.job, at, size)
    except PlankwrightError as trouble:
        why = sentences_of(trouble)
    return visit.show("paper.html", block="pack_state", pack=len(pack), why=why, size=size)


def hand_out(visit: Visit) -> Response:
    """Hand out a paper or a file."""
    name = str(visit.request.path_params["file"])
    content = paper_of(visit.job, visit.desk.bench.files, visit.desk.store, name, _size(visit))
    ending = PurePath(name).suffix
    whole = visit.job.name + ending if ending == ".zip" else f"{visit.job.name} {name}"
    return visit.download(content, whole, _KINDS[ending], to_look_at=bool(visit.asked("look")))


def _size(visit: Visit) -> PaperSize | None:
    """Give the size of paper that was asked for, if one was."""
    word = visit.asked("paper")
    if not word:
        return None
    try:
        return PaperSize(word)
    except ValueError:
        raise RefusedError("There is no paper of that size here: choose Letter or A4.") from None


ROUTES: list[Route] = [
    page("/jobs/{job_id}/paper", show_paper),
    page("/jobs/{job_id}/paper/ready", show_pack_ready),
    page("/jobs/{job_id}/paper/{file}", hand_out),
]
