"""docs/formats.md names every key, column and word of the files, with the defaults that they have."""

import re
from pathlib import Path

import pytest
from pydantic import BaseModel

from plankwright.files.cut_list import HEADINGS, KEEP
from plankwright.files.flaws import KINDS
from plankwright.files.headings import COLUMNS, REQUIRED
from plankwright.files.job_document import JobDocument, RulesDocument, SawDocument
from plankwright.files.layout_document import (
    BoundDocument,
    BoxDocument,
    CourseDocument,
    LayoutDocument,
    PieceDocument,
    ScoreDocument,
    SurfaceLayoutDocument,
)
from plankwright.files.surface_document import (
    ConcealedDocument,
    CutOutDocument,
    FramingDocument,
    HeightDocument,
    KeepOutDocument,
    OpeningDocument,
    SurfaceDocument,
    TrimDocument,
)
from plankwright.files.trade_document import (
    AirDocument,
    HouseDocument,
    LayerDocument,
    LotDocument,
    NailsDocument,
    PriceDocument,
    RoomDocument,
    TaskDocument,
)
from plankwright.files.work_document import (
    CutDocument,
    GoneDocument,
    HungDocument,
    MarkDocument,
    PartDocument,
    SawnDocument,
    WorkDocument,
)
from plankwright.measure import System, TapeStyle, write_exact
from plankwright.model import CutKind, EdgeTreatment, MarkKind, Rules

PAGE = (Path(__file__).parents[2] / "docs" / "formats.md").read_text(encoding="utf-8")
INCHES = TapeStyle(system=System.IMPERIAL)

SECTIONS: list[tuple[str, list[type[BaseModel]]]] = [
    ("## job.toml", [JobDocument]),
    ("### `[[surface]]`", [SurfaceDocument]),
    ("### `[surface.framing]`", [FramingDocument]),
    ("### `[surface.trim]`", [TrimDocument]),
    (
        "### `[[surface.opening]]`, `[[surface.concealed]]`, `[[surface.cut_out]]`, `[[surface.keep_out]]`",
        [OpeningDocument, ConcealedDocument, CutOutDocument, KeepOutDocument],
    ),
    ("### `[rules]`", [RulesDocument]),
    ("### `[[saw]]`", [SawDocument]),
    ("### `[[surface.between]]`", [LayerDocument]),
    ("### `[house]`", [HouseDocument]),
    ("### `[[lot]]`", [LotDocument]),
    ("### `[room]`", [RoomDocument, AirDocument]),
    ("### `[nails]`", [NailsDocument]),
    ("### `[[task]]`", [TaskDocument]),
    ("### `[[price]]`", [PriceDocument]),
    (
        "## Layout (JSON)",
        [
            LayoutDocument,
            SurfaceLayoutDocument,
            CourseDocument,
            PieceDocument,
            BoxDocument,
            ScoreDocument,
            BoundDocument,
        ],
    ),
    (
        "## Work (JSON)",
        [WorkDocument, MarkDocument, HungDocument, CutDocument, GoneDocument, SawnDocument, PartDocument],
    ),
]


def rows(heading: str) -> list[list[str]]:
    """Give the cells of the table below a heading, without its own headings."""
    section = PAGE.split(f"\n{heading}\n", 1)[1].split("\n#", 1)[0]
    table = [line.strip("|").split("|") for line in section.splitlines() if line.startswith("|")]
    return [[cell.strip() for cell in row] for row in table[2:]]


def named(heading: str) -> list[str]:
    """Give the keys or columns that a table describes, without the brackets of TOML."""
    words = [word for row in rows(heading) for word in re.findall(r"`([^`]+)`", row[0])]
    return [word.strip("[]").removeprefix("surface.") for word in words]


def keys(table: type[BaseModel]) -> set[str]:
    """Give the keys of a document as they are written."""
    return {field.alias or name for name, field in table.model_fields.items()}


@pytest.mark.parametrize(
    ("heading", "tables"), SECTIONS, ids=lambda part: part if isinstance(part, str) else ""
)
def test_every_key_is_described_and_no_other(heading: str, tables: list[type[BaseModel]]) -> None:
    """Each once, below the table that it belongs to."""
    described = named(heading)
    assert len(described) == len(set(described))
    assert set(described) == set().union(*map(keys, tables))


def test_heights_are_described() -> None:
    """They are short enough to be described by an example."""
    (row,) = [row for row in rows("### `[[surface]]`") if row[0] == "`heights`"]
    assert all(f"{key} = " in row[2] for key in keys(HeightDocument))


@pytest.mark.parametrize("row", rows("### `[rules]`"), ids=lambda row: row[0])
def test_the_defaults_of_the_rules_are_told_with_a_reason(row: list[str]) -> None:
    """The default of the model, as it is written, and where it comes from or whose it is."""
    name = row[0].strip("`")
    value = getattr(Rules(), name, None)
    length = getattr(Rules(), f"{name}_nm", None)
    assert row[1].strip("`") == (str(value) if length is None else write_exact(length, INCHES))
    assert re.search(r"\((practice|read|read earlier)|yours to say|unless you|never less than", row[2])


def test_every_column_is_described_with_its_other_names() -> None:
    """And whether it is needed."""
    described = rows("## tally.csv, tally.xlsx")
    assert {row[0].strip("`"): tuple(row[1].split(", ")) for row in described} == dict(COLUMNS)
    assert {row[0].strip("`") for row in described if row[2] == "needed"} == set(REQUIRED)


def test_every_usual_kind_of_flaw_is_listed() -> None:
    """Below the severity that it stands for."""
    section = PAGE.split("\n### Flaws\n")[1].split("\n## ")[0]
    for severity, kinds in KINDS.items():
        match = re.search(rf"`{severity}` are words that begin with: ([^.]*)\.", section)
        assert match is not None
        assert tuple(" ".join(match[1].split()).split(", ")) == tuple(kinds)


def test_every_column_of_the_cut_list_is_described() -> None:
    """And every way of cutting."""
    assert tuple(named("## Cut list (CSV)")) == HEADINGS
    (row,) = [row for row in rows("## Cut list (CSV)") if row[0] == "`do`"]
    assert set(re.findall(r"`([^`]+)`", row[1])) == {*CutKind, KEEP}


def test_every_treatment_of_an_edge_is_listed() -> None:
    """In the words of the file."""
    (row,) = [row for row in rows("## Layout (JSON)") if row[0].startswith("`near`")]
    assert set(re.findall(r"`([^`]+)`", row[1])) == set(EdgeTreatment)


def test_every_word_of_a_mark_is_listed() -> None:
    """In the words of the file."""
    (row,) = [row for row in rows("## Work (JSON)") if row[0] == "`mark`"]
    assert set(re.findall(r"`([^`]+)`", row[1])) == set(MarkKind)
