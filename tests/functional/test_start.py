"""`plankwright start`: a job folder to fill in."""

import json
from pathlib import Path

from commanding import Run


def test_a_folder_is_made_with_templates_that_can_be_read(run: Run, tmp_path: Path) -> None:
    """What is written is a job that tally accepts, and the next step is told."""
    folder = tmp_path / "porch"
    ran = run("start", folder)
    assert ran.code == 0
    assert ran.out.splitlines() == [str(folder / "job.toml"), str(folder / "tally.csv")]
    assert f"plankwright tally {folder}" in ran.err
    assert run("tally", folder).code == 0


def test_nothing_is_written_over(run: Run, village: Path) -> None:
    """A folder that holds a job is left alone, with a sentence that says so."""
    before = (village / "job.toml").read_text(encoding="utf-8")
    ran = run("start", village)
    assert ran.code == 3
    assert "nothing is written over" in ran.err
    assert (village / "job.toml").read_text(encoding="utf-8") == before


def test_a_place_that_cannot_be_written_is_told(run: Run, tmp_path: Path) -> None:
    """A file stands where the folder should be."""
    (tmp_path / "porch").write_text("a note", encoding="utf-8")
    ran = run("start", tmp_path / "porch")
    assert ran.code == 3
    assert "porch" in ran.err


def test_a_script_gets_the_files(run: Run, tmp_path: Path) -> None:
    """As a list of paths."""
    ran = run("start", tmp_path / "porch", "--json")
    assert [Path(file).name for file in json.loads(ran.out)["files"]] == ["job.toml", "tally.csv"]


def test_quiet_leaves_the_next_step_out(run: Run, tmp_path: Path) -> None:
    """The answer stays."""
    ran = run("start", tmp_path / "porch", "--quiet")
    assert ran.err == ""
    assert "job.toml" in ran.out


def test_without_a_folder_it_says_what_is_missing(run: Run) -> None:
    """And where to find help."""
    ran = run("start")
    assert ran.code == 2
    assert "FOLDER" in ran.err


def test_the_next_step_can_be_typed_as_it_is_told(run: Run, tmp_path: Path) -> None:
    """Also when the name of the folder holds blanks and other marks."""
    folder = tmp_path / "Säle & Stuben"
    assert f"plankwright tally '{folder}'" in run("start", folder).err
