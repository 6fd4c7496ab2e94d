"""Layouts that are right, made by hand, each with something of its own to go wrong.

All measures are in inches. The rules are the defaults: among them kerfs and straightened edges of 1/8 inch,
gaps all round of 1/4 inch, ends trimmed by 1/2 inch, and joints in sight 12 inches apart.
"""

from collections.abc import Sequence
from dataclasses import replace
from typing import NamedTuple

from builders import (
    board,
    course,
    crosscut_saw,
    flaw,
    job,
    layout,
    nm,
    opening,
    outline,
    piece,
    rectangle,
    rip_saw,
    socket,
    studs,
    surface_layout,
    wall,
)
from corner import corner_job, corner_layout
from plankwright.check import recount
from plankwright.model import (
    ConcealedZone,
    Direction,
    Edge,
    EdgeKind,
    EdgeProfile,
    EdgeTreatment,
    Framing,
    Job,
    KeepOut,
    Layout,
    Severity,
    SurfaceLayout,
)

EVERY_16 = tuple(range(8, 200, 16))


class Hanging(NamedTuple):
    """A job and a layout of it."""

    job: Job
    layout: Layout


def scored(work: Job, *surfaces: SurfaceLayout) -> Hanging:
    """Put the score on surfaces, as the checker counts it; tests of the score work it out by hand instead."""
    return Hanging(work, layout(*(replace(each, score=recount(work, each)) for each in surfaces)))


def nails(start: float, end: float, members: Sequence[float] = EVERY_16) -> tuple[float, ...]:
    """Give where a piece is nailed: on the middle of each member, or 3/8 inch from an end that it bears."""
    middles = (member for member in members if start - 0.5 < member < end + 0.5)
    return tuple(min(max(middle, start + 0.375), end - 0.375) for middle in middles)


def plain() -> Hanging:
    """Two courses with a joint on a stud in each, 32 inches apart."""
    surface = wall(96.5, 10.5)
    low, high = (0.25, 5.25), (5.25, 10.25)
    boards = [
        board(name, length, 5.5) for name, length in (("A", 42), ("B", 58), ("C", 75), ("D", 27), ("E", 60))
    ]
    ripped = EdgeTreatment.RIPPED
    rows = (
        course(
            1,
            low,
            piece(surface, "1a A", (0.25, 40), low, nailed_at=nails(0.25, 40)),
            piece(surface, "1b B", (40, 96.25), low, nailed_at=nails(40, 96.25), near=ripped, far=ripped),
        ),
        course(
            2,
            high,
            piece(surface, "2a C", (0.25, 72), high, nailed_at=nails(0.25, 72)),
            piece(surface, "2b D", (72, 96.25), high, nailed_at=nails(72, 96.25)),
        ),
    )
    return scored(job(surface, boards), surface_layout(surface, *rows))


def entry() -> Hanging:
    """A door, a window, a socket, a pipe, and a bench that hides a joint, a step in the face and a stain."""
    members = (2, 16, 32, 38, 56, 72, 88, 104, 108, 118)
    surface = wall(
        120.5,
        32.5,
        framing=studs(*members),
        openings=(opening("door", 40, 0, 70, 20), opening("window", 85, 13, 105, 24)),
        cut_outs=(socket(20, 27, 22.5, 30),),
        concealed=(ConcealedZone(id="bench", place=rectangle(74, 0, 116, 9)),),
        keep_outs=(KeepOut(id="pipe", place=rectangle(29.5, 0, 30.5, 32.5), what="water pipe"),),
    )
    stained = flaw(20, 22, Severity.BLEMISH)
    boards = [
        board("A", 45, 8.5),
        board("B", 20, 8.5),
        board("C", 40, 8.5, thickness_nm=nm(1), flaws=(stained,)),
        board("D", 45, 8.5),
        board("E", 55, 8.5),
        board("F", 90, 8.5),
        board("G", 18, 8.5),
        board("H", 75, 8.5),
        board("I", 55, 8.5),
    ]
    rows = [(0.25, 8.25), (8.25, 16.25), (16.25, 24.25), (24.25, 32.25)]
    left, right = (0.25, 39.75), (70.25, 120.25)
    clear_of_window = nails(*right, (72, 108, 118))
    clear_of_door = nails(0.25, 84.75, (2, 16, 32, 38, 72))
    hung = (
        course(
            1,
            rows[0],
            piece(surface, "1a A", left, rows[0], nailed_at=nails(*left, members)),
            piece(surface, "1b B", (70.25, 88), rows[0], nailed_at=nails(70.25, 88, members)),
            piece(surface, "1c C", (88, 120.25), rows[0], nailed_at=nails(88, 120.25, members)),
        ),
        course(
            2,
            rows[1],
            piece(surface, "2a D", left, rows[1], nailed_at=nails(*left, members)),
            piece(surface, "2b E", right, rows[1], nailed_at=clear_of_window),
        ),
        course(
            3,
            rows[2],
            piece(surface, "3a F", (0.25, 84.75), rows[2], nailed_at=clear_of_door),
            piece(surface, "3b G", (105.25, 120.25), rows[2], nailed_at=(108, 118)),
        ),
        course(
            4,
            rows[3],
            piece(surface, "4a H", (0.25, 72), rows[3], nailed_at=nails(0.25, 72, members)),
            piece(surface, "4b I", (72, 120.25), rows[3], nailed_at=nails(72, 120.25, members)),
        ),
    )
    return scored(job(surface, boards), surface_layout(surface, *hung))


def gable() -> Hanging:
    """Four courses under two slopes that rise 3 in 4, so that ends are cut 8 along over 6 across: 10 long."""
    surface = wall(128, 24, outline=outline((0, 0), (128, 0), (96, 24), (32, 24)), id="gable")
    boards = [board(name, 130, 6.5) for name in "ABCD"]
    # Square to the slope the gap is 1/4 inch; straight up it is 5/4 of that, and along the floor 5/3.
    rows = [(0.25, 6.25), (6.25, 12.25), (12.25, 18.25), (18.25, 23.75)]
    runs = [(0.75 + 8 * step, 127.25 - 8 * step) for step in range(4)]
    # Kept off the pointed ends.
    hung = (
        course(
            number,
            rows[number - 1],
            piece(
                surface,
                f"{number}a {name}",
                runs[number - 1],
                rows[number - 1],
                nailed_at=nails(runs[number - 1][0] + 8, runs[number - 1][1] - 8),
            ),
        )
        for number, name in enumerate("ABCD", start=1)
    )
    work = job(surface, boards, saws=(crosscut_saw(12), rip_saw(12)))
    return scored(work, surface_layout(surface, *hung))


def upright(start: Edge = Edge.LEFT) -> Hanging:
    """Vertical courses on horizontal strips, with a joint on a strip."""
    strips = (5, 25, 45, 65, 85)
    surface = wall(
        15.5,
        90.5,
        courses_run=Direction.VERTICAL,
        start=start,
        framing=studs(*strips, runs=Direction.HORIZONTAL),
    )
    boards = [board("A", 92, 5.5), board("B", 46, 5.5), board("C", 47, 5.5), board("D", 92, 5.5)]
    rows = [(0.25, 5.25), (5.25, 10.25), (10.25, 15.25)]
    whole = (0.25, 90.25)
    hung = (
        course(1, rows[0], piece(surface, "1a A", whole, rows[0], nailed_at=nails(*whole, strips))),
        course(
            2,
            rows[1],
            piece(surface, "2a B", (0.25, 45), rows[1], nailed_at=nails(0.25, 45, strips)),
            piece(surface, "2b C", (45, 90.25), rows[1], nailed_at=nails(45, 90.25, strips)),
        ),
        course(3, rows[2], piece(surface, "3a D", whole, rows[2], nailed_at=nails(*whole, strips))),
    )
    return scored(job(surface, boards), surface_layout(surface, *hung))


def uneven_floor() -> Hanging:
    """A floor that falls by an inch from left to right, and a starter that is tapered to it."""
    surface = wall(96, 12, outline=outline((0, 1), (96, 0), (96, 12), (0, 12)))
    starter, closing, run = (0.25, 6.25), (6.25, 11.75), (0.25, 95.75)
    hung = (
        course(1, starter, piece(surface, "1a A", run, starter, nailed_at=nails(*run))),
        course(2, closing, piece(surface, "2a B", run, closing, nailed_at=nails(*run))),
    )
    boards = [board("A", 97, 6.5), board("B", 97, 6)]
    return scored(job(surface, boards), surface_layout(surface, *hung))


def corner() -> Hanging:
    """Two linked walls of unlike width, with three courses that run round at the same heights."""
    return Hanging(corner_job(), corner_layout())


def interlocked() -> Hanging:
    """Tongue and groove: two courses as found, one turned and ripped square, and one on a loose spline."""
    surface = wall(96.5, 19.5)
    milled = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25))
    boards = [board(name, 97.5, 5, profile=milled) for name in "ABCD"]
    rows = [(0.25, 5.25), (5.25, 10.25), (10.25, 14.25), (14.25, 19.25)]
    run, corner = (0.25, 96.25), (0.5, 0.0)
    nailed = nails(*run)
    hung = (
        course(1, rows[0], piece(surface, "1a A", run, rows[0], at=corner, nailed_at=nailed)),
        course(
            2,
            rows[1],
            piece(surface, "2a B", run, rows[1], at=corner, nailed_at=nailed, far=EdgeTreatment.TONGUE_OFF),
        ),
        course(
            3,
            rows[2],
            piece(
                surface,
                "3a C",
                run,
                rows[2],
                at=corner,
                nailed_at=nailed,
                turned=True,
                near=EdgeTreatment.RIPPED,
            ),
        ),
        course(
            4,
            rows[3],
            piece(surface, "4a D", run, rows[3], at=corner, nailed_at=nailed, near=EdgeTreatment.SPLINE),
        ),
    )
    return scored(job(surface, boards), surface_layout(surface, *hung))


def one_wide_board() -> Hanging:
    """One board ripped into two courses, each crosscut in two pieces: it must be ripped first."""
    surface = wall(96.5, 8.5)
    low, high = (0.25, 4.25), (4.25, 8.25)
    second = 0.125 + 4 + 0.125  # An edge made straight, a course and a kerf.
    hung = (
        course(
            1,
            low,
            piece(surface, "1a W", (0.25, 40), low, nailed_at=nails(0.25, 40)),
            piece(surface, "1b W", (40, 96.25), low, at=(40.375, 0.125), nailed_at=nails(40, 96.25)),
        ),
        course(
            2,
            high,
            piece(surface, "2a W", (0.25, 56), high, at=(0.5, second), nailed_at=nails(0.25, 56)),
            piece(surface, "2b W", (56, 96.25), high, at=(56.375, second), nailed_at=nails(56, 96.25)),
        ),
    )
    work = job(surface, [board("W", 100, 9), board("X", 100, 9)], saws=(crosscut_saw(12), rip_saw(12)))
    return scored(work, surface_layout(surface, *hung))


def pinwheel() -> Hanging:
    """Five pieces lie on their board like the sails of a windmill round a hub; no saws are listed.

    That no cut from edge to edge can part five rectangles so laid is the textbook counterexample of
    guillotine cutting (from memory, no source at hand). It is plain to see: each line that could part them
    runs into one.
    """
    surface = wall(80.75, 9.625, framing=Framing(solid=True))
    low, high = (0.25, 3.25), (3.25, 9.375)
    columns, rows = (0.5, 16.625, 32.75), (0.125, 3.25, 6.375)  # 16 by 3 inches and a kerf between them.
    hung = (
        course(
            1,
            low,
            piece(surface, "1a W", (0.25, 32.375), low, at=(columns[0], rows[0])),
            piece(surface, "1b W", (32.375, 48.375), low, at=(columns[1], rows[1])),
            piece(surface, "1c W", (48.375, 80.5), low, at=(columns[1], rows[2])),
        ),
        course(
            2,
            high,
            piece(surface, "2a W", (0.25, 16.25), high, at=(columns[2], rows[0])),
            piece(surface, "2b X", (16.25, 64.5), high),
            piece(surface, "2c W", (64.5, 80.5), high, at=(columns[0], rows[1])),
        ),
    )
    boards = [board("W", 60, 12), board("X", 50, 6.5)]
    return scored(job(surface, boards), surface_layout(surface, *hung))
