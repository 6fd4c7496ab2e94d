"""`plankwright backup` and `plankwright restore`: the file of jobs is carried off and put back."""

import json
from pathlib import Path

import pytest

from commanding import Run
from kept_jobs import bare_job, whole_job
from plankwright import files
from plankwright.store import open_book


@pytest.fixture
def store(tmp_path: Path) -> Path:
    """Give a file with a job in it."""
    path = tmp_path / "jobs.db"
    open_book(path, files).add(whole_job())
    return path


def names_in(path: Path) -> list[str]:
    """Give what the jobs in a file are called."""
    return sorted(card.name for card in open_book(path, files).cards())


def test_a_backup_is_written_and_put_back(run: Run, store: Path, tmp_path: Path) -> None:
    """What was before it is put back is kept beside it, and it is said where."""
    copy = tmp_path / "may" / "jobs-in-may.db"
    ran = run("backup", copy, "--store", store)
    assert (ran.code, ran.out) == (0, f"{copy}\n")
    open_book(store, files).add(bare_job("porch"))
    ran = run("restore", copy, "--store", store)
    before = tmp_path / "jobs-before-1.db"
    assert ran.code == 0
    assert ran.out.splitlines() == [f"Restored: {store}", f"The jobs of before are kept in {before}"]
    assert names_in(store) == ["village hall"]
    assert names_in(before) == ["porch", "village hall"]


def test_on_a_new_machine_there_is_nothing_to_keep(run: Run, store: Path, tmp_path: Path) -> None:
    """The file is made."""
    copy, new = tmp_path / "copy.db", tmp_path / "new" / "jobs.db"
    run("backup", copy, "--store", store)
    ran = run("restore", copy, "--store", new)
    assert ran.out.splitlines() == [f"Restored: {new}"]
    assert names_in(new) == ["village hall"]


def test_a_script_gets_the_files(run: Run, store: Path, tmp_path: Path) -> None:
    """As lists of paths."""
    copy = tmp_path / "copy.db"
    assert json.loads(run("backup", copy, "--store", store, "--json").out)["files"] == [str(copy)]
    told = json.loads(run("restore", copy, "--store", store, "--json").out)
    assert told["files"] == [str(store), str(tmp_path / "jobs-before-1.db")]
    new = tmp_path / "new.db"
    assert json.loads(run("restore", copy, "--store", new, "--json").out)["files"] == [str(new)]


def test_the_usual_file_may_be_said_once_and_for_all(
    run: Run, store: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As for the app."""
    monkeypatch.setenv("PLANKWRIGHT_STORE", str(store))
    assert run("backup", tmp_path / "copy.db").code == 0
    assert names_in(tmp_path / "copy.db") == ["village hall"]


def test_nothing_is_written_over(run: Run, store: Path, tmp_path: Path) -> None:
    """It is file trouble, in one sentence."""
    letter = tmp_path / "letter.txt"
    letter.write_text("Dear all,", encoding="utf-8")
    ran = run("backup", letter, "--store", store)
    assert ran.code == 3
    assert ran.err.strip() == f"{letter} is there already, and nothing is written over: name another file."
    assert letter.read_text(encoding="utf-8") == "Dear all,"


@pytest.mark.parametrize(
    ("command", "told"),
    [
        ("backup", "is not there: no job has been kept in it yet"),
        ("restore", "is not there: name the backup"),
    ],
)
def test_what_is_not_there_is_file_trouble(run: Run, tmp_path: Path, command: str, told: str) -> None:
    """And nothing is made."""
    ran = run(command, tmp_path / "copy.db", "--store", tmp_path / "jobs.db")
    assert ran.code == 3
    assert told in ran.err
    assert list(tmp_path.iterdir()) == []


def test_what_is_no_backup_is_not_put_back(run: Run, store: Path, tmp_path: Path) -> None:
    """The jobs stay."""
    letter = tmp_path / "letter.txt"
    letter.write_text("Dear all,\n" * 50, encoding="utf-8")
    ran = run("restore", letter, "--store", store)
    assert ran.code == 3
    assert "letter.txt is no file of jobs" in ran.err
    assert names_in(store) == ["village hall"]


@pytest.mark.parametrize("command", ["backup", "restore"])
def test_without_a_file_it_says_what_is_missing(run: Run, command: str) -> None:
    """And where to find help."""
    ran = run(command)
    assert ran.code == 2
    assert "COPY" in ran.err
