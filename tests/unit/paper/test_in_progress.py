"""While a job is worked on, paper tells only what is still to be done."""

from dataclasses import replace

import pymupdf

from builders import nm
from in_progress import begun_job, begun_layout, happened, marked
from plankwright.draw import LETTER, wall_map
from plankwright.draw.scene import Polygon, Scene, Text
from plankwright.draw.styles import Style
from plankwright.draw.view import Page
from plankwright.layout.done import NOTHING, Done, done_on
from plankwright.model import EdgeTreatment, Piece
from plankwright.paper.cut_list import BoardBlock, cut_list
from plankwright.paper.hanging_sheet import SurfaceSheet, hanging_sheet
from plankwright.paper.work_sheets import work_sheets_pdf

WORK = marked(happened("hung", "1", "2a"), happened("cut", "3"), happened("miscut", "4b", length_nm=nm(90)))
(LAID,) = begun_layout().surfaces
DONE = done_on(begun_job(), LAID, WORK.standing)


def sheet(far: EdgeTreatment | None = None) -> SurfaceSheet:
    """Give the hanging sheet; with another far edge to the piece that hangs below all."""
    courses = tuple(
        replace(
            row,
            pieces=tuple(
                one if far is None or one.label != "1a" else replace(one, far=far) for one in row.pieces
            ),
        )
        for row in LAID.courses
    )
    return hanging_sheet(begun_job(), replace(LAID, courses=courses), DONE)


def block(which: str) -> BoardBlock:
    """Give the block of one board in the cut list."""
    (found,) = [
        each for each in cut_list(begun_job(), begun_layout(), 180.0, WORK.standing) if each.id == which
    ]
    return found


def test_courses_that_hang_are_not_told_of() -> None:
    """Of the one that was begun the rest is, with what hangs of it."""
    told = sheet()
    assert [course.number for course in told.courses] == [2, 3, 4]
    assert [row.label for row in told.courses[0].pieces] == ["2b"]
    assert told.courses[0].watch[0] == "2a hangs already."


def test_what_is_still_to_be_done_where_a_piece_hangs_is_told_with_the_next_course() -> None:
    """And not what was done before it was hung."""
    assert not any("where it hangs" in line for line in sheet().courses[0].watch)
    told = sheet(far=EdgeTreatment.FACE_NAIL).courses[0].watch
    assert told[1] == "1a, where it hangs: it is nailed through the face at its upper edge."
    hanging = {"1a": piece_with(EdgeTreatment.FACE_NAIL)}
    before = hanging_sheet(
        begun_job(),
        replace(
            LAID,
            courses=(replace(LAID.courses[0], pieces=(hanging["1a"],)), *LAID.courses[1:]),
        ),
        Done(hung=hanging),
    )
    assert not any("where it hangs" in line for line in before.courses[0].watch)


def piece_with(far: EdgeTreatment) -> Piece:
    """Give the piece that hangs below all, its far edge treated somehow."""
    return replace(LAID.pieces[0], far=far)


def test_the_cut_list_leaves_out_what_is_cut() -> None:
    """What is left of a board is a block of its own, with its own size and marks."""
    blocks = [each.id for each in cut_list(begun_job(), begun_layout(), 180.0, WORK.standing)]
    assert set(blocks) == {"long rest 1", "D", "4b of long"}
    assert block("4b of long").size == '7\' 6" × 6"'
    assert [(step.kind, step.mark) for step in block("4b of long").steps] == [("Crosscut", 'at 56"')]


def test_what_is_cut_already_is_told_with_its_course() -> None:
    """But not of what has to be cut again."""
    second, third, fourth = sheet().courses
    assert "3a is cut already." in third.watch
    assert not any("cut already" in line for line in (*second.watch, *fourth.watch))


def shaded(scene: Scene, style: Style) -> int:
    """Count the pieces that are shaded in a style."""
    return sum(isinstance(item, Polygon) and item.style is style for item in scene.items)


def test_what_hangs_and_what_is_cut_is_shaded_on_the_map_and_told_in_its_key() -> None:
    """A hatch for each piece, another for what hangs; what has to be cut again has none."""
    scene = wall_map(begun_job(), LAID, LETTER, done=DONE)
    assert shaded(scene, Style.HANGING) == len(DONE.hung) == 2
    assert shaded(scene, Style.CUT_ALREADY) == len(DONE.cut) == 1
    said = [span.text for item in scene.items if isinstance(item, Text) for span in item.spans]
    assert {"hangs already", "cut already"} <= set(said)
    assert scene.description.endswith("Hangs already: 1a, 2a. Cut already: 3a.")
    plain = wall_map(begun_job(), LAID, LETTER)
    assert shaded(plain, Style.HANGING) == shaded(plain, Style.CUT_ALREADY) == 0
    assert "already" not in plain.description


def test_the_table_beside_a_small_map_leaves_out_what_hangs() -> None:
    """Its room is for what is still to be found."""
    page = Page(name="Card", width=90, height=75, margin=5)
    tables = []
    for done in (NOTHING, DONE):
        scene = wall_map(begun_job(), LAID, page, done=done)
        said = [item.spans[0].text.strip() for item in scene.items if isinstance(item, Text)]
        tables.append(said[said.index("Small pieces") + 1 :])
    assert tables == [["1a", "2a", "2b", "3a", "4a", "4b"], ["2b", "3a", "4a", "4b"]]


def test_where_all_hangs_both_lists_say_so() -> None:
    """Rather than to stand empty."""
    standing = marked(happened("hung", "1", "2", "3", "4")).standing
    with pymupdf.open(
        stream=work_sheets_pdf(begun_job(), begun_layout(), LETTER, standing=standing)
    ) as sheets:
        printed = "".join(page.get_text() for page in sheets)
    assert "Nothing is left to be sawn." in printed
    assert "Nothing is left to be hung." in printed
    with pymupdf.open(stream=work_sheets_pdf(begun_job(), begun_layout(), LETTER)) as sheets:
        assert "Nothing is left" not in "".join(page.get_text() for page in sheets)
