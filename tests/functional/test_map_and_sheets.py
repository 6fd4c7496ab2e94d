"""`plankwright map` and `plankwright sheets`: drawn and printed again from a layout made earlier."""

import json
from pathlib import Path

import pytest

from commanding import Run
from plankwright.files import layout_to_json
from village import spoilt_layout

COMMANDS = [("map", "map-wall.svg"), ("sheets", "sheets.pdf")]


@pytest.fixture
def laid(run: Run, village: Path) -> Path:
    """Give a job folder with a layout of it in out/."""
    run("lay", village)
    return village


@pytest.mark.parametrize(("command", "name"), COMMANDS)
def test_the_file_is_the_same_as_when_laid_out(run: Run, laid: Path, command: str, name: str) -> None:
    """From the layout where lay leaves it."""
    before = (laid / "out" / name).read_bytes()
    (laid / "out" / name).unlink()
    ran = run(command, laid)
    assert ran.code == 0
    assert ran.out.startswith(f"{laid / 'out' / name}: ")
    assert (laid / "out" / name).read_bytes() == before


@pytest.mark.parametrize(("command", "name"), COMMANDS)
def test_another_layout_and_another_place_may_be_named(
    run: Run, laid: Path, tmp_path: Path, command: str, name: str
) -> None:
    """Both by path."""
    moved = (laid / "out" / "layout.json").rename(tmp_path / "moved.json")
    ran = run(command, laid, moved, "--out", tmp_path / "there", "--json")
    assert ran.code == 0
    assert json.loads(ran.out)["files"][0] == str(tmp_path / "there" / name)
    assert (tmp_path / "there" / name).exists()


@pytest.mark.parametrize(("command", "name"), COMMANDS)
def test_a_faulty_layout_is_not_worked_from(run: Run, laid: Path, command: str, name: str) -> None:
    """It says what to mend, and writes nothing."""
    file = laid / "by-hand.json"
    file.write_text(layout_to_json(spoilt_layout()), encoding="utf-8")
    ran = run(command, laid, file, "--out", laid / "there")
    assert ran.code == 1
    assert ran.err.startswith("This layout breaks rules, so nothing is made from it. Mend it first:\n")
    assert not (laid / "there" / name).exists()


@pytest.mark.parametrize(("command", "name"), COMMANDS)
def test_a_missing_layout_is_file_trouble(run: Run, village: Path, command: str, name: str) -> None:
    """Nothing was laid out yet."""
    ran = run(command, village)
    assert ran.code == 3
    assert "layout.json" in ran.err
    assert not (village / "out" / name).exists()
