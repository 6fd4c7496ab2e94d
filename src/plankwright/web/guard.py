"""Who is let in: this machine, and phones that bring the word; nobody through a page of somebody else."""

import ipaddress
import re
from collections.abc import Iterable
from http import HTTPStatus

from starlette.datastructures import MutableHeaders
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from plankwright.web.door import Door

COOKIE = "plankwright"
JOIN = "/join/"

# Drawings carry their styles along, hence the inline ones.
_POLICY = (
    "default-src 'self'; img-src 'self' data:; style-src 'self' 'unsafe-inline'; base-uri 'none'; "
    "form-action 'self'; frame-ancestors 'none'; object-src 'none'"
)
HEADERS = {
    "content-security-policy": _POLICY,
    "x-content-type-options": "nosniff",
    "referrer-policy": "same-origin",
}
"""Of every answer: no script but our own, in no frame, and no address told to others."""

MOST_SENT = 100_000_000
"""Nobody sends more at once; several films picked by mistake are. [bytes]"""

_LONG_NUMBER = 16
_HOST = re.compile(r"(?P<name>\[[0-9a-f:.]+\]|[a-z0-9._-]+)(?::[0-9]{1,5})?")
_SAFE = frozenset({"GET", "HEAD"})


class Guard:
    """Stands before the app.

    Parameters
    ----------
    app
        What it stands before.
    hosts
        Names and addresses under which the app may be asked for; another name would be that of a page that
        has its own address point here.
    door
        Who of the phones is let in.
    """

    def __init__(self, app: ASGIApp, hosts: Iterable[str], door: Door) -> None:
        self._app = app
        self._hosts = frozenset(host.lower() for host in hosts)
        self._door = door

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Let a request pass, or answer why not."""
        if scope["type"] != "http":
            await self._app(scope, receive, send)
            return
        request = Request(scope)
        refusal = self._refusal(request)
        if refusal:
            await PlainTextResponse(refusal, status_code=403, headers=HEADERS)(scope, receive, send)
            return

        async def send_guarded(message: Message) -> None:
            if message["type"] == "http.response.start":
                MutableHeaders(scope=message).update(HEADERS)
            await send(message)

        await self._app(scope, _no_more_than(MOST_SENT, request, receive), send_guarded)

    def _refusal(self, request: Request) -> str:
        """Say why a request is not let pass; nothing when it is."""
        if _asked_for(request) not in self._hosts:
            return "Ask for this app by the address that it shows when it starts."
        if request.method not in _SAFE and not _from_here(request):
            return "This came from a page of somebody else, so nothing was done."
        if _on_this_machine(request) or request.url.path.startswith(JOIN):
            return ""
        if self._door.lets_in(request.cookies.get(COOKIE, "")):
            return ""
        return (
            "This phone is not known here yet. On the computer that Plankwright runs on, open “Phone” and "
            "scan the code that it shows."
        )


def _asked_for(request: Request) -> str:
    """Give the name by which the app is asked for; nothing where that is none."""
    match = _HOST.fullmatch(request.headers.get("host", "").lower())
    return "" if match is None else match["name"]


def _no_more_than(most: int, request: Request, receive: Receive) -> Receive:
    """Refuse to take in more than so many bytes, whether it was said beforehand or not."""
    said = request.headers.get("content-length", "")
    too_much = said.isascii() and said.isdigit() and (len(said) > _LONG_NUMBER or int(said) > most)
    taken = most + 1 if too_much else 0

    async def receive_some() -> Message:
        nonlocal taken
        message = await receive()
        taken += len(message.get("body", b""))
        if taken > most:
            raise HTTPException(HTTPStatus.REQUEST_ENTITY_TOO_LARGE)
        return message

    return receive_some


def _from_here(request: Request) -> bool:
    """Whether a form was sent from one of our own pages, as far as a browser tells."""
    site = request.headers.get("sec-fetch-site")
    if site is not None:
        return site in {"same-origin", "none"}
    origin = request.headers.get("origin")
    return origin is None or origin.partition("://")[2] == request.headers.get("host")


def _on_this_machine(request: Request) -> bool:
    if request.client is None:
        return False
    try:
        return ipaddress.ip_address(request.client.host).is_loopback
    except ValueError:
        return request.client.host == "testclient"
