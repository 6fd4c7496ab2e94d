"""One request as the screens see it: what was asked and filled in, the desk, and the ways to answer."""

import functools
from collections.abc import Awaitable, Callable
from dataclasses import dataclass, field
from typing import Any
from urllib.parse import quote

from starlette.concurrency import run_in_threadpool
from starlette.datastructures import FormData, UploadFile
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from plankwright.errors import FileTroubleError
from plankwright.web.desk import Desk
from plankwright.web.pages import render
from plankwright.workshop.jobs.kept import KeptJob
from plankwright.workshop.jobs.local_time import local_time
from plankwright.workshop.ports import DefinitionReading

MOST_BYTES = 20_000_000
"""No job folder is larger; a film picked by mistake is. [bytes]"""


@dataclass(slots=True)
class Visit:
    """One request.

    Parameters
    ----------
    request
        As it came.
    desk
        What to work with.
    form
        What was filled in; empty when nothing was sent.
    files
        What was sent along, by field: name and content of each file.
    """

    request: Request
    desk: Desk
    form: FormData = field(default_factory=FormData)
    files: dict[str, list[tuple[str, bytes]]] = field(default_factory=dict)
    _job: KeptJob | None = None

    @property
    def job_id(self) -> str:
        """The job that the address names."""
        return str(self.request.path_params["job_id"])

    @property
    def job(self) -> KeptJob:
        """The job that the address names, as it was when it was first asked for in this visit."""
        if self._job is None:
            self._job = self.desk.store.job(self.job_id)
        return self._job

    @property
    def reading(self) -> DefinitionReading:
        """What is known of the job, as far as it can be read."""
        return self.desk.bench.files.read_definition(self.job.definition, self.job.boards)

    def text(self, name: str, otherwise: str = "") -> str:
        """Give a field that was filled in."""
        value = self.form.get(name)
        return value.strip() if isinstance(value, str) else otherwise

    def asked(self, name: str, otherwise: str = "") -> str:
        """Give a word behind the question mark of the address."""
        return self.request.query_params.get(name, otherwise).strip()

    def fields(self) -> list[tuple[str, str]]:
        """Give every field that was filled in."""
        return [(name, value) for name, value in self.form.multi_items() if isinstance(value, str)]

    def change(self, what: str, edit: Callable[[KeptJob], KeptJob]) -> KeptJob:
        """Take a step with the job; the key that a form brings along keeps it from being taken twice."""
        self._job = self.desk.store.change(self.job_id, what, edit, key=self.text("key"))
        return self._job

    def show(self, template: str, *, status: int = 200, block: str = "", **values: Any) -> Response:  # noqa: ANN401 - whatever the page shows
        """Show a page, or a block of it alone."""
        if "job_id" in self.request.path_params:
            values.setdefault("job", self.job)
            values.setdefault("last_step", next(iter(self.desk.store.changes(self.job_id, 1)), None))
            values.setdefault("taken_back", self.desk.store.taken_back(self.job_id))
            values.setdefault("tape_keys", self._tape_keys)
            values.setdefault("moved", self.asked("moved"))
        return render(
            self.request,
            template,
            {"desk": self.desk, "local_time": local_time, **values},
            status=status,
            block=block,
        )

    def _tape_keys(self) -> dict[str, object]:
        """Say what the keys for measuring must offer on this job, by the attributes that `keys.js` reads."""
        reading = self.desk.bench.files.read_definition(self.job.definition)
        return {
            "data-tape-system": reading.tape.system.value,
            "data-tape-fraction": reading.tape.denominator,
            "data-tape-decimal": "," if reading.decimal_comma else ".",
        }

    def go(self, to: str) -> Response:
        """Send the browser on, to a page that it may load again."""
        return RedirectResponse(to, status_code=303)

    def go_to_job(self, screen: str = "") -> Response:
        """Send the browser on to a screen of the job."""
        return self.go(job_url(self.job_id, screen))

    def download(self, content: str | bytes, name: str, kind: str, *, to_look_at: bool = False) -> Response:
        """Hand out a file, to be kept or to be looked at in the browser."""
        how = "inline" if to_look_at else "attachment"
        plain = name.replace("/", "-").replace("\\", "-")
        ascii_name = plain.encode("ascii", "replace").decode().replace("?", "_").replace('"', "_")
        return Response(
            content,
            media_type=kind,
            headers={
                "content-disposition": f"{how}; filename=\"{ascii_name}\"; filename*=UTF-8''{quote(plain)}"
            },
        )


def job_url(job_id: str, screen: str = "") -> str:
    """Give the address of a screen of a job."""
    return f"/jobs/{job_id}/{screen}" if screen else f"/jobs/{job_id}"


Answer = Callable[[Visit], Response]
"""Answers a request; it may take its time, since it is called in a thread of its own."""


def page(path: str, answer: Answer, *methods: str) -> Route:
    """Have a path answered.

    Parameters
    ----------
    path
        Such as "/jobs/{job_id}/tally".
    answer
        Who answers.
    methods
        GET when left out.
    """

    @functools.wraps(answer)
    async def endpoint(request: Request) -> Response:
        visit = Visit(request, request.app.state.desk)
        if request.method == "POST":
            await _fill_in(visit)
        return await run_in_threadpool(answer, visit)

    called: Callable[[Request], Awaitable[Response]] = endpoint
    return Route(path, called, methods=list(methods) or ["GET"])


async def _fill_in(visit: Visit) -> None:
    async with visit.request.form(max_files=50, max_fields=5_000, max_part_size=1_000_000) as form:
        visit.form = form
        for name, value in form.multi_items():
            if isinstance(value, UploadFile):
                content = await value.read(MOST_BYTES + 1)
                if len(content) > MOST_BYTES:
                    most = f"{MOST_BYTES // 1_000_000} MB"
                    raise FileTroubleError(f"{value.filename} is larger than {most}: choose another file.")
                if value.filename:
                    visit.files.setdefault(name, []).append((value.filename, content))
