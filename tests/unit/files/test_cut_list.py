"""The cut list as CSV: a row a step, by the standard, and no cell that a spreadsheet would run."""

import csv
import io
from collections.abc import Callable
from dataclasses import replace

import openpyxl
import pytest

from builders import board, course, job, layout, piece, rectangle, surface_layout, wall
from plankwright.files import cut_list_csv, cut_list_xlsx, layout_to_json
from plankwright.files.cut_list import HEADINGS, KEEP, cuts_csv
from plankwright.layout.sawing import saw_boards
from plankwright.measure import INCH, System, TapeStyle
from plankwright.model import BoardCuts, Cut, CutKind, CutOut, Framing, Job, Layout, Rules
from porch import porch_job, porch_layout

WALL = wall(
    90,
    10,
    framing=Framing(solid=True),
    cut_outs=(CutOut(id="socket", place=rectangle(20, 2, 22, 6), what="socket"),),
)


def laid_out(name: str = "A", lot: str = "") -> tuple[Job, Layout]:
    """Give a wall of two courses out of two boards, the first of which must be ripped and notched."""
    laid = surface_layout(
        WALL,
        course(1, (0, 5), piece(WALL, f"1a {name}", (0, 90), (0, 5))),
        course(2, (5, 10), piece(WALL, "2a B", (0, 90), (5, 10))),
    )
    boards = [board(name, 120, 8, lot=lot), board("B", 96, 5.25)]
    return job(WALL, boards, Rules(expansion_gap_nm=0)), layout(laid)


def rows(the_job: Job, the_layout: Layout) -> list[dict[str, str]]:
    """Read the cut list back with a standard reader."""
    return list(csv.DictReader(io.StringIO(cut_list_csv(the_job, the_layout), newline="")))


def test_every_cut_and_every_offcut_has_its_row() -> None:
    """Board by board, steps counted from 1, in the order of work."""
    the_job, the_layout = laid_out()
    steps = [
        (of_board.board_id, str(step))
        for of_board in saw_boards(the_job, the_layout)
        for step in range(1, len(of_board.cuts) + len(of_board.offcuts) + 1)
    ]
    assert [(row["board"], row["step"]) for row in rows(the_job, the_layout)] == steps
    assert any(row["do"] == KEEP for row in rows(the_job, the_layout))


def test_the_headings_come_first_and_rows_end_as_the_standard_says() -> None:
    """By RFC 4180: CRLF behind every row, and inch marks doubled within quotes."""
    text = cut_list_csv(*laid_out())
    assert text.startswith(",".join(HEADINGS) + "\r\n")
    assert text.endswith("\r\n")
    assert text.count("\n") == text.count("\r\n")
    assert '"90"""' in text


def test_the_piece_that_a_cut_frees_is_told_with_its_size() -> None:
    """In inches, since nobody adds feet up at the saw."""
    (freeing,) = [row for row in rows(*laid_out()) if row["frees"] == "1a"]
    assert (freeing["length"], freeing["width"]) == ('90"', '5"')


def test_two_pieces_that_one_cut_frees_have_a_size_each() -> None:
    """In the order of their names."""
    the_job, the_layout = laid_out()
    both = Cut(
        kind=CutKind.CROSSCUT,
        at_nm=90 * INCH,
        other_at_nm=90 * INCH,
        from_nm=0,
        to_nm=8 * INCH,
        yields=("1a", "2a"),
        what="part both",
    )
    cuts = BoardCuts(board_id="A", cuts=(both,), piece_labels=("1a", "2a"), offcuts=())
    (row,) = csv.DictReader(io.StringIO(cuts_csv(the_job, the_layout, (cuts,)), newline=""))
    assert (row["frees"], row["length"], row["width"]) == ("1a + 2a", '90" + 90"', '5" + 5"')


def test_notches_are_told_as_the_piece_hangs() -> None:
    """With their size and place on the piece."""
    notches = [row for row in rows(*laid_out()) if row["do"] == "notch"]
    assert [(row["piece"], row["note"]) for row in notches] == [
        ("1a", 'socket: 2" wide, 3" high, 20" from its left end, 2" from its lower edge, as it hangs'),
        ("2a", 'socket: 2" wide, 1" high, 20" from its left end, 0" from its lower edge, as it hangs'),
    ]


def test_marks_are_those_of_the_tape() -> None:
    """A metric job has millimetres."""
    the_job, the_layout = laid_out()
    metric = replace(the_job, tape=TapeStyle(system=System.METRIC))
    assert {row["length"] for row in rows(metric, the_layout) if row["frees"] == "1a"} == {"2286 mm"}


@pytest.mark.parametrize("start", ["=", "+", "-", "@"])
def test_no_cell_is_taken_for_a_formula(start: str) -> None:
    """What somebody wrote on a board is text, whatever it begins with."""
    name = f"{start}1+1"
    assert {row["board"] for row in rows(*laid_out(name))} == {f"'{name}", "B"}
    assert {row["lot"] for row in rows(*laid_out("A", lot=f'{start}cmd,"x"'))} == {f'\'{start}cmd,"x"', ""}


def test_the_porch_is_cut_as_before(golden: Callable[[str, str], None]) -> None:
    """Angled ends, notches, a taper, a tongue ripped off, and offcuts, all in one."""
    golden("porch_cut_list.csv", cut_list_csv(porch_job(), porch_layout()))


def test_the_porch_is_written_as_before(golden: Callable[[str, str], None]) -> None:
    """The layout as JSON."""
    golden("porch_layout.json", layout_to_json(porch_layout()))


def test_the_workbook_holds_what_the_csv_does() -> None:
    """Cell by cell; steps are numbers."""
    the_job, the_layout = laid_out(name="=A", lot="=1+1")
    (sheet,) = openpyxl.load_workbook(io.BytesIO(cut_list_xlsx(the_job, the_layout))).worksheets
    headings, *written = ([cell.value for cell in row] for row in sheet.iter_rows())
    assert headings == list(HEADINGS)
    told = [["" if cell is None else str(cell) for cell in row] for row in written]
    assert told == [list(row.values()) for row in rows(the_job, the_layout)]
    assert [row[2] for row in written if row[0] == "B"] == list(
        range(1, 1 + sum(r[0] == "B" for r in written))
    )
