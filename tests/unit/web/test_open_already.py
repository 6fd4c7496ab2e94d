"""An app that is opened twice with the same jobs leads to the one that is open."""

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from http.server import BaseHTTPRequestHandler, HTTPServer
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from at_desk import make_desk
from plankwright import files
from plankwright.store import open_book
from plankwright.web.desk import Desk
from plankwright.web.open_already import note_open, open_already


@contextmanager
def answering(said: str) -> Iterator[str]:
    """Answer every question with the same words, and give the address."""

    class Answers(BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            self.send_response(200)
            self.end_headers()
            self.wfile.write(said.encode())

        def log_message(self, *_said: object) -> None:
            pass

    with HTTPServer(("127.0.0.1", 0), Answers) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://localhost:{server.server_address[1]}"
        server.shutdown()


@pytest.fixture
def name(desk: Desk, client: TestClient) -> str:
    """Give what an app says of its book."""
    said = client.get("/which-book")
    assert said.status_code == 200
    assert said.text == client.get("/which-book").text
    assert desk.store.setting("book", str) == said.text
    return said.text


def test_nothing_is_open_at_first(desk: Desk) -> None:
    """Nor once it was closed."""
    assert open_already(desk.store) == ""
    note_open(desk.store, "")
    assert open_already(desk.store) == ""


def test_the_app_that_has_the_same_book_open_is_found(desk: Desk, name: str) -> None:
    """Whoever opens it again is led there."""
    with answering(name) as address:
        note_open(desk.store, address)
        assert open_already(desk.store) == address


def test_an_app_that_ended_at_once_is_not_found(desk: Desk, name: str) -> None:
    """Where it was, nobody answers any more."""
    with answering(name) as address:
        note_open(desk.store, address)
    assert open_already(desk.store) == ""


def test_another_program_at_that_place_is_not_taken_for_it(desk: Desk, name: str, tmp_path: Path) -> None:
    """Nor an app with another book."""
    other = make_desk(tmp_path / "other").store
    assert other.setting("book", lambda: "another") != name
    for said in ("", "<html>", other.setting("book", str)):
        with answering(said) as address:
            note_open(desk.store, address)
            assert open_already(desk.store) == ""


def test_only_this_machine_is_asked(tmp_path: Path) -> None:
    """Whatever the file says, nobody else is."""
    store = open_book(tmp_path / "jobs.db", files)
    note_open(store, "http://192.0.2.7:8642")
    assert open_already(store) == ""
