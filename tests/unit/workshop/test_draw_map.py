"""The map of a surface."""

import re
from xml.etree import ElementTree as ET

import pytest

from plankwright.measure import System, TapeStyle
from plankwright.workshop.draw_map import draw_map
from plankwright.workshop.paper_size import PaperSize, usual_size
from village import small_job, small_layout


def width_mm(drawing: str) -> float:
    """Read the width that a drawing says it has."""
    match = re.fullmatch(r"([0-9.]+)mm", ET.fromstring(drawing).attrib["width"])  # noqa: S314 - our own
    assert match is not None
    return float(match[1])


@pytest.mark.parametrize(("paper", "width"), [(PaperSize.LETTER, 279.4), (PaperSize.A4, 297.0)])
def test_the_map_fits_the_paper_asked_for(paper: PaperSize, width: float) -> None:
    """Landscape: US Letter is 11 in wide, A4 297 mm (ISO 216)."""
    (laid,) = small_layout().surfaces
    assert width_mm(draw_map(small_job(), laid, paper)) == width


def test_without_a_size_the_paper_goes_with_the_tape() -> None:
    """The small job is measured in inches."""
    (laid,) = small_layout().surfaces
    assert draw_map(small_job(), laid) == draw_map(small_job(), laid, PaperSize.LETTER)
    assert usual_size(TapeStyle(system=System.METRIC)) is PaperSize.A4


def test_pieces_lead_where_they_are_told_to() -> None:
    """A piece without a link leads nowhere."""
    (laid,) = small_layout().surfaces
    drawing = draw_map(small_job(), laid, links={"1a": "/pieces/1a"})
    assert 'href="/pieces/1a"' in drawing
    assert drawing.count("href=") == 1


def test_the_boards_can_be_shown_as_they_look() -> None:
    """The boards of the small job are of no lot and no tone, and the key says so."""
    (laid,) = small_layout().surfaces
    assert "no tone told" in draw_map(small_job(), laid, as_boards_look=True)
    assert "no tone told" not in draw_map(small_job(), laid)
