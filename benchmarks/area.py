"""Areas: what must be covered, what a pile holds, and the sum that people do with them."""

from collections.abc import Iterable

from plankwright.layout.strips import Strips
from plankwright.model import Board, Job, Surface
from plankwright.model.surface import twice_signed_area

USUAL_EXTRA = 0.10
"""What is usually added to an area for waste. Common practice, no source."""


def must_area(job: Job) -> float:
    """Give the area that must be covered, all surfaces together. [nm²]"""
    return float(sum(Strips(surface, job.rules).must.area for surface in job.surfaces))


def plain_area(surface: Surface) -> float:
    """Give the area of a surface as people work it out: its outline less its openings. [nm²]"""
    openings = sum(opening.place.width_nm * opening.place.height_nm for opening in surface.openings)
    return twice_signed_area(surface.outline) / 2 - openings


def faces(boards: Iterable[Board]) -> int:
    """Give the area of boards as people work it out: length times width. [nm²]"""
    return sum(board.face_area_nm2 for board in boards)


def enough_by_area(job: Job) -> bool:
    """Whether a pile is enough by the area sum with the usual percentage."""
    asked = sum(map(plain_area, job.surfaces))
    return faces(job.boards) >= (1 + USUAL_EXTRA) * asked
