"""Two small walls of the village hall with four courses in all, and a board that pieces of both come from."""

import tomllib
from dataclasses import replace

from builders import board, course, layout, nm, piece, surface_layout, wall
from plankwright import files
from plankwright.check import recount
from plankwright.model import Board, Framing, Job, Layout, MarkKind
from plankwright.workshop.jobs.choose_layout import work_by
from plankwright.workshop.jobs.kept import KeptJob, KeptLayout, Made
from plankwright.workshop.jobs.ports import Store
from plankwright.workshop.mark_work import Happened

NORTH = wall(96, 10, id="north", framing=Framing(solid=True))
SOUTH = wall(96, 10, id="south", framing=Framing(solid=True))

_WALL = """
[[surface]]
id = "{id}"
kind = "wall"
width = 96
height = 10
framing = {{ solid = true }}
"""
_TOML = f"""
name = "village hall"
units = "inches"
{_WALL.format(id="north")}
{_WALL.format(id="south")}
[rules]
expansion_gap = 0
"""


def walls_boards() -> tuple[Board, ...]:
    """Give four boards that a layout needs, and two to spare; one is long."""
    plain = [board(name, 97, 5.25, lot="floor") for name in ("A", "B", "D", "E", "F")]
    return (*plain, board("L", 150, 5.25, lot="stage"))


def walls_kept() -> KeptJob:
    """Give the job as it is kept, with nothing laid out."""
    return KeptJob(id="", definition=files.settled(tomllib.loads(_TOML)), boards=walls_boards())


def walls_job(kept: KeptJob | None = None) -> Job:
    """Give the job as it is read."""
    kept = kept or walls_kept()
    return files.read_definition(kept.definition, kept.boards).job


def walls_layout() -> Layout:
    """Give a layout: of the long board, 2b hangs on the north wall and 1a on the south wall."""
    north = surface_layout(
        NORTH,
        course(1, (0, 5), piece(NORTH, "1a A", (0, 96), (0, 5))),
        course(2, (5, 10), piece(NORTH, "2a B", (0, 56), (5, 10)), piece(NORTH, "2b L", (56, 96), (5, 10))),
    )
    south = surface_layout(
        SOUTH,
        course(1, (0, 5), piece(SOUTH, "1a L", (0, 96), (0, 5), at=(40.625, 0.125))),
        course(2, (5, 10), piece(SOUTH, "2a D", (0, 96), (5, 10))),
    )
    return layout(*(replace(laid, score=recount(walls_job(), laid)) for laid in (north, south)))


def short_layout() -> Layout:
    """Give one that leaves the upper course of the south wall bare."""
    north, south = walls_layout().surfaces
    bare = south.courses[1].pieces[0].place
    south = replace(south, courses=(south.courses[0],), bare=(bare,))
    return layout(north, replace(south, score=recount(walls_job(), south)))


def keep_walls(store: Store) -> KeptJob:
    """Keep the job with its layout, and work by that."""
    kept = store.add(walls_kept())
    laid = store.keep_layout(kept.id, KeptLayout(layout=walls_layout(), made=Made.SEARCHED))
    return store.change(kept.id, "a new layout taken", lambda job: work_by(job, laid.id))


def walls_by() -> KeptLayout:
    """Give its layout as one that is kept under number 1."""
    return KeptLayout(id=1, layout=walls_layout(), made=Made.SEARCHED)


def walls_worked() -> KeptJob:
    """Give the job as it is worked by that layout."""
    return replace(walls_kept(), layout_id=1)


def events(word: str, *names: str, on: str | None = None) -> tuple[Happened, ...]:
    """Say that something happened."""
    return (Happened(kind=MarkKind(word), names=names, surface_id=on),)


__all__ = [
    "events",
    "keep_walls",
    "nm",
    "short_layout",
    "walls_by",
    "walls_job",
    "walls_kept",
    "walls_layout",
]
