"""Whether the app is open already with the same jobs: one of two would take the other's searches for dead."""

import urllib.request
from http.client import HTTPException

from starlette.responses import PlainTextResponse, Response
from starlette.routing import Route

from plankwright.web.door import new_word
from plankwright.web.visit import Visit, page
from plankwright.workshop.jobs.ports import Store

_BOOK, _OPEN_AT = "book", "open at"
_PATH = "/which-book"
_WAIT_S = 2.0
_STRAIGHT = urllib.request.build_opener(urllib.request.ProxyHandler({}))
"""This machine is asked by no detour."""


def open_already(store: Store) -> str:
    """Give the address at which the app is open with these jobs; nothing when it is not.

    Parameters
    ----------
    store
        The book of jobs.
    """
    address = store.setting(_OPEN_AT, str)
    if not address.startswith("http://localhost:"):
        return ""
    try:
        with _STRAIGHT.open(f"{address}{_PATH}", timeout=_WAIT_S) as answer:
            said = answer.read(1_000).decode(errors="replace")
    except (OSError, HTTPException, ValueError):
        return ""
    return address if said == _name_of(store) else ""


def note_open(store: Store, address: str) -> None:
    """Keep where the app is open with these jobs; an empty address once it is closed."""
    store.put_setting(_OPEN_AT, address)


def tell_book(visit: Visit) -> Response:
    """Say which book of jobs this app has open."""
    return PlainTextResponse(_name_of(visit.desk.store))


def _name_of(store: Store) -> str:
    return store.setting(_BOOK, new_word)


ROUTES: list[Route] = [page(_PATH, tell_book)]
