"""Who is let in: this machine, and phones that bring the word; nobody through a page of somebody else."""

import ipaddress
import secrets
from collections.abc import Iterable
from urllib.parse import urlsplit

from starlette.requests import Request
from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Receive, Scope, Send

COOKIE = "plankwright"
JOIN = "/join/"

# Drawings carry their styles along, hence the inline ones.
_POLICY = (
    "default-src 'self'; img-src 'self' data:; style-src 'self' 'unsafe-inline'; base-uri 'none'; "
    "form-action 'self'; frame-ancestors 'none'; object-src 'none'"
)
_HEADERS = (
    (b"content-security-policy", _POLICY.encode()),
    (b"x-content-type-options", b"nosniff"),
    (b"referrer-policy", b"same-origin"),
)
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
    word
        What a phone must bring; nobody but this machine is let in when it is empty.
    """

    def __init__(self, app: ASGIApp, hosts: Iterable[str], word: str) -> None:
        self._app = app
        self._hosts = frozenset(host.lower() for host in hosts)
        self._word = word

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Let a request pass, or answer why not."""
        if scope["type"] != "http":
            await self._app(scope, receive, send)
            return
        request = Request(scope)
        refusal = self._refusal(request)
        if refusal:
            await PlainTextResponse(refusal, status_code=403)(scope, receive, send)
            return

        async def send_guarded(message: dict[str, object]) -> None:
            if message["type"] == "http.response.start":
                headers = list(message.get("headers") or ())  # type: ignore[call-overload]
                message["headers"] = [*headers, *_HEADERS]
            await send(message)

        await self._app(scope, receive, send_guarded)  # type: ignore[arg-type]

    def _refusal(self, request: Request) -> str:
        """Say why a request is not let pass; nothing when it is."""
        if (request.url.hostname or "").lower() not in self._hosts:
            return "Ask for this app by the address that it shows when it starts."
        if request.method not in _SAFE and not _from_here(request):
            return "This came from a page of somebody else, so nothing was done."
        if _on_this_machine(request) or self._brings_word(request) or request.url.path.startswith(JOIN):
            return ""
        return (
            "This phone is not known here yet. On the computer that Plankwright runs on, open “Phone” and "
            "scan the code that it shows."
        )

    def _brings_word(self, request: Request) -> bool:
        return bool(self._word) and secrets.compare_digest(
            request.cookies.get(COOKIE, "").encode(), self._word.encode()
        )


def _from_here(request: Request) -> bool:
    """Whether a form was sent from one of our own pages, as far as a browser tells."""
    site = request.headers.get("sec-fetch-site")
    if site is not None:
        return site in {"same-origin", "none"}
    origin = request.headers.get("origin")
    return origin is None or urlsplit(origin).netloc == request.headers.get("host")


def _on_this_machine(request: Request) -> bool:
    if request.client is None:
        return False
    try:
        return ipaddress.ip_address(request.client.host).is_loopback
    except ValueError:
        return request.client.host == "testclient"
