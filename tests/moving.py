"""Courses of longleaf pine, a board each, and what is said of how they move."""

from dataclasses import replace
from typing import Any

from builders import board, course, job, layout, nm, piece, surface_layout, wall
from plankwright.model import (
    NOTHING_DONE,
    Board,
    Course,
    EdgeTreatment,
    HungCourse,
    Job,
    Layout,
    Rules,
    Standing,
)
from plankwright.trade.moisture.equilibrium import equilibrium_pct
from plankwright.workshop.advice.judge_moisture import judge_moisture
from plankwright.workshop.advice.judge_movement import Movement
from plankwright.workshop.advice.tell_moisture import moisture_leaf
from trade_jobs import ROOM

LONGLEAF = 0.00263
"""Tangential coefficient of longleaf pine, Wood Handbook, Table 13-5. [per point of moisture]"""
DRY, DAMP = equilibrium_pct(20.0, 30.0), equilibrium_pct(23.0, 60.0)
MIDDLE = (DRY + DAMP) / 2


def pine(name: str, width: float, moisture: float | None = None, **more: Any) -> Board:  # noqa: ANN401 - any field
    """Give a board of longleaf pine, six feet long."""
    return board(name, 72, width, species="longleaf pine", moisture_pct=moisture, **more)


def laid_up(
    *boards: Board, gap: float = 0.25, edges: dict[str, EdgeTreatment] | None = None
) -> tuple[Job, Layout]:
    """Give a job and a layout that hangs each board whole, a course each, from the bottom up.

    `edges` gives, by the name of a board, what is done to both of its long edges.
    """
    height = sum(each.width_start_nm for each in boards) / nm(1) + 2 * gap
    surface = wall(64, height)
    made = replace(job(surface, boards, Rules(expansion_gap_nm=nm(gap))), room=ROOM)
    rows: list[Course] = []
    low = gap
    for number, each in enumerate(boards, start=1):
        high = low + each.width_start_nm / nm(1)
        done = (edges or {}).get(each.id, EdgeTreatment.AS_FOUND)
        hung = piece(
            surface, f"{number}a {each.id}", (gap, 64 - gap), (low, high), at=(0.5, 0), near=done, far=done
        )
        rows.append(course(number, (low, high), hung))
        low = high
    return made, layout(surface_layout(surface, *rows))


def moved(made: Job, laid: Layout | None = None, standing: Standing = NOTHING_DONE) -> Movement:
    """Give how the only surface of a job moves."""
    (movement,) = judge_moisture(made, laid, standing).movements
    return movement


def hung(laid: Layout, *numbers: int) -> Standing:
    """Give the standing of a job of which so many courses hang as they were laid out."""
    rows = [row for row in laid.surfaces[0].courses if row.number in numbers]
    return Standing(
        hung=tuple(HungCourse(surface_id="wall", course=row) for row in rows),
        sawn=tuple(each.board_id for row in rows for each in row.pieces),
    )


def told(made: Job, laid: Layout | None = None, standing: Standing = NOTHING_DONE) -> str:
    """Give all that is said of the boards and of how they move."""
    leaf = moisture_leaf(made, judge_moisture(made, laid, standing))
    return " ".join(said.text for part in leaf.parts[1:] for said in part.said)
