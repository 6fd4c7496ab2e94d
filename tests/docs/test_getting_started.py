"""What docs/getting-started.md walks through can be walked."""

import re
from pathlib import Path

import pytest

from plankwright.cli import main

PAGE = (Path(__file__).parents[2] / "docs" / "getting-started.md").read_text(encoding="utf-8")


def block(language: str) -> str:
    """Give the one block of a language on the page."""
    (text,) = re.findall(rf"```{language}\n(.*?)```", PAGE, re.DOTALL)
    return str(text)


def run(*arguments: str) -> int:
    """Run a command with everything real, and give its exit code."""
    with pytest.raises(SystemExit) as left:
        main(arguments)
    return int(left.value.code or 0)


def test_the_walk_leads_to_a_cut_list(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """From start to what is left: each command as on the page, only with less effort."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("PLANKWRIGHT_EFFORT", "glance")
    folder = Path("hall-bench")
    assert run("start", "hall-bench") == 0
    (folder / "tally.csv").write_text(block("csv"), encoding="utf-8")
    (folder / "job.toml").write_text(block("toml"), encoding="utf-8")
    assert run("tally", "hall-bench") == 0
    assert run("enough", "hall-bench") == 0
    assert run("lay", "hall-bench") == 0
    assert run("check", "hall-bench", "hall-bench/out/layout.json") == 0
    for name in re.findall(r"^- `([\w.-]+)`", PAGE, re.MULTILINE):
        assert (folder / "out" / name).exists(), name
    assert "The layout breaks no rule" in capsys.readouterr().out
    for line in re.findall(r"^plankwright ((?:mark|now|left) .*)", PAGE, re.MULTILINE):
        assert run(*line.split()) == 0, line
    assert "still to be hung" in capsys.readouterr().out
    assert (folder / "out" / "left-over.csv").exists()


def test_every_command_on_the_page_is_walked() -> None:
    """A command that is added there is added above."""
    shown = set(re.findall(r"^plankwright (\w+)", PAGE, re.MULTILINE))
    assert shown == {"start", "tally", "enough", "lay", "mark", "now", "left"}


def test_what_it_asks_about_is_what_the_page_shows(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Word for word, from a tally with those two slips."""
    file = tmp_path / "tally.csv"
    sound = "".join(f"{number},60,5,3/4,\n" for number in range(2, 12))
    rows = sound.replace("9,60,5,3/4,", "9,60,5,3-Aug,").replace(
        "11,60,5,3/4,", '11,60,5,3/4,"3-5 rot, 10-12 split"'
    )
    file.write_text(f"id,length,width,thickness,flaws\n1,60,5,3/4,\n{rows}", encoding="utf-8")
    assert run("tally", str(file), "--unit", "in") == 2
    shown = [line.split(": ", 1)[1] for line in block("text").splitlines()]
    told = [line.split(": ", 1)[1] for line in capsys.readouterr().err.splitlines()]
    assert told == shown
