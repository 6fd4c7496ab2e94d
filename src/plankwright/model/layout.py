"""Which piece goes where: the document that the search makes, the checker judges and the paper prints.

A piece is written as the upright rectangle ("blank") that it is cut to before its ends are angled, its edge
is tapered and its notches are made. What hangs is the blank less whatever lies outside the surface or in an
opening: no second description of the shape can contradict the first.
"""

from dataclasses import dataclass
from enum import StrEnum

from plankwright.measure import Nm
from plankwright.model.board import Face
from plankwright.model.surface import Edge, Point, Rectangle


class EdgeTreatment(StrEnum):
    """What is done with a long edge of a piece so that it meets its neighbour."""

    AS_FOUND = "as found"
    RIPPED = "ripped square"
    TONGUE_OFF = "tongue ripped off"
    SPLINE = "loose spline"
    FACE_NAIL = "face-nailed"


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """What is cut from a board and hung in one place.

    Parameters
    ----------
    label
        Written on the piece: course number and letter along the course, such as "4b".
    board_id
        The board that it comes from.
    place
        The blank as hung, in the frame of the surface.
    along_from_nm, along_to_nm
        Where it lies along the board, from the marked end. [nm]
    across_from_nm, across_to_nm
        Where it lies across the board, from the reference edge. [nm]
    face
        The face that shows.
    turned
        Whether the reference edge of the board lies farthest from the start edge of the surface instead of
        nearest.
    near, far
        Treatment of the long edges nearest to and farthest from the start edge.
    shim_nm
        Thickness of the shim behind it. [nm]
    nails
        Where it is nailed to the framing; on solid backing this may be left empty.
    """

    label: str
    board_id: str
    place: Rectangle
    along_from_nm: Nm
    along_to_nm: Nm
    across_from_nm: Nm
    across_to_nm: Nm
    face: Face = Face.FRONT
    turned: bool = False
    near: EdgeTreatment = EdgeTreatment.AS_FOUND
    far: EdgeTreatment = EdgeTreatment.AS_FOUND
    shim_nm: Nm = 0
    nails: tuple[Point, ...] = ()

    def marked_end_last(self, start: Edge) -> bool:
        """Whether the marked end of the board points right (or up) instead of left (or down).

        A board is no mirror image of itself: once it is said which edge lies where and which face shows, its
        ends have no choice.

        Parameters
        ----------
        start
            The start edge of the surface.
        """
        mirrored = start in {Edge.TOP, Edge.LEFT}
        return mirrored ^ self.turned ^ (self.face is Face.BACK)


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """One row of boards.

    Parameters
    ----------
    number
        From the start edge, the starter being 1.
    from_nm, to_nm
        Distances of its two edges from the start side of the box that encloses the outline. [nm]
    pieces
        In order along the course, from the left or from the bottom.
    """

    number: int
    from_nm: Nm
    to_nm: Nm
    pieces: tuple[Piece, ...]

    @property
    def height_nm(self) -> Nm:
        """The face width of the course. [nm]"""
        return self.to_nm - self.from_nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Score:
    """How good a layout of one surface is; each measure counts before the next.

    Parameters
    ----------
    bare_nm2
        Area left bare. [nm²]
    joints_in_sight
        Butt joints that no fixture hides.
    wood_spent_nm2
        Face area of the boards cut into, less the offcuts worth keeping. [nm²]
    cuts
        Passes of a saw.
    """

    bare_nm2: int
    joints_in_sight: int
    wood_spent_nm2: int
    cuts: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Bound:
    """What no layout of a surface can beat, measure by measure; the later ones given the best of the earlier.

    Parameters
    ----------
    bare_nm2
        At least so much is left bare. [nm²]
    joints_in_sight
        At least so many joints show.
    wood_spent_nm2
        At least so much wood is spent. [nm²]
    """

    bare_nm2: int = 0
    joints_in_sight: int = 0
    wood_spent_nm2: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class SurfaceLayout:
    """The layout of one surface.

    Parameters
    ----------
    surface_id
        The surface that it covers.
    courses
        From the start edge on.
    bare
        Blanks that no board could be found for.
    score, bound
        As counted by the search; the checker counts the score again.
    """

    surface_id: str
    courses: tuple[Course, ...]
    bare: tuple[Rectangle, ...] = ()
    score: Score
    bound: Bound = Bound()

    @property
    def pieces(self) -> tuple[Piece, ...]:
        """Every piece, course by course."""
        return tuple(piece for course in self.courses for piece in course.pieces)


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """The layout of a whole job.

    Parameters
    ----------
    job_name
        The job that it was made for.
    surfaces
        In the order of the job.
    seed
        The seed of the search.
    effort
        In the user's word, such as "thorough"; empty for a layout made by hand.
    """

    job_name: str
    surfaces: tuple[SurfaceLayout, ...]
    seed: int = 0
    effort: str = ""

    @property
    def pieces(self) -> tuple[Piece, ...]:
        """Every piece of every surface."""
        return tuple(piece for surface in self.surfaces for piece in surface.pieces)

    @property
    def covers_everything(self) -> bool:
        """Whether nothing is left bare."""
        return all(not surface.bare for surface in self.surfaces)
