"""A corner of a village hall: two linked walls of three courses, a layout of both, and their folder.

The eastern wall is a foot shorter than the northern one, and there are boards to spare.
"""

from dataclasses import replace
from pathlib import Path
from typing import Any

from builders import board, course, job, layout, piece, surface_layout, wall
from plankwright.check import recount
from plankwright.model import Framing, Job, Layout, Surface

ROWS = ((0.25, 5.25), (5.25, 10.25), (10.25, 15.25))
LENGTHS = {"north": 60, "east": 48}


def corner_walls(**eastern: Any) -> tuple[Surface, Surface]:  # noqa: ANN401 - any further field
    """Give both walls, from left to right."""
    north, east = (
        wall(width + 0.5, 15.5, id=name, framing=Framing(solid=True)) for name, width in LENGTHS.items()
    )
    return north, replace(east, **eastern)


def corner_job(**eastern: Any) -> Job:  # noqa: ANN401 - any further field
    """Give a board for each course of each wall, and two wider ones to spare."""
    boards = [board(f"{name}{at}", width + 1, 5.75) for name, width in LENGTHS.items() for at in (1, 2, 3)]
    spare = [board(name, 62, 7) for name in ("spare1", "spare2")]
    return replace(job(corner_walls(**eastern), [*boards, *spare]), linked=(("north", "east"),))


def corner_layout() -> Layout:
    """Give a layout of both whose courses run round."""
    work = corner_job()
    return layout(
        *(
            replace(laid, score=recount(work, laid))
            for laid in (
                surface_layout(
                    surface,
                    *(
                        course(
                            number,
                            across,
                            piece(
                                surface,
                                f"{number}a {surface.id}{number}",
                                (0.25, LENGTHS[surface.id] + 0.25),
                                across,
                            ),
                        )
                        for number, across in enumerate(ROWS, start=1)
                    ),
                )
                for surface in work.surfaces
            )
        )
    )


CORNER_TOML = """
name = "village hall"
units = "inches"
linked = [["north", "east"]]

[[surface]]
id = "north"
width = 60.5
height = 15.5
framing = { solid = true }

[[surface]]
id = "east"
width = 48.5
height = 17.5
raised = 1
framing = { solid = true }
"""

CORNER_CSV = """id,lot,length,width,thickness
A,floor,62,5-3/4,3/4
B,floor,62,5-1/4,3/4
C,floor,62,6-3/4,3/4
D,floor,62,4-3/4,3/4
E,stage,50,5-3/4,3/4
F,stage,50,5-1/4,3/4
G,stage,50,6-3/4,3/4
H,stage,50,7-1/4,3/4
I,stage,50,5-1/4,3/4
J,stage,62,5-3/4,3/4
"""


def write_corner_job(folder: Path) -> Path:
    """Write a job of two linked walls of unlike heights into a folder, and give the folder."""
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "job.toml").write_text(CORNER_TOML, encoding="utf-8")
    (folder / "tally.csv").write_text(CORNER_CSV, encoding="utf-8")
    return folder
