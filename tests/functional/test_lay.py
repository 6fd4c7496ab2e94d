"""`plankwright lay`: the layout and everything that is built from."""

import csv
import json
import os
import signal
import time
from dataclasses import replace
from pathlib import Path
from typing import NoReturn

import pymupdf
import pytest

from commanding import Run
from plankwright.layout.result import Watch
from village import StandInSearch, short_result, small_layout, small_result

NAMES = ["layout.json", "cut-list.csv", "map-wall.svg", "map-wall.dxf", "sheets.pdf"]


def test_the_answer_is_shown_and_each_file_is_named(run: Run, village: Path) -> None:
    """Into the job's own folder out/, with the hazards after it."""
    ran = run("lay", village)
    assert ran.code == 0
    assert ran.out.startswith("Enough: a layout was found that covers wall.\n")
    out = village / "out"
    for name in NAMES:
        assert (out / name).stat().st_size > 0
        assert f"\n{out / name}: " in ran.out
    assert "tetanus" in ran.out
    assert "Local codes and licensed trades decide" in ran.out


def test_what_is_written_holds_the_layout(run: Run, village: Path, tmp_path: Path) -> None:
    """Boards and pieces are found again in every file."""
    run("lay", village, "--out", tmp_path / "here")
    here = tmp_path / "here"
    assert json.loads((here / "layout.json").read_text(encoding="utf-8"))["job"] == "village hall"
    with (here / "cut-list.csv").open(encoding="utf-8-sig", newline="") as cut_list:
        assert {row["board"] for row in csv.DictReader(cut_list)} == {"A", "B"}
    drawing = (here / "map-wall.svg").read_text(encoding="utf-8")
    assert "1a" in drawing
    assert "2a" in drawing
    with pymupdf.open(here / "sheets.pdf") as sheets:
        printed = "".join(page.get_text() for page in sheets)
    assert "1a" in printed
    assert "2a" in printed
    assert not (village / "out").exists()


def test_what_cannot_be_covered_is_laid_out_all_the_same(run: Run, village: Path) -> None:
    """With code 1, and the files beside it."""
    ran = run("lay", village, search=StandInSearch(short_result()))
    assert ran.code == 1
    assert "Not enough" in ran.out
    assert (village / "out" / "sheets.pdf").exists()


def test_the_same_layout_gives_the_same_files(run: Run, village: Path, tmp_path: Path) -> None:
    """Byte for byte, and over those of an earlier run."""
    run("lay", village, "--out", tmp_path / "one")
    for _ in range(2):
        run("lay", village, "--out", tmp_path / "two")
    for name in NAMES:
        assert (tmp_path / "one" / name).read_bytes() == (tmp_path / "two" / name).read_bytes()


def test_out_may_be_set_once_for_all(
    run: Run, village: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """By variable."""
    monkeypatch.setenv("PLANKWRIGHT_OUT", str(tmp_path / "set"))
    run("lay", village)
    assert (tmp_path / "set" / "layout.json").exists()


@pytest.mark.parametrize(("paper", "width_mm"), [("letter", 215.9), ("a4", 210.0)])
def test_sheets_come_in_the_size_asked_for(
    run: Run, village: Path, tmp_path: Path, paper: str, width_mm: float
) -> None:
    """US Letter is 8-1/2 in wide, A4 210 mm (ISO 216)."""
    run("lay", village, "--paper", paper, "--out", tmp_path)
    with pymupdf.open(tmp_path / "sheets.pdf") as sheets:
        sides_mm = {round(side / 72 * 25.4, 1) for side in (sheets[0].rect.width, sheets[0].rect.height)}
    assert width_mm in sides_mm


def test_an_unknown_paper_is_refused(run: Run, village: Path) -> None:
    """With those that are known."""
    ran = run("lay", village, "--paper", "a5")
    assert ran.code == 2
    assert "letter" in ran.err


def test_a_place_that_cannot_be_written_is_file_trouble(run: Run, village: Path, tmp_path: Path) -> None:
    """A file stands where the folder should be."""
    (tmp_path / "taken").write_text("a note", encoding="utf-8")
    ran = run("lay", village, "--out", tmp_path / "taken")
    assert ran.code == 3
    assert "taken" in ran.err


def test_a_place_that_cannot_be_written_is_told_before_the_search(
    run: Run, village: Path, tmp_path: Path
) -> None:
    """Nobody wants to hear of it after two minutes, with the layout lost."""

    def searched(_watch: Watch) -> NoReturn:
        raise AssertionError

    (tmp_path / "note").write_text("a note", encoding="utf-8")
    ran = run("lay", village, "--out", tmp_path / "note", search=StandInSearch(small_result(), searched))
    assert ran.code == 3
    assert "note cannot be a folder" in ran.err


def test_a_script_gets_values_and_files(run: Run, village: Path) -> None:
    """And no talk."""
    ran = run("lay", village, "--json")
    answer = json.loads(ran.out)
    assert answer["verdict"] == "enough"
    assert [Path(file).name for file in answer["files"]] == NAMES
    assert ran.err == ""


def test_ctrl_c_keeps_the_best_so_far(run: Run, village: Path) -> None:
    """The search hears of it, its best is checked and written, and the user is told."""
    heard: list[bool] = []

    def interrupt(watch: Watch) -> None:
        os.kill(os.getpid(), signal.SIGINT)
        for _ in range(1000):
            if watch.stopped():
                break
            time.sleep(0.01)
        heard.append(watch.stopped())

    ran = run("lay", village, search=StandInSearch(replace(small_result(), stopped=True), interrupt))
    assert heard == [True]
    assert ran.code == 0
    assert "Stopping: the best layout so far is kept." in ran.err
    assert "The search was stopped early" in ran.out
    assert (village / "out" / "layout.json").exists()
    assert small_layout().job_name in (village / "out" / "layout.json").read_text(encoding="utf-8")
