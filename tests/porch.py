"""A porch wall that has a bit of everything, and a layout of it that breaks no rule, made by hand.

Eight feet wide, three feet high, its floor out of level and its top sloping down on the right: six courses of
six inches out of boards of a demolished village hall.
"""

from dataclasses import replace

from builders import (
    board,
    course,
    flaw,
    job,
    layout,
    nm,
    outline,
    piece,
    rectangle,
    socket,
    surface_layout,
    wall,
)
from plankwright.check import recount
from plankwright.model import (
    ConcealedZone,
    EdgeKind,
    EdgeProfile,
    EdgeTreatment,
    Face,
    Job,
    KeepOut,
    Layout,
    Rules,
    Severity,
    SurfaceLayout,
)

MILLED = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25))

PORCH = wall(
    96,
    36,
    id="porch",
    outline=outline((0, 0), (96, 0.5), (96, 24), (72, 36), (0, 36)),
    cut_outs=(socket(30, 9, 32.25, 13),),
    concealed=(ConcealedZone(id="bench", place=rectangle(0, 0, 60, 14)),),
    keep_outs=(KeepOut(id="riser", what="water pipe", place=rectangle(44, 0, 45, 36)),),
)

RULES = Rules(expansion_gap_nm=0, shim_up_to_nm=nm(0.125))

BOARDS = (
    board("H01", 60, 7, species="fir", note="old paint on the back"),
    board("H02", 97, 12.5),
    board("H03", 97, 6.5, width_end_nm=nm(7)),
    board("H04", 60, 6.25, thickness_nm=nm(0.8125)),
    board("H05", 97, 6, profile=MILLED, lot="stage"),
    board("H06", 120, 6.25, flaws=(flaw(100, 104), flaw(20, 21, Severity.BLEMISH, face=Face.FRONT))),
    board("H07", 120, 6.25),
    board("H08", 84, 6),
)


def porch_job() -> Job:
    """Give the job: eight boards, of which one is to spare."""
    return job(PORCH, BOARDS, RULES)


def porch_layout() -> Layout:
    """Give a layout that covers the whole porch."""
    return layout(_scored(_covered()))


def short_porch_layout() -> Layout:
    """Give a layout that leaves the last course bare."""
    laid = _covered()
    return layout(_scored(replace(laid, courses=laid.courses[:-1], bare=(rectangle(0, 30, 84, 36),))))


def _scored(laid: SurfaceLayout) -> SurfaceLayout:
    return replace(laid, score=recount(porch_job(), laid))


def _covered() -> SurfaceLayout:
    full = (8, 24, 40, 56, 72, 88)
    return surface_layout(
        PORCH,
        course(
            1,
            (0, 6),
            piece(PORCH, "1a H01", (0, 40), (0, 6), nailed_at=(8, 24, 39.5)),
            piece(PORCH, "1b H02", (40, 96), (0, 6), nailed_at=(40.5, 56, 72, 88)),
        ),
        course(2, (6, 12), piece(PORCH, "2a H03", (0, 96), (6, 12), nailed_at=full)),
        course(
            3,
            (12, 18),
            piece(PORCH, "3a H04", (0, 56), (12, 18), nailed_at=(8, 24, 40, 55.5)),
            piece(
                PORCH,
                "3b H02",
                (56, 96),
                (12, 18),
                at=(0.5, 6.25),
                nailed_at=(56.5, 72, 88),
                shim_nm=nm(0.0625),
            ),
        ),
        course(
            4,
            (18, 24),
            piece(
                PORCH,
                "4a H05",
                (0, 96),
                (18, 24),
                at=(0.5, 0),
                nailed_at=full,
                near=EdgeTreatment.SPLINE,
                far=EdgeTreatment.TONGUE_OFF,
            ),
        ),
        course(
            5,
            (24, 30),
            piece(
                PORCH,
                "5a H06",
                (0, 96),
                (24, 30),
                nailed_at=(8, 24, 40, 56, 72),
                face=Face.BACK,
            ),
        ),
        course(6, (30, 36), piece(PORCH, "6a H07", (0, 84), (30, 36), nailed_at=(8, 24, 40, 56))),
    )
