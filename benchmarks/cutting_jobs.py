"""Cutting stock, variable stock and skiving as jobs: lists of lengths become walls and boards.

**Pieces to cut** become a wall whose outline is a stair, a step for each piece, on which no joint is allowed;
a board is as wide as a step is high. Nothing of a board that is cut into is worth keeping, as the rules let
no piece so short butt another. So the wood spent is the cost of the boards that are cut into, each whole, and
the search is not told how few are enough.

What a board costs is its face. Where costs are not as lengths are, boards have a rotten end: whoever cuts
into one spends all of its face and gets the sound part only.

**Pieces to join** become a wall of so many courses, all of it behind a fixture, where joints may lie
anywhere, and a board for each piece. The saw takes as much as the longest board, so that no board gives two
pieces. How many courses the boards cover is asked for one number of courses after another.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from plankwright.measure import MILLIMETRE, Nm, System, TapeStyle
from plankwright.model import (
    Board,
    ConcealedZone,
    Flaw,
    Framing,
    Job,
    JointPolicy,
    Point,
    Rectangle,
    Rules,
    Severity,
    Surface,
)

_HEIGHT: Nm = 100 * MILLIMETRE
"""Of a course, and width of a board."""

_THICKNESS: Nm = 20 * MILLIMETRE
_TAPE = TapeStyle(system=System.METRIC)
_LONGEST: Nm = 100_000 * MILLIMETRE
"""About how long a board is drawn at the most: so long that a unit is more than a gap, even of the finest."""

_LONGEST_COURSE: Nm = 10_000 * MILLIMETRE
"""Courses that boards are joined for are about as long as a long wall. [nm]"""


@dataclass(frozen=True, slots=True)
class StockKind:
    """Sticks that are alike: how long, how many, and what one costs."""

    length: int
    count: int
    cost: int


@dataclass(frozen=True, slots=True)
class Scale:
    """What a unit of length and a unit of cost are on the wall. [nm], and [nm²]"""

    length: Nm
    cost: int


def scale_of(stock: Sequence[StockKind]) -> Scale:
    """Draw lengths and costs so that the face of no board is less than its sound part.

    Parameters
    ----------
    stock
        The sticks.
    """
    dearest: Fraction = max(Fraction(kind.length, kind.cost) for kind in stock)
    longest = max(kind.cost for kind in stock) * dearest
    step = _LONGEST // round(longest * dearest.denominator)
    step -= step % (MILLIMETRE // 1000)
    return Scale(dearest.denominator * step, dearest.numerator * step * _HEIGHT)


def cutting_job(name: str, pieces: Iterable[int], stock: Sequence[StockKind]) -> Job:
    """Make a wall whose courses are just as long as the pieces.

    Parameters
    ----------
    name
        Of the job.
    pieces
        Lengths to cut.
    stock
        What there is to cut them from.
    """
    scale = scale_of(stock)
    steps = sorted((length * scale.length for length in pieces), reverse=True)
    boards = [
        (kind.cost * scale.cost // _HEIGHT, kind.length * scale.length)
        for kind in stock
        for _ in range(kind.count)
    ]
    return Job(
        name=name,
        tape=_TAPE,
        surfaces=(Surface(id="stairs", outline=_stair(steps), framing=Framing(solid=True)),),
        boards=tuple(_board(number, *board) for number, board in enumerate(boards, start=1)),
        rules=_rules(kerf=0, shortest=max(kind.length for kind in stock) * scale.length),
    )


def joining_job(name: str, pieces: Sequence[int], length: int, courses: int) -> Job:
    """Make a wall of courses of a length, and a board for each piece.

    Parameters
    ----------
    name
        Of the job.
    pieces
        Lengths of the boards.
    length
        Of a course.
    courses
        How many.
    """
    unit = _LONGEST_COURSE // length // MILLIMETRE * MILLIMETRE
    height = min(_HEIGHT, min(pieces) * unit)  # No board is wider than it is long.
    right, top = length * unit, courses * height
    place = Rectangle(left=0, bottom=0, right=right, top=top)
    return Job(
        name=name,
        tape=_TAPE,
        surfaces=(
            Surface(
                id="courses",
                outline=((0, 0), (right, 0), (right, top), (0, top)),
                framing=Framing(solid=True),
                concealed=(ConcealedZone(id="cupboards", place=place),),
            ),
        ),
        boards=tuple(
            _board(number, piece * unit, piece * unit, height) for number, piece in enumerate(pieces, start=1)
        ),
        rules=_rules(kerf=max(pieces) * unit, shortest=min(pieces) * unit, height=height),
    )


def _stair(steps: Sequence[Nm]) -> tuple[Point, ...]:
    """Give the outline of a stair with the longest step below."""
    corners: list[Point] = [(0, 0), (steps[0], 0)]
    for index, length in enumerate(steps):
        if corners[-1][0] != length:
            corners.append((length, index * _HEIGHT))
        if index + 1 == len(steps) or steps[index + 1] != length:
            corners.append((length, (index + 1) * _HEIGHT))
    return (*corners, (0, len(steps) * _HEIGHT))


def _board(number: int, length: Nm, sound: Nm, width: Nm = _HEIGHT) -> Board:
    return Board(
        id=f"B{number}",
        length_nm=length,
        width_start_nm=width,
        width_end_nm=width,
        thickness_nm=_THICKNESS,
        flaws=(Flaw(start_nm=sound, end_nm=length, what="rotten", severity=Severity.LOST),)
        if sound < length
        else (),
    )


def _rules(*, kerf: Nm, shortest: Nm, height: Nm = _HEIGHT) -> Rules:
    return Rules(
        crosscut_kerf_nm=kerf,
        rip_kerf_nm=0,
        straight_edge_loss_nm=0,
        end_trim_nm=0,
        expansion_gap_nm=0,
        width_tolerance_nm=0,
        gap_tolerance_nm=0,
        joints=JointPolicy.NEVER,
        shortest_piece_nm=shortest,
        narrowest_course_nm=height,
    )
