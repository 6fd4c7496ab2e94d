"""Where the courses of a surface run round corners, in words."""

from plankwright.measure import Nm
from plankwright.model import Edge, Job, Surface

Corner = tuple[Edge, Surface]
"""A side of a surface, and the surface that its courses run round to there."""


def corners_of(job: Job, surface_id: str) -> tuple[Corner, ...]:
    """Give the corners that the courses of a surface run round.

    Parameters
    ----------
    job, surface_id
        The job, and a surface of it.

    Returns
    -------
    tuple of (Edge, Surface)
        From the left.
    """
    sides = zip((Edge.LEFT, Edge.RIGHT), job.beside(surface_id), strict=True)
    return tuple((side, job.surface(name)) for side, name in sides if name is not None)


def tell_corners(job: Job, surface_id: str) -> str:
    """Say which corners the courses of a surface run round.

    Parameters
    ----------
    job, surface_id
        The job, and a surface of it.

    Returns
    -------
    str
        Such as "courses run round the right corner to east"; nothing where they run round none.
    """
    told = [f"the {side} corner to {other.id}" for side, other in corners_of(job, surface_id)]
    return f"courses run round {' and '.join(told)}" if told else ""


def marks_beyond(surface: Surface, other: Surface) -> Nm:
    """Give how much more a height reads beyond a corner, where it is measured from the start side as well.

    Parameters
    ----------
    surface, other
        The surface, and the one beyond the corner.

    Returns
    -------
    int
        Less than nothing where it reads less. [nm]
    """
    if surface.start is Edge.TOP:
        return other.raised_nm + other.height_nm - surface.raised_nm - surface.height_nm
    return surface.raised_nm - other.raised_nm
