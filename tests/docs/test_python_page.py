"""What docs/python.md shows runs as it stands."""

import re
import shutil
from pathlib import Path

import pytest

import plankwright

ROOT = Path(__file__).parents[2]
PAGE = (ROOT / "docs" / "python.md").read_text(encoding="utf-8")


def test_the_example_runs_and_leaves_its_files(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """From the root of the project, as a reader would run it."""
    shutil.copytree(ROOT / "examples", tmp_path / "examples")
    monkeypatch.chdir(tmp_path)
    examples = re.findall(r"```python\n(.*?)```", PAGE, re.DOTALL)
    exec(compile("\n".join(examples), "docs/python.md", "exec"), {})  # noqa: S102 - our own page
    said = capsys.readouterr().out
    assert "of the pile can be hung" in said
    assert "end to end." in said
    assert {"layout.json", "cut-list.csv", "sheets.pdf"} <= {file.name for file in Path("out").iterdir()}


def test_every_function_is_in_the_table() -> None:
    """And every one in the table is there."""
    assert sorted(re.findall(r"^\| `(\w+)\(", PAGE, re.MULTILINE)) == sorted(plankwright.__all__)


def test_every_function_is_there_and_documented() -> None:
    """They load when they are first used."""
    for name in plankwright.__all__:
        assert getattr(plankwright, name).__doc__
        assert name in dir(plankwright)


def test_another_name_is_not_there() -> None:
    """As in any module."""
    with pytest.raises(AttributeError, match="no attribute 'saw'"):
        _ = plankwright.saw
