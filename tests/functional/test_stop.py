"""Ctrl-C during a real search, in a process of its own."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from commanding import Run

ROOT = Path(__file__).parents[2]
FOREVER_S = 600

# Ctrl-C is pressed as soon as the search reports a first layout; its effort would last far longer.
SCRIPT = """
import os, signal, sys, time
from dataclasses import replace
from plankwright.bootstrap import set_up_bench
from plankwright.cli import main
from plankwright.layout.result import Watch

bench = set_up_bench()
presses = int(sys.argv[1])

def interrupted(search):
    def run(*what, watch=None, **how):
        pressed = []

        def report(progress):
            watch.report(progress)
            if progress.best is not None and not pressed:
                pressed.append(True)
                # One after the other, but all now: a search that was stopped may end before it reports again.
                for _ in range(presses):
                    os.kill(os.getpid(), signal.SIGINT)
                    while not watch.stopped():
                        time.sleep(0.01)
                time.sleep(0.5 * (presses - 1))

        return search(*what, watch=Watch(report=report, stopped=watch.stopped), **how)

    return run

bench = replace(bench, search=interrupted(bench.search), again=interrupted(bench.again))
main(sys.argv[2:], bench=bench)
"""


def press_ctrl_c(presses: int, *command: str, out: Path) -> subprocess.CompletedProcess[str]:
    """Run a command, and press Ctrl-C so many times."""
    return subprocess.run(
        [sys.executable, "-c", SCRIPT, str(presses), *command, "--out", str(out), "--effort", "30m"],
        cwd=ROOT,
        check=False,
        capture_output=True,
        text=True,
        timeout=FOREVER_S,
    )


@pytest.mark.skipif(os.name == "nt", reason="Ctrl-C is sent otherwise there")
def test_ctrl_c_keeps_the_best_layout_so_far(tmp_path: Path) -> None:
    """It is checked and written like any other, and the user is told."""
    ran = press_ctrl_c(1, "lay", "examples/village-hall", out=tmp_path)
    assert ran.returncode in {0, 1}, ran.stderr
    assert "Stopping: the best layout so far is kept." in ran.stderr
    assert "The search was stopped early" in ran.stdout
    assert json.loads((tmp_path / "layout.json").read_text(encoding="utf-8"))["surfaces"]
    assert (tmp_path / "sheets.pdf").exists()


@pytest.mark.skipif(os.name == "nt", reason="Ctrl-C is sent otherwise there")
def test_a_second_ctrl_c_ends_with_nothing_written(tmp_path: Path) -> None:
    """Code 130, and no traceback."""
    ran = press_ctrl_c(2, "lay", "examples/village-hall", out=tmp_path)
    assert ran.returncode == 130, ran.stderr
    assert "Traceback" not in ran.stderr
    assert list(tmp_path.iterdir()) == []


@pytest.mark.skipif(os.name == "nt", reason="Ctrl-C is sent otherwise there")
def test_ctrl_c_keeps_what_is_known_of_what_is_left(run: Run, village: Path, tmp_path: Path) -> None:
    """What hangs and all that is not touched by what happened is in it."""
    run("lay", village, "--quiet")
    run("mark", village, "hung", "1")
    run("mark", village, "lost", "B")
    ran = press_ctrl_c(1, "now", str(village), out=tmp_path / "now")
    assert ran.returncode in {0, 1}, ran.stderr
    assert "Stopping: the best layout so far is kept." in ran.stderr
    assert run("check", village, tmp_path / "now" / "layout.json").code == 0
    assert (tmp_path / "now" / "layout-before.json").exists()
