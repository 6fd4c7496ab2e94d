"""Results are kept, the newest of a seed stands, and the page tells what is there and what is not."""

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any
from xml.etree import ElementTree as ET

import pytest

from benchmarks import report
from benchmarks.families import exact
from benchmarks.family import Family, Figure, Picture, Row, Rows
from benchmarks.pictures import Marks, bars, dots, line
from benchmarks.registry import FAMILIES
from benchmarks.results import fresh, keep, kept, looked_at
from benchmarks.run import Plan, _left, measure_one
from benchmarks.spread import at_least, middle, seeds_of, shares

SVG = "{http://www.w3.org/2000/svg}"


def _figures(rows: Rows, _others: Mapping[str, Rows]) -> Sequence[Figure]:
    good = [row["good"] for row in rows]
    return (
        Figure(name="good ones", must="all", value=shares(good), met=all(good), baselines={"by eye": "none"}),
    )


def _family(measure: object = None) -> Family[Any]:
    return Family(
        name="exact",
        what="A stand-in.",
        count=2,
        effort="1",
        instance=exact.instance,
        measure=measure or (lambda _instance, _effort: {"good": True}),  # type: ignore[arg-type]
        figures=_figures,
        pictures=lambda _rows, _others: (Picture(name="exact-good", title="good", svg="<svg/>"),),
    )


@pytest.fixture
def one_family(monkeypatch: pytest.MonkeyPatch) -> None:
    """Put a stand-in in the place of all families."""
    for name in list(FAMILIES):
        monkeypatch.delitem(FAMILIES, name)
    monkeypatch.setitem(FAMILIES, "exact", _family())


def _row(seed: int, **more: object) -> Row:
    return {"seed": seed, "good": True, "effort": "1", "version": "abc", "machine": "a machine"} | more


def test_the_newest_row_of_a_seed_stands(tmp_path: Path) -> None:
    """In order of the seeds."""
    for seed, good in ((3, True), (1, True), (3, False)):
        keep("exact", _row(seed, good=good), tmp_path)
    assert [(row["seed"], row["good"]) for row in kept("exact", tmp_path)] == [(1, True), (3, False)]
    assert kept("real", tmp_path) == ()


def test_seeds_from_a_thousand_on_are_fresh() -> None:
    """And the others may have been looked at."""
    rows = [_row(0), _row(999), _row(1000)]
    assert [row["seed"] for row in looked_at(rows)] == [0, 999]
    assert [row["seed"] for row in fresh(rows)] == [1000]


@pytest.mark.usefixtures("one_family")
def test_the_page_tells_both_ranges(tmp_path: Path) -> None:
    """Each with its figure, and whether it is reached."""
    keep("exact", _row(0, when="2026-01-02 10:00"), tmp_path)
    keep("exact", _row(1000, good=False, failed="left bare", when="2026-01-03 10:00"), tmp_path)
    report.write(tmp_path, tmp_path / "page.md", tmp_path / "pictures")
    page = (tmp_path / "page.md").read_text(encoding="utf-8")
    assert "| exact | good ones | all | 1 of 1 (100 %) | 0 of 1 (0 %) | yes / no | none |" in page
    assert "Seeds 0, 1000; effort 1; commit abc; on a machine; measured 2026-01-02 to 2026-01-03." in page
    assert "Failures: left bare: seeds 1000." in page
    tables = [table.splitlines() for table in page.split("\n\n") if table.startswith("| ")]
    assert len(tables) == 2
    assert all(len({line.count("|") for line in table}) == 1 for table in tables)
    assert "![good](pictures/exact-good.svg)" in page
    assert (tmp_path / "pictures" / "exact-good.svg").exists()


@pytest.mark.usefixtures("one_family")
def test_what_could_not_be_measured_is_told_and_nothing_is_reached(tmp_path: Path) -> None:
    """An error is no missing row."""
    keep("exact", _row(0), tmp_path)
    keep("exact", {"seed": 1, "error": "ValueError", "failed": "error"}, tmp_path)
    (section,) = report.sections(tmp_path)
    assert [line.reached for line in section.lines] == ["no / not measured"]
    assert "Failures: error (ValueError): seeds 1." in report._told(section, "")


@pytest.mark.usefixtures("one_family")
def test_a_family_without_results_is_not_measured(tmp_path: Path) -> None:
    """Rather than left out."""
    (section,) = report.sections(tmp_path)
    assert "Not measured yet." in report._told(section, "")
    assert list(report.summary([section]))[2:] == []


@pytest.mark.usefixtures("one_family")
def test_an_instance_that_fails_is_a_row(monkeypatch: pytest.MonkeyPatch) -> None:
    """With its error, so that the night goes on."""

    def fail(_instance: object, _effort: object) -> Row:
        raise ValueError("no such luck")

    assert measure_one("exact", 3, "1")["good"]
    monkeypatch.setitem(FAMILIES, "exact", _family(fail))
    row = measure_one("exact", 3, "1")
    assert (row["seed"], row["error"], row["failed"]) == (3, "ValueError", "error")


def test_resuming_leaves_out_what_was_measured_just_so(tmp_path: Path) -> None:
    """Another effort, machine or version is measured again, and so are files that no commit has."""
    about = {"version": "abc", "machine": "a machine"}
    keep("exact", _row(0), tmp_path)
    keep("exact", _row(1, effort="2"), tmp_path)
    plan = Plan(family="exact", seeds=(0, 1, 2), effort="1", resume=True)
    assert list(_left(plan, about, tmp_path)) == [1, 2]
    assert list(_left(plan, about | {"version": "abd"}, tmp_path)) == [0, 1, 2]
    keep("exact", _row(2, version="abc+"), tmp_path)
    assert list(_left(plan, about | {"version": "abc+"}, tmp_path)) == [0, 1, 2]


def test_words_for_many_values() -> None:
    """Median, worst, shares and ranges of seeds."""
    assert middle([3.0, 1.0, 2.0], "{:.1f}") == "2.0 (worst 3.0)"
    assert middle([3.0, 1.0, 2.0], "{:.1f}", high_is_bad=False) == "2.0 (worst 1.0)"
    assert middle([], "{:.1f}") == "–"
    assert shares([True, False, True]) == "2 of 3 (67 %)"
    assert (at_least([True] * 98 + [False] * 2, 0.98), at_least([True] * 97 + [False] * 3, 0.98)) == (
        True,
        False,
    )
    assert not at_least([], 0.0)
    assert seeds_of([_row(seed) for seed in (5, 1, 2, 3, 9)]) == "1–3, 5, 9"


def test_a_dot_a_value_and_a_line_at_the_limit() -> None:
    """Larger values farther right, the limit between them, names escaped."""
    drawn = ET.fromstring(dots([Marks("a & b", [1.0, 3.0]), Marks("none", [])], "inches", limit=2.0))  # noqa: S314 - our own
    first, second = (float(dot.attrib["cx"]) for dot in drawn.iter(f"{SVG}circle"))
    (limit,) = (
        float(each.attrib["x1"]) for each in drawn.iter(f"{SVG}line") if "stroke-dasharray" in each.attrib
    )
    assert first < limit < second
    assert {"a & b", "none", "inches"} <= {text.text for text in drawn.iter(f"{SVG}text")}


def test_bars_are_as_long_as_their_values() -> None:
    """Twice the value, twice the bar."""
    drawn = ET.fromstring(bars({"one": 1.0, "two": 2.0, "none": 0.0}, "s"))  # noqa: S314 - our own
    _, *widths = (float(each.attrib["width"]) for each in drawn.iter(f"{SVG}rect"))
    assert widths[1] == pytest.approx(2 * widths[0], abs=0.2)
    assert widths[2] == 0
    assert "2.00 s" in {text.text for text in drawn.iter(f"{SVG}text")}


def test_a_line_rises_with_its_values() -> None:
    """Points in order of size, higher ones higher up."""
    points = [(600, 80.0), (600, 100.0), (5000, 900.0)]
    drawn = ET.fromstring(line(points, ("boards", "time, s")))  # noqa: S314 - our own
    low, high, far = (
        (float(dot.attrib["cx"]), float(dot.attrib["cy"])) for dot in drawn.iter(f"{SVG}circle")
    )
    assert low[0] == high[0] < far[0]
    assert low[1] > high[1] > far[1]
    (through,) = drawn.iter(f"{SVG}polyline")
    (x, y), end = (tuple(map(float, point.split(","))) for point in through.attrib["points"].split())
    assert x == low[0]
    assert high[1] < y < low[1]
    assert end == far
    assert [text.text for text in drawn.iter(f"{SVG}text")][:4] == ["90", "600", "900", "5000"]
