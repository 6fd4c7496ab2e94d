"""Pages out of templates: whole or a block of them, safe against whatever somebody typed."""

import pytest
from jinja2 import DictLoader, UndefinedError
from starlette.requests import Request

from plankwright.web import pages
from plankwright.web.pages import render
from plankwright.workshop.jobs.tally_boards import fingerprint

PAGE = (
    "<title>{{ name }}</title>{% block part %}<b>{{ name }} at {{ path }}</b>{% endblock %}"
    "{{ drawing|drawing }}{{ name|fingerprint }}"
)


@pytest.fixture(autouse=True)
def own_template(monkeypatch: pytest.MonkeyPatch) -> None:
    """Have a template of the tests' own."""
    monkeypatch.setattr(pages._ENVIRONMENT, "loader", DictLoader({"tried.html": PAGE}))
    monkeypatch.setattr(pages._ENVIRONMENT, "cache", None)


def request() -> Request:
    """Give a request."""
    return Request(
        {
            "type": "http",
            "method": "GET",
            "path": "/tried",
            "headers": [],
            "query_string": b"",
            "server": ("localhost", 80),
        }
    )


def test_a_page_is_shown_whole() -> None:
    """With the address that it was asked for by."""
    answer = render(request(), "tried.html", {"name": "hall", "drawing": ""}, status=422)
    assert answer.status_code == 422
    assert answer.headers["content-type"].startswith("text/html")
    assert bytes(answer.body).decode() == f"<title>hall</title><b>hall at /tried</b>{fingerprint('hall')}"


def test_a_block_is_shown_alone() -> None:
    """For a page that is there already."""
    answer = render(request(), "tried.html", {"name": "hall"}, block="part")
    assert bytes(answer.body) == b"<b>hall at /tried</b>"


def test_what_somebody_typed_is_text_and_what_we_drew_is_a_drawing() -> None:
    """Only the one is taken for marks of a page."""
    values = {"name": "<b>&", "drawing": "<svg/>"}
    body = bytes(render(request(), "tried.html", values).body).decode()
    assert "<title>&lt;b&gt;&amp;</title>" in body
    assert "<svg/>" in body


def test_a_template_that_is_told_too_little_is_our_fault() -> None:
    """Instead of a page with a hole in it."""
    with pytest.raises(UndefinedError):
        render(request(), "tried.html", {"drawing": ""})
