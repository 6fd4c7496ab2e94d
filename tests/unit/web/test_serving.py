"""The app is opened on this machine and for phones, and says where; Ctrl-C closes it."""

import os
import signal
import socket
import threading
from collections.abc import Iterator
from pathlib import Path

import httpx2
import pytest

from plankwright import files
from plankwright.bootstrap import Bench
from plankwright.errors import ExitCode
from plankwright.store import StoreError, open_book
from plankwright.web import serving
from plankwright.web.serving import Opening, PortTakenError, open_app
from village import StandInSearch, small_result

BENCH = Bench(files=files, search=StandInSearch(small_result()))


@pytest.fixture
def free_port() -> int:
    """Find a port where nothing listens."""
    with socket.socket() as asking:
        asking.bind(("127.0.0.1", 0))
        return int(asking.getsockname()[1])


@pytest.fixture
def taken_port() -> Iterator[int]:
    """Listen at a port."""
    with socket.socket() as listening:
        listening.bind(("127.0.0.1", 0))
        listening.listen()
        yield int(listening.getsockname()[1])


class Opened:
    """An app that is opened, asked once by whoever is told that it is open, and closed.

    Parameters
    ----------
    path
        A page to ask for.
    """

    def __init__(self, path: str = "/") -> None:
        self.path = path
        self.said: list[str] = []
        self.answer: httpx2.Response | None = None
        self._asking: threading.Thread | None = None

    def open(self, opening: Opening) -> None:
        """Open it."""
        open_app(BENCH, opening, self._hear)
        assert self._asking is not None
        self._asking.join(60)

    def _hear(self, sentence: str) -> None:
        self.said.append(sentence)
        if sentence.endswith("Ctrl-C closes it."):
            self._asking = threading.Thread(target=self._ask)
            self._asking.start()

    def _ask(self) -> None:
        address = self.said[0].rpartition(" ")[2]
        try:
            # It listens already; until it answers, the question waits.
            self.answer = httpx2.get(f"{address}{self.path}", timeout=60)
        finally:
            os.kill(os.getpid(), signal.SIGINT)


def test_it_answers_until_ctrl_c_closes_it(tmp_path: Path, free_port: int) -> None:
    """And says where it is, where jobs are kept, and that nothing is lost."""
    app = Opened()
    store = tmp_path / "new" / "jobs.db"
    app.open(Opening(store=store, port=free_port, alone=True, browse=False))
    assert app.answer is not None
    assert app.answer.status_code == 200
    assert "<h1>" in app.answer.text
    assert app.said == [
        f"Plankwright is open at http://localhost:{free_port}",
        f"Jobs are kept in {store}. Ctrl-C closes it.",
        "Closed. All that was entered is kept.",
    ]


def test_what_it_runs_on_is_not_told_to_everybody(tmp_path: Path, free_port: int) -> None:
    """Nor is a cookie set for whoever sits here."""
    app = Opened()
    app.open(Opening(store=tmp_path / "jobs.db", port=free_port, alone=True, browse=False))
    assert app.answer is not None
    assert "server" not in app.answer.headers
    assert "set-cookie" not in app.answer.headers


def test_phones_are_told_where_to_find_it(
    tmp_path: Path, free_port: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    """With a word that stays the same, so that a phone is known the next time too."""
    monkeypatch.setattr(serving, "_own_address", lambda: "192.168.1.2")
    links = []
    for _ in range(2):
        app = Opened("/phone")
        app.open(Opening(store=tmp_path / "jobs.db", port=free_port, browse=False))
        assert app.said[1] == (
            f"A phone on the same network joins by the code that http://localhost:{free_port}/phone shows."
        )
        assert app.answer is not None
        word = open_book(tmp_path / "jobs.db", files).setting("word", str)
        assert len(word) >= 16
        assert f"http://192.168.1.2:{free_port}/join/" in app.answer.text
        links.append(word)
    assert links[0] == links[1]


def test_on_no_network_it_is_for_this_machine(
    tmp_path: Path, free_port: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    """No phone could come."""
    monkeypatch.setattr(serving, "_own_address", lambda: "")
    app = Opened("/phone")
    app.open(Opening(store=tmp_path / "jobs.db", port=free_port, browse=False))
    assert not any("phone" in sentence for sentence in app.said)
    assert app.answer is not None
    assert "<figure" not in app.answer.text


def test_alone_it_does_not_listen_to_the_network(free_port: int) -> None:
    """Nobody else can even ask."""
    with serving._listen("127.0.0.1", free_port) as listening:
        assert listening.getsockname() == ("127.0.0.1", free_port)


@pytest.mark.parametrize("browse", [True, False])
def test_a_browser_is_opened_only_when_it_is_wanted(
    tmp_path: Path,
    free_port: int,
    monkeypatch: pytest.MonkeyPatch,
    browse: bool,  # noqa: FBT001 - a case
) -> None:
    """At the address of this machine."""
    opened: list[str] = []
    monkeypatch.setattr("webbrowser.open", opened.append)
    monkeypatch.setattr(threading, "Timer", AtOnce)
    app = Opened()
    app.open(Opening(store=tmp_path / "jobs.db", port=free_port, alone=True, browse=browse))
    assert opened == ([f"http://localhost:{free_port}"] if browse else [])


class AtOnce:
    """Does at once what was to be done later."""

    def __init__(self, _seconds: float, act: object, arguments: list[str]) -> None:
        self.act, self.arguments = act, arguments

    def start(self) -> None:
        """Do it."""
        assert callable(self.act)
        self.act(*self.arguments)


def test_a_port_that_is_taken_is_told(tmp_path: Path, taken_port: int) -> None:
    """When it was asked for; nothing else is tried then."""
    with pytest.raises(PortTakenError) as told:
        open_app(BENCH, Opening(store=tmp_path / "jobs.db", port=taken_port, alone=True), print)
    assert str(told.value) == f"Something else listens at port {taken_port}: name another with --port."
    assert told.value.exit_code == ExitCode.FILE_TROUBLE


def test_two_apps_never_have_the_same_port(free_port: int) -> None:
    """Also when the first has not begun to answer yet."""
    with serving._listen("127.0.0.1", free_port), pytest.raises(PortTakenError):
        serving._listen("127.0.0.1", free_port)


def test_the_first_port_that_is_free_is_taken(monkeypatch: pytest.MonkeyPatch, taken_port: int) -> None:
    """When none was asked for."""
    monkeypatch.setattr(serving, "PORT", taken_port)
    with serving._listen("127.0.0.1", None) as listening:
        assert taken_port < listening.getsockname()[1] < taken_port + 20


def test_no_more_ports_are_tried_than_are_told(monkeypatch: pytest.MonkeyPatch, taken_port: int) -> None:
    """Which were tried is said."""
    assert list(serving._ports(None)) == list(range(8642, 8662))
    assert list(serving._ports(9000)) == [9000]
    monkeypatch.setattr(serving, "_ports", lambda _port: [taken_port])
    with pytest.raises(PortTakenError, match="listens at ports 8642 to 8661: name another with --port"):
        serving._listen("127.0.0.1", None)


def test_a_file_of_jobs_that_cannot_be_used_is_told_before_anything_is_opened(tmp_path: Path) -> None:
    """No port is taken and no browser opened."""
    (tmp_path / "jobs.db").write_bytes(b"a letter " * 99)
    said: list[str] = []
    with pytest.raises(StoreError, match="is no file of jobs"):
        open_app(BENCH, Opening(store=tmp_path / "jobs.db"), said.append)
    assert said == []


def test_the_address_on_the_network_is_a_plain_one(monkeypatch: pytest.MonkeyPatch) -> None:
    """Nothing is sent to find it; on no network there is none."""
    address = serving._own_address()
    assert address == "" or socket.inet_aton(address)

    def unreachable(*_where: object) -> None:
        raise OSError(101, "Network is unreachable")

    class Unconnected(socket.socket):
        connect = unreachable

    monkeypatch.setattr(socket, "socket", Unconnected)
    assert serving._own_address() == ""
