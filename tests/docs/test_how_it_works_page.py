"""The page on how it works and the files that it tells of agree."""

import ast
import re
from collections import defaultdict
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
LAYOUT = ROOT / "src" / "plankwright" / "layout"
PAGE = (ROOT / "docs" / "how-it-works.md").read_text(encoding="utf-8")

MODEL = {path.name: path for path in (LAYOUT / "choose").glob("*.py") if path.name != "__init__.py"}
MODULES = {path.name for path in LAYOUT.rglob("*.py")}


def _numbered() -> dict[int, set[str]]:
    """Give for each number the files of the model with a function whose docstring begins with it."""
    found: defaultdict[int, set[str]] = defaultdict(set)
    for name, path in MODEL.items():
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.FunctionDef) and (
                number := re.match(r"\((\d+)\)", ast.get_docstring(node) or "")
            ):
                found[int(number[1])].add(name)
    return found


def _told() -> dict[int, set[str]]:
    """Give for each rule on the page the files that stand beside it."""
    rows = re.findall(r"^\| \((\d+)\) \|.*\| ([^|]*) \|$", PAGE, flags=re.MULTILINE)
    told = {int(number): set(re.findall(r"`(\w+\.py)`", files)) for number, files in rows}
    (objective,) = re.findall(r"^What is least \(`(\w+\.py)`\):\n\n\((\d+)\)", PAGE, flags=re.MULTILINE)
    return told | {int(objective[1]): {objective[0]}}


def test_the_rules_are_numbered_through() -> None:
    """From one on, each once."""
    assert list(_told()) == list(range(1, len(_told()) + 1))


@pytest.mark.parametrize("number", sorted(_told() | _numbered()))
def test_each_rule_stands_in_a_file_named_beside_it(number: int) -> None:
    """A function there says its number and words, and no other file of the model claims it."""
    assert _numbered()[number]
    assert _numbered()[number] <= _told()[number]


@pytest.mark.parametrize("name", sorted(set(re.findall(r"`(\w+\.py)`", PAGE))))
def test_each_file_told_of_is_there(name: str) -> None:
    """In the room of the search."""
    assert name in MODULES


def test_each_file_of_the_model_is_told_of() -> None:
    """None of the rules hides in a file that the page leaves out."""
    assert set(MODEL) <= set(re.findall(r"`(\w+\.py)`", PAGE))
