"""What stands on a label, and that all of it is printed where printers reach."""

from dataclasses import replace
from functools import cache

import pymupdf
import pytest

from corner import corner_job, corner_layout
from plankwright.draw.view import A4, LETTER, Page
from plankwright.model import Job, Layout
from plankwright.paper.stickers import board_stickers
from plankwright.paper.work_sheets import work_sheets_pdf
from plankwright.workshop.advice.fill_pack import fill_pack
from printed import Sheets

_UNPRINTED = 14.0
"""Five millimetres at the edges of the page. [pt]"""

LONG = {"north": "the dining room, wall to the north", "east": "the dining room, wall to the east"}


def _named(job: Job) -> Job:
    """Give both walls and a lot a name as people give them, without links that would name them again."""
    boards = tuple(replace(board, lot="loft over the stage of the village hall") for board in job.boards)
    surfaces = tuple(replace(surface, id=LONG[surface.id]) for surface in job.surfaces)
    return replace(job, surfaces=surfaces, boards=boards, linked=())


def _renamed(laid: Layout) -> Layout:
    """Give the layout of the walls by their new names."""
    surfaces = tuple(replace(part, surface_id=LONG[part.surface_id]) for part in laid.surfaces)
    return replace(laid, surfaces=surfaces)


def _out_of_one(laid: Layout, board_id: str) -> Layout:
    """Take every piece from the same board, so that much stands on its label."""
    return replace(
        laid,
        surfaces=tuple(
            replace(
                part,
                courses=tuple(
                    replace(row, pieces=tuple(replace(one, board_id=board_id) for one in row.pieces))
                    for row in part.courses
                ),
            )
            for part in laid.surfaces
        ),
    )


JOB = _named(corner_job())
LAID = _renamed(corner_layout())
OUT_OF_ONE = _out_of_one(LAID, JOB.boards[0].id)


def test_a_surface_is_named_once_on_the_label_of_a_board() -> None:
    """And before what it gives stands what every board needs."""
    (label,) = board_stickers(JOB, OUT_OF_ONE)
    *_, arrow, gives = label.lines
    assert arrow == "arrow at the marked end"
    assert gives == f"gives {LONG['north']} 1a, 2a, 3a; {LONG['east']} 1a, 2a, 3a"


def test_without_other_surfaces_none_is_named() -> None:
    """Nobody has to be told which wall where there is but one."""
    one = replace(JOB, surfaces=JOB.surfaces[:1])
    (label,) = board_stickers(one, replace(OUT_OF_ONE, surfaces=OUT_OF_ONE.surfaces[:1]))
    assert label.lines[-1] == "gives 1a, 2a, 3a"


@cache
def _label_pages(page: Page) -> tuple[pymupdf.Page, ...]:
    sheets = Sheets(work_sheets_pdf(JOB, LAID, page, pack=fill_pack(JOB, LAID)))
    return tuple(
        one for one in sheets.pages if "arrow at the" in one.get_text() and "Page " not in one.get_text()
    )


@pytest.mark.parametrize("page", [LETTER, A4], ids=lambda page: page.name)
def test_all_of_a_label_is_printed_in_its_cell(page: Page) -> None:
    """However long its names are; and nothing stands where few printers reach."""
    assert _label_pages(page)
    for sheet in _label_pages(page):
        whole = sheet.rect
        reach = pymupdf.Rect(
            whole.x0 + _UNPRINTED, whole.y0 + _UNPRINTED, whole.x1 - _UNPRINTED, whole.y1 - _UNPRINTED
        )
        width, height = sheet.rect.width / 3, sheet.rect.height / 8
        for block in sheet.get_text("dict")["blocks"]:
            for line in block.get("lines", ()):
                place = pymupdf.Rect(line["bbox"])
                row, column = int(place.y0 // height), int(place.x0 // width)
                cell = pymupdf.Rect(column * width, row * height, (column + 1) * width, (row + 1) * height)
                assert reach.contains(place), line
                assert cell.contains(place), line
