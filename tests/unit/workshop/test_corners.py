"""Linked walls in the answer and on paper."""

from dataclasses import replace

import pymupdf

from builders import nm, rectangle
from corner import corner_job, corner_layout
from plankwright.check import recount
from plankwright.layout.result import Result, TooLittle, Verdict
from plankwright.model import Bound, Course, HungCourse, Standing
from plankwright.paper.hanging_sheet import hanging_sheet
from plankwright.workshop.ask_enough import ask_enough
from plankwright.workshop.draw_map import draw_map
from plankwright.workshop.print_sheets import print_sheets

RUN_ROUND = "Courses run round the corner between north and east at the same heights."


def apart() -> Standing:
    """Say that the first course hangs half an inch higher on the northern wall than on the eastern one."""
    north, east = (laid.courses[0] for laid in corner_layout().surfaces)
    high = Course(number=1, from_nm=north.from_nm, to_nm=north.to_nm + nm(0.5), pieces=north.pieces)
    sawn = tuple(piece.board_id for course in (north, east) for piece in course.pieces)
    return Standing(
        hung=(HungCourse(surface_id="north", course=high), HungCourse(surface_id="east", course=east)),
        sawn=sawn,
    )


def test_the_answer_tells_that_courses_run_round() -> None:
    """Between the walls by name."""
    result = Result(layout=corner_layout())
    assert RUN_ROUND in str(ask_enough(corner_job(), result)).splitlines()
    assert "corner" not in str(ask_enough(replace(corner_job(), linked=()), result))
    south = replace(corner_job().surfaces[0], id="south")
    three = replace(
        corner_job(),
        surfaces=(*corner_job().surfaces, south),
        linked=(("north", "east", "south"),),
    )
    told = str(ask_enough(three, result))
    assert "Courses run round the corners between north, east and south at the same heights." in told
    closed = replace(three, linked=(("north", "east", "south", "north"),))
    told = str(ask_enough(closed, result))
    assert "Courses run all round north, east and south at the same heights." in told


def test_once_they_cannot_it_tells_so() -> None:
    """In the answer; and no sheet says that they do."""
    told = str(ask_enough(corner_job(), Result(layout=corner_layout()), apart()))
    assert (
        "Courses of north and east hang at unlike heights already: "
        "from here on each of these walls is laid out by itself."
    ) in told
    assert "run round" not in draw_map(corner_job(), corner_layout().surfaces[0], standing=apart())
    with pymupdf.open(stream=print_sheets(corner_job(), corner_layout(), standing=apart())) as sheets:
        assert not any("run round" in page.get_text() for page in sheets)


def test_the_hanging_sheet_tells_how_to_carry_lines_round() -> None:
    """And what marks read there."""
    north, east = corner_layout().surfaces
    level = hanging_sheet(corner_job(), north)
    assert (
        "Courses run round the right corner to east: strike each line on level round it before you hang the "
        "course. Marks of heights read the same there."
    ) in level.intro
    raised = corner_job(raised_nm=nm(1))
    assert 'read 1" less there.' in " ".join(hanging_sheet(raised, north).intro)
    assert "left corner to north" in " ".join(hanging_sheet(raised, east).intro)
    assert 'read 1" more there.' in " ".join(hanging_sheet(raised, east).intro)


def test_map_and_sheets_tell_the_corner() -> None:
    """With nothing hung yet."""
    assert "run round the right corner to east" in draw_map(corner_job(), corner_layout().surfaces[0])
    with pymupdf.open(stream=print_sheets(corner_job(), corner_layout())) as sheets:
        printed = "".join(page.get_text() for page in sheets)
    assert RUN_ROUND in " ".join(printed.split())


def test_walls_that_cannot_both_be_covered_are_told_together() -> None:
    """Where neither of them is sure to be short of boards by itself."""
    bare = rectangle(0.25, 5.25, 48.25, 10.25)
    north, east = corner_layout().surfaces
    short = replace(east, courses=(east.courses[0], replace(east.courses[2], number=2)), bare=(bare,))
    short = replace(short, score=recount(corner_job(), short))
    result = Result(
        layout=replace(corner_layout(), surfaces=(north, short)),
        too_little=(TooLittle(surfaces=("north", "east"), bare_nm2=nm(12) * nm(6)),),
    )
    answer = ask_enough(corner_job(), result)
    assert answer.verdict is Verdict.NOT_ENOUGH
    assert answer.headline == "Not enough: no layout of this pile covers all of north and east."
    assert "Of north and east together no layout can leave less than 0.5 sq ft bare." in answer.pile
    sure = replace(short, bound=Bound(bare_nm2=nm(12) * nm(6)))
    answer = ask_enough(corner_job(), replace(result, layout=replace(result.layout, surfaces=(north, sure))))
    assert answer.headline == "Not enough: no layout of this pile covers all of east."
    assert not any("together no layout" in sentence for sentence in answer.pile)
