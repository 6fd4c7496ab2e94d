"""The app is measured at five hundred boards, and its figures are met or not."""

import pytest

from benchmarks.families.app import BOARDS, instance
from benchmarks.family import Row
from benchmarks.questions import app

MEASURED = ("list of jobs", "job", "tally", "how far the boards reach", "surfaces")


def row(seconds: float) -> Row:
    """Give what would be measured if each page took so long."""
    return {
        "page_s": dict.fromkeys(MEASURED, seconds),
        "page_bytes": dict.fromkeys(MEASURED, 5_000),
        "read_tally_s": 0.1,
    }


def test_the_same_seed_gives_the_same_boards() -> None:
    """As many as the issue is about."""
    assert instance(0).job == instance(0).job
    assert len({board.id for board in instance(0).job.boards}) == BOARDS


def test_each_page_is_measured(monkeypatch: pytest.MonkeyPatch) -> None:
    """In time and in what comes over the network, beside the reading of the file."""
    monkeypatch.setattr(app, "TIMES", 1)
    monkeypatch.setattr(app, "JOBS", 2)
    found = app.measure(instance(0), None)
    assert found["boards"] == BOARDS
    assert tuple(found["page_s"]) == tuple(found["page_bytes"]) == MEASURED
    assert all(size > 500 for size in found["page_bytes"].values())


@pytest.mark.parametrize(("worst", "met"), [(0.3, True), (0.31, False)])
def test_the_slowest_counts(worst: float, met: bool) -> None:  # noqa: FBT001 - drawn
    """And the ratio is told beside it."""
    figures = app.APP.figures([row(0.05), row(worst)], {})
    asked = [figure for figure in figures if figure.must]
    assert [figure.met for figure in asked] == [met] * len(MEASURED)
    ratio = next(figure.value for figure in figures if "multiple" in figure.name)
    assert ratio.endswith(f"(worst {worst / 0.1:.2f})")
