"""A tally that the program writes is one that it reads."""

from pathlib import Path

import pytest

from builders import TAPE, board, flaw, nm
from plankwright.files import read_tally, tally_csv, write_files
from plankwright.files.tally_csv import flaw_text, own_flaws, rows_csv
from plankwright.measure import MILLIMETRE, System, TapeStyle
from plankwright.model import Board, EdgeKind, EdgeProfile, Face, Flaw, Severity, Treatment

METRIC = TapeStyle(system=System.METRIC)


def again(tmp_path: Path, *boards: Board, tape: TapeStyle = TAPE) -> tuple[Board, ...]:
    """Write boards and read them again."""
    path = tmp_path / "tally.csv"
    write_files({path: tally_csv(boards, tape)})
    return read_tally(path, unit=None).boards


@pytest.mark.parametrize("tape", [TAPE, METRIC])
def test_what_stands_on_the_tape_reads_back_exactly(tmp_path: Path, tape: TapeStyle) -> None:
    """Sizes, taper, milling, flaws on either face, and every word."""
    unit = nm(1) if tape is TAPE else 25 * MILLIMETRE
    whole = Board(
        id="D16-1",
        length_nm=60 * unit,
        width_start_nm=6 * unit,
        width_end_nm=5 * unit,
        thickness_nm=11 * unit // 16,
        profile=EdgeProfile(kind=EdgeKind.SHIPLAP, reach_nm=unit // 4),
        flaws=(
            Flaw(start_nm=0, end_nm=2 * unit, what="rot", severity=Severity.LOST),
            Flaw(
                start_nm=3 * unit,
                end_nm=4 * unit,
                what="old paint",
                severity=Severity.BLEMISH,
                face=Face.BACK,
            ),
            Flaw(start_nm=50 * unit, end_nm=60 * unit, what="lost", severity=Severity.LOST),
        ),
        lot="dado",
        species="spruce",
        tone="light",
        note='left of D16, "the hall"',
    )
    square = Board(
        id="E", length_nm=40 * unit, width_start_nm=4 * unit, width_end_nm=4 * unit, thickness_nm=unit
    )
    assert again(tmp_path, whole, square, tape=tape) == (whole, square)


def test_sizes_are_rounded_down_and_flaws_out(tmp_path: Path) -> None:
    """A board is never tallied larger than it is, nor its sound wood."""
    odd = board("A", 60 + 1 / 32, 6 + 1 / 64, flaws=(flaw(10 + 1 / 32, 12 + 1 / 32), flaw(59, 60 + 1 / 32)))
    (read,) = again(tmp_path, odd)
    assert (read.length_nm, read.width_start_nm) == (nm(60), nm(6))
    assert [(one.start_nm, one.end_nm) for one in read.flaws] == [(nm(10), nm(12.0625)), (nm(59), nm(60))]


def test_a_flaw_at_the_very_end_is_not_lost_in_rounding(tmp_path: Path) -> None:
    """It keeps the last mark of the tape."""
    odd = board("A", 60 + 1 / 32, 6, flaws=(flaw(60, 60 + 1 / 32),))
    (read,) = again(tmp_path, odd)
    assert [(one.start_nm, one.end_nm) for one in read.flaws] == [(nm(59.9375), nm(60))]


def test_no_cell_is_a_formula(tmp_path: Path) -> None:
    """Whatever somebody called a board; and it is called so again when it is read."""
    odd = board("=1+1", 60, 6)
    assert "'=1+1" in tally_csv([odd], TAPE)
    assert [one.id for one in again(tmp_path, odd)] == ["=1+1"]


def test_no_row_is_a_formula_and_cells_may_hold_anything() -> None:
    """Commas, quotation marks and lines of their own stay in their cells."""
    text = rows_csv(("id", "note"), [("@A", 'says "old", twice'), ("B", "one\ntwo")])
    assert text == 'id,note\r\n\'@A,"says ""old"", twice"\r\nB,"one\ntwo"\r\n'


def test_a_flaw_is_written_as_people_write_it() -> None:
    """What it is before how bad it is; where that would be read as a place, the other way round."""
    old = Flaw(start_nm=0, end_nm=1, what="old paint", severity=Severity.BLEMISH, face=Face.FRONT)
    assert flaw_text(old, "3 in", "5 in") == "3 in to 5 in old paint blemish front"
    bad = Flaw(start_nm=0, end_nm=1, what="in bad shape", severity=Severity.LOST)
    assert flaw_text(bad, "3 in", "5 in") == "3 in to 5 in lost in bad shape"
    bare = Flaw(start_nm=0, end_nm=1, what="lost", severity=Severity.LOST)
    assert flaw_text(bare, "3 in", "5 in") == "3 in to 5 in lost"


def test_what_goes_without_saying_is_no_flaw_of_a_board(tmp_path: Path) -> None:
    """That treated wood is lost is read from its treatment; all else is told."""
    lost = Flaw(start_nm=0, end_nm=nm(60), what="treated (creosote), not for indoors", severity=Severity.LOST)
    rot = flaw(3, 9)
    treated = board("A", 60, 6, treatment=Treatment.CREOSOTE, flaws=(lost, rot))
    assert list(own_flaws(treated)) == [rot]
    assert list(own_flaws(board("B", 60, 6, flaws=(lost, rot)))) == [lost, rot]
    assert again(tmp_path, treated) == (treated,)


def test_a_meter_is_written_to_its_last_figure(tmp_path: Path) -> None:
    """And without an exponent, which no tally has."""
    boards = [board(str(reading), 60, 6, moisture_pct=reading) for reading in (12.3456789, 1e-05, 100.0)]
    assert again(tmp_path, *boards) == tuple(boards)
