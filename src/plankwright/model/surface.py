"""What is to be covered, and what stands in, on and behind it.

All positions lie in the surface's own frame: x to the right, y up, from the lower left corner of the box that
encloses the outline, seen from inside the room: a ceiling looking up at it, a floor looking down on it.
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import TypeAlias

from plankwright.measure import Nm
from plankwright.model.fastening import Layer
from plankwright.model.validity import demand

Point: TypeAlias = tuple[Nm, Nm]
"""A position (x, y) in the frame of a surface. [nm]"""

MIN_CORNERS = 3


class SurfaceKind(StrEnum):
    """What sort of surface it is."""

    WALL = "wall"
    CEILING = "ceiling"
    FLOOR = "floor"


class Direction(StrEnum):
    """Which way something runs across the surface."""

    HORIZONTAL = "horizontal"
    VERTICAL = "vertical"


class Edge(StrEnum):
    """A side of the surface."""

    BOTTOM = "bottom"
    TOP = "top"
    LEFT = "left"
    RIGHT = "right"


@dataclass(frozen=True, slots=True, kw_only=True)
class Rectangle:
    """An upright rectangle on the surface. [nm]"""

    left: Nm
    bottom: Nm
    right: Nm
    top: Nm

    def __post_init__(self) -> None:
        demand(self.left < self.right, "the width must be more than nothing", field="width")
        demand(self.bottom < self.top, "the height must be more than nothing", field="height")

    @property
    def width_nm(self) -> Nm:
        """From left to right. [nm]"""
        return self.right - self.left

    @property
    def height_nm(self) -> Nm:
        """From bottom to top. [nm]"""
        return self.top - self.bottom


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """A door, window or fireplace: not covered.

    Parameters
    ----------
    id
        What the user calls it.
    place
        Where it is.
    trim_nm
        How much of the boards its casing will cover, on every side. [nm]
    """

    id: str
    place: Rectangle
    trim_nm: Nm = 0

    def __post_init__(self) -> None:
        demand(self.trim_nm >= 0, "trim cannot cover less than nothing", field="trim")


@dataclass(frozen=True, slots=True, kw_only=True)
class CutOut:
    """An electrical box or a pipe: covered, and notched around.

    Parameters
    ----------
    id, place
        What the user calls it, and where it is.
    what
        What comes through there, such as "socket".
    front_nm
        How far its front stands before the face of the framing; nothing where it is flush with what lies
        between framing and boards. [nm]
    """

    id: str
    place: Rectangle
    what: str = ""
    front_nm: Nm | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ConcealedZone:
    """A part that a fixture hides later: joints and blemishes may go there.

    Parameters
    ----------
    id, place
        What the user calls the fixture, and where it will be.
    """

    id: str
    place: Rectangle


@dataclass(frozen=True, slots=True, kw_only=True)
class FramingMember:
    """A stud, joist or strip that takes a nail.

    Parameters
    ----------
    centre_nm
        Its centre line: x of a vertical member, y of a horizontal one. [nm]
    width_nm
        Width of the face that the boards lie on. [nm]
    runs
        Which way it runs.
    """

    centre_nm: Nm
    width_nm: Nm
    runs: Direction = Direction.VERTICAL

    def __post_init__(self) -> None:
        demand(self.width_nm > 0, "framing must have a width", field="framing")


@dataclass(frozen=True, slots=True, kw_only=True)
class Framing:
    """What the nails go into.

    Parameters
    ----------
    members
        Studs, joists or strips, in order of their centres.
    solid
        Whether the whole surface takes a nail anywhere.
    wood
        Its species in the user's words; empty where it is not known.
    opened
        Whether it was looked at from inside, and all that runs there stands among the keep-outs.
    thickness_nm
        Of solid backing, if it is known. [nm]
    """

    members: tuple[FramingMember, ...] = ()
    solid: bool = False
    wood: str = ""
    opened: bool = False
    thickness_nm: Nm | None = None

    def __post_init__(self) -> None:
        demand(
            self.solid or bool(self.members),
            "there is nothing to nail to: list the framing, or say that the backing is solid",
            field="framing",
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class KeepOut:
    """Where no nail may go.

    Parameters
    ----------
    id, place
        What the user calls it, and where it is.
    what
        What runs there, such as "water pipe".
    """

    id: str
    place: Rectangle
    what: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeTrim:
    """How much of the boards the trim will cover along each side of the surface. [nm]"""

    bottom: Nm = 0
    top: Nm = 0
    left: Nm = 0
    right: Nm = 0

    def __post_init__(self) -> None:
        demand(
            min(self.bottom, self.top, self.left, self.right) >= 0,
            "trim cannot cover less than nothing",
            field="trim",
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Surface:
    """What is to be covered.

    Parameters
    ----------
    id
        What the user calls it.
    kind
        Wall, ceiling or floor.
    outline
        Corners anticlockwise; the box that encloses them starts at (0, 0).
    courses_run
        Which way the courses run.
    start
        The side that the first course is hung on; it lies along the courses.
    openings, cut_outs, concealed, keep_outs
        What stands in, on and behind the surface.
    framing
        What the nails go into.
    trim
        What the trim will cover along the sides.
    between
        What lies between the framing and the boards, from the framing on.
    raised_nm
        How much higher the bottom of its box lies than that of the lowest surface that it is linked to. [nm]
    """

    id: str
    kind: SurfaceKind = SurfaceKind.WALL
    outline: tuple[Point, ...]
    courses_run: Direction = Direction.HORIZONTAL
    start: Edge = Edge.BOTTOM
    openings: tuple[Opening, ...] = ()
    cut_outs: tuple[CutOut, ...] = ()
    concealed: tuple[ConcealedZone, ...] = ()
    framing: Framing
    keep_outs: tuple[KeepOut, ...] = ()
    trim: EdgeTrim = EdgeTrim()
    between: tuple[Layer, ...] = ()
    raised_nm: Nm = 0

    def __post_init__(self) -> None:
        demand(self.raised_nm >= 0, "measure from the lowest of the linked walls up", field="raised")
        demand(len(self.outline) >= MIN_CORNERS, "an outline needs at least three corners", field="outline")
        demand(
            min(x for x, _ in self.outline) == 0 and min(y for _, y in self.outline) == 0,
            "measure the outline from its own lower left corner: the smallest x and the smallest y must be 0",
            field="outline",
        )
        demand(
            twice_signed_area(self.outline) > 0,
            "the corners of the outline must go round anticlockwise and enclose an area",
            field="outline",
        )
        along_courses = (
            (Edge.BOTTOM, Edge.TOP) if self.courses_run is Direction.HORIZONTAL else (Edge.LEFT, Edge.RIGHT)
        )
        demand(
            self.start in along_courses,
            f"{self.courses_run} courses start at the {along_courses[0]} or the {along_courses[1]}",
            field="start",
        )

    @property
    def width_nm(self) -> Nm:
        """Width of the box that encloses the outline. [nm]"""
        return max(x for x, _ in self.outline)

    @property
    def height_nm(self) -> Nm:
        """Height of the box that encloses the outline. [nm]"""
        return max(y for _, y in self.outline)

    @property
    def between_nm(self) -> Nm:
        """Thickness of all that lies between the framing and the boards. [nm]"""
        return sum(layer.thickness_nm for layer in self.between)

    @property
    def crossing_members(self) -> tuple[FramingMember, ...]:
        """The framing that the courses cross, in order along the courses."""
        crossing = [member for member in self.framing.members if member.runs is not self.courses_run]
        return tuple(sorted(crossing, key=lambda member: member.centre_nm))


def twice_signed_area(outline: tuple[Point, ...]) -> int:
    """Give twice the area that an outline encloses, positive when it goes round anticlockwise.

    Parameters
    ----------
    outline
        Corners in order. [nm]

    Returns
    -------
    int
        By the shoelace formula, exact. [nm²]
    """
    return sum(
        ax * by - bx * ay for (ax, ay), (bx, by) in zip(outline, (*outline[1:], outline[0]), strict=True)
    )
