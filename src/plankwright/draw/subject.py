"""What a wall map shows: a surface, its layout, and what follows from both."""

from dataclasses import dataclass

import shapely
from shapely.geometry.base import BaseGeometry

from plankwright.layout.hanging import hung_pieces
from plankwright.layout.joints import Joint, butt_joints
from plankwright.layout.regions import as_polygon, may_region
from plankwright.measure import Nm, TapeStyle
from plankwright.model import Course, Direction, HungPiece, Job, Piece, Surface, SurfaceKind, SurfaceLayout


@dataclass(frozen=True, slots=True, kw_only=True)
class HungRow:
    """A piece with its course and its shape."""

    course: Course
    piece: Piece
    hung: HungPiece

    @property
    def length_nm(self) -> Nm:
        """Of the blank, from long point to long point. [nm]"""
        return self.piece.along_to_nm - self.piece.along_from_nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Subject:
    """A surface and its layout.

    Parameters
    ----------
    job, surface, layout
        As given.
    rows
        Every piece, course by course.
    joints
        Every butt joint.
    may
        What may be covered. [nm]
    """

    job: Job
    surface: Surface
    layout: SurfaceLayout
    rows: tuple[HungRow, ...]
    joints: tuple[Joint, ...]
    may: BaseGeometry

    @property
    def tape(self) -> TapeStyle:
        """How lengths are written."""
        return self.job.tape

    @property
    def member(self) -> str:
        """What the framing that the courses cross is called."""
        if self.surface.kind is not SurfaceKind.WALL:
            return "joist"
        return "stud" if self.surface.courses_run is Direction.HORIZONTAL else "strip"

    @property
    def bare(self) -> tuple[BaseGeometry, ...]:
        """What of each blank left bare lies on the surface. [nm]"""
        return tuple(as_polygon(place).intersection(self.may) for place in self.layout.bare)

    @property
    def standing(self) -> BaseGeometry:
        """The surface less its openings, where framing stands. [nm]"""
        openings = [as_polygon(opening.place) for opening in self.surface.openings]
        return shapely.Polygon(self.surface.outline).difference(shapely.union_all(openings))


def subject(job: Job, layout: SurfaceLayout) -> Subject:
    """Gather what a map of one surface shows."""
    surface = job.surface(layout.surface_id)
    courses = [course for course in layout.courses for _ in course.pieces]
    return Subject(
        job=job,
        surface=surface,
        layout=layout,
        rows=tuple(
            HungRow(course=course, piece=piece, hung=hung)
            for course, piece, hung in zip(courses, layout.pieces, hung_pieces(job, layout), strict=True)
        ),
        joints=butt_joints(job, layout),
        may=may_region(surface, job.rules),
    )
