"""The hanging sheet tells each course and each piece in the order of hanging."""

from dataclasses import replace

import pytest

from builders import (
    board,
    box_outline,
    course,
    job,
    layout,
    nm,
    outline,
    piece,
    rectangle,
    studs,
    surface_layout,
    wall,
)
from plankwright.model import ConcealedZone, Direction, Edge, Framing, Rules, Surface, SurfaceKind
from plankwright.paper.hanging_sheet import CourseBlock, SurfaceSheet, closing_course, hanging_sheet
from porch import PORCH, porch_job, porch_layout, short_porch_layout


def porch_sheet() -> SurfaceSheet:
    """Give the sheet of the porch."""
    return hanging_sheet(porch_job(), porch_layout().surfaces[0])


def todo(label: str) -> dict[str, str]:
    """Give what there is to do with a piece of the porch."""
    (row,) = [row for block in porch_sheet().courses for row in block.pieces if row.label == label]
    return {one.what: one.how.replace("\N{NO-BREAK SPACE}", " ") for one in row.todo}


def bare_wall(surface: Surface, rules: Rules | None = None) -> SurfaceSheet:
    """Give the sheet of a surface with nothing on it."""
    return hanging_sheet(job(surface, [board("B", 97, 6.25)], rules), surface_layout(surface))


def test_a_step_is_a_notch_and_no_taper() -> None:
    """A board over a stair is notched for it; that it is narrower there makes no tapered edge of it."""
    stairs = wall(
        96,
        12,
        outline=outline((0, 4), (40, 4), (40, 0), (96, 0), (96, 12), (0, 12)),
        framing=Framing(solid=True),
    )
    one = piece(stairs, "1a B", (0, 96), (0, 6))
    laid = surface_layout(stairs, course(1, (0, 6), one))
    sheet = hanging_sheet(job(stairs, [board("B", 97, 6.5)], Rules(expansion_gap_nm=0)), laid)
    (row,) = sheet.courses[0].pieces
    assert [(one.what, one.how) for one in row.todo][1:] == [
        ("Notch:", 'for the edge of the surface, 0" from its left and 0" from below; 40" wide, 4" high.'),
        ("Nails:", "anywhere, the backing is solid."),
    ]


def test_courses_tell_mark_and_width() -> None:
    """Each course tells where its far edge comes and how wide it is."""
    marks = [(block.number, block.mark, block.width) for block in porch_sheet().courses]
    assert marks == [
        (1, '6"', '6"'),
        (2, '12"', '6"'),
        (3, '18"', '6"'),
        (4, '24"', '6"'),
        (5, '30"', '6"'),
        (6, '36"', '6"'),
    ]
    assert porch_sheet().far_edge == "upper"


def test_pieces_stand_in_order_with_board_and_size() -> None:
    """Pieces go from left to right."""
    rows = [(row.label, row.board) for block in porch_sheet().courses for row in block.pieces]
    assert rows == [
        ("1a", "H01"),
        ("1b", "H02"),
        ("2a", "H03"),
        ("3a", "H04"),
        ("3b", "H02"),
        ("4a", "H05"),
        ("5a", "H06"),
        ("6a", "H07"),
    ]


def test_joint_tells_stud_and_what_hides_it() -> None:
    """A joint is told with the piece on its left: on which stud, in sight or hidden by what."""
    assert todo("1a")["Joint:"] == 'its right end meets 1b on stud S3 (40"), hidden by bench.'
    assert todo("3a")["Joint:"] == 'its right end meets 3b on stud S4 (56"), in sight.'
    assert "Joint:" not in todo("1b")


def test_joint_behind_trim_and_off_the_studs_is_told_so() -> None:
    """On solid backing a joint has no stud, and trim hides as a fixture does."""
    low = wall(96, 3, framing=Framing(solid=True))
    bench = ConcealedZone(id="bench", place=rectangle(60, 0, 90, 3))
    low = replace(low, trim=replace(low.trim, bottom=nm(3)), concealed=(bench,))
    pieces = (piece(low, "1a A", (0, 40), (0, 3)), piece(low, "1b B", (40, 96), (0, 3)))
    whole = job(low, [board("A", 41, 3.25), board("B", 57, 3.25)], Rules(expansion_gap_nm=0))
    laid = surface_layout(low, course(1, (0, 3), *pieces))
    told = [one.how for one in hanging_sheet(whole, laid).courses[0].pieces[0].todo if one.what == "Joint:"]
    assert told == ['its right end meets 1b at 40", hidden by the trim.']


def test_taper_notch_edges_and_shim_are_told() -> None:
    """What is special about a piece stands in its row, and only there."""
    assert todo("1a")["Taper:"] == '6" wide at the left end, 5-13/16" at the right end.'
    assert todo("2a")["Notch:"] == ('for socket, 30" from its left and 3" from below; 2-1/4" wide, 3" high.')
    assert todo("4a")["Edges:"] == "lower edge loose spline, upper edge tongue ripped off."
    assert todo("3b")["Shim:"] == '1/16" behind it.'
    assert list(todo("5a")) == ["Place:", "Nails:"]
    assert todo("5a")["Place:"] == '0" to 96", marked end to the right, back face showing.'


def test_first_and_last_course_are_watched() -> None:
    """The starter carries every other course, and the last one must fit what is left."""
    first, last = porch_sheet().courses[0], porch_sheet().courses[-1]
    assert first.watch[0].startswith('Starter: its lower edge at 0".')
    assert last.watch[0].startswith("Closing course: measure the room that is left")


def test_gap_between_courses_is_told() -> None:
    """A course that does not sit on the one before tells where its near edge comes."""
    flat = wall(96, 30, framing=Framing(solid=True))
    laid = surface_layout(
        flat,
        course(1, (0, 6), piece(flat, "1a A", (0, 96), (0, 6))),
        course(2, (12, 18), piece(flat, "2a B", (0, 96), (12, 18))),
        course(3, (18, 24)),
        bare=[rectangle(0, 18, 96, 24)],
    )
    whole = job(flat, [board("A", 97, 6.25), board("B", 97, 6.25)], Rules(expansion_gap_nm=0))
    blocks: tuple[CourseBlock, ...] = hanging_sheet(whole, laid).courses
    assert blocks[1].watch == ('Its lower edge at 12".',)
    assert blocks[2].watch == ("No piece hangs here.",)


def test_bare_places_are_told() -> None:
    """What no board was left for is told along and across."""
    sheet = hanging_sheet(porch_job(), short_porch_layout().surfaces[0])
    assert sheet.bare == ('Left bare: 0" to 84" along, 30" to 36" from the start. No board was left for it.',)


def test_closing_course_meets_the_far_side() -> None:
    """A single course is the starter, and one with a bare place behind it closes nothing."""
    (laid,), (short,) = porch_layout().surfaces, short_porch_layout().surfaces
    assert closing_course(PORCH, laid) is laid.courses[-1]
    assert closing_course(PORCH, short) is None
    assert closing_course(PORCH, replace(laid, courses=laid.courses[:1])) is None


@pytest.mark.parametrize(
    ("surface", "start", "far_edge"),
    [
        (
            wall(96, 48),
            (
                "Courses run level, from the bottom up. Their marks are measured from a level line "
                "through the lowest point of the bottom, marks along them from the left."
            ),
            "upper",
        ),
        (
            wall(96, 48, start=Edge.TOP),
            (
                "Courses run level, from the top down. Their marks are measured from a level line "
                "through the highest point of the top, marks along them from the left."
            ),
            "lower",
        ),
        (
            wall(
                48,
                96,
                outline=box_outline(48, 96),
                courses_run=Direction.VERTICAL,
                start=Edge.RIGHT,
                framing=studs(8, 40, runs=Direction.HORIZONTAL),
            ),
            (
                "Boards stand upright, from the right on. Their marks are measured from a plumb line "
                "through the outermost point of the right side, marks along them from below."
            ),
            "left",
        ),
        (
            wall(96, 48, kind=SurfaceKind.CEILING),
            (
                "Seen looking up at it, courses run across the drawing, from its bottom on. Their marks are "
                "measured square to a straight line through the outermost point of that side, marks along "
                "them from the left."
            ),
            "upper",
        ),
        (
            wall(96, 48, kind=SurfaceKind.FLOOR),
            (
                "Seen looking down on it, courses run across the drawing, from its bottom on. Their marks "
                "are measured square to a straight line through the outermost point of that side, marks "
                "along them from the left."
            ),
            "upper",
        ),
    ],
)
def test_sheet_says_where_to_start_and_measure_from(surface: Surface, start: str, far_edge: str) -> None:
    """Walls have level and plumb lines; of floors and ceilings it is told from where they are seen."""
    sheet = bare_wall(surface)
    assert sheet.intro[0] == start
    assert sheet.far_edge == far_edge


def test_sheet_says_what_the_nails_go_into() -> None:
    """Studs are listed with their marks; solid backing says so; joists are called joists."""
    framing = [line.replace("\N{NO-BREAK SPACE}", " ") for line in bare_wall(wall(60, 48)).intro]
    counted = "Studs, counted along the courses, with the marks of their centres: "
    assert f'{counted}S1 (8"), S2 (24"), S3 (40"), S4 (56").' in framing
    assert any(line.startswith("Joists,") for line in bare_wall(wall(60, 48, kind=SurfaceKind.FLOOR)).intro)
    assert any(
        line.startswith("Solid backing")
        for line in bare_wall(wall(60, 48, framing=Framing(solid=True))).intro
    )


def test_gap_is_told_only_where_the_rules_ask_for_one() -> None:
    """Nobody is told to keep nothing free."""
    assert 'Keep 1/4" free along every side and every opening.' in bare_wall(wall(60, 48)).intro
    none = bare_wall(wall(60, 48), Rules(expansion_gap_nm=0))
    assert not [line for line in none.intro if line.startswith("Keep")]


def test_boxes_are_warned_of_where_there_are_any() -> None:
    """Where a box comes through, power and flush fit are told, and who may do it."""
    assert [line for line in porch_sheet().intro if line.startswith("Boxes: power off")]
    assert not [line for line in bare_wall(wall(60, 48)).intro if line.startswith("Boxes")]


def test_layout_of_a_job_is_told_surface_by_surface() -> None:
    """The sheet carries the name of its surface."""
    assert hanging_sheet(porch_job(), layout(*porch_layout().surfaces).surfaces[0]).id == "porch"
