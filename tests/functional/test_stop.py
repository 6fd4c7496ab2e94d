"""Ctrl-C during a real search, in a process of its own."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
FOREVER_S = 600

# Ctrl-C is pressed as soon as the search reports a first layout; its effort would last far longer.
SCRIPT = """
import os, signal, sys
from dataclasses import replace
from plankwright.bootstrap import set_up_bench
from plankwright.cli import main
from plankwright.layout.result import Watch

bench = set_up_bench()
presses = int(sys.argv[1])

def search(job, *, effort, seed=0, watch=None):
    pressed = []

    def report(progress):
        watch.report(progress)
        if progress.best is not None and len(pressed) < presses:
            pressed.append(True)
            os.kill(os.getpid(), signal.SIGINT)

    return bench.search(job, effort=effort, seed=seed, watch=Watch(report=report, stopped=watch.stopped))

main(sys.argv[2:], bench=replace(bench, search=search))
"""


def lay_and_press_ctrl_c(presses: int, out: Path) -> subprocess.CompletedProcess[str]:
    """Lay out the example, and press Ctrl-C so many times."""
    command = [sys.executable, "-c", SCRIPT, str(presses), "lay", "examples/village-hall"]
    return subprocess.run(
        [*command, "--out", str(out), "--effort", "30m"],
        cwd=ROOT,
        check=False,
        capture_output=True,
        text=True,
        timeout=FOREVER_S,
    )


@pytest.mark.skipif(os.name == "nt", reason="Ctrl-C is sent otherwise there")
def test_ctrl_c_keeps_the_best_layout_so_far(tmp_path: Path) -> None:
    """It is checked and written like any other, and the user is told."""
    ran = lay_and_press_ctrl_c(1, tmp_path)
    assert ran.returncode in {0, 1}, ran.stderr
    assert "Stopping: the best layout so far is kept." in ran.stderr
    assert "The search was stopped early" in ran.stdout
    assert json.loads((tmp_path / "layout.json").read_text(encoding="utf-8"))["surfaces"]
    assert (tmp_path / "sheets.pdf").exists()


@pytest.mark.skipif(os.name == "nt", reason="Ctrl-C is sent otherwise there")
def test_a_second_ctrl_c_ends_with_nothing_written(tmp_path: Path) -> None:
    """Code 130, and no traceback."""
    ran = lay_and_press_ctrl_c(2, tmp_path)
    assert ran.returncode == 130, ran.stderr
    assert "Traceback" not in ran.stderr
    assert list(tmp_path.iterdir()) == []
