"""The courses of a layout that a job is worked by, each with what hangs of it and what does not."""

from dataclasses import dataclass, field, replace

from plankwright.layout.plan import PlannedCourse, PlannedPiece
from plankwright.layout.reading import read_course, read_surface
from plankwright.layout.strips import Strips
from plankwright.model import Course, Job, Piece, Standing, SurfaceLayout


@dataclass(frozen=True, slots=True)
class CarriedRow:
    """A course.

    Parameters
    ----------
    planned
        As laid out, without the pieces that hang.
    hung
        What hangs of it, between its edges as measured; nothing when nothing does.
    facts
        Each of the pieces that hang, as it does.
    """

    planned: PlannedCourse
    hung: PlannedCourse | None = None
    facts: dict[PlannedPiece, Piece] = field(default_factory=dict)

    @property
    def whole(self) -> bool:
        """Whether all of it hangs that there is."""
        return self.hung is not None and not self.planned.pieces and not self.hung.bare


def carried_rows(job: Job, strips: Strips, laid: SurfaceLayout, standing: Standing) -> tuple[CarriedRow, ...]:
    """Part the courses of a layout into what hangs and what does not.

    Parameters
    ----------
    job, strips
        The job, and a surface of it.
    laid
        The layout of that surface.
    standing
        How far the job has come.

    Returns
    -------
    tuple of CarriedRow
        From the start side, also of courses that hang and that the layout does not know.
    """
    facts = list(standing.hung_on(laid.surface_id))
    hanging = standing.hung_labels(laid.surface_id)
    rows: list[CarriedRow] = []
    for course in laid.courses:
        labels = {piece.label for piece in course.pieces}
        fact = next((row for row in facts if any(piece.label in labels for piece in row.pieces)), None)
        if fact is not None:
            facts.remove(fact)
        left = tuple(piece for piece in course.pieces if piece.label not in hanging)
        rows.append(_row(job, strips, read_course(job, strips, replace(course, pieces=left)), fact))
    laid_at = {course.from_nm for course in laid.courses}
    rows += [CarriedRow(course) for course in read_surface(job, strips, laid) if course.low not in laid_at]
    rows += [_row(job, strips, None, fact) for fact in facts]
    return tuple(sorted(rows, key=lambda row: row.planned.low))


def _row(job: Job, strips: Strips, planned: PlannedCourse | None, fact: Course | None) -> CarriedRow:
    if fact is None:
        return CarriedRow(planned or _EMPTY)
    hung = read_course(job, strips, fact)
    return CarriedRow(
        planned or PlannedCourse(hung.low, hung.high, ()),
        hung,
        dict(zip(hung.pieces, fact.pieces, strict=True)),
    )


_EMPTY = PlannedCourse(0, 0, ())
