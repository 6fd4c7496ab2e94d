"""Following a search to its end, and stopping it."""

import os
import signal
import threading
import time

import pytest

from plankwright.cli.follow import follow
from plankwright.cli.leaving import SEARCH_THREAD
from plankwright.cli.talk import Talk
from plankwright.layout.result import Progress, Watch
from plankwright.measure import System, TapeStyle
from plankwright.model import Bound

TAPE = TapeStyle(system=System.IMPERIAL)
FOREVER_S = 60.0


def wait_until_stopped(watch: Watch) -> str:
    """Search until somebody says stop, and give up after a minute."""
    end = time.monotonic() + FOREVER_S
    while not watch.stopped():
        if time.monotonic() > end:
            return "never stopped"
        time.sleep(0.01)
    return "best so far"


def press_ctrl_c() -> None:
    """Send this process what a terminal sends for Ctrl-C."""
    os.kill(os.getpid(), signal.SIGINT)


def test_what_the_search_gives_is_given() -> None:
    """Nothing is added and nothing lost."""
    assert follow(lambda _watch: "found", Talk(), TAPE) == "found"


def test_an_error_of_the_search_comes_through() -> None:
    """As if it had been called without a thread between."""

    def fail(_watch: Watch) -> str:
        raise ValueError("no such board")

    with pytest.raises(ValueError, match="no such board"):
        follow(fail, Talk(), TAPE)


def test_ctrl_c_stops_the_search_and_keeps_the_best(capsys: pytest.CaptureFixture[str]) -> None:
    """The user is told how to give it up altogether."""

    def search(watch: Watch) -> str:
        press_ctrl_c()
        return wait_until_stopped(watch)

    assert follow(search, Talk(), TAPE) == "best so far"
    assert "Press Ctrl-C again" in capsys.readouterr().err


def test_a_second_ctrl_c_ends() -> None:
    """Even when the search does not listen."""
    let_go = threading.Event()

    def search(_watch: Watch) -> str:
        press_ctrl_c()
        time.sleep(0.3)
        press_ctrl_c()
        let_go.wait(FOREVER_S)
        return "too late"

    with pytest.raises(KeyboardInterrupt):
        follow(search, Talk(), TAPE)
    let_go.set()
    for thread in threading.enumerate():
        if thread.name == SEARCH_THREAD:
            thread.join(FOREVER_S)


def test_ctrl_c_means_what_it_meant_before_once_the_search_is_over() -> None:
    """Nothing of ours is left behind."""
    before = signal.getsignal(signal.SIGINT)
    follow(lambda _watch: "found", Talk(), TAPE)
    assert signal.getsignal(signal.SIGINT) is before


def test_a_search_followed_in_another_thread_leaves_signals_alone() -> None:
    """Only the main thread may handle them."""
    found: list[str] = []
    thread = threading.Thread(target=lambda: found.append(follow(lambda _watch: "found", Talk(), TAPE)))
    thread.start()
    thread.join(FOREVER_S)
    assert found == ["found"]


def test_progress_is_shown_where_somebody_sits(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """On stderr, so that stdout stays the answer's."""
    monkeypatch.setattr(Talk, "shows_progress", True)
    monkeypatch.setenv("TTY_COMPATIBLE", "1")
    monkeypatch.setenv("COLUMNS", "120")

    def search(watch: Watch) -> str:
        watch.report(Progress(surface_id="wall", stage="improving", done=0.5, best=None, bound=Bound()))
        return "found"

    assert follow(search, Talk(), TAPE) == "found"
    shown = capsys.readouterr()
    assert shown.out == ""
    assert "wall" in shown.err
    assert "50 %" in shown.err
    assert "improving" in shown.err
    assert "no layout yet" in shown.err


def test_of_many_surfaces_those_that_are_done_make_room(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """So that what goes on stands on the screen, and what is said last says of what."""
    monkeypatch.setattr(Talk, "shows_progress", True)
    monkeypatch.setenv("TTY_COMPATIBLE", "1")
    monkeypatch.setenv("COLUMNS", "120")

    def search(watch: Watch) -> None:
        for number in range(20):
            for stage, done in (("improving", 0.5), ("done", 1.0)):
                name = f"wall-{number}"
                watch.report(Progress(surface_id=name, stage=stage, done=done, best=None, bound=Bound()))

    follow(search, Talk(), TAPE)
    *_, last = capsys.readouterr().err.split("8 more are done")
    assert "wall-8 " in last
    assert "wall-7 " not in last
    assert "wall-19: no layout yet" in last


def test_progress_is_not_shown_when_piped(capsys: pytest.CaptureFixture[str]) -> None:
    """A log file needs no bar."""

    def search(watch: Watch) -> str:
        watch.report(Progress(surface_id="wall", stage="improving", done=0.5, best=None, bound=Bound()))
        return "found"

    follow(search, Talk(), TAPE)
    assert capsys.readouterr().err == ""
