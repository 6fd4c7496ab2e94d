"""The score counted again, against sums by hand in square inches."""

from collections.abc import Sequence
from typing import Any

import pytest

from builders import board, course, flaw, job, nm, opening, piece, surface_layout, wall
from plankwright.check import recount
from plankwright.model import Board, EdgeKind, EdgeProfile, Piece, Severity
from spoil.walls import plain, upright

SQUARE_INCH = nm(1) ** 2
MILLED = EdgeProfile(kind=EdgeKind.SHIPLAP, reach_nm=nm(0.25))


def spent(wood: Board, *pieces: tuple[float, float, float, float]) -> float:
    """Give what is spent of a board for pieces from-to along and from-to across it. [sq in]"""
    surface = wall(400, 100)
    row = (0.25, 8.25)
    cut: Sequence[Piece] = [
        piece(
            surface,
            f"1{index} {wood.id}",
            (0, along_to - along_from),
            (0, across_to - across_from),
            at=(along_from, across_from),
        )
        for index, (along_from, along_to, across_from, across_to) in enumerate(pieces)
    ]
    layout = surface_layout(surface, course(1, row, *cut))
    return recount(job(surface, [wood, board("spare", 50, 6)]), layout).wood_spent_nm2 / SQUARE_INCH


def wide(**more: Any) -> Board:  # noqa: ANN401 - any field
    """Make a board of 100 by 10, of which 99 by 9.75 can be used once it is trimmed and straight."""
    return board("W", 100, 10, **more)


def test_the_plain_wall_spends_its_four_boards() -> None:
    """Nothing worth keeping is left of 42, 58, 75 and 27 by 5.5; its two joints show and nothing is bare."""
    work, layout = plain()
    score = recount(work, layout.surfaces[0])
    assert score.wood_spent_nm2 == (42 + 58 + 75 + 27) * 5.5 * SQUARE_INCH
    assert (score.joints_in_sight, score.bare_nm2) == (2, 0)


def test_the_upright_wall_counts_its_one_joint() -> None:
    """A joint across vertical courses counts as any other."""
    work, layout = upright()
    assert recount(work, layout.surfaces[0]).joints_in_sight == 1


def test_what_lies_beyond_and_beside_a_piece_is_kept() -> None:
    """Beyond 40 by 5: 58.875 by 9.75; beside it: 40 by 4.625."""
    assert spent(wide(), (0.5, 40.5, 0.125, 5.125)) == 1000 - 58.875 * 9.75 - 40 * 4.625


def test_what_lies_before_a_piece_is_kept_less_a_kerf() -> None:
    """Before a piece over the whole width from 50 to 99.5: 0.5 to 49.875."""
    assert spent(wide(), (50, 99.5, 0.125, 9.875)) == 1000 - 49.375 * 9.75


def test_what_lies_between_two_pieces_loses_two_kerfs() -> None:
    """Between 20 and 60 a kerf goes at each end: 39.75 are left, and 19.5 and 39.5 by nothing beside."""
    pieces = ((0.5, 20, 0.125, 9.875), (60, 99.5, 0.125, 9.875))
    assert spent(wide(), *pieces) == 1000 - 39.75 * 9.75


@pytest.mark.parametrize("width", [9.125, 7.75])
def test_an_offcut_is_kept_from_the_narrowest_course_on(width: float) -> None:
    """Beside a whole-length piece what is left is kept from 2 inches on."""
    left = 9.875 - (width + 0.125)
    kept = 99 * left if left >= 2 else 0
    assert spent(wide(), (0.5, 99.5, 0.125, width)) == 1000 - kept


@pytest.mark.parametrize(("end", "kept_length"), [(83.375, 16), (83.5, 0)])
def test_an_offcut_is_kept_from_the_shortest_piece_on(end: float, kept_length: float) -> None:
    """Beyond a piece what is left is kept from 16 inches on."""
    assert spent(wide(), (0.5, end, 0.125, 9.875)) == 1000 - kept_length * 9.75


def test_pieces_a_kerf_apart_leave_one_offcut_beside_both() -> None:
    """Two pieces one kerf apart count as one cluster: beside them lies one offcut, past the wider of them."""
    pieces = ((0.5, 40.5, 0.125, 5.125), (40.625, 83.5, 0.125, 3.125))
    assert spent(wide(), *pieces) == 1000 - 83 * (9.875 - 5.25)


def test_pieces_farther_apart_leave_an_offcut_each() -> None:
    """A sixteenth more than a kerf parts the clusters."""
    pieces = ((0.5, 40.5, 0.125, 5.125), (40.6875, 83.5, 0.125, 3.125))
    assert spent(wide(), *pieces) == 1000 - 40 * (9.875 - 5.25) - 42.8125 * (9.875 - 3.25)


def test_a_piece_beside_two_others_joins_them_in_one_cluster() -> None:
    """A long piece ripped beside two short ones holds them together, whatever lies between these."""
    pieces = ((0.5, 30, 0.125, 3.125), (60, 83.5, 0.125, 3.125), (0.5, 83.5, 3.25, 6.25))
    assert spent(wide(), *pieces) == 1000 - 83 * (9.875 - 6.375)


def test_a_clear_run_without_pieces_is_kept_whole() -> None:
    """Rot from 60 to 62 parts the board: beyond it 37.5 by 9.75 stay whole."""
    rotten = wide(flaws=(flaw(60, 62),))
    kept = 19.375 * 9.75 + 40 * 4.625 + 37.5 * 9.75
    assert spent(rotten, (0.5, 40.5, 0.125, 5.125)) == 1000 - kept


def test_rot_at_the_end_and_under_other_rot_counts_once() -> None:
    """Rot over rot, and rot into the end trim, cut one stretch off each; a stain cuts nothing."""
    rotten = wide(flaws=(flaw(0, 10), flaw(5, 8), flaw(20, 22, Severity.BLEMISH), flaw(90, 100)))
    assert spent(rotten, (10, 50, 0.125, 9.875)) == 1000 - (90 - 50.125) * 9.75


def test_rot_from_end_to_end_leaves_nothing() -> None:
    """A board that is rotten all over is all spent."""
    assert spent(wide(flaws=(flaw(0, 100),)), (10, 50, 0.125, 9.875)) == 1000


def test_a_milled_board_keeps_its_edges() -> None:
    """A milled board loses nothing to straightening: beyond a piece its whole width is kept."""
    assert spent(wide(profile=MILLED), (0.5, 40.5, 0, 10)) == 1000 - 58.875 * 10


def test_a_tapered_board_keeps_what_is_as_wide_all_along() -> None:
    """From 10 wide to 6 wide: an offcut from 40.625 to 99.5 is as wide as at 99.5, less both edges."""
    tapered = wide(width_end_nm=nm(6))
    narrowest = 10 - 4 * 99.5 / 100 - 0.25
    beside = 10 - 4 * 40.5 / 100 - 0.125 - 5.25
    expected = 800 - 58.875 * narrowest - 40 * beside
    assert spent(tapered, (0.5, 40.5, 0.125, 5.125)) == pytest.approx(expected, rel=1e-9)


def test_boards_that_are_not_cut_into_are_not_spent() -> None:
    """A board of the tally that no piece comes from, and a piece of no board, count nothing."""
    assert spent(wide()) == 0


def test_bare_area_is_what_must_be_covered_less_the_blanks() -> None:
    """Of 96 by 10 with 10.5 by 5 of a window in it, a blank of 40 by 5 leaves the rest bare."""
    surface = wall(96.5, 10.5, openings=(opening("window", 60, 0, 70, 5),))
    row = (0.25, 5.25)
    layout = surface_layout(surface, course(1, row, piece(surface, "1a A", (0.25, 40.25), row)))
    score = recount(job(surface, [board("A", 60, 6)]), layout)
    assert score.bare_nm2 == (96 * 10 - 10.5 * 5 - 40 * 5) * SQUARE_INCH


def test_cuts_are_taken_as_they_are() -> None:
    """The number of cuts is not counted again."""
    work, layout = plain()
    assert recount(work, layout.surfaces[0]).cuts == layout.surfaces[0].score.cuts
