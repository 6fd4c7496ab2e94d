"""The report: docs/benchmarks.md with its pictures, out of the results that are there."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from benchmarks.family import Family, Figure, Picture, Row, Rows
from benchmarks.machine import ROOT
from benchmarks.registry import FAMILIES
from benchmarks.results import FOLDER, fresh, kept, looked_at
from benchmarks.spread import seeds_of

PAGE = ROOT / "docs" / "benchmarks.md"
PICTURES = ROOT / "docs" / "benchmarks"
TEMPLATE = Path(__file__).parent / "page.md"

BASELINES = ("by eye", "plain model", "area sum", "known")
_NOT_MEASURED = "–"


@dataclass(frozen=True, slots=True)
class Line:
    """A figure as the report shows it: of the seeds looked at, of the fresh ones, and of the baselines."""

    figure: Figure
    looked_at: Figure | None
    fresh: Figure | None

    @property
    def reached(self) -> str:
        """Whether it reaches what it must, seeds looked at before fresh ones."""
        told = [
            "not measured" if each is None else "yes" if each.met else "no"
            for each in (self.looked_at, self.fresh)
        ]
        return " / ".join(dict.fromkeys(told)) if self.figure.must else ""


@dataclass(frozen=True, slots=True)
class Section:
    """A family in the report."""

    family: Family[Any]
    rows: Rows
    lines: Sequence[Line]
    pictures: Sequence[Picture]


def sections(folder: Path = FOLDER) -> list[Section]:
    """Work the figures out.

    Parameters
    ----------
    folder
        Of the results.
    """
    every = {name: kept(name, folder) for name in FAMILIES}
    well = {name: measured(rows) for name, rows in every.items()}
    found = []
    for name, family in FAMILIES.items():
        both = _figures(family, every[name], every)
        parts = [
            {figure.name: figure for figure in _figures(family, part(every[name]), every, part)}
            for part in (looked_at, fresh)
        ]
        lines = [Line(figure, *(part.get(figure.name) for part in parts)) for figure in both]
        drawn = family.pictures(well[name], well) if well[name] else ()
        found.append(Section(family, every[name], lines, drawn))
    return found


def measured(rows: Rows) -> Rows:
    """Give the rows of instances that could be measured."""
    return [row for row in rows if "error" not in row]


def _figures(
    family: Family[Any], rows: Rows, every: Mapping[str, Rows], part: type | object = None
) -> Sequence[Figure]:
    """Give the figures of some rows; none is met while an instance could not be measured."""
    choose = part if callable(part) else list
    found = measured(rows)
    if not found:
        return ()
    figures = family.figures(found, {name: measured(choose(some)) for name, some in every.items()})
    if len(found) == len(rows):
        return figures
    return [
        Figure(
            name=figure.name,
            must=figure.must,
            value=figure.value,
            met=False if figure.must else None,
            baselines=figure.baselines,
        )
        for figure in figures
    ]


def write(folder: Path = FOLDER, page: Path = PAGE, pictures: Path = PICTURES) -> list[Section]:
    """Write the page and its pictures.

    Parameters
    ----------
    folder
        Of the results.
    page, pictures
        The file, and the folder beside it; pictures that are there already make way.

    Returns
    -------
    list of Section
        What it shows.
    """
    found = sections(folder)
    pictures.mkdir(parents=True, exist_ok=True)
    for old in pictures.glob("*.svg"):
        old.unlink()
    for section in found:
        for picture in section.pictures:
            (pictures / f"{picture.name}.svg").write_text(picture.svg, encoding="utf-8")
    text = TEMPLATE.read_text(encoding="utf-8")
    text = text.replace("<!-- table -->", "\n".join(summary(found)))
    text = text.replace("<!-- families -->", "\n".join(_told(section, pictures.name) for section in found))
    page.write_text(text, encoding="utf-8")
    return found


def summary(found: Sequence[Section]) -> Iterator[str]:
    """Give the table of all figures that must reach something, as lines of Markdown."""
    asked = [(section.family.name, line) for section in found for line in section.lines if line.figure.must]
    yield from _table(asked, families=True)


def _table(asked: Sequence[tuple[str, Line]], *, families: bool) -> Iterator[str]:
    """Give a table of figures, with a first column of their families or without."""
    used = [name for name in BASELINES if any(name in line.figure.baselines for _, line in asked)]
    heads = ["family"] if families else []
    heads += ["figure", "must reach", "seeds looked at", "fresh seeds", "reached", *used]
    yield "| " + " | ".join(heads) + " |"
    yield "|" + " --- |" * len(heads)
    for name, line in asked:
        cells = [name] if families else []
        cells += [line.figure.name, line.figure.must]
        cells += [_NOT_MEASURED if each is None else each.value for each in (line.looked_at, line.fresh)]
        cells.append(line.reached)
        cells += [line.figure.baselines.get(baseline, "") for baseline in used]
        yield "| " + " | ".join(cells) + " |"


def _told(section: Section, pictures: str) -> str:
    """Tell of a family: what was measured, its figures, its pictures and its failures."""
    family, rows = section.family, section.rows
    text = [f"### {family.name}", "", family.what, ""]
    if not rows:
        return "\n".join([*text, "Not measured yet.", ""])
    text += [_about(rows), "", *_table([(family.name, line) for line in section.lines], families=False), ""]
    for picture in section.pictures:
        text += [f"![{picture.title}]({pictures}/{picture.name}.svg)", "", f"*{picture.title}.*", ""]
    text += [_failures(rows), ""]
    return "\n".join(text)


def _about(rows: Rows) -> str:
    parts = [f"seeds {seeds_of(rows)}"]
    for key, name in (("effort", "effort"), ("version", "commit"), ("machine", "on")):
        parts.append(f"{name} {', '.join(dict.fromkeys(str(row.get(key, '?')) for row in rows))}")
    days = sorted({str(row.get("when", "?"))[:10] for row in rows})
    together = max(int(row.get("jobs", 1)) for row in rows)
    parts.append(f"measured {days[0]}" + (f" to {days[-1]}" if len(days) > 1 else ""))
    if together > 1:
        parts.append(f"up to {together} instances at a time, which disturbs the times")
    return "; ".join(parts).capitalize() + "."


def _failures(rows: Rows) -> str:
    """Tell which seeds failed, and why."""
    why: dict[str, list[Row]] = {}
    for row in rows:
        if row.get("failed"):
            reason = str(row["failed"]) + (f" ({row['error']})" if "error" in row else "")
            why.setdefault(reason, []).append(row)
    if not why:
        return "No failures."
    return "Failures: " + "; ".join(f"{reason}: seeds {seeds_of(some)}" for reason, some in why.items()) + "."
