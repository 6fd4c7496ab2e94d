"""Processes on the cores of this machine."""

import os
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from at_stake import at_stake, one_long_board
from crew_work import divided, gone, tell_of_it
from plankwright.crews import crew_at
from plankwright.crews.cores import Cores
from plankwright.crews.trouble import CrewError
from plankwright.layout.break_proof import one_by_one, random_losses
from plankwright.layout.result import Watch
from plankwright.workshop.live_through import live_through

TESTS = Path(__file__).parents[2]
FOREVER_S = 60.0
BOARDS = ("left", "right", "spare-1", "spare-2", "long")

# Ctrl-C is sent to the whole group, as a terminal does, once the first piece of work is done.
STOPPED_BY_CTRL_C = """
import os, signal
from plankwright.crews.cores import Cores
from plankwright.layout.result import Watch
from crew_work import wait_for_stop

if __name__ == "__main__":
    pressed = []
    signal.signal(signal.SIGINT, lambda *_: pressed.append(True))
    done = []
    watch = Watch(stopped=lambda: bool(pressed))
    for place, found in Cores(2).share_out(wait_for_stop, 1, [0, 9, 9, 9], watch=watch):
        done.append((place, found))
        if len(done) == 1:
            os.killpg(0, signal.SIGINT)
    print(sorted(done))
"""

# The process that shares out is killed while the others work.
KILLED = """
import sys
from plankwright.crews.cores import Cores
from plankwright.layout.result import Watch
from crew_work import tell_and_wait

if __name__ == "__main__":
    for _ in Cores(2).share_out(tell_and_wait, sys.argv[1], [0, 1], watch=Watch()):
        pass
"""


def test_every_process_gives_what_this_one_would() -> None:
    """Each place once, whatever the order; one process or two."""
    trials = (*one_by_one(BOARDS), *random_losses(BOARDS, 3, 2))
    stake = at_stake(one_long_board())
    alone = dict(Cores(1).share_out(live_through, stake, trials, watch=Watch()))
    assert dict(Cores(2).share_out(live_through, stake, trials, watch=Watch())) == alone
    assert list(alone) == list(range(len(trials)))


def test_all_cores_that_may_be_used_are() -> None:
    """On any machine at least one."""
    crew = crew_at(None)
    assert isinstance(crew, Cores)
    assert crew.count >= 1


def test_an_error_of_the_work_comes_through() -> None:
    """From this process and from another."""
    for count in (1, 2):
        with pytest.raises(ZeroDivisionError):
            list(Cores(count).share_out(divided, 1, [1, 0], watch=Watch()))


@pytest.mark.parametrize("count", [1, 2])
def test_what_the_work_tells_is_handed_on(count: int) -> None:
    """While it goes on, from this process and from others: it ends only once all is told."""
    seen: set[str] = set()
    watch = Watch(report=lambda told: seen.add(told.surface_id), stopped=lambda: len(seen) == count)
    found = list(Cores(count).share_out(tell_of_it, "at", range(count), watch=watch))
    assert sorted(found) == [(each, "stopped") for each in range(count)]
    assert seen == {f"at-{each}" for each in range(count)}


def test_a_process_that_ends_before_its_time_is_one_sentence() -> None:
    """No traceback of the library."""
    with pytest.raises(CrewError, match="ended before its time"):
        list(Cores(2).share_out(gone, None, [0, 1], watch=Watch()))


def test_nothing_more_is_begun_once_it_is_stopped() -> None:
    """In this process."""
    done: list[int] = []
    for place, _ in Cores(1).share_out(divided, 1, [1, 1, 1], watch=Watch(stopped=lambda: len(done) == 2)):
        done.append(place)
    assert done == [0, 1]


def begun(script: str, folder: Path, *arguments: str) -> "subprocess.Popen[str]":
    """Begin a script in a group of its own."""
    file = folder / "script.py"
    file.write_text(script, encoding="utf-8")
    return subprocess.Popen(
        [sys.executable, str(file), *arguments],
        env=os.environ | {"PYTHONPATH": os.pathsep.join((str(TESTS), *sys.path))},
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        start_new_session=True,
    )


@pytest.mark.skipif(os.name == "nt", reason="Ctrl-C is sent otherwise there")
def test_ctrl_c_reaches_no_process_but_the_first(tmp_path: Path) -> None:
    """What was done is given, what is under way ends soon, and nobody shows a traceback."""
    with begun(STOPPED_BY_CTRL_C, tmp_path) as process:
        out, err = process.communicate(timeout=FOREVER_S)
    assert err == ""
    assert process.returncode == 0
    assert "(0, 'done')" in out
    assert "(1, 'stopped')" in out
    assert "never stopped" not in out


@pytest.mark.skipif(os.name == "nt", reason="Processes are killed otherwise there")
def test_no_process_outlives_the_first(tmp_path: Path) -> None:
    """Even when that is killed."""
    with begun(KILLED, tmp_path, str(tmp_path)) as process:
        files = [tmp_path / f"process-{each}" for each in (0, 1)]
        assert _comes_true(lambda: all(file.exists() and file.read_text(encoding="ascii") for file in files))
        others = [int(file.read_text(encoding="ascii")) for file in files]
        assert all(map(_alive, others))
        process.kill()
    assert _comes_true(lambda: not any(map(_alive, others)))


def _comes_true(what: Callable[[], bool]) -> bool:
    end = time.monotonic() + FOREVER_S
    while not what():
        if time.monotonic() > end:
            return False
        time.sleep(0.05)
    return True


def _alive(process: int) -> bool:
    """Whether a process runs: not one that has ended and of which nobody has taken note yet."""
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    state = Path(f"/proc/{process}/stat")
    return not state.exists() or state.read_text(encoding="ascii").rpartition(")")[2].split()[0] != "Z"
