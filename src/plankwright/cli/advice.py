"""What the commands share that tell what the trade knows: reading, showing a leaf, and its JSON."""

import textwrap
from dataclasses import fields, is_dataclass
from enum import Enum
from fractions import Fraction
from pathlib import Path
from typing import TYPE_CHECKING

import click

from plankwright.cli.json_text import Json, problems_as_json, write_json
from plankwright.cli.options import out_folder
from plankwright.cli.reading_layout import read_work
from plankwright.cli.tables import table
from plankwright.cli.talk import Talk
from plankwright.measure import MILLIMETRE
from plankwright.model import Job, Layout, Standing
from plankwright.paper.leaf import Leaf
from plankwright.trade.source import Said, Source
from plankwright.workshop.caution import CAUTION
from plankwright.workshop.check_layout import demand_right
from plankwright.workshop.hand_out import LAYOUT_FILE

if TYPE_CHECKING:
    from plankwright.errors import Problem

_WIDTH = 100

sources_option = click.option("--sources", is_flag=True, help="Say where each figure comes from.")


def read_if_laid(
    talk: Talk, folder: Path, layout: Path | None
) -> tuple[Job, Layout | None, Standing, "tuple[Problem, ...]"]:
    """Read a job, and a layout of it if there is one.

    Parameters
    ----------
    talk
        How this run speaks, and the rooms it calls.
    folder
        The job folder.
    layout
        The layout's file; where `plankwright lay` leaves it when left out, and none where none is there.

    Returns
    -------
    tuple
        The job, the layout, how far the job has come, and what is doubtful in its files.

    Raises
    ------
    FaultyLayoutError
        If the layout breaks a rule: what is told of it would be wrong.
    """
    reading = talk.bench.files.read_job(folder)
    talk.remark(reading.remarks)
    usual = out_folder(folder, None) / LAYOUT_FILE
    path = layout or (usual if usual.exists() else None)
    laid = None if path is None else talk.bench.files.read_layout(path)
    standing = read_work(talk, folder, reading.job).standing
    if laid is not None:
        demand_right(reading.job, laid, standing)
    return reading.job, laid, standing, reading.remarks


def read_laid(
    talk: Talk, folder: Path, layout: Path | None
) -> "tuple[Job, Layout, Standing, tuple[Problem, ...]]":
    """Read a job and a layout of it that breaks no rule; parameters as in `read_if_laid`.

    Returns
    -------
    tuple
        The job, the layout, how far the job has come, and what is doubtful in its files.

    Raises
    ------
    FaultyLayoutError
        If the layout breaks a rule.
    FileTroubleError
        If there is none.
    """
    job, laid, standing, remarks = read_if_laid(
        talk, folder, layout or out_folder(folder, None) / LAYOUT_FILE
    )
    if laid is None:
        raise AssertionError("a layout was asked for by its path")
    return job, laid, standing, remarks


def show_leaf(
    talk: Talk, leaf: Leaf, values: object, remarks: "tuple[Problem, ...]", *, sources: bool
) -> None:
    """Show an answer on stdout, as text or as JSON.

    Parameters
    ----------
    talk
        How this run speaks.
    leaf
        The answer as it is told.
    values
        The answer as values.
    remarks
        What is doubtful in the files that were read.
    sources
        Whether it is told where each figure comes from; JSON always tells.
    """
    if talk.json:
        document = {
            **leaf_as_json(leaf),
            "values": values_as_json(values),
            "remarks": problems_as_json(remarks),
        }
        talk.answer(write_json(document))
        return
    numbers = {source: number for number, source in enumerate(leaf.sources, start=1)} if sources else {}
    talk.headline(_wrapped(_told(leaf.headline, numbers)))
    for part in leaf.told_parts:
        talk.answer(f"\n{part.title}")
        for said in part.said:
            talk.answer(_wrapped(_told(said, numbers), indent="  "))
        if part.grid is not None:
            talk.answer(
                textwrap.indent(table("", part.grid.columns, part.grid.rows, words=True).lstrip("\n"), "  ")
            )
    talk.answer(f"\n{_wrapped(CAUTION)}")
    if numbers:
        talk.answer("\nSources")
        for source, number in numbers.items():
            talk.answer(_wrapped(f"[{number}] {source}", indent="  "))


def leaf_as_json(leaf: Leaf) -> dict[str, Json]:
    """Give an answer as it is told, with the sources of its figures by their keys."""
    return {
        "title": leaf.title,
        "headline": _said_as_json(leaf.headline),
        "parts": [
            {
                "title": part.title,
                "said": [_said_as_json(said) for said in part.said],
                "table": None
                if part.grid is None
                else {"columns": list(part.grid.columns), "rows": [list(row) for row in part.grid.rows]},
            }
            for part in leaf.parts
        ],
        "sources": {source.key: source_as_json(source) for source in leaf.sources},
    }


def source_as_json(source: Source) -> Json:
    """Give where a figure comes from, and how far it was followed there."""
    return {
        "title": source.title,
        "address": source.address,
        "trust": source.trust.value,
        "note": source.note,
    }


def values_as_json(value: object) -> Json:
    """Give the values of an answer by the names that they have in the code.

    Areas are square millimetres and lengths nanometres, rounded, as in every answer; a source is its key.
    """
    if isinstance(value, Source):
        return value.key
    if isinstance(value, Enum):
        return str(value.value)
    if isinstance(value, Fraction):
        return float(value)
    if value is None or isinstance(value, str | int | float | bool):
        return value
    if is_dataclass(value):
        return fields_as_json(value)
    if isinstance(value, tuple | list | frozenset):
        return [values_as_json(one) for one in value]
    raise TypeError(f"{type(value).__name__} has no place in JSON")


def fields_as_json(value: object) -> dict[str, Json]:
    """Give the fields of a value by their names, as `values_as_json` gives each."""
    return dict(_field(value, field.name) for field in fields(value))  # type: ignore[arg-type] # any dataclass


def _field(value: object, name: str) -> tuple[str, Json]:
    content = getattr(value, name)
    if name.endswith("_nm2") and isinstance(content, int):
        return name.removesuffix("_nm2") + "_mm2", round(content / MILLIMETRE**2)
    if name.endswith("_nm") and isinstance(content, float):
        return name, round(content)
    return name, values_as_json(content)


def _said_as_json(said: Said) -> Json:
    return {"text": said.text, "sources": [source.key for source in said.sources]}


def _told(said: Said, numbers: dict[Source, int]) -> str:
    marks = " ".join(f"[{numbers[source]}]" for source in said.sources if source in numbers)
    return f"{said.text} {marks}".rstrip()


def _wrapped(text: str, indent: str = "") -> str:
    return textwrap.fill(
        text,
        _WIDTH,
        initial_indent=indent,
        subsequent_indent=indent,
        break_long_words=False,
        break_on_hyphens=False,
    )
