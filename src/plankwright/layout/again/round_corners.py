"""The courses of linked walls put together again as one surface, with what hangs of them on each."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

import shapely

from plankwright.layout.again.carried import CarriedRow, carried_rows
from plankwright.layout.capacity import capacity_of
from plankwright.layout.corners import LaidWall, Unfolded, lay_flat, moved
from plankwright.layout.ground import HAIR, Ground
from plankwright.layout.plan import PlannedCourse, PlannedPiece
from plankwright.layout.reading import uncovered
from plankwright.layout.strips import Span
from plankwright.measure import Nm
from plankwright.model import Job, Link, Score, Standing, SurfaceLayout, walls_of

_Edges = tuple[Nm, Nm]


@dataclass(frozen=True, slots=True)
class _WallRow:
    """A course of one wall, in the frame of all walls together."""

    wall: LaidWall
    ground: Ground
    planned: PlannedCourse
    hung: PlannedCourse | None
    row: CarriedRow

    @property
    def edges(self) -> _Edges:
        """Of what hangs, or else as planned. [nm]"""
        course = self.hung or self.planned
        return course.low, course.high

    def reaches(self, edges: _Edges, piece: PlannedPiece, own: _Edges, tolerance: Nm) -> bool:
        """Whether a piece between its own edges covers all that hangs between those of the course."""
        low, high = edges
        shape = self.ground.hung(
            Span(
                piece.start - self.wall.along,
                piece.end - self.wall.along,
                low - self.wall.across,
                high - self.wall.across,
            )
        )
        if shape.is_empty:
            return True
        _, least, _, most = shapely.bounds(shape)
        within = own[0] - self.wall.across - tolerance - HAIR, own[1] - self.wall.across + tolerance + HAIR
        return bool(within[0] <= least and most <= within[1])


def carried_together(
    job: Job, laid: Mapping[str, SurfaceLayout], standing: Standing
) -> tuple[tuple[Unfolded, tuple[CarriedRow, ...]], ...]:
    """Give the surfaces of a job that are laid out together, each with its courses.

    Parameters
    ----------
    job
        The job.
    laid
        The layouts of its surfaces, by their ids.
    standing
        How far it has come. Walls of which courses hang at heights that do not go together are no longer
        linked: no course that follows could run round.

    Returns
    -------
    tuple of (Unfolded, tuple of CarriedRow)
        The most important first.
    """
    linked = _kept(job, laid, standing)
    return tuple(
        (each, _carried(job, each, laid, standing) or ())
        for each in lay_flat(replace(job, linked=linked), capacity_of(job))
    )


def links_kept(job: Job, standing: Standing) -> tuple[Link, ...]:
    """Give the links of a job that courses can still run round the corners of.

    Parameters
    ----------
    job
        The job.
    standing
        How far it has come: walls of which courses hang at heights that do not go together are no longer
        linked.
    """
    if not standing.hung:
        return job.linked
    bare = {
        surface.id: SurfaceLayout(surface_id=surface.id, courses=(), score=_NO_SCORE)
        for surface in job.surfaces
    }
    return _kept(job, bare, standing)


_NO_SCORE = Score(bare_nm2=0, joints_in_sight=0, wood_spent_nm2=0, cuts=0)


def _kept(job: Job, laid: Mapping[str, SurfaceLayout], standing: Standing) -> tuple[Link, ...]:
    kept = {
        each.ids
        for each in lay_flat(job, capacity_of(job))
        if len(each.walls) > 1 and _carried(job, each, laid, standing) is not None
    }
    return tuple(link for link in job.linked if walls_of(link) in kept)


def _carried(
    job: Job, unfolded: Unfolded, laid: Mapping[str, SurfaceLayout], standing: Standing
) -> tuple[CarriedRow, ...] | None:
    """Give the courses of surfaces laid out together; nothing where what hangs does not go together."""
    rows = [
        [
            _in_all(wall, ground, row)
            for row in carried_rows(job, wall.strips, laid[wall.surface.id], standing)
        ]
        for wall in unfolded.walls
        for ground in [Ground(wall.strips)]
    ]
    if len(rows) == 1:
        return tuple(each.row for each in rows[0])
    tolerance, joined = job.rules.gap_tolerance_nm, list[CarriedRow]()
    for together in _side_by_side(rows):
        hung = _hung_edges(together, tolerance)
        if hung is None and any(each.hung for each in together):
            return None
        if hung is not None and joined and 0 < _end(joined[-1]) - hung[0] <= tolerance:
            hung = _end(joined[-1]), hung[1]
        joined.append(_joined(unfolded, together, hung, tolerance))
    return tuple(joined)


def _in_all(wall: LaidWall, ground: Ground, row: CarriedRow) -> _WallRow:
    hung = None if row.hung is None else _laid(wall, row.hung)
    return _WallRow(wall, ground, _laid(wall, row.planned), hung, row)


def _laid(wall: LaidWall, course: PlannedCourse) -> PlannedCourse:
    """Give a course of a wall in the frame of all."""
    return PlannedCourse(
        course.low + wall.across,
        course.high + wall.across,
        tuple(moved(piece, wall.along) for piece in course.pieces),
        tuple((start + wall.along, end + wall.along) for start, end in course.bare),
    )


def _side_by_side(rows: Sequence[Sequence[_WallRow]]) -> Iterator[list[_WallRow]]:
    """Give the courses that run round: those of different walls that lie side by side for the most part."""
    waiting = [list(of_wall) for of_wall in rows]
    while any(waiting):
        first = min(
            (of_wall[0] for of_wall in waiting if of_wall), key=lambda row: (row.edges[0], -row.edges[1])
        )
        yield [of_wall.pop(0) for of_wall in waiting if of_wall and _beside(first.edges, of_wall[0].edges)]


def _beside(one: _Edges, other: _Edges) -> bool:
    shared = min(one[1], other[1]) - max(one[0], other[0])
    return 2 * shared > min(one[1] - one[0], other[1] - other[0])


def _hung_edges(together: Sequence[_WallRow], tolerance: Nm) -> _Edges | None:
    """Give the edges that what hangs of a course has on all walls, as far as it goes together."""
    hung = [(row, row.hung) for row in together if row.hung is not None]
    if not hung:
        return None
    edges = min(course.low for _, course in hung), max(course.high for _, course in hung)
    for row, course in hung:
        own = course.low, course.high
        if not all(row.reaches(edges, piece, own, tolerance) for piece in course.pieces):
            return None
    return edges


def _joined(
    unfolded: Unfolded, together: Sequence[_WallRow], hung: _Edges | None, tolerance: Nm
) -> CarriedRow:
    tallest = max((row.planned for row in together), key=lambda course: course.height)
    edges = tallest.low, tallest.high
    planned = sorted(
        (
            piece
            for row in together
            for piece in row.planned.pieces
            if row.reaches(edges, piece, (row.planned.low, row.planned.high), tolerance)
        ),
        key=lambda piece: piece.start,
    )
    course = PlannedCourse(*edges, tuple(planned))
    if hung is None:
        return CarriedRow(course)
    facts = {moved(piece, row.wall.along): fact for row in together for piece, fact in row.row.facts.items()}
    pieces = tuple(sorted(facts, key=lambda piece: piece.start))
    bare = uncovered(unfolded.strips.runs(*hung), pieces)
    return CarriedRow(course, PlannedCourse(*hung, pieces, bare), facts)


def _end(row: CarriedRow) -> Nm:
    return (row.hung or row.planned).high
