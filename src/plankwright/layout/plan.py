"""The search's own picture of a layout: plain and quick, in course coordinates.

Places along the courses are measured from the left or the bottom, places across them from the start side.
Only `writing` turns a plan into the document that leaves this room.
"""

from dataclasses import dataclass
from typing import TypeAlias

from plankwright.measure import Nm
from plankwright.model import EdgeProfile, Face


@dataclass(frozen=True, slots=True)
class Stick:
    """A rectangle of clear wood on a board, free to be cut.

    Parameters
    ----------
    board
        Place of its board in the tally.
    along_from, along_to, across_from, across_to
        Where it lies on the board. [nm]
    face
        The face that can be shown.
    hidden_only
        Whether it has a blemish on that face.
    thickness, profile
        Of the board.
    widest_rip
        No wider strip can be ripped off it: where it is zero, the stick hangs as wide as it is; where it is
        nothing, any can be. [nm]
    endless
        Whether it stands for boards that the pile does not have, as many as are asked for: each piece of it
        is from a board of its own.
    """

    board: int
    along_from: Nm
    along_to: Nm
    across_from: Nm
    across_to: Nm
    face: Face
    hidden_only: bool
    thickness: Nm
    profile: EdgeProfile
    widest_rip: Nm | None = None
    endless: bool = False

    @property
    def length(self) -> Nm:
        """[nm]."""
        return self.along_to - self.along_from

    @property
    def width(self) -> Nm:
        """[nm]."""
        return self.across_to - self.across_from

    @property
    def rippable(self) -> bool:
        """Whether anything can be ripped off it."""
        return self.widest_rip != 0

    def makes(self, height: Nm, tolerance: Nm) -> bool:
        """Whether it can be made as wide as a course, or narrower by no more than a tolerance.

        Parameters
        ----------
        height
            Of the course. [nm]
        tolerance
            How much narrower a piece may be. [nm]
        """
        return self.width + tolerance >= height and (self.rippable or self.width <= height)


@dataclass(frozen=True, slots=True)
class PlannedPiece:
    """A piece: where it is cut and where along its course it hangs.

    Parameters
    ----------
    stick
        The very rectangle of the board that is cut out.
    start, end
        Along the course. [nm]
    turned
        Whether its reference edge hangs farthest from the start side. The search turns none.
    """

    stick: Stick
    start: Nm
    end: Nm
    turned: bool = False


@dataclass(frozen=True, slots=True)
class PlannedCourse:
    """A course: its strip, its pieces and what of it is bare.

    Parameters
    ----------
    low, high
        Distances of its edges from the start side. [nm]
    pieces
        In order along the course.
    bare
        Stretches (start, end) that nothing covers. [nm]
    """

    low: Nm
    high: Nm
    pieces: tuple[PlannedPiece, ...]
    bare: tuple[tuple[Nm, Nm], ...] = ()

    @property
    def height(self) -> Nm:
        """[nm]."""
        return self.high - self.low

    @property
    def bare_area(self) -> int:
        """Area of the bare blanks. [nm²]"""
        return self.height * sum(end - start for start, end in self.bare)


Plan: TypeAlias = tuple[PlannedCourse, ...]
"""A whole surface, course by course from the start side."""

Place: TypeAlias = tuple[str, Nm, Nm, Nm]
"""Where a piece hangs: its surface, from where to where along its course, and where that begins. [nm]"""
