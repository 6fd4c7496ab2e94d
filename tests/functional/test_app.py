"""`plankwright app`, and `plankwright` alone: the app is opened, asked, and closed by Ctrl-C."""

import os
import re
import signal
import socket
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import httpx2
import pytest

from commanding import Run
from plankwright import files
from plankwright.bootstrap import Bench
from plankwright.store import open_book
from plankwright.store.place import usual_store
from plankwright.web import serving
from plankwright.web.serving import Opening, PortTakenError

ROOT = Path(__file__).parents[2]
FOREVER_S = 120


@pytest.fixture
def openings(monkeypatch: pytest.MonkeyPatch) -> list[Opening]:
    """Remember how the app was opened, instead of opening it."""
    found: list[Opening] = []

    def open_app(bench: Bench, opening: Opening, tell: Callable[[str], None]) -> None:
        assert bench.files is files
        tell("Plankwright is open.")
        found.append(opening)

    monkeypatch.setattr(serving, "open_app", open_app)
    return found


def test_without_a_command_the_app_is_opened(run: Run, openings: list[Opening]) -> None:
    """With the usual file of jobs, for phones too, in a browser."""
    ran = run()
    assert (ran.code, ran.out) == (0, "")
    assert "Plankwright is open." in ran.err
    assert openings == [Opening(store=usual_store())]


def test_it_is_opened_as_it_is_asked_for(run: Run, openings: list[Opening], tmp_path: Path) -> None:
    """Each of it by an option."""
    store = tmp_path / "workshop.db"
    ran = run("app", "--store", store, "--port", 9000, "--alone", "--no-browser")
    assert ran.code == 0
    assert openings == [Opening(store=store, port=9000, alone=True, browse=False)]


@pytest.mark.parametrize("command", [(), ("app",)])
def test_what_is_usual_may_be_said_once_and_for_all(
    run: Run,
    openings: list[Opening],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    command: tuple[str, ...],
) -> None:
    """In the environment, for `plankwright` alone too."""
    monkeypatch.setenv("PLANKWRIGHT_STORE", str(tmp_path / "jobs.db"))
    monkeypatch.setenv("PLANKWRIGHT_PORT", "9001")
    assert run(*command).code == 0
    assert openings == [Opening(store=tmp_path / "jobs.db", port=9001)]


@pytest.mark.parametrize("port", ["0", "65536", "many", "-1"])
def test_a_port_that_is_none_is_refused(run: Run, openings: list[Opening], port: str) -> None:
    """By its name, before anything is opened."""
    ran = run("app", "--port", port)
    assert ran.code == 2
    assert "--port" in ran.err
    assert openings == []


def test_a_port_that_is_taken_is_file_trouble(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    """In one sentence."""

    def taken(*_how: object) -> None:
        raise PortTakenError("Something else listens at port 9000: name another with --port.")

    monkeypatch.setattr(serving, "open_app", taken)
    ran = run("app")
    assert ran.code == 3
    assert ran.err.strip() == "Something else listens at port 9000: name another with --port."


def test_a_file_that_is_none_of_jobs_is_file_trouble(run: Run, tmp_path: Path) -> None:
    """Nothing of it is written over."""
    letter = tmp_path / "letter.txt"
    letter.write_text("Dear all,\n" * 50, encoding="utf-8")
    ran = run("app", "--store", letter, "--no-browser", "--alone")
    assert ran.code == 3
    assert "letter.txt is no file of jobs" in ran.err
    assert letter.read_text(encoding="utf-8") == "Dear all,\n" * 50


def test_no_argument_is_not_taken_for_a_command(run: Run, openings: list[Opening]) -> None:
    """A folder that somebody names is asked about."""
    ran = run("porch")
    assert ran.code == 2
    assert "porch" in ran.err
    assert openings == []


def opened(tmp_path: Path, *more: str) -> "subprocess.Popen[str]":
    """Open the app in a process of its own, as a terminal does."""
    with socket.socket() as asking:
        asking.bind(("127.0.0.1", 0))
        port = asking.getsockname()[1]
    command = ("app", "--no-browser", "--alone", "--port", str(port), "--store", str(tmp_path / "jobs.db"))
    return subprocess.Popen(
        [sys.executable, "-m", "plankwright", *command, *more],
        cwd=ROOT,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )


def address_of(process: "subprocess.Popen[str]") -> str:
    """Wait until it says where it is."""
    assert process.stderr is not None
    for line in process.stderr:
        if match := re.fullmatch(r"Plankwright is open at (http://\S+)\n", line):
            return match[1]
    raise AssertionError("it never said where it is")


@pytest.mark.skipif(os.name == "nt", reason="Ctrl-C is sent otherwise there")
def test_it_is_opened_asked_and_closed_by_ctrl_c(tmp_path: Path) -> None:
    """The first page comes, what is entered is kept, and closing it is no interruption."""
    with opened(tmp_path) as process:
        try:
            address = address_of(process)
            assert "Begin a job" in httpx2.get(address, timeout=FOREVER_S).text
            begun = httpx2.post(
                f"{address}/jobs", data={"name": "porch", "units": "inches"}, timeout=FOREVER_S
            )
            assert begun.status_code == 303
            process.send_signal(signal.SIGINT)
            out, err = process.communicate(timeout=FOREVER_S)
        finally:
            process.kill()
    assert process.returncode == 0, err
    assert out == ""
    assert err.splitlines()[-1] == "Closed. All that was entered is kept."
    assert "Traceback" not in err
    assert [card.name for card in open_book(tmp_path / "jobs.db", files).cards()] == ["porch"]


@pytest.mark.skipif(os.name == "nt", reason="processes are killed otherwise there")
def test_all_that_was_entered_is_kept_when_it_is_killed(tmp_path: Path) -> None:
    """In the middle of a search; that is told as cut off when it is opened again."""
    with opened(tmp_path) as process:
        try:
            address = address_of(process)
            job = httpx2.post(f"{address}/jobs/example", timeout=FOREVER_S).headers["location"]
            begun = httpx2.post(f"{address}{job}/search", data={"effort": "thorough"}, timeout=FOREVER_S)
            assert begun.status_code < 400
        finally:
            process.kill()
    job_id = job.rpartition("/")[2]
    book = open_book(tmp_path / "jobs.db", files)
    assert len(book.job(job_id).boards) > 10
    before = book.last_search(job_id)
    assert before is not None
    assert before.state == "running"
    with opened(tmp_path) as process:
        try:
            page = httpx2.get(f"{address_of(process)}{job}", timeout=FOREVER_S)
        finally:
            process.kill()
    assert page.status_code == 200
    after = book.last_search(job_id)
    assert after is not None
    assert after.state == "cut off"
