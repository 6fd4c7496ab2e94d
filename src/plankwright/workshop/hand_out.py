"""Hand out a layout: the files that a person takes to the saw and to the wall.

Nothing is written of a layout that breaks a rule, whoever made it.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from plankwright.model import Job, Layout
from plankwright.workshop.ask_enough import Answer
from plankwright.workshop.check_layout import demand_right
from plankwright.workshop.draw_map import draw_map
from plankwright.workshop.paper_size import PaperSize
from plankwright.workshop.ports import Files
from plankwright.workshop.print_sheets import print_sheets

LAYOUT_FILE = "layout.json"
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


def hand_out(
    job: Job,
    layout: Layout,
    *,
    folder: Path,
    files: Files,
    paper: PaperSize | None = None,
    answer: Answer | None = None,
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
    demand_right(job, layout)
    whole, cut_list = folder / LAYOUT_FILE, folder / CUT_LIST_FILE
    files.write_text(whole, files.layout_to_json(layout))
    files.write_text(cut_list, files.cut_list_csv(job, layout))
    return (
        Written(path=whole, what="the layout, for map, sheets and check"),
        Written(path=cut_list, what="the cut list, for a spreadsheet"),
        *_write_maps(job, layout, folder=folder, files=files, paper=paper),
        _write_sheets(folder, files, print_sheets(job, layout, paper, answer=answer)),
    )


def hand_out_maps(
    job: Job, layout: Layout, *, folder: Path, files: Files, paper: PaperSize | None = None
) -> tuple[Written, ...]:
    """Write the map of each surface; parameters and errors are those of `hand_out`."""
    demand_right(job, layout)
    return tuple(_write_maps(job, layout, folder=folder, files=files, paper=paper))


def hand_out_sheets(
    job: Job, layout: Layout, *, folder: Path, files: Files, paper: PaperSize | None = None
) -> tuple[Written, ...]:
    """Write the printed sheets; parameters and errors are those of `hand_out`."""
    demand_right(job, layout)
    return (_write_sheets(folder, files, print_sheets(job, layout, paper)),)


def map_files(surface_ids: tuple[str, ...]) -> tuple[str, ...]:
    """Name the map of each surface so that any system takes the name and no two are the same.

    Parameters
    ----------
    surface_ids
        What the user calls the surfaces.

    Returns
    -------
    tuple of str
        Such as "map-entry-wall.svg", in the same order.
    """
    names: list[str] = []
    for surface_id in surface_ids:
        stem = "map-" + (re.sub(r"[^\w]+", "-", surface_id).strip("-").lower() or "surface")
        name, count = f"{stem}.svg", 2
        while name in names:
            name, count = f"{stem}-{count}.svg", count + 1
        names.append(name)
    return tuple(names)


def _write_maps(
    job: Job, layout: Layout, *, folder: Path, files: Files, paper: PaperSize | None
) -> Iterator[Written]:
    names = map_files(tuple(laid.surface_id for laid in layout.surfaces))
    for laid, name in zip(layout.surfaces, names, strict=True):
        files.write_text(folder / name, draw_map(job, laid, paper))
        yield Written(path=folder / name, what=f"the map of {laid.surface_id}")


def _write_sheets(folder: Path, files: Files, sheets: bytes) -> Written:
    path = folder / SHEETS_FILE
    files.write_bytes(path, sheets)
    return Written(path=path, what="answer, maps, cut list and hanging sheet, to print")
