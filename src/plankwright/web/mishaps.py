"""What goes wrong becomes a page with one clear sentence; no traceback reaches anybody."""

import logging
from http import HTTPStatus

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response

from plankwright.errors import BadInputError, ExitCode, PlankwrightError
from plankwright.store import StoreError
from plankwright.web.pages import render
from plankwright.workshop.jobs.kept import NotThereError, StaleError

_LOG = logging.getLogger(__name__)

_SAID = {
    HTTPStatus.NOT_FOUND: "There is no such page.",
    HTTPStatus.METHOD_NOT_ALLOWED: "That cannot be done here.",
    HTTPStatus.BAD_REQUEST: "What was sent could not be read; go back and send it again.",
}


def tell_refusal(request: Request, error: Exception) -> Response:
    """Show why something was not done."""
    sentences = sentences_of(error)
    status = _status(error)
    if status >= HTTPStatus.INTERNAL_SERVER_ERROR:
        _LOG.error("%s %s: %s", request.method, request.url.path, error, exc_info=error)
    return render(request, "mishap.html", {"sentences": sentences, "status": status}, status=status)


def sentences_of(error: Exception) -> list[str]:
    """Give what an error says, a sentence each, with its place where it has one."""
    if isinstance(error, BadInputError):
        return [f"{one.place}: {one.what}" if one.place else one.what for one in error.problems]
    return str(error).splitlines()


def tell_http(request: Request, error: Exception) -> Response:
    """Show that a page is not there, or that something cannot be done with it."""
    status = error.status_code if isinstance(error, HTTPException) else HTTPStatus.BAD_REQUEST
    sentence = _SAID.get(HTTPStatus(status), "That cannot be done.")
    return render(request, "mishap.html", {"sentences": [sentence], "status": status}, status=status)


def tell_fault(request: Request, error: Exception) -> Response:
    """Show that something went wrong by a fault of ours; the log says what."""
    _LOG.error("%s %s", request.method, request.url.path, exc_info=error)
    values = {"sentences": [PlankwrightError.default_message], "status": 500}
    return render(request, "mishap.html", values, status=500)


def _status(error: Exception) -> int:
    match error:
        case NotThereError():
            return HTTPStatus.NOT_FOUND
        case StaleError():
            return HTTPStatus.CONFLICT
        case StoreError():
            return HTTPStatus.SERVICE_UNAVAILABLE
        case PlankwrightError() if error.exit_code != ExitCode.OUR_FAULT:
            return HTTPStatus.UNPROCESSABLE_ENTITY
    return HTTPStatus.INTERNAL_SERVER_ERROR
