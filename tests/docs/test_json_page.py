"""docs/json.md names everything that `--json` gives, and nothing else."""

import re
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest

from at_stake import MOMENT, one_long_board
from in_progress import begun_job, begun_layout, happened, marked
from plankwright.check import check_layout
from plankwright.cli.advice import leaf_as_json, values_as_json
from plankwright.cli.as_json import (
    answer_as_json,
    changes_as_json,
    findings_as_json,
    left_over_as_json,
    risk_as_json,
    tally_as_json,
    work_as_json,
)
from plankwright.cli.json_text import Json, problems_as_json
from plankwright.crews.cores import Cores
from plankwright.errors import Problem
from plankwright.layout.again import Change, ChangeKind, lay_again
from plankwright.workshop.advice.fit_edges import edges_leaf, fit_edges
from plankwright.workshop.advice.go_shopping import go_shopping
from plankwright.workshop.advice.judge_moisture import judge_moisture
from plankwright.workshop.advice.measure_lumber import measure_lumber
from plankwright.workshop.advice.plan_nails import plan_nails
from plankwright.workshop.advice.ready_boards import ready_boards
from plankwright.workshop.advice.watch_out import watch_out
from plankwright.workshop.ask_enough import ask_enough
from plankwright.workshop.judge_tally import judge_tally
from plankwright.workshop.keep_left_over import gather_left_over
from plankwright.workshop.list_work import list_cuts, list_hanging
from plankwright.workshop.mark_work import begin_work
from plankwright.workshop.weigh_risk import HowMuch, weigh_risk
from trade_jobs import tongued_job, tongued_layout
from village import short_result, small_job, spoilt_layout

TRADE = tongued_job()
TRADE_LAID = tongued_layout(TRADE)

PAGE = (Path(__file__).parents[2] / "docs" / "json.md").read_text(encoding="utf-8")


def section(heading: str) -> str:
    """Give what stands below a heading."""
    match = re.search(rf"^## {heading}\n(.*?)(?=^## |\Z)", PAGE, re.MULTILINE | re.DOTALL)
    assert match is not None
    return match[1]


def rows(heading: str) -> dict[str, str]:
    """Give the names in the table below a heading, with what they mean."""
    return dict(re.findall(r"^\| `(\w+)` \| (.*) \|$", section(heading), re.MULTILINE))


def names_in(text: str) -> set[str]:
    """Give every name that a text puts into code marks."""
    return set(re.findall(r"`(\w+)`", text))


def keys(document: Json) -> set[str]:
    """Give the names in an object, or in the first object of a list."""
    first = document if isinstance(document, Mapping) else document[0] if isinstance(document, list) else None
    assert isinstance(first, Mapping)
    return set(first)


def test_tally() -> None:
    """Every name, and every name inside."""
    job = small_job()
    given = tally_as_json(judge_tally(job.boards, job.rules, job.tape, job.surfaces), ())
    told = rows("tally")
    assert keys(given) == set(told)
    assert isinstance(given, Mapping)
    assert keys(given["pile"]) == names_in(told["pile"])
    assert keys(given["lots"]) == names_in(told["pile"]) | names_in(told["lots"])
    assert keys(given["longest_clear_runs"]) == names_in(told["longest_clear_runs"])
    assert keys(given["width_classes"]) == names_in(told["width_classes"])


def test_enough() -> None:
    """The answer, its findings and its remarks; a surface and what is wanted from inside."""
    answer = answer_as_json(ask_enough(small_job(), short_result()))
    told = rows("enough")
    assert set(answer) | {"findings", "remarks"} == set(told)
    assert keys(answer["wanted"]) == names_in(told["wanted"]) - {"kind", "reach_nm"}
    (surface,) = re.findall(r"^A surface: (.*?)\n\n", section("enough"), re.MULTILINE | re.DOTALL)
    given = answer["surfaces"]
    assert isinstance(given, list)
    assert keys(given) == names_in(surface)


def test_check() -> None:
    """A finding."""
    findings = findings_as_json(check_layout(small_job(), spoilt_layout()))
    told = rows("check")
    assert set(told) == {"right", "findings"}
    assert keys(findings) == names_in(told["findings"]) - {"error", "warning", "note"}


def test_risk() -> None:
    """A board that is needed, the spread, and a board to be cut."""
    job, layout = one_long_board()
    how_much = HowMuch(effort=MOMENT, draws=1)
    risk = weigh_risk(job, layout, begin_work(job), crew=Cores(1), again=lay_again, how_much=how_much)
    given, told = risk_as_json(risk), rows("risk")
    assert set(given) | {"remarks"} == set(told)
    assert keys(given["needed"]) == names_in(told["needed"])
    assert keys(given["losses_survived"]) == names_in(told["losses_survived"])
    assert keys(given["cut_first"]) == names_in(told["cut_first"])


def test_mark() -> None:
    """What hangs, what is in hand, what is left."""
    work = marked(happened("hung", "1"), happened("cut", "2b"))
    given, told = work_as_json(begun_job(), begun_layout(), work), rows("mark")
    assert set(given) == set(told)
    for name in ("marks", "surfaces", "in_hand", "left"):
        assert keys(given[name]) == names_in(told[name])
    surfaces = given["surfaces"]
    assert isinstance(surfaces, list)
    (course,) = re.findall(r"^A course that hangs: (.*?)\n\n", section("mark"), re.MULTILINE | re.DOTALL)
    assert keys(surfaces[0]["courses"]) == names_in(course)


def test_now() -> None:
    """A change, with every sort that there is."""
    change = Change(kind=ChangeKind.NEW, surface_id="wall", before=None, after=None)
    told = rows("now")
    assert set(told) == {"changes", "found_boards"}
    words = names_in(told["changes"])
    assert keys(changes_as_json([change])) <= words
    assert set(re.findall(r"`([^`]+)`", told["changes"])) >= {kind.value for kind in ChangeKind}


def test_left() -> None:
    """A board, and the sum."""
    given, told = left_over_as_json(gather_left_over(begun_job(), begun_layout())), rows("left")
    assert set(given) | {"files"} == set(told)
    assert keys(given["boards"]) == names_in(told["boards"])


@pytest.mark.parametrize(
    ("name", "values"),
    [
        ("moisture", judge_moisture(TRADE, TRADE_LAID)),
        ("prepare", ready_boards(TRADE, TRADE_LAID)),
        ("nails", plan_nails(TRADE, TRADE_LAID)),
        ("edges", fit_edges(TRADE, TRADE_LAID)),
        ("lumber", measure_lumber(TRADE, TRADE_LAID)),
    ],
)
def test_values_of_the_trade(name: str, values: object) -> None:
    """Each answer's values by name."""
    told = section("hazards, moisture, prepare, nails, edges, buy, lumber").split("`values` has", 1)[1]
    (named,) = re.findall(rf"`{name}`: (.*?)\.", told, re.DOTALL)
    given = values_as_json(values)
    assert keys(given) == names_in(named)
    assert all(isinstance(length, int | None) for length in lengths(given))


def lengths(document: Json) -> Iterator[Json]:
    """Give every value whose name ends as those of lengths do, however deep it lies."""
    if isinstance(document, Mapping):
        for name, value in document.items():
            if name.endswith("_nm"):
                yield value
            yield from lengths(value)
    elif isinstance(document, list):
        for value in document:
            yield from lengths(value)


def test_leaves_of_the_trade() -> None:
    """The headline, a part, a source; and the lists that hazards and shopping give."""
    heading = "hazards, moisture, prepare, nails, edges, buy, lumber"
    told = rows(heading)
    given = leaf_as_json(edges_leaf(TRADE, fit_edges(TRADE, TRADE_LAID)))
    assert set(given) | {"values", "remarks"} == set(told)
    assert keys(given["headline"]) == names_in(told["headline"])
    assert keys(given["parts"]) == names_in(told["parts"]) - {"columns", "rows"}
    sources = given["sources"]
    assert isinstance(sources, Mapping)
    assert keys(next(iter(sources.values()))) == names_in(told["sources"])
    lists = section(heading).split("give lists:", 1)[1]
    assert keys(values_as_json(watch_out(TRADE))) | keys(
        values_as_json(go_shopping(TRADE, TRADE_LAID))
    ) == names_in(lists)


def test_cuts_and_hanging() -> None:
    """A board at the saw; a surface, a course and a piece at the wall."""
    board = keys(values_as_json(list_cuts(TRADE, TRADE_LAID))) - {"drawing"}
    inside = {"kind", "mark", "text", "frees", "label", "how"}
    assert board == names_in(rows("cuts")["boards"]) - inside
    surfaces = values_as_json(list_hanging(TRADE, TRADE_LAID))
    assert isinstance(surfaces, list)
    told = names_in(rows("hanging")["surfaces"])
    assert keys(surfaces) | keys(surfaces[0]["courses"]) == told
    (piece,) = re.findall(r"^A piece that hangs: (.*?)\n\n", section("hanging"), re.MULTILINE | re.DOTALL)
    assert keys(surfaces[0]["courses"][0]["pieces"]) | {"what", "how"} == names_in(piece)


def test_problems() -> None:
    """As on the page before the sections."""
    problem = Problem(file="tally.csv", place="line 2", what="it is wide", line=2)
    (told,) = re.findall(r"^A \*\*problem\*\*(.*?)\n\n", PAGE, re.MULTILINE | re.DOTALL)
    assert keys(problems_as_json([problem])) == names_in(told)
