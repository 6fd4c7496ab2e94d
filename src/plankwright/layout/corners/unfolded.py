"""What is searched at once: linked walls laid flat beside each other, or a surface that is linked to none."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from plankwright.layout.capacity import Capacity
from plankwright.layout.corners.flat import flat_surface
from plankwright.layout.corners.flat_strips import FlatStrips, LaidWall
from plankwright.layout.ground import Ground
from plankwright.layout.plan import Place, Plan, PlannedCourse, PlannedPiece, Stick
from plankwright.layout.strips import Span, Strips
from plankwright.measure import FOOT, Nm
from plankwright.model import Job

_BESIDES: Nm = 4 * FOOT
"""Corners are so much wider than the longest board: no piece can reach across one, and no pattern of joints,
whose steps an eye follows for a yard at the most, goes on beyond it. [nm]"""


@dataclass(frozen=True, slots=True)
class Unfolded:
    """Surfaces that are laid out together.

    Parameters
    ----------
    strips
        All of them as one surface.
    walls
        Each where it lies on that, from left to right; a surface that is linked to none lies where it is.
    """

    strips: Strips
    walls: tuple[LaidWall, ...]

    @property
    def id(self) -> str:
        """What the user calls them."""
        return self.strips.surface.id

    @property
    def ids(self) -> tuple[str, ...]:
        """What the user calls each of them, from left to right."""
        return tuple(wall.surface.id for wall in self.walls)

    def fold(self, plan: Plan) -> tuple[Plan, ...]:
        """Give the plan of each surface, from left to right, out of one of all of them.

        Parameters
        ----------
        plan
            In which no piece and nothing bare reaches across a corner.
        """
        if len(self.walls) == 1:
            return (plan,)
        return tuple(tuple(_folded(wall, Ground(wall.strips), plan)) for wall in self.walls)

    def laid(self, place: Place) -> Place:
        """Give a place on one of the surfaces as one on all of them together; others stay as they are."""
        for wall in self.walls:
            if wall.surface.id == place[0]:
                _, start, end, low = place
                return self.id, start + wall.along, end + wall.along, low + wall.across
        return place


def moved(piece: PlannedPiece, by: Nm) -> PlannedPiece:
    """Give a piece farther along its course. [nm]"""
    return replace(piece, start=piece.start + by, end=piece.end + by) if by else piece


def lay_flat(job: Job, capacity: Capacity) -> tuple[Unfolded, ...]:
    """Give the surfaces of a job, those together that are linked.

    Parameters
    ----------
    job
        The job.
    capacity
        What the saws at hand can do.

    Returns
    -------
    tuple of Unfolded
        The most important first: a group is as important as the most important of its walls.
    """
    linked = {name: link for link in job.linked for name in link}
    groups = dict.fromkeys(linked.get(surface.id, (surface.id,)) for surface in job.surfaces)
    longest = max((board.length_nm for board in job.boards), default=0)
    apart = max(longest, job.rules.stagger_nm) + _BESIDES
    return tuple(
        _unfolded([Strips(job.surface(name), job.rules, capacity) for name in group], apart)
        for group in groups
    )


def _unfolded(walls: Sequence[Strips], apart: Nm) -> Unfolded:
    if len(walls) == 1:
        return Unfolded(walls[0], (LaidWall(walls[0], (0, 0), 0, 0),))
    flat = flat_surface([strips.surface for strips in walls], apart)
    strips = FlatStrips(flat.surface, flat.corners, walls, walls[0].rules, walls[0].capacity)
    return Unfolded(strips, strips.walls)


def _folded(wall: LaidWall, ground: Ground, plan: Plan) -> Iterator[PlannedCourse]:
    """Give the courses of a wall in its own frame, those left out that have no part in it."""
    for course in plan:
        pieces = tuple(
            moved(piece, -wall.along) for piece in course.pieces if wall.holds(piece.start, piece.end)
        )
        bare = tuple(
            (start - wall.along, end - wall.along) for start, end in course.bare if wall.holds(start, end)
        )
        if pieces or bare:
            low, high = course.low - wall.across, course.high - wall.across
            yield _begun_where_it_hangs(ground, PlannedCourse(low, high, pieces, bare))


def _begun_where_it_hangs(ground: Ground, course: PlannedCourse) -> PlannedCourse:
    """Let a course begin where anything of it hangs, as over a raised floor, but leave it no sliver.

    Wood that would lie before that is left on its board; a piece that was cut down to what hangs before now
    is as it is.
    """
    rules, low, high = ground.rules, course.low, course.high
    shapes = (ground.hung(Span(piece.start, piece.end, low, high)) for piece in course.pieces)
    begins = min((round(shape.bounds[1]) for shape in shapes if not shape.is_empty), default=low)
    begins = min(begins, high - rules.narrowest_course_nm)
    if begins <= low or not all(piece.stick.rippable for piece in course.pieces):
        return course
    pieces = tuple(replace(piece, stick=_narrowed(piece.stick, high - begins)) for piece in course.pieces)
    return PlannedCourse(begins, high, pieces, course.bare)


def _narrowed(stick: Stick, width: Nm) -> Stick:
    """Give no more of a stick than so much of its width, from its far edge. [nm]"""
    return replace(stick, across_from=max(stick.across_from, stick.across_to - width))
