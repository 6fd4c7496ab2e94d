"""Boards brought along in a spreadsheet."""

import io

import pytest
from openpyxl import Workbook

from builders import board, nm
from kept_jobs import bare_job
from plankwright import files
from plankwright.errors import BadInputError, FileTroubleError
from plankwright.model import Treatment
from plankwright.workshop.jobs.bring_boards import BroughtBoards, add_brought, bring_boards
from plankwright.workshop.jobs.kept import RefusedError

CSV = "id,lot,length,width,thickness\nA,floor,97,5-1/4,3/4\nB,stage,44,6,3/4\n"
DEFINITION = {
    "name": "hall",
    "units": "inches",
    "surface": [],
    "lot": [{"name": "Stage", "treatment": "creosote"}],
}
READING = files.read_definition(DEFINITION)


def _brought(name: str = "pile.csv", content: str | bytes = CSV) -> BroughtBoards:
    return bring_boards(files, READING, name, content if isinstance(content, bytes) else content.encode())


def test_boards_are_read_as_the_job_writes_lengths() -> None:
    """Here in inches."""
    first, _ = _brought().boards
    assert (first.id, first.length_nm, first.lot) == ("A", nm(97), "floor")


def test_boards_of_a_treated_lot_are_treated() -> None:
    """The job knows that, and the file does not say otherwise."""
    _, second = _brought().boards
    assert second.treatment is Treatment.CREOSOTE


def test_a_workbook_is_read_too() -> None:
    """Whatever capitals its name has."""
    book = Workbook()
    for row in (("id", "length", "width", "thickness"), ("A", 97, 5.25, 0.75)):
        book.worksheets[0].append(row)
    content = io.BytesIO()
    book.save(content)
    assert [one.length_nm for one in _brought("PILE.XLSX", content.getvalue()).boards] == [nm(97)]


def test_what_is_doubtful_about_the_file_is_told() -> None:
    """What is about a board is told with the tally."""
    told = _brought(content=f"{CSV}Z,floor,300,20,3/4\n".replace("lot", "colour of the sky")).remarks
    assert [remark.what for remark in told] == ["these columns are not read: “colour of the sky”"]


def test_problems_come_with_their_rows() -> None:
    """All of them together."""
    with pytest.raises(BadInputError) as refusal:
        _brought(content=CSV.replace("97", "8x").replace("44", "9y"))
    assert [problem.place for problem in refusal.value.problems] == ["line 2", "line 3"]


@pytest.mark.parametrize("name", ["pile.pdf", "pile", "", "../../pile.toml"])
def test_other_files_are_refused_with_what_to_choose(name: str) -> None:
    """By their names."""
    with pytest.raises(FileTroubleError, match=r"choose one whose name ends in \.csv or \.xlsx"):
        _brought(name)


def test_brought_boards_come_behind_those_that_are_there() -> None:
    """In the order of the file."""
    kept = add_brought(bare_job("hall", board("Z", 97, 5)), _brought().boards)
    assert [one.id for one in kept.boards] == ["Z", "A", "B"]


def test_boards_called_as_others_are_refused() -> None:
    """None is added then; of many a few are named."""
    many = [board(f"A{number}", 97, 5) for number in range(9)]
    with pytest.raises(RefusedError, match="called A0 are in"):
        add_brought(bare_job("hall", *many[:1]), many)
    with pytest.raises(RefusedError, match="A5 and 3 more are in"):
        add_brought(bare_job("hall", *many), many)
