"""What a pile holds and how much of it is of use."""

import pytest

from plankwright.measure import FOOT, INCH, System, TapeStyle
from plankwright.model import (
    Board,
    EdgeKind,
    EdgeProfile,
    Flaw,
    Framing,
    Rules,
    Severity,
    Surface,
)
from plankwright.workshop.judge_tally import judge_tally, tape_of, to_cover_nm2, usable_runs

IMPERIAL = TapeStyle(system=System.IMPERIAL)
TONGUE = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=INCH // 4)
RULES = Rules(
    end_trim_nm=INCH,
    straight_edge_loss_nm=INCH // 2,
    shortest_piece_nm=12 * INCH,
    narrowest_course_nm=2 * INCH,
    expansion_gap_nm=0,
)


def board(
    name: str,
    *,
    length: int = 98,
    width: int = 5,
    end: int | None = None,
    profile: EdgeProfile = TONGUE,
    lot: str = "",
    lost: tuple[tuple[int, int], ...] = (),
) -> Board:
    """Give a board with sizes in inches."""
    return Board(
        id=name,
        length_nm=length * INCH,
        width_start_nm=width * INCH,
        width_end_nm=(width if end is None else end) * INCH,
        thickness_nm=INCH,
        profile=profile,
        lot=lot,
        flaws=tuple(
            Flaw(start_nm=start * INCH, end_nm=stop * INCH, what="rot", severity=Severity.LOST)
            for start, stop in lost
        ),
    )


def test_end_trims_and_lost_flaws_are_taken_off() -> None:
    """Of 98 in, an inch at each end and 6 in of rot leave 39 and 51 in."""
    runs = usable_runs(board("A", lost=((40, 46),)), RULES)
    assert [(run.from_nm, run.to_nm) for run in runs] == [(INCH, 40 * INCH), (46 * INCH, 97 * INCH)]
    assert {run.width_nm for run in runs} == {5 * INCH}


def test_a_square_board_loses_both_edges_when_straightened() -> None:
    """Half an inch off each edge leaves 4 in of 5."""
    (run,) = usable_runs(board("A", profile=EdgeProfile()), RULES)
    assert run.width_nm == 4 * INCH


def test_a_tapered_board_counts_with_its_narrowest_width_along_the_run() -> None:
    """From 8 in to 4 in over 98 in, the width at 97 in is 4 2/49 in."""
    (run,) = usable_runs(board("A", width=8, end=4), RULES)
    assert run.width_nm == 8 * INCH + (-4 * INCH) * 97 // 98


def test_a_run_too_short_or_too_narrow_is_no_use() -> None:
    """A stub under the shortest piece and a strip under the narrowest course are not counted."""
    assert usable_runs(board("A", lost=((12, 97),)), RULES) == ()
    assert usable_runs(board("B", width=2, profile=EdgeProfile()), RULES) == ()


def test_totals_and_recovery_go_by_lot_and_overall() -> None:
    """98 in by 5 in is 490 sq in a board, and 480 of them are usable when only the ends are trimmed."""
    judged = judge_tally(
        (board("A", lot="hall"), board("B", lot="stage", lost=((1, 49),)), board("C", lot="hall")),
        RULES,
        IMPERIAL,
    )
    assert [(lot.lot, lot.boards) for lot in judged.lots] == [("hall", 2), ("stage", 1)]
    assert judged.lots[0].face_nm2 == 2 * 490 * INCH**2
    assert judged.lots[0].usable_nm2 == 2 * 480 * INCH**2
    assert judged.lots[1].usable_nm2 == 240 * INCH**2
    assert judged.pile.length_nm == 3 * 98 * INCH
    assert judged.pile.recovery == pytest.approx(1200 / 1470)


def test_a_lot_is_told_once_however_it_is_written() -> None:
    """Under the name that comes first."""
    judged = judge_tally((board("A", lot="Hall"), board("B", lot="hall"), board("C")), RULES, IMPERIAL)
    assert [(lot.lot, lot.boards) for lot in judged.lots] == [("Hall", 2), ("", 1)]


def test_an_empty_tally_has_no_recovery() -> None:
    """Nothing of nothing is told as nought, without an error."""
    judged = judge_tally((), RULES, IMPERIAL)
    assert judged.pile.recovery == 0
    assert judged.longest == ()
    assert judged.widths == ()


def test_the_longest_runs_come_longest_first() -> None:
    """Five are told."""
    boards = [board(f"B{length}", length=length) for length in (40, 90, 60, 70, 50, 80)]
    judged = judge_tally(boards, RULES, IMPERIAL)
    assert [run.board_id for run in judged.longest] == ["B90", "B80", "B70", "B60", "B50"]
    assert judged.longest[0].length_nm == 88 * INCH


def test_boards_are_put_into_classes_by_the_inch() -> None:
    """A tapered board is counted by its narrower end."""
    judged = judge_tally(
        (board("A"), board("B", width=7, end=5), board("C", width=6, lost=((1, 97),))), RULES, IMPERIAL
    )
    assert [(found.from_nm, found.below_nm, found.boards) for found in judged.widths] == [
        (5 * INCH, 6 * INCH, 2),
        (6 * INCH, 7 * INCH, 1),
    ]
    assert judged.widths[0].clear_nm == 2 * 96 * INCH
    assert judged.widths[1].longest_nm == 0


def test_metric_classes_are_25_millimetres() -> None:
    """127 mm lies between 125 and 150."""
    judged = judge_tally((board("A"),), RULES, TapeStyle(system=System.METRIC))
    assert (judged.widths[0].from_nm, judged.widths[0].below_nm) == (125_000_000, 150_000_000)


def test_a_board_that_gives_nothing_is_named() -> None:
    """It is in the totals, and told apart."""
    judged = judge_tally((board("A"), board("B", lost=((1, 97),))), RULES, IMPERIAL)
    assert judged.useless == ("B",)
    assert judged.pile.boards == 2


def test_what_must_be_covered_is_known_only_with_surfaces() -> None:
    """A tally by itself has nothing to be set against."""
    wall = Surface(
        id="wall",
        outline=((0, 0), (12 * FOOT, 0), (12 * FOOT, 8 * FOOT), (0, 8 * FOOT)),
        framing=Framing(solid=True),
    )
    assert judge_tally((board("A"),), RULES, IMPERIAL).to_cover_nm2 is None
    assert judge_tally((board("A"),), RULES, IMPERIAL, (wall,)).to_cover_nm2 == 96 * FOOT**2
    assert to_cover_nm2(wall, RULES) == 96 * FOOT**2


def test_the_tape_is_guessed_from_what_is_no_whole_64th() -> None:
    """127 mm is 5 in exactly and says nothing; 2440 mm and 130 mm are on no tape in inches."""
    in_millimetres = Board(
        id="A",
        length_nm=2_440_000_000,
        width_start_nm=130_000_000,
        width_end_nm=130_000_000,
        thickness_nm=127_000_000,
    )
    assert tape_of((in_millimetres,)).system is System.METRIC
    assert tape_of((board("A"), board("B"), in_millimetres)).system is System.IMPERIAL
    assert tape_of(()).system is System.IMPERIAL
