"""What a tally says of moisture, nails and treatment."""

from pathlib import Path

import pytest

from plankwright.errors import BadInputError
from plankwright.files.notation import Notation
from plankwright.files.tally import gather_boards, read_tally
from plankwright.files.tally_csv import tally_csv
from plankwright.measure import System, TapeStyle, Unit
from plankwright.model import Board, Lot, NailsLeft, Rules, Severity, Treatment

HEADINGS = "id,lot,length,width,thickness,Moisture %,Nails,Treated with,flaws"


def boards(tmp_path: Path, *rows: str, lots: tuple[Lot, ...] = ()) -> tuple[Board, ...]:
    """Read rows of a tally."""
    path = tmp_path / "tally.csv"
    path.write_text("\n".join((HEADINGS, *rows)), encoding="utf-8")
    found, report = gather_boards(path, Notation(unit=Unit.INCH), Rules(), lots)
    if report.problems:
        raise BadInputError(report.problems)
    return found


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("in", NailsLeft.IN),
        ("Pulled", NailsLeft.PULLED),
        ("de-nailed", NailsLeft.PULLED),
        ("some nipped", NailsLeft.NIPPED),
        ("scanned", NailsLeft.CHECKED),
        ("", None),
    ],
)
def test_nails(tmp_path: Path, written: str, meant: NailsLeft | None) -> None:
    """As people write it, or not at all."""
    (found,) = boards(tmp_path, f"A,stage,60,6,1,,{written},,")
    assert found.nails is meant


@pytest.mark.parametrize(("written", "meant"), [("11.5", 11.5), ("12 %", 12.0), ("", None), ("0", 0.0)])
def test_moisture(tmp_path: Path, written: str, meant: float | None) -> None:
    """As the meter shows it."""
    (found,) = boards(tmp_path, f"A,stage,60,6,1,{written},,,")
    assert found.moisture_pct == meant


def test_a_treated_board_is_lost_from_end_to_end(tmp_path: Path) -> None:
    """No part of it can ever hang; its own flaws stay told."""
    (found,) = boards(tmp_path, "A,stage,60,6,1,,,CCA,0-5 rot")
    assert found.treatment is Treatment.ARSENATE
    assert (found.flaws[0].start_nm, found.flaws[0].end_nm) == (0, found.length_nm)
    assert all(flaw.severity is Severity.LOST for flaw in found.flaws)
    assert len(found.flaws) == 2


def test_a_treated_lot(tmp_path: Path) -> None:
    """Its boards are treated unless one of them says otherwise."""
    lots = (Lot(name="Stage", treatment=Treatment.CREOSOTE),)
    rows = ("A,stage,60,6,1,,,,", "B,stage,60,6,1,,,none,", "C,floor,60,6,1,,,,")
    found = boards(tmp_path, *rows, lots=lots)
    assert [board.treatment for board in found] == [Treatment.CREOSOTE, Treatment.NONE, Treatment.NONE]
    assert [bool(board.flaws) for board in found] == [True, False, False]
    assert [board.untreated for board in found] == [False, True, False]


@pytest.mark.parametrize(
    ("row", "told"),
    [
        ("A,stage,60,6,1,wet,,,", "the moisture is “wet” but must be per cent of dry mass"),
        ("A,stage,60,6,1,300,,,", "the moisture is “300” but must be per cent of dry mass"),
        ("A,stage,60,6,1,,many,,", "the nails is “many” but must be in, pulled, nipped or checked"),
        ("A,stage,60,6,1,,,green,", "the treatment is “green” but must be none, arsenate, creosote"),
    ],
)
def test_what_cannot_be_read_is_told(tmp_path: Path, row: str, told: str) -> None:
    """One sentence each."""
    with pytest.raises(BadInputError) as trouble:
        boards(tmp_path, row)
    assert [problem.what.startswith(told) for problem in trouble.value.problems] == [True]


def test_treated_boards_and_unknown_lots_are_remarked_on(tmp_path: Path) -> None:
    """Somebody should look."""
    path = tmp_path / "tally.csv"
    path.write_text(f"{HEADINGS}\nA,stage,60,6,1,,,CCA,\n", encoding="utf-8")
    _, report = gather_boards(path, Notation(unit=Unit.INCH), Rules(), (Lot(name="stge"),))
    told = [remark.what for remark in report.remarks]
    assert "board A is treated (arsenate): it is kept out of the house and counts as lost" in told
    assert any("no board is of lot stge" in one and "did you mean stage?" in one for one in told)


def test_a_tally_reads_back_with_all_of_it(tmp_path: Path) -> None:
    """What is left over keeps its readings, and a treated board is written without its made-up flaw."""
    found = boards(tmp_path, "A,stage,60,6,1,11.5,nipped,,", "B,stage,60,6,1,,,penta,0-5 rot")
    path = tmp_path / "again.csv"
    path.write_text(tally_csv(found, TapeStyle(system=System.IMPERIAL)), encoding="utf-8")
    assert read_tally(path, unit=Unit.INCH).boards == found


def test_an_untreated_board_of_a_treated_lot_reads_back_as_one(tmp_path: Path) -> None:
    """Its offcuts as well must not be taken for treated wood."""
    lots = (Lot(name="stage", treatment=Treatment.CREOSOTE),)
    found = boards(tmp_path, "B,stage,60,6,1,,,none,", lots=lots)
    path = tmp_path / "again.csv"
    path.write_text(tally_csv(found, TapeStyle(system=System.IMPERIAL)), encoding="utf-8")
    again, _ = gather_boards(path, Notation(unit=Unit.INCH), Rules(), lots)
    assert again == found
