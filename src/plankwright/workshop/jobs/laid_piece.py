"""A piece of a layout that somebody points at."""

from collections.abc import Iterator
from dataclasses import dataclass

from plankwright.layout.parting import PieceKey
from plankwright.layout.sawing import name_on
from plankwright.measure import Nm
from plankwright.model import Course, Job, Layout, Piece, Standing, Surface, SurfaceLayout, part_of
from plankwright.workshop.jobs.kept import RefusedError


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidPiece:
    """A piece where it is laid out.

    Parameters
    ----------
    name
        As a person names it: with its surface where the job has several.
    surface, laid, course, piece
        The piece, its course, and its surface with its layout.
    """

    name: str
    surface: Surface
    laid: SurfaceLayout
    course: Course
    piece: Piece

    @property
    def key(self) -> PieceKey:
        """Its surface and its label."""
        return self.surface.id, self.piece.label

    @property
    def length_nm(self) -> Nm:
        """How long it is cut. [nm]"""
        return part_of(self.piece).length_nm


def laid_pieces(job: Job, layout: Layout, standing: Standing) -> dict[PieceKey, LaidPiece]:
    """Give the pieces of a layout that do not hang yet.

    Parameters
    ----------
    job, layout, standing
        The job, the layout that it is worked by, and how far it has come.
    """
    return {place.key: place for place in _to_hang(job, layout, standing)}


def _to_hang(job: Job, layout: Layout, standing: Standing) -> Iterator[LaidPiece]:
    surfaces = {surface.id: surface for surface in job.surfaces}
    for laid in layout.surfaces:
        if laid.surface_id not in surfaces:
            continue
        surface, hanging = surfaces[laid.surface_id], standing.hung_labels(laid.surface_id)
        for course in laid.courses:
            for piece in course.pieces:
                if piece.label not in hanging:
                    name = name_on(job, surface.id, piece.label)
                    yield LaidPiece(name=name, surface=surface, laid=laid, course=course, piece=piece)


def laid_piece(job: Job, layout: Layout, standing: Standing, key: PieceKey) -> LaidPiece:
    """Give a piece of a layout that does not hang yet; parameters as in `laid_pieces`.

    Parameters
    ----------
    key
        Its surface and its label.

    Raises
    ------
    RefusedError
        If there is none of that name, or it hangs.
    """
    surface_id, label = key
    name = name_on(job, surface_id, label)
    if label in standing.hung_labels(surface_id):
        raise RefusedError(f"{name} hangs already.")
    found = laid_pieces(job, layout, standing).get(key)
    if found is None:
        raise RefusedError(f"There is no piece {name} in this layout, or no longer.")
    return found
