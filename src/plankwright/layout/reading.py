"""Turn the document of a surface back into the search's plan of it: the inverse of `writing`.

A document says of each piece what hangs, a plan what of its course it fills. Where nothing hangs at an end of
a piece, at the very side of a run, both are the same; so whatever was written and is read back is written
again as the same document.
"""

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise

from plankwright.layout.ground import HAIR
from plankwright.layout.plan import Plan, PlannedCourse, PlannedPiece, Stick
from plankwright.layout.regions import extent_in_course
from plankwright.layout.runs import Run
from plankwright.layout.strips import Strips
from plankwright.measure import Nm
from plankwright.model import BlemishPolicy, Board, Course, Job, Piece, Rectangle, Severity, SurfaceLayout

_Stretch = tuple[Nm, Nm]


def read_surface(job: Job, strips: Strips, laid: SurfaceLayout) -> Plan:
    """Read the layout of a surface back into a plan.

    Parameters
    ----------
    job
        The job.
    strips
        The surface.
    laid
        A layout of it that breaks no rule; pieces of boards that the tally does not have are left out.

    Returns
    -------
    Plan
        Course by course from the start side; whatever of a run has no piece is bare. Where a document leaves
        room between courses, and says that it is bare, there are courses without pieces.
    """
    courses = [read_course(job, strips, course) for course in laid.courses]
    return tuple(sorted((*courses, *_empty(strips, courses, laid.bare)), key=lambda course: course.low))


def read_course(job: Job, strips: Strips, course: Course) -> PlannedCourse:
    """Read one course back; parameters are those of `read_surface`."""
    numbers = {board.id: number for number, board in enumerate(job.boards)}
    runs = strips.runs(course.from_nm, course.to_nm)
    places = sorted({place for run in runs for place in (run.start, run.end, *(at.at for at in run.joints))})
    pieces = tuple(
        _snapped(planned_piece(job, strips, numbers[piece.board_id], piece), places)
        for piece in course.pieces
        if piece.board_id in numbers
    )
    return PlannedCourse(course.from_nm, course.to_nm, pieces, uncovered(runs, pieces))


def planned_piece(job: Job, strips: Strips, number: int, piece: Piece) -> PlannedPiece:
    """Give a piece as it is planned, between the very places where it hangs.

    Parameters
    ----------
    job, strips
        The job and the surface.
    number
        Place of its board in the tally.
    piece
        The piece.
    """
    start, end, _, _ = extent_in_course(strips.surface, piece.place)
    return PlannedPiece(stick_of(job, number, piece, strips.capacity.rip), start, end, piece.turned)


def stick_of(job: Job, number: int, piece: Piece, widest_rip: Nm | None) -> Stick:
    """Give the very wood of a piece.

    Parameters
    ----------
    job
        The job.
    number
        Place of its board in the tally.
    piece
        The piece.
    widest_rip
        The widest strip that is ripped off. [nm]
    """
    board = job.boards[number]
    return Stick(
        board=number,
        along_from=piece.along_from_nm,
        along_to=piece.along_to_nm,
        across_from=piece.across_from_nm,
        across_to=piece.across_to_nm,
        face=piece.face,
        hidden_only=_blemished(job, board, piece),
        thickness=board.thickness_nm,
        profile=board.profile,
        widest_rip=widest_rip,
    )


def uncovered(runs: Iterable[Run], pieces: Sequence[PlannedPiece]) -> tuple[_Stretch, ...]:
    """Give the stretches of runs that no piece covers, rounding aside.

    Parameters
    ----------
    runs
        What is to be covered.
    pieces
        In any order.
    """
    return tuple(stretch for run in runs for stretch in _open(run, pieces))


def _snapped(piece: PlannedPiece, places: Sequence[Nm]) -> PlannedPiece:
    """Let a piece begin and end at the very places that the rounding of its outline has moved it from."""
    start, end = (_nearest(place, places) for place in (piece.start, piece.end))
    if (start, end) == (piece.start, piece.end):
        return piece
    stick = piece.stick
    along_from = stick.along_from + start - piece.start
    moved = Stick(
        board=stick.board,
        along_from=along_from,
        along_to=along_from + end - start,
        across_from=stick.across_from,
        across_to=stick.across_to,
        face=stick.face,
        hidden_only=stick.hidden_only,
        thickness=stick.thickness,
        profile=stick.profile,
        widest_rip=stick.widest_rip,
    )
    return PlannedPiece(moved, start, end, piece.turned)


def _nearest(place: Nm, places: Sequence[Nm]) -> Nm:
    return min((other for other in places if abs(other - place) <= HAIR), default=place)


def _blemished(job: Job, board: Board, piece: Piece) -> bool:
    """Whether a piece has a blemish on the face that shows, where that counts."""
    return job.rules.blemishes is BlemishPolicy.HIDDEN and any(
        flaw.severity is Severity.BLEMISH
        and flaw.shows_on(piece.face)
        and flaw.start_nm < piece.along_to_nm
        and piece.along_from_nm < flaw.end_nm
        for flaw in board.flaws
    )


def _open(run: Run, pieces: Sequence[PlannedPiece]) -> Iterator[_Stretch]:
    at = run.start
    inside = [piece for piece in pieces if piece.start < run.end and run.start < piece.end]
    for piece in sorted(inside, key=lambda piece: piece.start):
        if piece.start > at + HAIR:
            yield at, piece.start
        at = max(at, piece.end)
    if run.end > at + HAIR:
        yield at, run.end


def _empty(
    strips: Strips, courses: Sequence[PlannedCourse], bare: Sequence[Rectangle]
) -> Iterator[PlannedCourse]:
    """Give courses without pieces where a document has none and says that something is bare.

    What is bare of one course is told stretch by stretch, each as far across as the outline lets it hang:
    where one ends inside another, no course does. And a course is told no wider than its pieces, so that
    what is bare of it may reach beyond.
    """
    extents = [extent_in_course(strips.surface, place) for place in bare]
    edges = [
        strips.start,
        *(edge for course in courses for edge in (course.low, course.high)),
        strips.may_end,
    ]
    for low, high in zip(edges[::2], edges[1::2], strict=True):
        within = [
            (max(start, low), min(end, high))
            for _, _, start, end in extents
            if min(end, high) - max(start, low) > HAIR
        ]
        marks = sorted(
            {
                mark
                for stretch in within
                for mark in stretch
                if not any(first < mark < last for first, last in within)
            }
        )
        for start, end in pairwise(marks):
            if any(first < end and start < last for first, last in within):
                yield PlannedCourse(
                    start, end, (), tuple((run.start, run.end) for run in strips.runs(start, end))
                )
