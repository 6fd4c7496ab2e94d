"""Things that happen while a job is worked on, at random, as somebody would mark them."""

from hypothesis import strategies as st

from builders import nm
from plankwright.layout.sawing import NoOrderOfCutsError
from plankwright.model import Job, Layout, MarkKind, Work
from plankwright.workshop.hang_courses import MeasureError
from plankwright.workshop.mark_work import Happened, MarkError, Measured, begin_work, mark_work

OFF = st.sampled_from([None, None, -0.25, -0.125, -0.0625, 0.03125, 0.125, 0.375])
"""How far a course comes out from where it was planned. [in]"""


@st.composite
def works(draw: st.DrawFn, job: Job, layout: Layout) -> Work:
    """Draw what happened: courses hung from the start side, some measured, then a few mishaps."""
    work = begin_work(job)
    for laid in layout.surfaces:
        count = draw(st.integers(0, len(laid.courses)))
        for course in laid.courses[:count]:
            off = draw(OFF)
            work = _marked(
                job,
                layout,
                work,
                Happened(
                    kind=MarkKind.HUNG,
                    names=(str(course.number),),
                    surface_id=laid.surface_id,
                    measured=None if off is None else Measured(off_nm=nm(off)),
                ),
            )
    labels = [(laid.surface_id, piece.label) for laid in layout.surfaces for piece in laid.pieces]
    for _ in range(draw(st.integers(0, 4)) if labels else 0):
        surface_id, label = draw(st.sampled_from(labels))
        kind = draw(st.sampled_from(MarkKind))
        name = draw(st.sampled_from(job.boards)).id if kind is MarkKind.LOST else label
        length = nm(draw(st.integers(4, 90))) if kind is MarkKind.MISCUT else None
        happened = Happened(kind=kind, names=(name,), surface_id=surface_id, length_nm=length)
        work = _marked(job, layout, work, happened)
    return work


def _marked(job: Job, layout: Layout, work: Work, happened: Happened) -> Work:
    """Mark it if it can have happened."""
    try:
        return mark_work(job, layout, work, happened)
    except (MarkError, MeasureError, NoOrderOfCutsError):
        return work
