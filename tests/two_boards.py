"""A course of two boards of one lot that meet in sight, and may be of unlike thickness."""

from builders import board, course, job, layout, nm, piece, surface_layout, wall
from plankwright.model import Job, Layout


def of_two_boards(thick: float, shim: float = 0.0) -> tuple[Job, Layout]:
    """Give a course of two boards, the second one as thick as is asked for and the first 3/4 in."""
    surface = wall(64, 6.5)
    made = job(
        surface, [board("A", 48, 6.5, lot="hall"), board("B", 48, 6.5, lot="hall", thickness_nm=nm(thick))]
    )
    first = piece(surface, "1a A", (0.25, 24), (0.25, 6.25), nailed_at=(8, 23), shim_nm=nm(shim))
    second = piece(surface, "1b B", (24, 63.75), (0.25, 6.25), nailed_at=(25, 40))
    return made, layout(surface_layout(surface, course(1, (0.25, 6.25), first, second)))
