"""Small jobs of which it is plain what they can lose: boards all alike, and one that none is like."""

from dataclasses import replace

from builders import board, course, job, layout, opening, piece, rectangle, surface_layout, wall
from plankwright.check import recount
from plankwright.layout.again import lay_again
from plankwright.layout.result import Effort, Result
from plankwright.model import Framing, Job, JointPolicy, Layout, Rules, Standing, SurfaceLayout
from plankwright.workshop.live_through import AtStake

MOMENT = Effort(name="moment", seconds=0.1)
TWO_COURSES = wall(96, 10, framing=Framing(solid=True))
WITH_HATCH = wall(96, 10, framing=Framing(solid=True), openings=(opening("hatch", 40, 0, 56, 5),))
RULES = Rules(expansion_gap_nm=0, joints=JointPolicy.NEVER)


def twins(spare: int) -> tuple[Job, Layout]:
    """Give two courses of one board each, and so many more boards that are just alike."""
    boards = [board(name, 97, 5.25) for name in ("A", "B", *(f"spare-{each + 1}" for each in range(spare)))]
    laid = surface_layout(
        TWO_COURSES,
        course(1, (0, 5), piece(TWO_COURSES, "1a A", (0, 96), (0, 5))),
        course(2, (5, 10), piece(TWO_COURSES, "2a B", (0, 96), (5, 10))),
    )
    return _scored(job(TWO_COURSES, boards, RULES), laid)


def one_long_board() -> tuple[Job, Layout]:
    """Give a wall with a hatch: above it one board alone is long enough, beside it two of four are hung."""
    boards = [
        *(board(name, 41, 5.25) for name in ("left", "right", "spare-1", "spare-2")),
        board("long", 97, 5.25),
        board("useless", 12, 5.25),
    ]
    laid = surface_layout(
        WITH_HATCH,
        course(
            1,
            (0, 5),
            piece(WITH_HATCH, "1a left", (0, 40), (0, 5)),
            piece(WITH_HATCH, "1b right", (56, 96), (0, 5)),
        ),
        course(2, (5, 10), piece(WITH_HATCH, "2a long", (0, 96), (5, 10))),
    )
    return _scored(job(WITH_HATCH, boards, RULES), laid)


def at_stake(of: tuple[Job, Layout], standing: Standing | None = None) -> AtStake:
    """Put a job and its layout at stake."""
    whose, laid = of
    return AtStake(
        job=whose, layout=laid, standing=standing or Standing(), again=lay_again, effort=MOMENT, seed=1
    )


def gives_up(job: Job, layout: Layout, standing: Standing, **_more: object) -> Result:  # noqa: ARG001 - as called
    """Stand in for what lays out again: leave all bare."""
    return Result(
        layout=replace(layout, surfaces=(replace(layout.surfaces[0], bare=(rectangle(0, 0, 96, 10),)),))
    )


def does_not_heed(
    job: Job,  # noqa: ARG001 - as called
    layout: Layout,
    standing: Standing,  # noqa: ARG001 - as called
    **_more: object,
) -> Result:
    """Stand in for what lays out again: give the layout of before."""
    return Result(layout=layout)


def _scored(whose: Job, laid: SurfaceLayout) -> tuple[Job, Layout]:
    return whose, layout(replace(laid, score=recount(whose, laid)))
