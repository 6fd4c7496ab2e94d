"""Hand out a layout: the files that a person takes to the saw and to the wall.

Nothing is written of a layout that breaks a rule, whoever made it.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import NamedTuple

from plankwright.model import NOTHING_DONE, Job, Layout, Standing
from plankwright.workshop.ask_enough import Answer
from plankwright.workshop.check_layout import demand_right
from plankwright.workshop.draw_map import draw_full_size, draw_map
from plankwright.workshop.paper_size import PaperSize
from plankwright.workshop.ports import PaperFiles
from plankwright.workshop.print_sheets import print_sheets

LAYOUT_FILE = "layout.json"
BEFORE_FILE = "layout-before.json"
CUT_LIST_FILE = "cut-list.csv"
SHEETS_FILE = "sheets.pdf"


@dataclass(frozen=True, slots=True, kw_only=True)
class Written:
    """A file that was written.

    Parameters
    ----------
    path
        Where it is.
    what
        What is in it, in a few words.
    """

    path: Path
    what: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Since:
    """What a job was worked by before.

    Parameters
    ----------
    layout
        The layout before.
    news
        What is different now, in sentences, for the first sheet.
    """

    layout: Layout
    news: tuple[str, ...] = ()


def hand_out(
    job: Job,
    layout: Layout,
    *,
    folder: Path,
    files: PaperFiles,
    paper: PaperSize | None = None,
    answer: Answer | None = None,
    standing: Standing = NOTHING_DONE,
    since: Since | None = None,
) -> tuple[Written, ...]:
    """Write everything that is made from a layout.

    Parameters
    ----------
    job
        The job.
    layout
        A layout of it.
    folder
        Where to write; earlier files of the same names are replaced.
    files
        Who writes.
    paper
        What is printed on; the size that goes with the job's tape when left out.
    answer
        Whether the pile is enough, for the first sheet; what the layout alone can say when left out.
    standing
        How far the job has come: papers tell what is still to be done.
    since
        The layout that it was worked by before, to be kept beside this one unless they are the same, and what
        is different.

    Returns
    -------
    tuple of Written
        The layout, the cut list, the maps and the sheets.

    Raises
    ------
    FaultyLayoutError
        If the layout breaks a rule; nothing is written then.
    FileTroubleError
        If a file cannot be written.
    """
    demand_right(job, layout, standing)
    layout_file, *others = _without_sheets(job, layout, files, paper, standing)
    return _write(
        folder,
        files,
        layout_file,
        *_kept(layout, since, files),
        *others,
        _sheets(job, layout, paper, answer, standing, () if since is None else since.news),
    )


def make_files(
    job: Job,
    layout: Layout,
    *,
    files: PaperFiles,
    paper: PaperSize | None = None,
    standing: Standing = NOTHING_DONE,
) -> dict[str, str | bytes]:
    """Make what `hand_out` writes, all but the sheets, for whoever puts it elsewhere.

    Returns
    -------
    dict
        What each file holds, by its name; parameters and errors are those of `hand_out`.
    """
    demand_right(job, layout, standing)
    return {file.name: file.content for file in _without_sheets(job, layout, files, paper, standing)}


def hand_out_maps(
    job: Job,
    layout: Layout,
    *,
    folder: Path,
    files: PaperFiles,
    paper: PaperSize | None = None,
    standing: Standing = NOTHING_DONE,
) -> tuple[Written, ...]:
    """Write the map of each surface; parameters and errors are those of `hand_out`."""
    demand_right(job, layout, standing)
    return _write(folder, files, *_maps(job, layout, paper, standing))


def hand_out_sheets(
    job: Job,
    layout: Layout,
    *,
    folder: Path,
    files: PaperFiles,
    paper: PaperSize | None = None,
    standing: Standing = NOTHING_DONE,
) -> tuple[Written, ...]:
    """Write the printed sheets; parameters and errors are those of `hand_out`."""
    demand_right(job, layout, standing)
    return _write(folder, files, _sheets(job, layout, paper, None, standing))


def map_files(surface_ids: tuple[str, ...], ending: str = "svg") -> tuple[str, ...]:
    """Name the map of each surface so that any system takes the name and no two are the same.

    Parameters
    ----------
    surface_ids
        What the user calls the surfaces.
    ending
        Of the file.

    Returns
    -------
    tuple of str
        Such as "map-entry-wall.svg", in the same order.
    """
    names: list[str] = []
    for surface_id in surface_ids:
        stem = "map-" + (re.sub(r"[^\w]+", "-", surface_id).strip("-").lower() or "surface")
        name, count = f"{stem}.{ending}", 2
        while name in names:
            name, count = f"{stem}-{count}.{ending}", count + 1
        names.append(name)
    return tuple(names)


class _File(NamedTuple):
    """A file to be written: its name, what is in it in a few words, and its content."""

    name: str
    what: str
    content: str | bytes


def _without_sheets(
    job: Job, layout: Layout, files: PaperFiles, paper: PaperSize | None, standing: Standing
) -> Iterator[_File]:
    yield _File(LAYOUT_FILE, "the layout, for map, sheets and check", files.layout_to_json(layout))
    yield _File(CUT_LIST_FILE, "the cut list, for a spreadsheet", files.cut_list_csv(job, layout, standing))
    yield from _maps(job, layout, paper, standing)


def _kept(layout: Layout, since: Since | None, files: PaperFiles) -> Iterator[_File]:
    # Where nothing is different, what is kept from before is still what one may want to go back to.
    if since is not None and since.layout.surfaces != layout.surfaces:
        yield _File(BEFORE_FILE, "the layout as it was, to go back to", files.layout_to_json(since.layout))


def _maps(job: Job, layout: Layout, paper: PaperSize | None, standing: Standing) -> Iterator[_File]:
    ids = tuple(laid.surface_id for laid in layout.surfaces)
    for laid, name, full in zip(layout.surfaces, map_files(ids), map_files(ids, "dxf"), strict=True):
        yield _File(name, f"the map of {laid.surface_id}", draw_map(job, laid, paper, standing=standing))
        what = "the same at full size, for a drawing program"
        yield _File(full, what, draw_full_size(job, laid, standing=standing))


def _sheets(
    job: Job,
    layout: Layout,
    paper: PaperSize | None,
    answer: Answer | None,
    standing: Standing,
    news: Sequence[str] = (),
) -> _File:
    sheets = print_sheets(job, layout, paper, answer=answer, standing=standing, news=news)
    return _File(SHEETS_FILE, "the printed pack: answer, maps, lists to tick, labels, what to buy", sheets)


def _write(folder: Path, files: PaperFiles, *made: _File) -> tuple[Written, ...]:
    """Write all together: a map of one layout beside the cut list of another would waste wood."""
    files.write_files({folder / file.name: file.content for file in made})
    return tuple(Written(path=folder / file.name, what=file.what) for file in made)
