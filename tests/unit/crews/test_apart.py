"""Work in a process of its own tells how it gets on, is stopped or given up, and ends with who began it."""

import os
import pickle
import subprocess
import sys
import threading
import time
from pathlib import Path

import pytest

from apart_work import (
    count,
    deaf,
    faulty,
    gone,
    interrupted,
    refused,
    tell_for_ever,
    unsendable,
    until_stopped,
)
from plankwright.bootstrap import begin_search
from plankwright.crews.apart import Apart
from plankwright.crews.trouble import CrewError
from plankwright.errors import BadInputError
from plankwright.workshop.jobs.kept import Made, NotThereError
from plankwright.workshop.jobs.search_layout import Errand, Sight
from village import small_job

TESTS = Path(__file__).parents[2]
FOREVER_S = 60.0

# The process that began it is killed while it works.
KILLED = """
import sys
from apart_work import name_process
from plankwright.crews.apart import Apart

if __name__ == "__main__":
    Apart(name_process, sys.argv[1]).follow(lambda told: print("begun", flush=True))
"""


def is_there(process: int) -> bool:
    """Tell whether a process runs."""
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    return not Path(f"/proc/{process}/stat").is_file() or (
        Path(f"/proc/{process}/stat").read_text(encoding="ascii").rpartition(")")[2].split()[0] != "Z"
    )


def wait_for_end(process: int) -> None:
    """Wait until a process is gone."""
    end = time.monotonic() + FOREVER_S
    while is_there(process):
        assert time.monotonic() < end, "it goes on for ever"
        time.sleep(0.01)


def test_all_that_it_tells_comes_in_order_before_what_it_finds() -> None:
    """In the thread that follows it."""
    heard: list[tuple[str, int]] = []
    found = Apart(count, 50).follow(lambda told: heard.append((told, threading.get_ident())))
    assert found == 50
    assert heard == [(str(number), threading.get_ident()) for number in range(50)]


def test_it_works_in_another_process() -> None:
    """So that whoever began it goes on."""
    heard: list[str] = []
    apart = Apart(until_stopped, "here")
    apart.stop()
    assert apart.follow(heard.append) == "here, stopped"
    assert heard != [f"here: {os.getpid()}"]


def test_it_is_stopped_with_what_it_has_found() -> None:
    """While somebody follows it."""
    apart = Apart(until_stopped, "here")
    assert apart.follow(lambda _told: apart.stop()) == "here, stopped"


def test_it_is_given_up_at_once() -> None:
    """Whatever it does; whoever follows it is told in one sentence."""
    heard: list[str] = []
    apart = Apart(deaf, "here")

    def hear(told: str) -> None:
        heard.append(told)
        apart.give_up()

    with pytest.raises(CrewError, match="ended before its time"):
        apart.follow(hear)
    wait_for_end(int(heard[0]))


def test_giving_up_and_stopping_what_is_over_is_no_matter() -> None:
    """It may have ended a moment before."""
    apart = Apart(count, 1)
    assert apart.follow(lambda _told: None) == 1
    apart.stop()
    apart.give_up()


def test_an_error_for_users_comes_through_whole() -> None:
    """With all that it carries."""
    with pytest.raises(BadInputError) as told:
        Apart(refused, "the width is missing").follow(lambda _told: None)
    assert str(told.value) == "tally.csv, line 3: the width is missing"
    with pytest.raises(NotThereError):
        Apart(refused, "not there").follow(lambda _told: None)


def test_a_fault_of_ours_is_one_sentence_and_a_log(caplog: pytest.LogCaptureFixture) -> None:
    """Not every error can be sent, and nobody wants to read it on a screen."""
    with pytest.raises(CrewError) as told:
        Apart(faulty, None).follow(lambda _told: None)
    assert str(told.value) == "Something went wrong inside the program; this is our fault, not yours."
    assert "ZeroDivisionError" in caplog.text


def test_what_cannot_be_sent_is_a_fault_of_ours(caplog: pytest.LogCaptureFixture) -> None:
    """And not too little memory."""
    with pytest.raises(CrewError, match="this is our fault"):
        Apart(unsendable, None).follow(lambda _told: None)
    assert "unsendable" in caplog.text


def test_a_process_that_ends_before_its_time_is_one_sentence() -> None:
    """As when the system takes it for want of memory."""
    heard: list[str] = []
    with pytest.raises(CrewError, match="there may be too little memory"):
        Apart(gone, None).follow(heard.append)
    assert heard == ["about to go"]


def test_ctrl_c_does_not_reach_it() -> None:
    """Whoever began it tells it when it is enough."""
    assert Apart(interrupted, None).follow(lambda _told: None) == "went on"


def test_it_ends_when_nobody_can_listen_any_more() -> None:
    """The trouble of whoever listens comes through, and nobody waits for a search that is in vain."""
    heard: list[str] = []

    def fail(told: str) -> None:
        heard.append(told)
        raise KeyError(told)

    for work in (tell_for_ever, deaf):
        with pytest.raises(KeyError):
            Apart(work, "here").follow(fail)
        wait_for_end(int(heard[-1]))


def test_it_ends_with_whoever_began_it(tmp_path: Path) -> None:
    """Also when that is killed, with no time to say anything."""
    script, named = tmp_path / "script.py", tmp_path / "process"
    script.write_text(KILLED, encoding="utf-8")
    with subprocess.Popen(
        [sys.executable, str(script), str(named)],
        stdout=subprocess.PIPE,
        env={**os.environ, "PYTHONPATH": str(TESTS)},
    ) as began:
        assert began.stdout is not None
        assert began.stdout.readline().strip() == b"begun"
        began.kill()
    wait_for_end(int(named.read_text(encoding="ascii")))


def test_a_real_search_works_apart() -> None:
    """With what it is given and what it gives sent there and back."""
    seen: list[Sight] = []
    errand = Errand(job=small_job(), made=Made.SEARCHED, effort="glance", seed=5)
    found = begin_search(errand).follow(seen.append)
    assert pickle.loads(pickle.dumps(errand)) == errand  # noqa: S301 - our own bytes, made one call ago
    assert found.layout.covers_everything
    assert found.layout.seed == 5
    assert found.answer is not None
    assert any(sight.best is not None and sight.best.covers_everything for sight in seen)
