"""The app as a test asks it again and again: on a copy of one store, with all that it keeps in sight."""

import re
import shutil
from collections.abc import Iterator, Sequence
from html import unescape
from pathlib import Path
from typing import NamedTuple
from urllib.parse import urlencode

from httpx2 import Response
from starlette.testclient import TestClient

from at_desk import make_desk
from page_forms import Form, forms_of, links_of
from plankwright.web.app import make_app
from plankwright.web.desk import Desk
from plankwright.workshop.jobs.kept import KeptJob

BASE = "http://localhost"
_OURS = re.compile(r"Traceback|File \"[^\"]+\.py\"|\b\w+Error\b|\bNoneType\b|object at 0x")
_ENDS = (".", "!", "?", "…")

Upload = tuple[str, tuple[str, bytes]]
"""A field, and the name and content of what is sent in it."""


class KeptAll(NamedTuple):
    """All that is kept of a job: as it is, its steps, the last first, and its layouts."""

    job: KeptJob
    steps: tuple[int, ...]
    layouts: tuple[int, ...]


class Kept(NamedTuple):
    """All that is kept at one moment: each job, and the ids of those that were put away."""

    jobs: dict[str, KeptAll]
    put_away: tuple[str, ...]


class AskedApp:
    """The app, and how it is asked.

    Parameters
    ----------
    desk
        What it works with.
    """

    def __init__(self, desk: Desk) -> None:
        self.desk = desk
        self._client = TestClient(
            make_app(desk),
            base_url=BASE,
            client=("127.0.0.1", 50_000),
            follow_redirects=False,
            raise_server_exceptions=False,
        )

    @classmethod
    def on_copy(cls, store: Path, folder: Path) -> "AskedApp":
        """Open it on a copy of a store."""
        shutil.copy(store, folder / "jobs.db")
        return cls(make_desk(folder))

    def get(self, path: str) -> Response:
        """Ask for a page."""
        return self._client.get(path)

    def post(
        self, path: str, fields: Sequence[tuple[str, str]] = (), files: Sequence[Upload] = ()
    ) -> Response:
        """Send a form, as a browser packs it."""
        if files:
            data: dict[str, list[str]] = {}
            for name, value in fields:
                data.setdefault(name, []).append(value)
            return self._client.post(path, data=data, files=list(files))
        body = urlencode(fields, errors="replace")
        head = {"content-type": "application/x-www-form-urlencoded"}
        return self._client.post(path, content=body, headers=head)

    def send(self, form: Form, files: Sequence[Upload] = ()) -> Response:
        """Send a form as it is filled in."""
        if form.method == "get":
            return self.get(f"{form.action}?{urlencode(form.fields, errors='replace')}")
        return self.post(form.action, form.fields, files)

    def kept(self) -> Kept:
        """Look at all that is kept."""
        store = self.desk.store
        cards = store.cards()
        return Kept(
            jobs={
                card.id: KeptAll(
                    store.job(card.id),
                    tuple(change.id for change in store.changes(card.id, 1_000)),
                    tuple(laid.id for laid in store.layouts(card.id)),
                )
                for card in cards
                if card.removed_at is None
            },
            put_away=tuple(card.id for card in cards if card.removed_at is not None),
        )


def faults_of(answer: Response) -> Iterator[str]:
    """Tell what is wrong with an answer, whatever was asked."""
    kind = answer.headers.get("content-type", "")
    text = answer.text if kind.startswith("text/") else ""
    if answer.status_code >= 500:
        yield f"status {answer.status_code}"
    if _OURS.search(text):
        yield "it shows what only we understand"
    if answer.status_code >= 400:
        sentences = told_in(text)
        if not sentences:
            yield "it does not say why"
        yield from (f"“{told}” is no sentence" for told in sentences if not told.endswith(_ENDS))


def told_in(page: str) -> list[str]:
    """Give the sentences in which a page says what is wrong."""
    if "<html" not in page and "<" not in page:
        return [page] if page else []
    alerts = re.findall(r'role="alert".*?</section>', page, re.DOTALL)
    return [
        " ".join(unescape(re.sub(r"<[^>]+>", "", one)).split())
        for alert in alerts
        for one in re.findall(r"<li>(.*?)</li>", alert, re.DOTALL)
    ]


def forms_in(answer: Response) -> tuple[Form, ...]:
    """Give the forms of an answer."""
    return forms_of(answer.text, str(answer.url)) if _is_page(answer) else ()


def links_in(answer: Response) -> tuple[str, ...]:
    """Give where the links of an answer lead."""
    return links_of(answer.text, str(answer.url)) if _is_page(answer) else ()


def pages_of(app: AskedApp, *starts: str, most: int = 80) -> dict[str, Response]:
    """Follow the links of the app from some pages on; give each page by its address."""
    found: dict[str, Response] = {}
    ahead = list(starts)
    while ahead and len(found) < most:
        path = ahead.pop(0)
        if path in found:
            continue
        found[path] = app.get(path)
        ahead += [link.removeprefix(BASE) for link in links_in(found[path])]
    return {path: page for path, page in found.items() if _is_page(page)}


def _is_page(answer: Response) -> bool:
    return answer.headers.get("content-type", "").startswith("text/html")
