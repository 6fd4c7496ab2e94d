"""The report of a fault of ours."""

import tempfile
from pathlib import Path

import pytest

from plankwright.cli import fault_report
from plankwright.cli.fault_report import write_report


def a_fault() -> ValueError:
    """Give an error with a traceback and a cause."""
    boards: dict[str, int] = {}
    try:
        boards["A17"] += 1
    except KeyError as cause:
        error = ValueError("no such board")
        error.__cause__ = cause
        return error
    raise AssertionError("the board is there")


def test_the_report_holds_what_whoever_mends_it_needs(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The command, the versions, and the error with its cause."""
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    report = write_report(a_fault(), ["lay", "porch"])
    assert report is not None
    assert report.parent == tmp_path
    text = report.read_text(encoding="utf-8")
    assert text.startswith("plankwright lay porch\nPython 3.")
    assert "\nshapely " in text
    assert "KeyError: 'A17'" in text
    assert "ValueError: no such board" in text


def test_a_library_that_is_missing_is_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """That may be the fault."""
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    monkeypatch.setattr(fault_report, "LIBRARIES", ("no-such-library",))
    report = write_report(a_fault(), [])
    assert report is not None
    assert "no-such-library (not installed)" in report.read_text(encoding="utf-8")


def test_where_nothing_can_be_written_there_is_no_report(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """And no second error."""
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path / "nowhere"))
    assert write_report(a_fault(), []) is None
