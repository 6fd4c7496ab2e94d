"""The way in and out: help, exit codes, and what is said when something goes wrong."""

import os
import re
import subprocess
import sys
from pathlib import Path
from typing import NoReturn

import pytest

from commanding import Run
from plankwright import files as real_files
from plankwright.cli import entry
from plankwright.cli.commands import SUMMARIES
from plankwright.layout.result import Result, Watch
from village import StandInSearch, small_result, spoilt_layout

ROOT = Path(__file__).parents[2]


def report_named_in(text: str) -> Path:
    """Find the report that a message names."""
    match = re.search(r"A full report is in (.+)\.$", text, re.MULTILINE)
    assert match is not None
    return Path(match[1])


def test_help_teaches_by_example_and_lists_the_codes(run: Run) -> None:
    """All commands and all exit codes are on the first page."""
    ran = run("--help")
    assert ran.code == 0
    assert "plankwright lay porch" in ran.out
    for name in SUMMARIES:
        assert f"\n  {name} " in ran.out
    for code in ("0 ", "1 ", "2 ", "3 ", "70 ", "130 "):
        assert f"\n    {code}" in ran.out


def test_the_command_runs_as_a_module_too() -> None:
    """Where the scripts folder is on nobody's path."""
    ran = subprocess.run(
        [sys.executable, "-m", "plankwright", "--version"], capture_output=True, text=True, check=False
    )
    assert ran.returncode == 0
    assert ran.stdout.startswith("plankwright ")


@pytest.mark.parametrize("name", SUMMARIES)
def test_each_command_teaches_by_example(run: Run, name: str) -> None:
    """Its help shows it as it is typed."""
    ran = run(name, "--help")
    assert ran.code == 0
    assert re.search(rf"^    plankwright {name} \S", ran.out, re.MULTILINE)


@pytest.mark.parametrize(("name", "summary"), SUMMARIES.items())
def test_the_list_of_commands_says_what_they_say(run: Run, name: str, summary: str) -> None:
    """The first page does not load them, so it has their first lines by heart."""
    assert f"\n\n  {summary}\n" in run(name, "--help").out


def test_help_loads_neither_solver_nor_geometry() -> None:
    """They take seconds on a slow machine."""
    script = (
        "import sys; from plankwright.cli.commands import plankwright\n"
        "plankwright.main(['--help'], standalone_mode=False)\n"
        "print(sorted({'ortools', 'highspy', 'shapely', 'pydantic', 'typst'} & set(sys.modules)))"
    )
    ran = subprocess.run([sys.executable, "-c", script], check=True, capture_output=True, text=True)
    assert ran.stdout.splitlines()[-1] == "[]"


def test_an_unknown_command_is_refused(run: Run) -> None:
    """By its name."""
    ran = run("saw")
    assert ran.code == 2
    assert "saw" in ran.err


def test_an_unknown_option_is_refused(run: Run, village: Path) -> None:
    """By its name."""
    ran = run("tally", village, "--nails")
    assert ran.code == 2
    assert "--nails" in ran.err


@pytest.mark.parametrize("command", ["enough", "lay"])
def test_a_layout_that_our_checker_refuses_is_our_fault(run: Run, village: Path, command: str) -> None:
    """It says so, says what was found, leaves a report, and writes nothing."""
    before = sorted(village.iterdir())
    ran = run(command, village, search=StandInSearch(Result(layout=spoilt_layout())))
    assert ran.code == 70
    assert ran.out == ""
    assert "this is our fault, not yours" in ran.err
    assert "wall" in ran.err
    report = report_named_in(ran.err)
    assert "LayoutRefusedError" in report.read_text(encoding="utf-8")
    report.unlink()
    assert sorted(village.iterdir()) == before


def test_what_nobody_foresaw_is_one_sentence_and_a_report(run: Run, village: Path) -> None:
    """The report holds the command, the versions and the traceback; the terminal does not."""

    def stumble(_watch: Watch) -> NoReturn:
        raise ZeroDivisionError("no wall at all")

    ran = run("enough", village, "--seed", 5, search=StandInSearch(small_result(), stumble))
    assert ran.code == 70
    assert ran.err.startswith("Something went wrong inside the program; this is our fault, not yours.\n")
    report = report_named_in(ran.err)
    told = report.read_text(encoding="utf-8")
    assert f"plankwright enough {village} --seed 5" in told
    assert "ZeroDivisionError: no wall at all" in told
    assert "Traceback" in told
    assert "ortools" in told
    report.unlink()


def test_a_report_that_cannot_be_written_is_said(
    run: Run, village: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Still no traceback."""
    monkeypatch.setattr(entry, "write_report", lambda _error, _arguments: None)
    ran = run("enough", village, search=StandInSearch(Result(layout=spoilt_layout())))
    assert ran.code == 70
    assert ran.err.splitlines()[-1] == "No report could be written either."


def test_ctrl_c_while_a_file_is_read_leaves_code_130(
    run: Run, village: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """There is no search yet whose best could be kept."""

    def interrupted(folder: Path) -> NoReturn:
        raise KeyboardInterrupt(folder)

    monkeypatch.setattr(real_files, "read_job", interrupted)
    ran = run("tally", village)
    assert ran.code == 130
    assert ran.err.strip() == "Stopped."


@pytest.mark.skipif(os.name == "nt", reason="Ctrl-C is sent otherwise there")
def test_ctrl_c_while_libraries_load_leaves_code_130() -> None:
    """Some of them would print it or make an error of it, which is no fault of ours."""
    script = (
        "import os, signal, sys\n"
        "class Presser:\n"
        "    def find_spec(self, name, path=None, target=None):\n"
        "        if name == 'numpy':\n"
        "            try: os.kill(os.getpid(), signal.SIGINT)\n"
        "            except KeyboardInterrupt: raise ImportError('numpy failed')\n"
        "sys.meta_path.insert(0, Presser())\n"
        "from plankwright.cli import main; main(['tally', 'nowhere'])"
    )
    ran = subprocess.run([sys.executable, "-c", script], check=False, capture_output=True, text=True)
    assert (ran.returncode, ran.stdout, ran.stderr) == (130, "", "Stopped.\n")


def piped(*arguments: str) -> tuple[int, bytes]:
    """Run a command whose reader has gone; give its code and what it says on stderr."""
    script = f"from plankwright.cli import main; main({list(arguments)!r})"
    with subprocess.Popen(
        [sys.executable, "-c", script], stdout=subprocess.PIPE, stderr=subprocess.PIPE
    ) as process:
        assert process.stdout is not None
        assert process.stderr is not None
        process.stdout.close()
        told = process.stderr.read()
    return process.returncode, told


@pytest.mark.skipif(os.name == "nt", reason="pipes close otherwise there")
def test_a_reader_that_has_enough_is_no_trouble(village: Path) -> None:
    """`plankwright --help | head -1` says nothing of a broken pipe, and the code is that of the command."""
    assert piped("--help") == (0, b"")
    assert piped("tally", str(village)) == (0, b"")
    code, told = piped("check", str(village), "nowhere.json", "--json")
    assert (code, told) == (3, b"nowhere.json is not there: check the name.\n")


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device that is always full")
@pytest.mark.parametrize("arguments", [("--help",), ("tally", "FOLDER"), ("tally", "FOLDER", "--json")])
def test_a_full_disk_below_stdout_is_file_trouble(village: Path, arguments: tuple[str, ...]) -> None:
    """It is no fault of ours, and a script must not take half an answer for a whole one."""
    given = [str(village) if argument == "FOLDER" else argument for argument in arguments]
    script = f"from plankwright.cli import main; main({given!r})"
    with Path("/dev/full").open("w") as full:
        ran = subprocess.run(
            [sys.executable, "-c", script], check=False, stdout=full, stderr=subprocess.PIPE, text=True
        )
    assert ran.returncode == 3
    assert ran.stderr.endswith(
        "The answer cannot be shown (no space left on device): see where the output goes.\n"
    )


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device that is always full")
def test_a_full_disk_below_stderr_changes_nothing(village: Path) -> None:
    """Nobody could be told of it."""
    script = f"from plankwright.cli import main; main(['tally', {str(village / 'nowhere')!r}])"
    with Path("/dev/full").open("w") as full:
        ran = subprocess.run([sys.executable, "-c", script], check=False, stdout=subprocess.PIPE, stderr=full)
    assert (ran.returncode, ran.stdout) == (3, b"")
