"""What is searched at once: linked walls laid flat beside each other, or a surface that is linked to none."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import zip_longest
from typing import NamedTuple, TypeAlias

from plankwright.layout.capacity import Capacity
from plankwright.layout.corners.flat import flat_surface
from plankwright.layout.corners.flat_strips import FlatStrips, LaidWall
from plankwright.layout.ground import Ground
from plankwright.layout.plan import Place, Plan, PlannedCourse, PlannedPiece, Stick
from plankwright.layout.strips import Span, Strips
from plankwright.measure import FOOT, Nm
from plankwright.model import Job, walls_of

_BESIDES: Nm = 4 * FOOT
"""Corners are so much wider than the longest board: no piece can reach across one, and no pattern of joints,
whose steps an eye follows for a yard at the most, goes on beyond it. [nm]"""

Edges: TypeAlias = tuple[Nm, Nm]
"""Of a course, from the start side. [nm]"""

_NOTHING_BEGUN: Mapping[PlannedPiece, Edges] = {}


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

    def fold(self, plan: Plan, begun: Mapping[PlannedPiece, Edges] = _NOTHING_BEGUN) -> tuple[Plan, ...]:
        """Give the plan of each surface, from left to right, out of one of all of them.

        Parameters
        ----------
        plan
            In which no piece and nothing bare reaches across a corner.
        begun
            By the pieces that hang, between which edges their courses do, in the frame of their surface. [nm]
        """
        if len(self.walls) == 1:
            return (plan,)
        return tuple(tuple(_folded(wall, Ground(wall.strips), plan, begun)) for wall in self.walls)

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
    return tuple(_unfolded(job, group, capacity) for group in _groups(job))


def lay_one_flat(job: Job, capacity: Capacity, number: int) -> Unfolded:
    """Give one of those that `lay_flat` gives, by its place among them; parameters are the same."""
    return _unfolded(job, _groups(job)[number], capacity)


def _groups(job: Job) -> tuple[Sequence[str], ...]:
    """Give the ids of the surfaces that are laid out together."""
    linked = {name: walls for walls in map(walls_of, job.linked) for name in walls}
    return tuple(dict.fromkeys(linked.get(surface.id, (surface.id,)) for surface in job.surfaces))


def _unfolded(job: Job, group: Sequence[str], capacity: Capacity) -> Unfolded:
    walls = [Strips(job.surface(name), job.rules, capacity) for name in group]
    if len(walls) == 1:
        return Unfolded(walls[0], (LaidWall(walls[0], (0, 0), 0, 0),))
    longest = max((board.length_nm for board in job.boards), default=0)
    apart = max(longest, job.rules.stagger_nm) + _BESIDES
    flat = flat_surface([strips.surface for strips in walls], apart)
    strips = FlatStrips(flat.surface, flat.corners, walls, walls[0].rules, walls[0].capacity)
    return Unfolded(strips, strips.walls)


def _folded(
    wall: LaidWall, ground: Ground, plan: Plan, begun: Mapping[PlannedPiece, Edges]
) -> Iterator[PlannedCourse]:
    """Give the courses of a wall in its own frame, those left out that have no part in it."""
    here = [part for course in plan if (part := _part_of(wall, course, begun)) is not None]
    ends: Nm | None = None
    for course, after in zip_longest(here, here[1:]):
        own = course.hung
        if own is None:
            low, high = _where_it_hangs(ground, course.laid)
            # What hangs may be off by a gap that counts as none: none is to lie over another for that.
            low = low if ends is None else max(low, ends)
            own = low, high if after is None or after.hung is None else min(high, after.hung[0])
        if own[0] >= own[1]:
            continue  # What hangs below and above it leaves nothing of it on this wall.
        ends = own[1]
        pieces = (
            piece if hangs else replace(piece, stick=_between(piece.stick, course.laid.low, own))
            for piece, hangs in zip(course.laid.pieces, course.hanging, strict=True)
        )
        yield PlannedCourse(own[0], own[1], tuple(pieces), course.laid.bare)


class _Part(NamedTuple):
    """What a wall has of a course, in its own frame; which of its pieces hang, and between which edges."""

    laid: PlannedCourse
    hanging: tuple[bool, ...]
    hung: Edges | None


def _part_of(wall: LaidWall, course: PlannedCourse, begun: Mapping[PlannedPiece, Edges]) -> _Part | None:
    here = [piece for piece in course.pieces if wall.holds(piece.start, piece.end)]
    bare = [(start - wall.along, end - wall.along) for start, end in course.bare if wall.holds(start, end)]
    if not here and not bare:
        return None
    pieces = tuple(moved(piece, -wall.along) for piece in here)
    return _Part(
        PlannedCourse(course.low - wall.across, course.high - wall.across, pieces, tuple(bare)),
        tuple(piece in begun for piece in here),
        next((begun[piece] for piece in here if piece in begun), None),
    )


def _where_it_hangs(ground: Ground, course: PlannedCourse) -> Edges:
    """Let a course begin where any of it could hang, as over a raised floor, but leave no sliver. [nm]"""
    low, high = course.low, course.high
    stretches = [*((piece.start, piece.end) for piece in course.pieces), *course.bare]
    shapes = (ground.hung(Span(start, end, low, high)) for start, end in stretches)
    begins = min((round(shape.bounds[1]) for shape in shapes if not shape.is_empty), default=low)
    begins = min(begins, high - ground.rules.narrowest_course_nm)
    if begins <= low or not all(piece.stick.rippable for piece in course.pieces):
        return low, high
    return begins, high


def _between(stick: Stick, low: Nm, own: Edges) -> Stick:
    """Give no more of the wood of a piece than its course has on its own wall.

    What would lie before that is left on the board first; a piece that was cut down before now is as it is.

    Parameters
    ----------
    stick
        The wood.
    low
        Where its course begins on all walls together. [nm]
    own
        Its edges on this one. [nm]
    """
    spare = stick.width - (own[1] - own[0])
    if spare <= 0 or not stick.rippable:
        return stick
    near = min(spare, max(0, own[0] - low))
    return replace(stick, across_from=stick.across_from + near, across_to=stick.across_to - (spare - near))
