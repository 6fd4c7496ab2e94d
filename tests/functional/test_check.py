"""`plankwright check`: is a layout right?"""

import json
from pathlib import Path

import pytest

from commanding import Run
from plankwright.files import layout_to_json
from village import spoilt_layout


@pytest.fixture
def laid(run: Run, village: Path) -> Path:
    """Give a job folder with a layout of it in out/."""
    run("lay", village)
    return village


def write_spoilt(folder: Path) -> Path:
    """Write the spoilt layout, and give its file."""
    file = folder / "by-hand.json"
    file.write_text(layout_to_json(spoilt_layout()), encoding="utf-8")
    return file


def test_a_right_layout_leaves_code_0(run: Run, laid: Path) -> None:
    """It is found where lay leaves it."""
    ran = run("check", laid)
    assert ran.code == 0
    assert ran.out == "The layout breaks no rule.\n"


def test_a_faulty_layout_leaves_code_1_and_lists_what_is_wrong(run: Run, laid: Path) -> None:
    """Made by hand, with the upper course an inch too high: a gap, and more."""
    ran = run("check", laid, write_spoilt(laid))
    assert ran.code == 1
    lines = ran.out.splitlines()
    assert lines[0].startswith("The layout is not right: ")
    assert any(line.startswith("error: wall") and line.endswith("[111]") for line in lines)


def test_what_is_no_layout_is_bad_input(run: Run, laid: Path) -> None:
    """Told with its place."""
    file = laid / "by-hand.json"
    file.write_text('{"format": "shopping list"}', encoding="utf-8")
    ran = run("check", laid, file)
    assert ran.code == 2
    assert "by-hand.json" in ran.err


def test_a_missing_layout_is_file_trouble(run: Run, village: Path) -> None:
    """Named, as where it was looked for."""
    ran = run("check", village)
    assert ran.code == 3
    assert str(Path("out") / "layout.json") in ran.err


def test_a_script_gets_the_findings(run: Run, laid: Path) -> None:
    """With code, place and measure."""
    ran = run("check", laid, write_spoilt(laid), "--json")
    answer = json.loads(ran.out)
    assert ran.code == 1
    assert answer["right"] is False
    gap = next(finding for finding in answer["findings"] if finding["code"] == 111)
    assert gap["severity"] == "error"
    assert gap["surface"] == "wall"
    assert json.loads(run("check", laid, "--json").out) == {"right": True, "findings": []}
