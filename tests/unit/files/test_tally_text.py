"""Rows of CSV as spreadsheets save it and as people type it."""

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plankwright.files.headings import is_heading
from plankwright.files.tally_text import decoded, rows_of

HEADINGS = "id,length,width,note"


def rows(text: str) -> list[list[str]]:
    """Give the cells of each row."""
    return [list(row.cells) for row in rows_of(text, is_heading)]


@pytest.mark.parametrize(
    ("line", "cells"),
    [
        pytest.param("A1,96,5,", ["A1", "96", "5", ""], id="plain"),
        pytest.param(" A1 , 96 ,5, x ", ["A1", "96", "5", "x"], id="blanks around"),
        pytest.param('A1,"7\' 3-5/8""",5,x', ["A1", "7' 3-5/8\"", "5", "x"], id="by the standard"),
        pytest.param('A1,7\' 3-5/8",5-1/2",x', ["A1", "7' 3-5/8\"", '5-1/2"', "x"], id="bare inch marks"),
        pytest.param('A1,"7\' 3-5/8"",5,x', ["A1", "7' 3-5/8\"", "5", "x"], id="inch mark not doubled"),
        pytest.param('A1,"7\' 3"","5-1/2"",x', ["A1", "7' 3\"", '5-1/2"', "x"], id="not doubled twice"),
        pytest.param('"A1","96","5","a, b"', ["A1", "96", "5", "a, b"], id="commas in quotes"),
        pytest.param(
            'A1,96,5,"0-3"" rot, 5-6"" split"', ["A1", "96", "5", '0-3" rot, 5-6" split'], id="both"
        ),
        pytest.param('A1,",5,x', ["A1", '"', "5", "x"], id="ditto mark"),
        pytest.param('A1,96,5,she said "cut"', ["A1", "96", "5", 'she said "cut"'], id="quotes inside"),
        pytest.param('A1,96,5, "x" ', ["A1", "96", "5", "x"], id="blanks around quotes"),
        pytest.param("A1,96", ["A1", "96"], id="cells left out"),
        pytest.param("A1,96,5,x,y", ["A1", "96", "5", "x", "y"], id="cells too many"),
        pytest.param('A1,96,5,"two\nlines"', ["A1", "96", "5", "two\nlines"], id="two lines in a cell"),
        pytest.param(
            'A1,96,"two\n\nlines, far","x"', ["A1", "96", "two\n\nlines, far", "x"], id="a gap in a cell"
        ),
        pytest.param('A1,96,5,"never closed', ["A1", "96", "5", '"never closed'], id="never closed"),
    ],
)
def test_each_way_of_writing_a_row_is_read(line: str, cells: list[str]) -> None:
    """A stray inch mark never swallows the next row."""
    assert rows(f"{HEADINGS}\n{line}\nB2,48,4,") == [HEADINGS.split(","), cells, ["B2", "48", "4", ""]]


def test_a_stray_mark_never_takes_the_next_rows_along() -> None:
    """Not even when a later one would close it."""
    text = f'{HEADINGS}\nA1,96,5,"oops\nB2,48,4,x\nC3,36,5,4"\nD4,24,"4",y'
    assert [row[0] for row in rows(text)] == ["id", "A1", "B2", "C3", "D4"]


@pytest.mark.parametrize("delimiter", [",", ";", "\t"])
def test_cells_are_parted_by_what_parts_the_headings(delimiter: str) -> None:
    """Comma, semicolon or tab; the others may stand in cells."""
    text = "\n".join(("id,length,width".replace(",", delimiter), delimiter.join(("A", "1", "x"))))
    assert rows(text) == [["id", "length", "width"], ["A", "1", "x"]]


def test_a_comma_stays_in_its_cell_where_semicolons_part() -> None:
    """Decimal commas need no quotes there."""
    assert rows("id;length\nA;2,4 m") == [["id", "length"], ["A", "2,4 m"]]


def test_empty_cells_stay_apart_where_tabs_part() -> None:
    """Blanks around a cell are dropped, tabs are not blanks."""
    assert rows("id\tlength\twidth\tnote\nA\t\t5\t\n\t9\t\tx") == [
        ["id", "length", "width", "note"],
        ["A", "", "5", ""],
        ["", "9", "", "x"],
    ]


def test_comments_and_empty_rows_are_left_out() -> None:
    """Lines keep their numbers, before and after the headings."""
    text = "# The pile, in the yard\n\n#,length\n# A, 9\r\nA,9\r,\n  \nB,8"
    found = [(row.number, list(row.cells)) for row in rows_of(text, is_heading)]
    assert found == [(3, ["#", "length"]), (5, ["A", "9"]), (8, ["B", "8"])]


CELLS = st.text(st.characters(codec="utf-8", exclude_characters="\x00\r\n#"), max_size=8).map(str.strip)


@given(st.lists(st.lists(CELLS, min_size=4, max_size=4).filter(any), max_size=5), st.sampled_from(",;\t"))
def test_what_a_spreadsheet_saves_comes_back(table: list[list[str]], delimiter: str) -> None:
    """Anything that the csv module writes by RFC 4180 is read back cell for cell."""
    text = io.StringIO()
    writer = csv.writer(text, delimiter=delimiter, quoting=csv.QUOTE_ALL)
    writer.writerows([["id", "length", "width", "note"], *table])
    assert rows(text.getvalue())[1:] == table


@given(st.text())
def test_any_text_gives_rows(text: str) -> None:
    """Nothing that somebody types stops the reading, and no row is read twice."""
    numbers = [row.number for row in rows_of(text, is_heading)]
    assert numbers == sorted(set(numbers))


@pytest.mark.parametrize(
    ("content", "text", "guessed"),
    [
        ("½ öl".encode(), "½ öl", False),
        ("½ öl".encode("utf-8-sig"), "½ öl", False),
        ("½ öl".encode("utf-16"), "½ öl", False),
        ("½ öl".encode("cp1252"), "½ öl", True),
    ],
)
def test_encodings_of_spreadsheets_are_read(content: bytes, text: str, guessed: bool) -> None:  # noqa: FBT001 - from the table
    """UTF-8, UTF-16 with its mark, and the code page of Windows, which is a guess."""
    assert decoded(content) == (text, guessed)


@pytest.mark.parametrize("content", [b"a\x00b", b"\x81\x8d", b"\xff\xfe\x00"])
def test_bytes_that_are_no_text_are_refused(content: bytes) -> None:
    """They are not read as something else."""
    with pytest.raises(ValueError, match=r"no text|decode"):
        decoded(content)
