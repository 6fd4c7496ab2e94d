"""`plankwright risk`: what a layout survives when boards are lost."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from commanding import Run

ROOT = Path(__file__).parents[2]
FOREVER_S = 120
LITTLE = ("--effort", "0.1", "--draws", "2")

# Ctrl-C is pressed as soon as the first board has been tried.
SCRIPT = """
import os, signal, sys, time
from dataclasses import replace
from plankwright.bootstrap import set_up_bench
from plankwright.cli import main
from plankwright.crews.cores import Cores

class Pressing:
    def share_out(self, work, common, given, *, watch):
        for found in Cores(1).share_out(work, common, given, watch=watch):
            yield found
            for _ in range(int(sys.argv[1])):
                os.kill(os.getpid(), signal.SIGINT)
                time.sleep(0.3)

main(sys.argv[2:], bench=replace(set_up_bench(), crew_at=lambda _address: Pressing()))
"""


@pytest.fixture
def laid(run: Run, village: Path) -> Path:
    """Give the folder of the small job, laid out: two boards, and one to spare."""
    run("lay", village, "--quiet")
    return village


def test_one_spare_makes_up_for_one_loss(run: Run, laid: Path) -> None:
    """And the boards to cut are told in order."""
    ran = run("risk", laid, *LITTLE)
    assert ran.code == 0
    assert ran.out.startswith("Any one board can be lost: a full layout was found without each of them.\n")
    assert "Each draw survived one loss." in ran.out
    assert "no promise" in ran.out
    table, caution = ran.out.partition("Cut in this order\n")[2].split("\n\n")
    assert [line.split()[0] for line in table.splitlines()[2:]] == ["A", "B"]
    assert ran.err == ""
    assert "tetanus" in caution


def test_once_the_spare_is_lost_every_board_is_needed(run: Run, laid: Path) -> None:
    """That is proven, as nothing hangs yet."""
    run("mark", laid, "lost", "C")
    ran = run("risk", laid, *LITTLE)
    assert ran.code == 0
    assert ran.out.startswith("The layout cannot do without boards A and B.\n")
    assert "That is proven" in ran.out
    assert "Each draw survived no loss." in ran.out
    assert "proven impossible" in ran.out


def test_what_hangs_is_no_longer_at_risk_and_nothing_is_proven(run: Run, laid: Path) -> None:
    """Only as far as was found."""
    run("mark", laid, "hung", "1")
    run("mark", laid, "lost", "C")
    ran = run("risk", laid, *LITTLE)
    assert "The layout cannot do without board B, as far as was found." in ran.out
    assert "not proven" in ran.out
    run("mark", laid, "hung", "2")
    assert (
        run("risk", laid, *LITTLE).out
        == "Nothing is left to be cut, so no layout hangs on a board any more.\n"
    )


def test_a_script_gets_the_same_whoever_does_it(run: Run, laid: Path) -> None:
    """Every time."""
    first, second = (json.loads(run("risk", laid, *LITTLE, "--seed", 3, "--json").out) for _ in range(2))
    assert first == second
    assert first["needed"] == []
    assert first["can_be_lost"] == ["A", "B"]
    assert first["at_risk"] == ["A", "B", "C"]
    assert first["losses_survived"] == {"least": 1, "middle": 1, "most": 1, "draws": [1, 1]}
    assert [each["spare_stand_ins"] for each in first["cut_first"]] == [1, 1]
    assert first["stopped"] is False


def test_an_outdated_layout_is_refused(run: Run, laid: Path) -> None:
    """What now comes first."""
    run("mark", laid, "lost", "B")
    ran = run("risk", laid, *LITTLE)
    assert ran.code == 1
    assert "plankwright now" in ran.err
    assert ran.out == ""


@pytest.mark.parametrize("address", ["upstairs", "tcp://upstairs", "8786"])
def test_a_bad_address_is_one_clear_sentence(run: Run, laid: Path, address: str) -> None:
    """Before anything is tried."""
    ran = run("risk", laid, *LITTLE, "--on", address)
    assert ran.code == 2
    assert ran.err.startswith(f"“{address}” is no address of a Dask scheduler")
    assert len(ran.err.splitlines()) == 1


def test_a_bad_effort_or_number_of_draws_is_bad_input(run: Run, laid: Path) -> None:
    """As everywhere."""
    assert run("risk", laid, "--effort", "some").code == 2
    assert run("risk", laid, "--draws", "-1").code == 2


def press_ctrl_c(presses: int, folder: Path) -> "subprocess.CompletedProcess[str]":
    """Ask for the risk, and press Ctrl-C so many times."""
    return subprocess.run(
        [sys.executable, "-c", SCRIPT, str(presses), "risk", str(folder), *LITTLE],
        cwd=ROOT,
        check=False,
        capture_output=True,
        text=True,
        timeout=FOREVER_S,
    )


@pytest.mark.skipif(os.name == "nt", reason="Ctrl-C is sent otherwise there")
def test_ctrl_c_tells_what_was_found_so_far(laid: Path) -> None:
    """And what was not tried."""
    ran = press_ctrl_c(1, laid)
    assert ran.returncode == 0, ran.stderr
    assert "Stopping: what was found so far is told." in ran.stderr
    assert ran.stdout.startswith("No board was found so far that the layout cannot do without.\n")
    assert "Not tried: board B." in ran.stdout
    assert "stopped early" in ran.stdout


@pytest.mark.skipif(os.name == "nt", reason="Ctrl-C is sent otherwise there")
def test_a_second_ctrl_c_ends(laid: Path) -> None:
    """Code 130, and no traceback."""
    ran = press_ctrl_c(2, laid)
    assert ran.returncode == 130, ran.stderr
    assert "Traceback" not in ran.stderr
    assert ran.stdout == ""
