"""`plankwright now` and `plankwright left`: the rest laid out anew, and what is left of it all."""

import csv
import json
from pathlib import Path

import pymupdf
import pytest

from commanding import Run
from plankwright.files import read_layout, read_tally


@pytest.fixture
def worked(run: Run, village: Path) -> Path:
    """Give the folder of the small job, of which the lower course hangs, an eighth higher than planned."""
    run("lay", village, "--quiet")
    run("mark", village, "hung", "1", "--higher", "1/8")
    return village


def test_what_changes_is_told_and_written(run: Run, worked: Path) -> None:
    """The upper course is ripped narrower; the layout before is kept."""
    before = read_layout(worked / "out" / "layout.json")
    ran = run("now", worked)
    assert ran.code == 0
    assert "One of one piece" not in ran.out
    assert '- 2a is cut to 8\' 0" by 4-7/8" instead of 8\' 0" by 5", board B.' in ran.out
    assert "wall: one of two pieces hangs, in course 1." in ran.out
    assert "tetanus" in ran.out
    assert read_layout(worked / "out" / "layout-before.json") == before
    run("now", worked)
    assert read_layout(worked / "out" / "layout-before.json") == before
    assert run("check", worked).code == 0


def test_papers_tell_only_what_is_still_to_be_done(run: Run, worked: Path) -> None:
    """Cut list, hanging sheet and map."""
    run("now", worked, "--quiet")
    out = worked / "out"
    with (out / "cut-list.csv").open(encoding="utf-8-sig", newline="") as cut_list:
        assert {row["board"] for row in csv.DictReader(cut_list)} == {"B"}
    with pymupdf.open(out / "sheets.pdf") as sheets:
        printed = "".join(page.get_text() for page in sheets)
    assert "Course 2" in printed
    assert "Course 1:" not in printed
    assert "2a is cut to" in printed
    assert "hangs already" in (out / "map-wall.svg").read_text(encoding="utf-8")


def test_a_lost_board_is_replaced_and_the_next_lost_one_cannot_be(run: Run, worked: Path) -> None:
    """There is one to spare."""
    run("mark", worked, "lost", "B")
    ran = run("now", worked, "--quiet")
    assert ran.code == 0
    assert "- 2a is cut from board C instead of B" in ran.out
    run("mark", worked, "lost", "C")
    ran = run("now", worked, "--quiet")
    assert ran.code == 1
    assert "- 2a is gone." in ran.out
    assert "Wanted to close what is bare" in ran.out


def test_until_it_is_asked_what_now_nothing_is_made_of_an_outdated_layout(run: Run, worked: Path) -> None:
    """And a layout from scratch is refused, but into another folder."""
    run("mark", worked, "lost", "B")
    for command in ("sheets", "map", "left"):
        ran = run(command, worked)
        assert ran.code == 1
        assert "plankwright now" in ran.err
    for command in ("lay", "enough"):
        ran = run(command, worked)
        assert ran.code == 2
        assert "Work on this job has begun" in ran.err
    assert run("lay", worked, "--out", worked / "other").code == 0


def test_a_script_gets_the_changes(run: Run, worked: Path) -> None:
    """Beside the answer and the files."""
    given = json.loads(run("now", worked, "--json").out)
    assert given["verdict"] == "enough"
    assert [(change["after"], change["change"]) for change in given["changes"]] == [("2a", "other size")]
    assert "layout-before.json" in [Path(file).name for file in given["files"]]


def test_before_anything_is_marked_all_stays(run: Run, village: Path) -> None:
    """And it is said."""
    run("lay", village, "--quiet")
    ran = run("now", village)
    assert "Two of two pieces still to be hung stay as they were." in ran.out


def test_what_is_left_is_a_tally(run: Run, worked: Path) -> None:
    """One whole board, and no offcut worth keeping."""
    run("now", worked, "--quiet")
    ran = run("left", worked)
    assert ran.code == 0
    assert ran.out.startswith("One whole board left, 8' 1\" end to end.")
    assert [board.id for board in read_tally(worked / "out" / "left-over.csv", unit=None).boards] == ["C"]
    given = json.loads(run("left", worked, "--json").out)
    assert [board["board"] for board in given["boards"]] == ["C"]
