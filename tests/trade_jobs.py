"""Small jobs with all that the trade asks for, and layouts of them made by hand."""

from dataclasses import replace
from fractions import Fraction
from typing import Any

from builders import board, course, job, layout, nm, piece, rectangle, socket, studs, surface_layout, wall
from plankwright.check import recount
from plankwright.model import (
    Air,
    Board,
    EdgeKind,
    EdgeProfile,
    Job,
    KeepOut,
    Layer,
    Layout,
    Lot,
    NailsLeft,
    Paint,
    Per,
    Price,
    Room,
    Rules,
    Surface,
    SurfaceKind,
    Task,
)

TONGUED = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25))
ROOM = Room(
    dry=Air(temperature_c=20.0, humidity_pct=30.0),
    damp=Air(temperature_c=23.0, humidity_pct=60.0),
    now=Air(temperature_c=20.0, humidity_pct=45.0),
)
RULES = Rules(expansion_gap_nm=nm(0.25), straight_edge_loss_nm=0, end_trim_nm=nm(0.5))
STUDS = studs(8, 24, 40, 56)


def tongued_wall(**more: Any) -> Surface:  # noqa: ANN401 - any further field
    """Five feet wide and a foot and a half high, over wallboard, with a box and a pipe behind one stud."""
    given: dict[str, Any] = {
        "framing": STUDS,
        "between": (Layer(what="wallboard", thickness_nm=nm(0.5)),),
        "cut_outs": (socket(12, 4, 14.25, 7.75),),
        "keep_outs": (KeepOut(id="pipe", what="water pipe", place=rectangle(39, 0, 41, 18)),),
    }
    return wall(64, 18.5, **(given | more))


def tongued_boards() -> tuple[Board, ...]:
    """Three long tongued boards of one lot: one ready, one wet, one with worm holes."""
    common: dict[str, Any] = {"profile": TONGUED, "lot": "stage", "species": "longleaf pine"}
    return (
        board("T1", 72, 6, **common, moisture_pct=8.0, nails=NailsLeft.CHECKED),
        board("T2", 72, 6, **common, moisture_pct=13.0),
        board("T3", 72, 6, **common, note="worm holes at one end"),
    )


def tongued_job(surface: Surface | None = None) -> Job:
    """Give the job: three courses of six inches."""
    made = job(surface or tongued_wall(), tongued_boards(), RULES)
    return replace(
        made,
        room=ROOM,
        house_built=1926,
        lots=(Lot(name="stage", built=1894, paint=Paint.UNKNOWN),),
        tasks=(
            Task(name="pull nails", minutes=Fraction(6), per=Per.BOARD),
            Task(name="drive nails", minutes=Fraction(1, 2), per=Per.NAIL),
        ),
        prices=(Price(name="new pine", cost=Fraction(5), per=Per.SQUARE_FOOT, waste=Fraction(1, 5)),),
        currency="$",
    )


def tongued_layout(made: Job) -> Layout:
    """Give a layout of it that breaks no rule: a whole board a course, its tongue away from the start."""
    surface = made.surfaces[0]
    rows = []
    for number, name in enumerate(("1a T1", "2a T2", "3a T3"), start=1):
        low = 0.25 + 6 * (number - 1)
        rows.append(
            course(
                number,
                (low, low + 6),
                piece(
                    surface,
                    name,
                    (0.25, 63.75),
                    (low, low + 6),
                    at=(0.5, 0),
                    nailed_at=() if surface.framing.solid else (8, 24, 56),
                ),
            )
        )
    made_layout = layout(surface_layout(surface, *rows))
    return layout(replace(made_layout.surfaces[0], score=recount(made, made_layout.surfaces[0])))


def ceiling_job() -> Job:
    """Give the same overhead, without the box."""
    return tongued_job(tongued_wall(kind=SurfaceKind.CEILING, cut_outs=(), between=()))
