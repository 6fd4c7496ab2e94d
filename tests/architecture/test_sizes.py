"""Modules are small, have one subject and say which."""

import ast
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
MODULES = sorted(
    (path for folder in ("src", "tests", "tools", "benchmarks") for path in (ROOT / folder).rglob("*.py")),
    key=str,
)
MOST_LINES = 500
DRAWERS = {"common", "helper", "helpers", "manager", "misc", "util", "utils"}


def faults_of(path: Path) -> list[str]:
    """Tell what is wrong with the size, the name and the docstring of a module."""
    text = path.read_text(encoding="utf-8")
    faults = []
    lines = len(text.splitlines())
    if lines > MOST_LINES:
        faults.append(f"has {lines} lines, more than {MOST_LINES}: part it by subject")
    if path.stem in DRAWERS:
        faults.append("is named like a drawer for anything: name it by its subject")
    if not (ast.get_docstring(ast.parse(text)) or "").strip():
        faults.append("has no docstring: say what it is for")
    return faults


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(ROOT)))
def test_module_is_small_and_says_its_subject(path: Path) -> None:
    """No module is over 500 lines, a drawer for anything, or without a docstring."""
    assert faults_of(path) == []


def test_a_long_nameless_silent_module_is_found(tmp_path: Path) -> None:
    """Each of the three faults is told."""
    spoilt = tmp_path / "utils.py"
    spoilt.write_text("x = 1\n" * (MOST_LINES + 1), encoding="utf-8")
    assert [fault.split()[0:2] for fault in faults_of(spoilt)] == [
        ["has", "501"],
        ["is", "named"],
        ["has", "no"],
    ]


def test_a_module_of_just_500_lines_is_let_pass(tmp_path: Path) -> None:
    """The limit itself is allowed."""
    whole = tmp_path / "course.py"
    whole.write_text('"""What a course is."""\n' + "x = 1\n" * (MOST_LINES - 1), encoding="utf-8")
    assert faults_of(whole) == []
