"""Plans of the search made by hand, in inches as a carpenter would say them."""

from builders import nm
from plankwright.layout.plan import PlannedCourse, PlannedPiece, Stick
from plankwright.layout.strips import Span
from plankwright.model import Face, Job


def planned_piece(
    work: Job,
    number: int,
    along: tuple[float, float],
    width: float,
    *,
    at: tuple[float, float] = (0.5, 0.125),
) -> PlannedPiece:
    """Plan a piece of the board with this number in the tally, from 0, cut at a place along and across it."""
    board = work.boards[number]
    start, end = (nm(place) for place in along)
    along_from, across_from = nm(at[0]), nm(at[1])
    return PlannedPiece(
        stick=Stick(
            board=number,
            along_from=along_from,
            along_to=along_from + end - start,
            across_from=across_from,
            across_to=across_from + nm(width),
            face=Face.FRONT,
            hidden_only=False,
            thickness=board.thickness_nm,
            profile=board.profile,
        ),
        start=start,
        end=end,
    )


def planned_course(
    across: tuple[float, float], *pieces: PlannedPiece, bare: tuple[tuple[float, float], ...] = ()
) -> PlannedCourse:
    """Plan a course."""
    low, high = (nm(edge) for edge in across)
    return PlannedCourse(low, high, pieces, tuple((nm(start), nm(end)) for start, end in bare))


def span(left: float, right: float, low: float, high: float) -> Span:
    """Make a rectangle in the coordinates of the courses."""
    return Span(nm(left), nm(right), nm(low), nm(high))
