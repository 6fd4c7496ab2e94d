"""What goes wrong becomes a page with a clear sentence; no traceback reaches anybody."""

import logging
from collections.abc import Callable

import pytest
from starlette.exceptions import HTTPException
from starlette.requests import ClientDisconnect, Request
from starlette.responses import Response
from starlette.routing import Route
from starlette.testclient import TestClient

from plankwright.errors import BadInputError, FileTroubleError, LayoutRefusedError, PlankwrightError, Problem
from plankwright.store import StoreError
from plankwright.web.app import make_app
from plankwright.web.desk import Desk
from plankwright.web.mishaps import sentences_of
from plankwright.workshop.check_layout import FaultyLayoutError
from plankwright.workshop.jobs.kept import NotThereError, RefusedError, StaleError
from plankwright.workshop.mark_work import MarkError

Asked = Callable[..., tuple[int, str]]

BAD = BadInputError(
    [
        Problem(file="tally.csv", place="line 3", what="the width is missing: measure it", line=3),
        Problem(file="the job", place="", what="no surface is measured yet"),
    ]
)


@pytest.fixture
def asked(desk: Desk) -> Asked:
    """Ask for a page that goes wrong in some way; give the status and the page."""

    def ask(error: Exception, path: str = "/wrong") -> tuple[int, str]:
        async def fail(_request: Request) -> Response:
            raise error

        app = make_app(desk)
        app.router.routes.insert(0, Route(path, fail))
        with TestClient(
            app, base_url="http://localhost", client=("127.0.0.1", 1), raise_server_exceptions=False
        ) as asking:
            answer = asking.get(path.replace("{job_id}", "abc"))
        assert "<h1>" in answer.text
        assert "Traceback" not in answer.text
        return answer.status_code, answer.text

    return ask


@pytest.mark.parametrize(
    ("error", "status", "told"),
    [
        (BAD, 422, "Line 3: the width is missing: measure it."),
        (BAD, 422, "No surface is measured yet."),
        (RefusedError("That cannot be done now."), 422, "That cannot be done now."),
        (MarkError("it hangs already"), 422, "It hangs already."),
        (FileTroubleError("a.zip cannot be unpacked"), 422, "a.zip cannot be unpacked."),
        (NotThereError(), 404, "That is not there, or no longer"),
        (StaleError(), 409, "nothing was written over"),
        (FaultyLayoutError(["a gap"]), 409, ""),
        (StoreError("jobs.db cannot grow: the disk is full."), 503, "jobs.db cannot grow: the disk is full."),
        (LayoutRefusedError(["a gap"]), 500, "this is our fault, not yours"),
        (PlankwrightError(), 500, "this is our fault, not yours"),
        (ZeroDivisionError("secret"), 500, "this is our fault, not yours"),
        (HTTPException(404), 404, "There is no such page."),
        (HTTPException(405), 405, "That cannot be done here."),
        (HTTPException(400, detail="secret"), 400, "What was sent could not be read"),
        (HTTPException(413), 413, "more than any job folder holds"),
        (HTTPException(418), 418, "That cannot be done."),
        (ClientDisconnect(), 400, "What was sent could not be read"),
    ],
)
def test_each_trouble_has_its_sentence_and_its_number(
    asked: Asked, error: Exception, status: int, told: str
) -> None:
    """A browser tells the numbers apart, a person the sentences."""
    found, page = asked(error)
    assert found == status
    assert told in page
    assert "secret" not in page


def test_what_somebody_typed_is_shown_as_text(asked: Asked) -> None:
    """And not run."""
    _, page = asked(RefusedError("There is no <script>alert(1)</script>."))
    assert "<script>alert" not in page
    assert "&lt;script&gt;alert(1)" in page


def test_only_what_is_not_the_users_to_mend_is_logged(asked: Asked, caplog: pytest.LogCaptureFixture) -> None:
    """With all that is known of it."""
    with caplog.at_level(logging.INFO):
        asked(RefusedError("That cannot be done now."))
        asked(NotThereError())
        asked(ClientDisconnect())
    assert not [record for record in caplog.records if record.name.startswith("plankwright")]
    with caplog.at_level(logging.INFO):
        asked(ZeroDivisionError("what it was"))
        asked(StoreError("jobs.db cannot grow: the disk is full."))
    assert "what it was" in caplog.text
    assert "GET /wrong" in caplog.text
    assert "the disk is full" in caplog.text


def test_one_can_go_on_from_there(asked: Asked) -> None:
    """To the job where it is one's job that is at fault, and always to the list."""
    _, page = asked(RefusedError("Not now."), "/jobs/{job_id}/wrong")
    assert 'href="/jobs/abc"' in page
    assert 'href="/"' in page
    _, page = asked(NotThereError(), "/jobs/{job_id}/wrong")
    assert 'href="/jobs/abc"' not in page
    _, page = asked(FaultyLayoutError(["a gap"]), "/jobs/{job_id}/wrong")
    assert 'href="/jobs/abc/layout"' in page


def test_every_problem_is_a_sentence_with_its_place() -> None:
    """As a page shows it."""
    assert sentences_of(BAD) == ["Line 3: the width is missing: measure it.", "No surface is measured yet."]
    assert sentences_of(RefusedError("One.\nanother")) == ["One.", "Another."]
    assert sentences_of(StaleError()) == [StaleError.default_message]
