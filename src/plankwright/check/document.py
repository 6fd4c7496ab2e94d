"""Whether a layout is one of this job at all: its surfaces, and numbers that can be measured."""

from collections.abc import Iterator

from plankwright.check.finding import Finding, FindingCode, found
from plankwright.measure import METRE, Nm
from plankwright.model import Job, Layout, SurfaceLayout

FARTHEST: Nm = 1_000 * METRE
"""No board and no wall is longer than a kilometre: whatever lies beyond is a slip of the pen. [nm]"""


def check_document(job: Job, layout: Layout) -> Iterator[Finding]:
    """Find surfaces that are unknown, missing, given twice or beyond measure, and a layout of another job.

    Parameters
    ----------
    job, layout
        The job, and the layout that should be one of it.

    Yields
    ------
    Finding
        In the order of the layout, then of the job.
    """
    if layout.job_name != job.name:
        message = f"The layout was made for the job {layout.job_name!r}, this one is {job.name!r}."
        yield found(FindingCode.OTHER_JOB, ("", "layout"), message)
    known = {surface.id for surface in job.surfaces}
    seen: set[str] = set()
    for surface in layout.surfaces:
        if surface.surface_id not in known:
            message = "The job has no surface of this name: correct the name, or take it out of the layout."
            yield found(FindingCode.SURFACE_UNKNOWN, (surface.surface_id, "surface"), message)
        elif surface.surface_id in seen:
            message = "The layout covers this surface twice; only the first is judged: take one of them out."
            yield found(FindingCode.SURFACE_TWICE, (surface.surface_id, "surface"), message)
        elif not _measurable(surface):
            message = "It holds a number beyond a kilometre, so it is not judged: correct it."
            place = (surface.surface_id, "surface")
            yield found(FindingCode.BEYOND_MEASURE, place, message, allowed=FARTHEST)
        seen.add(surface.surface_id)
    for job_surface in job.surfaces:
        if job_surface.id not in seen:
            message = "The layout leaves this surface out: lay it out too, or take it out of the job."
            yield found(FindingCode.SURFACE_MISSING, (job_surface.id, "surface"), message)


def judged(job: Job, layout: Layout) -> tuple[SurfaceLayout, ...]:
    """Give the surfaces of a layout that can be judged: known, in measure, and each once."""
    known = {surface.id for surface in job.surfaces}
    first: dict[str, SurfaceLayout] = {}
    for surface in layout.surfaces:
        first.setdefault(surface.surface_id, surface)
    return tuple(surface for name, surface in first.items() if name in known and _measurable(surface))


def _measurable(layout: SurfaceLayout) -> bool:
    return all(abs(length) <= FARTHEST for length in _lengths(layout)) and all(
        abs(count) <= FARTHEST**2
        for count in (layout.score.bare_nm2, layout.score.wood_spent_nm2, layout.score.joints_in_sight)
    )


def _lengths(layout: SurfaceLayout) -> Iterator[Nm]:
    for place in (*layout.bare, *(piece.place for piece in layout.pieces)):
        yield from (place.left, place.bottom, place.right, place.top)
    for course in layout.courses:
        yield from (course.number, course.from_nm, course.to_nm)
    for piece in layout.pieces:
        yield from (piece.along_from_nm, piece.along_to_nm, piece.across_from_nm, piece.across_to_nm)
        yield piece.shim_nm
        for nail in piece.nails:
            yield from nail
