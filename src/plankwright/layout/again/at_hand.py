"""The wood that a job in progress has at hand: boards as found, what is left of others, and cut pieces."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field
from itertools import pairwise

import shapely

from plankwright.layout.capacity import Capacity
from plankwright.layout.ground import HAIR
from plankwright.layout.plan import Place, Stick
from plankwright.layout.reading import stick_of
from plankwright.layout.regions import extent_in_course
from plankwright.layout.sawing import work_in_hand
from plankwright.layout.shaping import Workpiece
from plankwright.layout.sticks import cut_from, whole_sticks
from plankwright.measure import Nm
from plankwright.model import CutPiece, Job, Rectangle, Standing


@dataclass(frozen=True, slots=True)
class AtHand:
    """Wood at hand.

    Parameters
    ----------
    stock
        Every stick of it.
    pieces
        Of those, the ones that are pieces cut already.
    only_at
        Of those again, the ones with slopes or notches: where alone they fit, as they are.
    """

    stock: tuple[Stick, ...]
    pieces: Mapping[Stick, CutPiece] = field(default_factory=dict)
    only_at: Mapping[Stick, Place] = field(default_factory=dict)


def wood_at_hand(
    job: Job,
    standing: Standing,
    capacity: Capacity,
    spares: Collection[str],
    places: Collection[Place],
    *,
    shortest: Nm | None = None,
) -> AtHand:
    """Give the wood that may be laid out.

    Parameters
    ----------
    job
        The job.
    standing
        How far it has come.
    capacity
        What the saws at hand can do.
    spares
        Ids of boards that are not to be used.
    places
        Where pieces that have slopes or notches could still hang as they are. Of any other such piece there
        is only the longest stretch of full width.
    shortest
        As for `whole_sticks`. [nm]
    """
    stock: list[Stick] = []
    for number, board in enumerate(job.boards):
        if board.id not in standing.sawn and board.id not in spares:
            stock += whole_sticks(board, number, job.rules, capacity, shortest=shortest)
        for part in standing.left:
            if part.board_id == board.id:
                stock += whole_sticks(board, number, job.rules, capacity, part, shortest=shortest)
    pieces: dict[Stick, CutPiece] = {}
    only_at: dict[Stick, Place] = {}
    numbers = {board.id: number for number, board in enumerate(job.boards)}
    for cut in standing.cut:
        if cut.piece.board_id not in numbers:
            continue
        number = numbers[cut.piece.board_id]
        if cut.plain:
            # It may hold lost wood, or more of an end than may hang: nobody has laid it out as it is.
            board = job.boards[number]
            sticks = whole_sticks(board, number, job.rules, capacity, cut.part, shortest=shortest)
            pieces |= dict.fromkeys(sticks, cut)
            continue
        stick, place = _in_hand(job, cut, number, capacity, places)
        if stick is not None:
            pieces[stick] = cut
        if stick is not None and place is not None:
            only_at[stick] = place
    return AtHand((*stock, *pieces), pieces, only_at)


def place_of(job: Job, cut: CutPiece) -> Place:
    """Give where a piece was to hang that is cut already."""
    start, end, low, _ = extent_in_course(job.surface(cut.surface_id), cut.piece.place)
    return cut.surface_id, start, end, low


def _in_hand(
    job: Job, cut: CutPiece, number: int, capacity: Capacity, places: Collection[Place]
) -> tuple[Stick | None, Place | None]:
    """Give what can be made of a piece, and where alone it fits if it fits but there."""
    blank = stick_of(job, number, cut.piece, capacity.rip)
    stretch = _full_width(work_in_hand(job, cut))
    if stretch == (blank.along_from, blank.along_to):
        return blank, None
    place = place_of(job, cut)
    if any(_same(place, other) for other in places):
        return blank, place
    if stretch is None:
        return None, None
    start, end = stretch
    return cut_from(blank, start, end - start, blank.across_from, blank.width), None


def _same(one: Place, other: Place) -> bool:
    return one[0] == other[0] and all(abs(a - b) <= HAIR for a, b in zip(one[1:], other[1:], strict=True))


def _full_width(work: Workpiece) -> tuple[Nm, Nm] | None:
    """Give the longest stretch of a piece along its board with neither a slope nor a notch. [nm]"""
    blank = work.blank
    shape = shapely.Polygon([work.on_board(corner) for corner in work.hung.shape])
    holes = [_on_board(work, place) for place, _ in work.hung.notches]
    corners = [*shape.exterior.coords, *(corner for hole in holes for corner in hole.exterior.coords)]
    marks = sorted({round(along) for along, _ in corners if blank.along_from <= along <= blank.along_to})
    stretches: list[tuple[Nm, Nm]] = []
    for start, end in pairwise(marks):
        whole = shapely.box(start, blank.across_from, end, blank.across_to)
        missing = whole.area - whole.intersection(shape).area
        cut_out = sum(whole.intersection(hole).area for hole in holes)
        if missing + cut_out > HAIR * (end - start + blank.across_to - blank.across_from):
            continue
        if stretches and stretches[-1][1] == start:
            stretches[-1] = stretches[-1][0], end
        else:
            stretches.append((start, end))
    return max(stretches, key=lambda stretch: stretch[1] - stretch[0], default=None)


def _on_board(work: Workpiece, place: Rectangle) -> shapely.Polygon:
    (a, b), (c, d) = (
        work.on_board(corner) for corner in ((place.left, place.bottom), (place.right, place.top))
    )
    return shapely.box(min(a, c), min(b, d), max(a, c), max(b, d))
