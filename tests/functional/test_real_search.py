"""The commands with everything real, in a process of their own."""

import json
import subprocess
import sys
from pathlib import Path

COMMAND = [sys.executable, "-c", "from plankwright.cli import main; main()"]


def run(*arguments: str) -> subprocess.CompletedProcess[str]:
    """Run `plankwright` as a shell would, its output piped."""
    return subprocess.run(
        [*COMMAND, *arguments], check=False, capture_output=True, text=True, encoding="utf-8"
    )


def test_stdout_holds_the_answer_alone(village: Path) -> None:
    """Nothing of a solver's native talk comes between, which a script would stumble over."""
    ran = run("enough", str(village), "--effort", "glance", "--json")
    assert ran.returncode == 0, ran.stderr
    assert ran.stderr == ""
    answer = json.loads(ran.stdout)
    assert answer["verdict"] == "enough"
    assert answer["surfaces"][0]["joints_in_sight"] == 0


def test_what_lay_writes_is_right_by_check(village: Path) -> None:
    """Two processes, with the file between them."""
    laid = run("lay", str(village), "--effort", "glance")
    assert laid.returncode == 0, laid.stderr
    checked = run("check", str(village))
    assert (checked.returncode, checked.stderr) == (0, "")
    assert checked.stdout.startswith("The layout breaks no rule")


def test_the_same_effort_and_seed_give_the_same_files(village: Path, tmp_path: Path) -> None:
    """Byte for byte, in another process."""
    for name in ("one", "two"):
        run("lay", str(village), "--effort", "glance", "--seed", "5", "--out", str(tmp_path / name))
    one, two = (sorted((tmp_path / name).iterdir()) for name in ("one", "two"))
    assert [file.name for file in one] == [file.name for file in two]
    assert [file.read_bytes() for file in one] == [file.read_bytes() for file in two]


def test_not_enough_is_proven_and_closed(village: Path) -> None:
    """One board of 97 in by 5-1/4 in cannot make two courses; the boards wanted are long enough for one."""
    (village / "tally.csv").write_text("id,length,width,thickness\nA,97,5-1/4,3/4\n", encoding="utf-8")
    ran = run("enough", str(village), "--effort", "glance", "--json")
    assert ran.returncode == 1, ran.stderr
    answer = json.loads(ran.stdout)
    assert answer["verdict"] == "not enough"
    assert answer["wanted_closes"] is True
    assert answer["wanted"]
    for wanted in answer["wanted"]:
        assert wanted["length_nm"] >= 96 * 25_400_000
