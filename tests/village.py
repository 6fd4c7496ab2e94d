"""A tiny job, its folder, a layout of it that breaks no rule, and a search that gives what it is told to.

Two courses of eight feet, a board each, and one to spare.
"""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from builders import board, course, job, layout, nm, piece, rectangle, surface_layout, wall
from plankwright.check import recount
from plankwright.layout.crew import ALONE, Crew
from plankwright.layout.result import Effort, Result, Wanted, Watch
from plankwright.model import Bound, Framing, Job, Layout, Rules

WALL = wall(96, 10, framing=Framing(solid=True))
RULES = Rules(expansion_gap_nm=0)


def small_job() -> Job:
    """Give three boards, two of which cover the wall."""
    return job(WALL, [board(name, 97, 5.25) for name in ("A", "B", "C")], RULES)


def small_layout() -> Layout:
    """Give a layout that covers the wall with A and B."""
    laid = surface_layout(
        WALL,
        course(1, (0, 5), piece(WALL, "1a A", (0, 96), (0, 5))),
        course(2, (5, 10), piece(WALL, "2a B", (0, 96), (5, 10))),
    )
    return layout(replace(laid, score=recount(small_job(), laid)))


def spoilt_layout() -> Layout:
    """Give the same with its upper board hung an inch too high."""
    (laid,) = small_layout().surfaces
    upper = laid.courses[1]
    (raised,) = (replace(hung, place=replace(hung.place, bottom=nm(6), top=nm(11))) for hung in upper.pieces)
    return layout(replace(laid, courses=(laid.courses[0], replace(upper, pieces=(raised,)))))


def small_result() -> Result:
    """Give what a search would come to."""
    return Result(layout=small_layout())


def short_result() -> Result:
    """Give what a search would come to when the lower course is covered and one more board would do."""
    lower = course(1, (0, 5), piece(WALL, "1a A", (0, 96), (0, 5)))
    laid = surface_layout(WALL, lower, bare=[rectangle(0, 5, 96, 10)])
    scored = replace(laid, score=recount(small_job(), laid), bound=Bound(bare_nm2=nm(96) * nm(5)))
    wanted = Wanted(count=1, length_nm=nm(97), width_nm=nm(5.25))
    more = job(WALL, [*small_job().boards, board("wanted-1", 97, 5.25)], RULES)
    whole = surface_layout(WALL, lower, course(2, (5, 10), piece(WALL, "2a wanted-1", (0, 96), (5, 10))))
    closing = more, layout(replace(whole, score=recount(more, whole)))
    return Result(layout=layout(scored), wanted=(wanted,), closing=closing)


class StandInSearch:
    """Gives what it was told to, and remembers how it was called.

    Parameters
    ----------
    result
        What to give.
    first
        What to do before, with whoever watches.
    """

    def __init__(self, result: Result, first: Callable[[Watch], None] = lambda _watch: None) -> None:
        self.result = result
        self.first = first
        self.called_with: list[tuple[Job, Effort, int, Watch | None]] = []

    def __call__(
        self,
        job: Job,
        *,
        effort: Effort,
        seed: int = 0,
        watch: Watch | None = None,
        crew: Crew = ALONE,  # noqa: ARG002 - as called
    ) -> Result:
        """Give the result."""
        self.called_with.append((job, effort, seed, watch))
        self.first(watch or Watch())
        return self.result


JOB_TOML = """
name = "village hall"
units = "inches"

[[surface]]
id = "wall"
kind = "wall"
width = 96
height = 10
framing = { solid = true }

[rules]
expansion_gap = 0
"""

TALLY_CSV = """id,lot,length,width,thickness
A,floor,97,5-1/4,3/4
B,floor,97,5-1/4,3/4
C,stage,97,5-1/4,3/4
"""


def write_small_job(folder: Path) -> Path:
    """Write the job into a folder, and give the folder."""
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "job.toml").write_text(JOB_TOML, encoding="utf-8")
    (folder / "tally.csv").write_text(TALLY_CSV, encoding="utf-8")
    return folder
