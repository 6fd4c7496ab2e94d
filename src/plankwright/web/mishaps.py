"""What goes wrong becomes a page with one clear sentence; no traceback reaches anybody."""

import logging
import re
from http import HTTPStatus

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response

from plankwright.errors import BadInputError, ExitCode, PlankwrightError
from plankwright.store import StoreError
from plankwright.web.guard import HEADERS
from plankwright.web.pages import render
from plankwright.workshop.check_layout import FaultyLayoutError
from plankwright.workshop.jobs.kept import NotThereError, StaleError
from plankwright.workshop.jobs.leaf_words import on_screen
from plankwright.workshop.jobs.tell_faults import tell_faults

_LOG = logging.getLogger(__name__)

_SAID = {
    HTTPStatus.NOT_FOUND: "There is no such page.",
    HTTPStatus.METHOD_NOT_ALLOWED: "That cannot be done here.",
    HTTPStatus.BAD_REQUEST: "What was sent could not be read; go back and send it again.",
    HTTPStatus.REQUEST_ENTITY_TOO_LARGE: "This is more than any job folder holds: go back and send less.",
}

_ENDS = (".", "!", "?", "…")

_FILE_NAME = re.compile(r"[^\s.]+\.[a-z]{2,5}\b")
"""A sentence that begins with one leaves it as it is."""


def tell_refusal(request: Request, error: Exception) -> Response:
    """Show why something was not done."""
    sentences = sentences_of(error)
    status = status_of(error)
    if status >= HTTPStatus.INTERNAL_SERVER_ERROR:
        _LOG.error("%s %s: %s", request.method, request.url.path, error, exc_info=error)
    return render(
        request,
        "mishap.html",
        {"sentences": sentences, "status": status, "ways": _ways(request, error)},
        status=status,
    )


def sentences_of(error: Exception) -> list[str]:
    """Give what an error says, a sentence each, with its place where it has one."""
    if isinstance(error, BadInputError):
        told = [f"{one.place}: {one.what}" if one.place else one.what for one in error.problems]
    elif isinstance(error, FaultyLayoutError):
        told = list(tell_faults(error))
    else:
        told = str(error).splitlines()
    return [_sentence(on_screen(one)) for one in told]


def _ways(request: Request, error: Exception) -> tuple[tuple[str, str], ...]:
    """Give where one can go on from here, besides the list of jobs: addresses and words."""
    job_id = request.path_params.get("job_id")
    if job_id is None or isinstance(error, NotThereError):
        return ()
    job = f"/jobs/{job_id}"
    anew = ((f"{job}/layout", "Lay it out anew"),) if isinstance(error, FaultyLayoutError) else ()
    return (*anew, (job, "Back to the job"))


def _sentence(told: str) -> str:
    """Write what is a line of a list on a terminal as a sentence of a page."""
    whole = told if _FILE_NAME.match(told) else told[:1].upper() + told[1:]
    return whole if whole.endswith(_ENDS) else f"{whole}."


def tell_http(request: Request, error: Exception) -> Response:
    """Show that a page is not there, or that something cannot be done with it."""
    status = error.status_code if isinstance(error, HTTPException) else HTTPStatus.BAD_REQUEST
    sentence = _SAID.get(HTTPStatus(status), "That cannot be done.")
    values = {"sentences": [sentence], "status": status, "ways": ()}
    return render(request, "mishap.html", values, status=status)


def tell_fault(request: Request, error: Exception) -> Response:
    """Show that something went wrong by a fault of ours; the log says what."""
    _LOG.error("%s %s", request.method, request.url.path, exc_info=error)
    values = {"sentences": [PlankwrightError.default_message], "status": 500, "ways": ()}
    answer = render(request, "mishap.html", values, status=500)
    answer.headers.update(HEADERS)  # The guard stands behind whoever catches this.
    return answer


def status_of(error: Exception) -> int:
    """Give the status of the answer to a request that an error ended."""
    match error:
        case NotThereError():
            return HTTPStatus.NOT_FOUND
        case StaleError() | FaultyLayoutError():
            return HTTPStatus.CONFLICT
        case StoreError():
            return HTTPStatus.SERVICE_UNAVAILABLE
        case PlankwrightError() if error.exit_code != ExitCode.OUR_FAULT:
            return HTTPStatus.UNPROCESSABLE_ENTITY
    return HTTPStatus.INTERNAL_SERVER_ERROR
