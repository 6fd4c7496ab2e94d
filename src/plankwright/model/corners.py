"""Linked surfaces: walls that meet at corners, whose courses run round them at the same heights."""

from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import TypeAlias

from plankwright.measure import Nm
from plankwright.model.surface import Direction, Edge, Surface, SurfaceKind
from plankwright.model.validity import demand

Link: TypeAlias = tuple[str, ...]
"""Ids of walls in the order in which they stand round the room, from left to right seen from inside.

Where courses run all round a room the last is the first again.
"""

_LEAST, _LEAST_ROUND = 2, 3
"""It takes two walls to make a corner, and three to go all round."""


def runs_all_round(link: Link) -> bool:
    """Whether the courses of a group come back to where they began."""
    return len(link) > 1 and link[0] == link[-1]


def walls_of(link: Link) -> tuple[str, ...]:
    """Give the ids of the walls of a group, each once."""
    return link[:-1] if runs_all_round(link) else link


def corner_heights(left: Surface, right: Surface) -> tuple[Nm, Nm] | None:
    """Give over which heights two walls meet: the right side of the one and the left side of the other.

    Parameters
    ----------
    left, right
        The walls, as seen from inside the room.

    Returns
    -------
    tuple of int or None
        From where to where above the level that both are raised from; the longest stretch where there are
        several, nothing where they do not meet. [nm]
    """
    shared = [
        (max(low, other_low), min(high, other_high))
        for low, high in _upright(left, Edge.RIGHT)
        for other_low, other_high in _upright(right, Edge.LEFT)
    ]
    longest = max(shared, key=lambda stretch: stretch[1] - stretch[0], default=(0, 0))
    return longest if longest[0] < longest[1] else None


def demand_corners(surfaces: Sequence[Surface], linked: Sequence[Link]) -> None:
    """Refuse links that are none.

    Parameters
    ----------
    surfaces
        All of the job.
    linked
        Groups of their ids.

    Raises
    ------
    InvalidValueError
        If a group names an unknown surface, one that is no wall with level courses, one alone or one that is
        linked already, if it goes all round fewer than three walls, or if its walls do not start at one side
        or do not meet.
    """
    known = {surface.id: surface for surface in surfaces}
    times = Counter(name for link in linked for name in walls_of(link))
    for name, count in times.items():
        demand(name in known, f"{name} is no surface of this job: write its id as it stands", field="linked")
        demand(
            count == 1,
            f"{name} is linked more than once: name each wall once, and none but the first again, "
            "at the end, where courses run all round the room",
            field="linked",
        )
    for link in linked:
        demand(
            len(link) >= _LEAST,
            "a group needs two walls or more, from left to right: courses run from one round to the next",
            field="linked",
        )
        demand(
            not runs_all_round(link) or len(walls_of(link)) >= _LEAST_ROUND,
            f"courses run all round a room of three walls or more: leave out the second {link[0]}",
            field="linked",
        )
        walls = [known[name] for name in link]
        for wall in walls:
            demand(
                wall.kind is SurfaceKind.WALL and wall.courses_run is Direction.HORIZONTAL,
                f"{wall.id} is no wall with horizontal courses, which alone run round a corner: take it out",
                field="linked",
            )
        for left, right in pairwise(walls):
            demand(
                left.start is right.start,
                f"{left.id} starts at the {left.start} and {right.id} at the {right.start}: "
                "let linked walls start at the same side",
                field="linked",
            )
            demand(
                corner_heights(left, right) is not None,
                f"the right side of {left.id} and the left side of {right.id} are not upright at a height "
                "that both have, so they make no corner: check the order and the outlines",
                field="linked",
            )


def _upright(surface: Surface, side: Edge) -> Iterator[tuple[Nm, Nm]]:
    """Give the stretches in which a side of the box is a side of the surface, above the common level. [nm]"""
    at = surface.width_nm if side is Edge.RIGHT else 0
    corners = surface.outline
    for (x, y), (other_x, other_y) in zip(corners, (*corners[1:], corners[0]), strict=True):
        if x == other_x == at and y != other_y:
            yield min(y, other_y) + surface.raised_nm, max(y, other_y) + surface.raised_nm
