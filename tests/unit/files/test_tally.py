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
        ("A,6,60,1,,,,", "line 2: the board is wider than it is long: swap the width and the length"),
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
        (b"PK\x03\x04", "this is a workbook, not CSV: save it as .xlsx, with a name that ends so"),
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


@pytest.mark.parametrize(
    "above",
    [
        "Boards out of the village hall\n\n",
        "Village hall,,,\nMay,,,\n",
        "# a comment, of course\nPulled in May; all of it\n",
        "sep=,\nPulled in May\n",
    ],
)
def test_headings_may_stand_below_a_title(tally: Path, above: str) -> None:
    """People put a title above their table; what is above the headings is told."""
    reading = read(tally, f"{above}{HEADINGS}\nA,60,5,3/4\n")
    assert [board.id for board in reading.boards] == ["A"]
    (remark,) = reading.remarks
    assert remark.what.startswith("the headings stand here; what is above them is not read: ")
    assert remark.line == above.count("\n") + 1


def test_a_spreadsheet_may_say_what_parts_its_cells(tally: Path) -> None:
    """On a line of its own, above everything else."""
    reading = read(tally, "sep=;\r\nid;length;width;thickness\r\nA;60;5;3/4\r\n")
    assert ([board.id for board in reading.boards], reading.remarks) == (["A"], ())


def test_a_heading_may_go_on_over_two_lines(tally: Path) -> None:
    """As it does where the cell is narrow."""
    (board,) = read(tally, 'Board #,Length (in.),"Width\n(face)",Thk\n7,60,5,3/4\n').boards
    assert (board.id, board.width_start_nm) == ("7", 5 * INCH)


def test_a_heading_may_name_its_unit_by_a_mark(tally: Path) -> None:
    """Length" and Width [″] are in inches, whatever the job is in."""
    tally.write_text("Id,Length\",Width [″],Thickness'\nA,60,5,0.125\n", encoding="utf-8")
    (board,) = read_tally(tally, unit=Unit.MILLIMETRE).boards
    assert (board.length_nm, board.width_start_nm) == (60 * INCH, 5 * INCH)
    assert board.thickness_nm == INCH * 3 // 2


def test_mistyped_headings_are_named(tally: Path) -> None:
    """Each by the one that comes near, also when all are wrong."""
    assert problems(tally, "id,lenght,wdith,thikness\nA,60,5,3/4\n") == [
        "line 1: there is no column length: add it (or is it lenght?)",
        "line 1: there is no column width: add it (or is it wdith?)",
        "line 1: there is no column thickness: add it (or is it thikness?)",
    ]


@pytest.mark.parametrize("first", ["Total", "TOTAL:", "Grand total", "sum", "Average", "Totals of the pile"])
def test_a_row_that_sums_up_is_no_board(tally: Path, first: str) -> None:
    """It is left out, and told."""
    reading = read(tally, f"{HEADINGS}\nA,60,5,3/4\n{first},60,5,3/4\n")
    assert [board.id for board in reading.boards] == ["A"]
    assert [str(remark) for remark in reading.remarks] == [
        f"tally.csv, line 3: this row begins with “{first}” and is not read as a board"
    ]


def test_headings_that_are_repeated_are_left_out(tally: Path) -> None:
    """As they are at the top of each printed page."""
    reading = read(tally, f"{HEADINGS}\nA,60,5,3/4\n{HEADINGS.upper()}\nB,60,5,3/4\n")
    assert ([board.id for board in reading.boards], reading.remarks) == (["A", "B"], ())


def test_a_board_called_by_a_number_sign_is_asked_about(tally: Path) -> None:
    """It could be a row that somebody took out; a board must not get lost in silence."""
    (problem,) = problems(tally, "#,length,width,thickness\n#1,60,5,3/4\n# 2,60,5,3/4\n3,60,5,3/4\n")
    assert problem.startswith("line 2: “#1” begins with #, as a row does that is left out: ")
    assert problem.endswith("write 1 for the board, or # 1 to leave it out")


@pytest.mark.parametrize(
    ("row", "sentence"),
    [
        ("A,2000,5,3/4", "the length “2000” is more than any board has: check the number and its unit"),
        ("A,96,5.5,19", "the thickness “19” is more than any board has: check the number and its unit"),
        ("A,2440,140,19 mm", "the width “140” is more than any board has: check the number and its unit"),
    ],
)
def test_sizes_that_no_board_has_are_refused(tally: Path, row: str, sentence: str) -> None:
    """A wrong unit would make one board cover the whole wall."""
    assert f"line 2: {sentence}" in problems(tally, f"{HEADINGS}\n{row}\n")


def test_decimal_commas_throughout_are_told_once_and_first(tally: Path) -> None:
    """One setting mends them all, and nobody has to find it below a hundred lines."""
    rows = "".join(f"{number};2,2{number} m;139,7 mm;19 mm\n" for number in range(10, 13))
    text = f"id;length;width;thickness\n{rows}"
    first, *others = problems(tally, text)
    assert first == (
        "6 lengths hold a comma: if it is the decimal mark throughout, say decimal_comma = true in job.toml, "
        "or --decimal-comma for a tally alone"
    )
    assert len(others) == 6
    assert len(read(tally, text, decimal_comma=True).boards) == 3
    with pytest.raises(BadInputError) as caught:
        read(tally, text.replace(",", "."), decimal_comma=True)
    assert [problem.line for problem in caught.value.problems] == [2, 2, 3, 3, 4, 4]


def test_a_file_of_far_too_many_rows_is_refused(tally: Path) -> None:
    """Before anybody waits for all of them to be looked at."""
    assert problems(tally, f"{HEADINGS}\n" + "x,,,\n" * 20_000) == [
        "there are more than 20000 rows: keep the tally in a file of its own"
    ]


def test_where_bare_numbers_are_feet_sizes_across_a_board_must_say_theirs(tally: Path) -> None:
    """A thickness of 3/4 would be nine inches; with its unit, or that of its heading, it is what it says."""
    tally.write_text(f"{HEADINGS}\nA,7 1/2,5.5,3/4\n", encoding="utf-8")
    with pytest.raises(BadInputError) as caught:
        read_tally(tally, unit=Unit.FOOT)
    assert [problem.what for problem in caught.value.problems] == [
        'the width “5.5” has no unit: write 5.5" if it is inches, 5.5 mm if it is millimetres',
        "the thickness “3/4” has no unit: write 3/4\" if it is inches, 3/4' if it is feet",
    ]
    tally.write_text("id,length,width (in),thickness\nA,7 1/2,5.5,3/4 in\n", encoding="utf-8")
    (board,) = read_tally(tally, unit=Unit.FOOT).boards
    assert (board.length_nm, board.width_start_nm, board.thickness_nm) == (
        90 * INCH,
        INCH * 11 // 2,
        INCH * 3 // 4,
    )
