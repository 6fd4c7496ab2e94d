"""Tallies read row by row, with everything that is wrong or doubtful about them."""

from pathlib import Path

import pytest

from plankwright.errors import BadInputError, FileTroubleError
from plankwright.files import TallyReading, read_tally
from plankwright.measure import INCH, MILLIMETRE, Unit
from plankwright.model import Board, EdgeKind, EdgeProfile

HEADINGS = "id,length,width,thickness"


@pytest.fixture
def tally(tmp_path: Path) -> Path:
    """Give the path of a tally that is not written yet."""
    return tmp_path / "tally.csv"


def read(path: Path, text: str | bytes, *, decimal_comma: bool = False) -> TallyReading:
    """Write a tally in inches and read it."""
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return read_tally(path, unit=Unit.INCH, decimal_comma=decimal_comma)


def problems(path: Path, text: str | bytes) -> list[str]:
    """Read a tally that must be refused, and give its problems."""
    with pytest.raises(BadInputError) as caught:
        read(path, text)
    return [
        str(problem).removeprefix("tally.csv, ").removeprefix("tally.csv: ")
        for problem in caught.value.problems
    ]


def remarks(path: Path, text: str | bytes) -> list[str]:
    """Read a tally and give its remarks."""
    return [
        str(remark).removeprefix("tally.csv, ").removeprefix("tally.csv: ")
        for remark in read(path, text).remarks
    ]


def test_every_column_is_read(tally: Path) -> None:
    """A board is what its row says."""
    text = (
        "Board,Lot,Species,Length,Width,Width other end,Thickness,Edge,Tongue,Flaws,Tone,Note\n"
        "A1,hall floor,pine,7' 3-5/8\",5-1/2,5-1/4,3/4,T&G,1/4,0-3 split,dark,from the aisle\n"
    )
    (board,) = read(tally, text).boards
    (flaw,) = board.flaws
    assert (board.id, board.lot, board.species, board.tone, board.note) == (
        "A1",
        "hall floor",
        "pine",
        "dark",
        "from the aisle",
    )
    assert (board.length_nm, board.width_start_nm, board.width_end_nm, board.thickness_nm) == (
        INCH * 701 // 8,
        INCH * 11 // 2,
        INCH * 21 // 4,
        INCH * 3 // 4,
    )
    assert board.profile == EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=INCH // 4)
    assert (flaw.start_nm, flaw.end_nm, flaw.what) == (0, 3 * INCH, "split")


def test_headings_may_name_the_unit_of_their_column(tally: Path) -> None:
    """Bare numbers are in the unit of the heading, else in that of the job; text may name its own."""
    text = "id,length (ft),width,thickness_mm\nA,8,6,19\nB,96 in,150 mm,19\n"
    first, second = read(tally, text).boards
    assert (first.length_nm, first.width_start_nm, first.thickness_nm) == (
        96 * INCH,
        6 * INCH,
        19 * MILLIMETRE,
    )
    assert (second.length_nm, second.width_start_nm) == (96 * INCH, 150 * MILLIMETRE)


def test_a_comma_can_be_the_decimal_mark(tally: Path) -> None:
    """As the job says."""
    (board,) = read(tally, "id;length;width;thickness\nA;2,4 m;150 mm;19 mm\n", decimal_comma=True).boards
    assert board.length_nm == 2400 * MILLIMETRE


@pytest.mark.parametrize(
    ("written", "kind"),
    [
        ("", EdgeKind.SQUARE),
        ("Square", EdgeKind.SQUARE),
        ("square-edged", EdgeKind.SQUARE),
        ("T&G", EdgeKind.TONGUE_AND_GROOVE),
        ("tongue-and-groove", EdgeKind.TONGUE_AND_GROOVE),
        ("Ship-lap", EdgeKind.SHIPLAP),
    ],
)
def test_edges_are_known_by_usual_names(tally: Path, written: str, kind: EdgeKind) -> None:
    """Case and hyphens make no difference; nothing means square."""
    size = "" if kind is EdgeKind.SQUARE else "1/4"
    (board,) = read(tally, f"{HEADINGS},edge,lap\nA,96,6,1,{written},{size}\n").boards
    assert board.profile.kind is kind


def names(boards: tuple[Board, ...]) -> list[str]:
    """Give the ids of boards."""
    return [board.id for board in boards]


def test_like_boards_are_numbered(tally: Path) -> None:
    """A quantity makes so many boards; one is no number."""
    reading = read(tally, f"{HEADINGS},quantity\nA,96,6,1,3\nB,96,6,1,1\nC,96,6,1,\n")
    assert names(reading.boards) == ["A-1", "A-2", "A-3", "B", "C"]


def test_boards_without_an_id_are_called_after_their_row(tally: Path) -> None:
    """And somebody is told to write that on them."""
    text = f"{HEADINGS},quantity\nA,96,6,1,\n\n,96,6,1,\n,96,6,1,2\n"
    assert names(read(tally, text).boards) == ["A", "r4", "r5-1", "r5-2"]
    assert remarks(tally, text) == [
        "line 4: rows without an id: 2; their boards are called after the row, like r4: write that on them"
    ]


@pytest.mark.parametrize(
    ("row", "problem"),
    [
        ("A,,6,1,,,,", "line 2: the length is missing: measure it and write it here"),
        ("A,96", "line 2: the width is missing: measure it and write it here"),
        ("A,0,6,1,,,,", "line 2: the length is 0: measure it and write it here"),
        ("A,96,6,x,,,,", "line 2: the thickness “x” is not a length: write it like"),
        ('A,96,",1,,,,', "line 2: the width is a ditto mark: write it out"),
        ("A,6,96,1,,,,", "line 2: the board is wider than it is long: swap the width and the length"),
        ("A,96,6,1,round,,,", "line 2: the edge is “round” but must be square, tongue-and-groove or shiplap"),
        (
            "A,96,6,1,shiplapp,,,",
            "line 2: the edge is “shiplapp” but must be square, tongue-and-groove or shiplap (did",
        ),
        (
            "A,96,6,1,tg,,,",
            "line 2: the size of the tongue is missing: measure how far it reaches beyond the face",
        ),
        ("A,96,6,1,shiplap,,,", "line 2: the size of the lap is missing"),
        (
            "A,96,6,1,square,1/4,,",
            "line 2: a square edge has no tongue or lap: give the edge as tongue-and-groove",
        ),
        ("A,96,6,1,,,99 rot,", "line 2: flaw “99 rot” reaches beyond the end of the board"),
        ("A,96,6,1,,,,some", "line 2: the quantity is “some” but must be a whole number from 1 to 500"),
        ("A,96,6,1,,,,0", "line 2: the quantity is “0” but must be a whole number from 1 to 500"),
        (
            "A,96,6,1,,,,9999999999",
            "line 2: the quantity is “9999999999” but must be a whole number from 1 to 500",
        ),
        (
            f"{'A' * 31},96,6,1,,,,",
            "line 2: the id “AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA” is no short mark: use up to 30",
        ),
        (
            "A,96,6,1,,,0-3 rot, 5-6 rot,2",
            "line 2: there are 9 cells but 8 headings: put a cell that holds a comma",
        ),
        (
            "A,96,6,1,,,,2\nA-2,96,6,1",
            "line 3: id A-2 is used before, in line 2: no two boards may share one",
        ),
    ],
)
def test_each_problem_of_a_row_is_told(tally: Path, row: str, problem: str) -> None:
    """With its line, what is wrong and how to mend it; and nothing else is told."""
    told = problems(tally, f"{HEADINGS},edge,tongue,flaws,quantity\n{row}\n")
    assert told[0].startswith(problem)
    assert len(told) == (2 if row == "A,96" else 1)


@pytest.mark.parametrize(
    ("content", "problem"),
    [
        (b"", "the tally is empty: give it a row of headings and a row for each board"),
        (
            f"# only a comment\n{HEADINGS}\n".encode(),
            "the tally holds no boards: give each one a row below the headings",
        ),
        (b"id,width,thickness\nA,6,1\n", "line 1: there is no column length: add it"),
        (b"PK\x03\x04", "this is a workbook, not CSV: let its name end in .xlsx"),
        (b"a\x00b", "this is no text file: save the tally as CSV in UTF-8"),
    ],
)
def test_each_problem_of_a_whole_tally_is_told(tally: Path, content: bytes, problem: str) -> None:
    """Empty ones, such without boards or headings, and files that are something else."""
    assert problems(tally, content) == [problem]


def test_every_problem_is_told_at_once(tally: Path) -> None:
    """All rows are read, and all cells of a row."""
    told = problems(tally, f"{HEADINGS},flaws\nA,x,y,1,\nB,96,6,1,9 odd; 99 rot\nC,96,6,,\n")
    assert [problem.split(":")[0] for problem in told] == ["line 2", "line 2", "line 3", "line 3", "line 4"]


def test_far_too_many_boards_are_told(tally: Path) -> None:
    """Before the machine drowns in them."""
    rows = "".join(f"A{number},96,6,1,500\n" for number in range(30))
    assert problems(tally, f"{HEADINGS},quantity\n{rows}") == [
        "line 22: there are more than 10000 boards up to here: check the quantities"
    ]


@pytest.mark.parametrize(
    ("text", "remark"),
    [
        (f"{HEADINGS},price\nA,96,6,1,9", "line 1: these columns are not read: “price”"),
        (f"{HEADINGS}\nA,96,6,1\na,96,6,1", "line 3: id a is easily taken for A, in line 2"),
        (
            f"{HEADINGS},note\nA,96,6,1,öl".encode("cp1252"),
            "the file is not UTF-8 and was read as Windows text: look whether marks such as ½ came through",
        ),
    ],
)
def test_what_is_doubtful_is_remarked(tally: Path, text: str | bytes, remark: str) -> None:
    """It does not stop the reading."""
    assert remarks(tally, text) == [remark]


def test_a_missing_file_is_file_trouble(tally: Path) -> None:
    """Not bad input."""
    with pytest.raises(FileTroubleError, match="is not there: check the name"):
        read_tally(tally, unit=None)


def test_without_a_unit_every_length_names_its_own(tally: Path) -> None:
    """A lone tally is not guessed at."""
    tally.write_text(f"{HEADINGS}\nA,96 in,6,1 in\n", encoding="utf-8")
    with pytest.raises(BadInputError, match="the width “6” has no unit"):
        read_tally(tally, unit=None)
