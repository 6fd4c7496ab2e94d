"""`plankwright lay` and `enough` with surfaces and wood in plenty: on all cores, on other machines."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest
from distributed import LocalCluster

from commanding import Run
from plankwright.layout import lay_out
from village import JOB_TOML, write_small_job

ROOT = Path(__file__).parents[2]
FOREVER_S = 600
SECOND = """
[[surface]]
id = "ceiling"
kind = "ceiling"
width = 90
height = 15
framing = { solid = true }
"""
COMMAND = "from plankwright.cli import main; main()"

# Ctrl-C is pressed as soon as a surface under way reports a first layout; its effort would last far longer.
STOPPED = """
import os, signal, sys
from dataclasses import replace
from plankwright.bootstrap import set_up_bench
from plankwright.cli import main
from plankwright.layout.result import Watch

bench = set_up_bench()

def interrupted(*what, watch, **how):
    pressed = []

    def report(progress):
        watch.report(progress)
        if progress.best is not None and not pressed:
            pressed.append(True)
            os.kill(os.getpid(), signal.SIGINT)

    return bench.search(*what, watch=Watch(report=report, stopped=watch.stopped), **how)

main(sys.argv[1:], bench=replace(bench, search=interrupted))
"""


@pytest.fixture
def yard(tmp_path: Path) -> Path:
    """Give the folder of a job of two surfaces with plenty of wood."""
    folder = write_small_job(tmp_path / "yard")
    (folder / "job.toml").write_text(JOB_TOML.replace("[rules]", f"{SECOND}\n[rules]"), encoding="utf-8")
    rows = [f"B{n},floor,{97 + n % 3},{5 + n % 4 / 4},3/4" for n in range(24)]
    tally = "\n".join(("id,lot,length,width,thickness", *rows, ""))
    (folder / "tally.csv").write_text(tally, encoding="utf-8")
    return folder


def begin(script: str, *arguments: object) -> "subprocess.CompletedProcess[str]":
    """Run a script in a process of its own."""
    return subprocess.run(
        [sys.executable, "-c", script, *map(str, arguments)],
        cwd=ROOT,
        check=False,
        capture_output=True,
        text=True,
        timeout=FOREVER_S,
    )


def test_on_other_machines_it_gives_the_same_files_as_on_all_cores(yard: Path, tmp_path: Path) -> None:
    """Byte for byte."""
    little = ("--effort", "0.3", "--quiet")
    here = begin(COMMAND, "lay", yard, *little, "--out", tmp_path / "here")
    with LocalCluster(
        n_workers=2, threads_per_worker=1, processes=True, dashboard_address=":0", host="127.0.0.1"
    ) as cluster:
        address = cluster.scheduler_address
        there = begin(COMMAND, "lay", yard, *little, "--out", tmp_path / "there", "--on", address)
    assert (here.returncode, here.stderr) == (0, "")
    assert (there.returncode, there.stderr) == (0, "")
    assert here.stdout.startswith("Enough: a layout was found that covers wall and ceiling.\n")
    one, two = (sorted((tmp_path / name).iterdir()) for name in ("here", "there"))
    assert [file.name for file in one] == [file.name for file in two]
    assert [file.read_bytes() for file in one] == [file.read_bytes() for file in two]


@pytest.mark.parametrize("command", ["lay", "enough"])
def test_a_bad_address_is_one_clear_sentence(run: Run, yard: Path, command: str) -> None:
    """And nothing is written."""
    ran = run(command, yard, "--effort", "0.3", "--on", "upstairs", search=lay_out)
    assert ran.code == 2
    assert ran.err.startswith("“upstairs” is no address of a Dask scheduler")
    assert len(ran.err.splitlines()) == 1
    assert not (yard / "out").exists()


@pytest.mark.skipif(os.name == "nt", reason="Ctrl-C is sent otherwise there")
def test_ctrl_c_keeps_the_best_of_every_surface_so_far(yard: Path) -> None:
    """It is checked and written like any other, and the user is told."""
    ran = begin(STOPPED, "lay", yard, "--effort", "30m")
    assert ran.returncode in {0, 1}, ran.stderr
    assert "Stopping: the best layout so far is kept." in ran.stderr
    assert "The search was stopped early" in ran.stdout
    written = json.loads((yard / "out" / "layout.json").read_text(encoding="utf-8"))
    assert [bool(surface["courses"]) for surface in written["surfaces"]] == [True, True]
