"""The tally as it is looked at."""

from dataclasses import replace

import pytest

from builders import TAPE, board, flaw, nm
from kept_jobs import bare_job
from plankwright import files
from plankwright.errors import Problem
from plankwright.model import Board, Face, Severity
from plankwright.workshop.jobs.kept import KeptJob
from plankwright.workshop.jobs.look_at_tally import (
    WITHOUT_LOT,
    TallyView,
    doubts_about,
    look_at_tally,
    row_of,
    size_of,
)

BOARDS = (
    board("F1", 97, 5, lot="Hall", note="old varnish"),
    board("F2", 97, 5, lot="hall "),
    board("D1", 44, 6, lot="dado"),
    board("f12", 44, 6),
)
KEPT: KeptJob = bare_job("hall", *BOARDS)


def _ids(view: TallyView) -> list[str]:
    return [row.id for row in view.rows]


def test_the_newest_board_comes_first() -> None:
    """All of them are there."""
    view = look_at_tally(KEPT, TAPE)
    assert _ids(view) == ["f12", "D1", "F2", "F1"]
    assert (view.found, view.boards, view.shown) == (4, 4, 4)


def test_boards_are_found_by_a_part_of_their_mark() -> None:
    """In capitals or not; the one that is called just so comes first."""
    assert _ids(look_at_tally(KEPT, TAPE, find="F1")) == ["F1", "f12"]


def test_boards_are_found_by_their_note() -> None:
    """A part of it will do."""
    assert _ids(look_at_tally(KEPT, TAPE, find="VARNISH")) == ["F1"]


def test_boards_of_a_lot_are_found_however_it_is_written() -> None:
    """With the mark besides."""
    assert _ids(look_at_tally(KEPT, TAPE, lot="HALL")) == ["F2", "F1"]
    assert _ids(look_at_tally(KEPT, TAPE, lot="hall", find="2")) == ["F2"]


def test_boards_of_no_lot_are_found() -> None:
    """They may have been forgotten."""
    assert _ids(look_at_tally(KEPT, TAPE, lot=WITHOUT_LOT)) == ["f12"]


def test_lots_are_counted() -> None:
    """As they were written first, those without one too."""
    lots = look_at_tally(KEPT, TAPE).lots
    assert [(one.lot, one.boards) for one in lots] == [("Hall", 2), ("dado", 1), (WITHOUT_LOT, 1)]


def test_a_long_list_comes_in_parts() -> None:
    """Together they are all of it."""
    first = look_at_tally(KEPT, TAPE, most=3)
    rest = look_at_tally(KEPT, TAPE, first=first.shown, most=3)
    assert _ids(first) + _ids(rest) == ["f12", "D1", "F2", "F1"]
    assert (first.shown, rest.shown, rest.found) == (3, 4, 4)


@pytest.mark.parametrize(
    ("one", "size"),
    [
        (board("F1", 87.625, 5.25), '7\' 3-5/8" × 5-1/4" × 3/4"'),
        (board("F1", 87.625, 5.25, width_end_nm=nm(4)), '7\' 3-5/8" × 5-1/4" to 4" × 3/4"'),
    ],
)
def test_a_board_is_told_by_length_width_and_thickness(one: Board, size: str) -> None:
    """A tapered one by both widths."""
    assert size_of(one, TAPE) == size


def test_flaws_are_told_by_their_places() -> None:
    """With the face where it shows on one only."""
    flaws = (flaw(3, 6), flaw(40, 44, Severity.BLEMISH, face=Face.BACK))
    told = row_of(board("F1", 97, 5, flaws=flaws), TAPE).flaws
    assert told == '3" to 6" rot; 3\' 4" to 3\' 8" stain, back only'
    assert row_of(board("F1", 97, 5, flaws=(flaw(0, 97),)), TAPE).flaws == "rot all along"


def test_doubts_lead_to_their_boards() -> None:
    """What is doubtful about several leads nowhere; what is about the wall stands on another screen."""
    reading = files.read_definition(KEPT.definition, (*BOARDS, board("Z", 300, 20)))
    kept = replace(KEPT, boards=reading.boards)
    remarks = (*reading.remarks, Problem(file="the job", place="surface wall", what="trim is narrow"))
    doubts = doubts_about(remarks, kept)
    assert {"Z"} <= {doubt.board_id for doubt in doubts}
    assert any(doubt.sentence.startswith("Board Z is wider than 14 in") for doubt in doubts)
    assert not any("trim" in doubt.sentence for doubt in doubts)
