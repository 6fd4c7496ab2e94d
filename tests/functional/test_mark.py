"""`plankwright mark`: what happened while a job is worked on."""

import json
from pathlib import Path

import pytest

from commanding import Run


@pytest.fixture
def laid(run: Run, village: Path) -> Path:
    """Give the folder of the small job with its layout."""
    run("lay", village, "--quiet")
    return village


def test_what_is_marked_is_kept_and_told(run: Run, laid: Path) -> None:
    """In a file in the folder, and in words."""
    ran = run("mark", laid, "hung", "1")
    assert ran.code == 0
    assert ran.out.splitlines()[0] == "Hung: 1."
    assert "wall: one of two pieces hangs, in course 1." in ran.out
    assert (laid / "work.json").exists()
    assert run("mark", laid).out.splitlines() == ["wall: one of two pieces hangs, in course 1."]


def test_the_last_mark_is_taken_back(run: Run, laid: Path) -> None:
    """And with no mark left, there is none to take back."""
    run("mark", laid, "cut", "1a")
    assert run("mark", laid, "--undo").out.splitlines() == [
        "Taken back: cut 1a.",
        "Nothing is marked yet: nothing is cut and nothing hangs.",
    ]
    assert "no mark to take back" in run("mark", laid, "--undo").out


def test_lengths_are_read_as_the_job_writes_them(run: Run, laid: Path) -> None:
    """A bare number is in the unit of the job."""
    ran = run("mark", laid, "hung", "1", "--edge", "5-1/8")
    assert 'course 1 ends 5-1/8" from the start side' in ran.out
    assert 'course 2 ends 10-1/8" from the start side' in run("mark", laid, "hung", "2").out
    assert 'ends 4-7/8"' in run("mark", laid, "hung", "1a", "--lower", "1/8").out
    assert 'ends 5-1/4"' in run("mark", laid, "hung", "1a", "--higher", "1/4").out


def test_a_script_gets_values(run: Run, laid: Path) -> None:
    """What hangs, what is in hand, what is left and what is lost."""
    run("mark", laid, "hung", "1")
    run("mark", laid, "miscut", "2a", "--length", "50")
    given = json.loads(run("mark", laid, "lost", "C", "--json").out)
    assert given["surfaces"][0]["hung"] == ["1a"]
    assert [piece["label"] for piece in given["in_hand"]] == ["2a"]
    assert given["lost_boards"] == ["C"]
    assert [mark["mark"] for mark in given["marks"]] == ["hung", "miscut", "lost"]


@pytest.mark.parametrize(
    ("words", "sentence"),
    [
        (["cut", "7a"], "There is no piece 7a in the layout."),
        (["sold", "1a"], "'sold' is not one of"),
        (["cut", "1a", "--undo"], "--undo takes the last mark back"),
        (["cut", "1a", "--edge", "5"], "they go with hung"),
        (["hung", "1", "--edge", "5", "--lower", "1"], "give one of them"),
        (["cut", "1a", "--length", "5"], "they go with miscut"),
        (["hung", "1", "--edge", "soon"], "“soon”"),
    ],
)
def test_what_cannot_be_marked_is_told_in_a_sentence(
    run: Run, laid: Path, words: list[str], sentence: str
) -> None:
    """And nothing is kept of it."""
    ran = run("mark", laid, *words)
    assert ran.code == 2
    assert sentence in ran.err
    assert not (laid / "work.json").exists()


def test_without_a_layout_there_is_nothing_to_mark(run: Run, village: Path) -> None:
    """It is file trouble."""
    ran = run("mark", village, "cut", "1a")
    assert ran.code == 3
    assert "layout.json is not there" in ran.err
