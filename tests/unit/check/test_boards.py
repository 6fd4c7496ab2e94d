"""What a board gives, and how near its pieces may lie."""

from dataclasses import replace

import pytest

from builders import board, flaw, layout, nm, with_piece
from plankwright.check import Finding, FindingCode, check_layout
from plankwright.check.boards import usable_across, width_at
from plankwright.model import EdgeKind, EdgeProfile, Rules, Severity
from spoil.walls import Hanging, one_wide_board, plain, scored


def found(code: FindingCode, hanging: Hanging) -> list[Finding]:
    """Give the findings of one code."""
    return [finding for finding in check_layout(*hanging) if finding.code is code]


@pytest.mark.parametrize(("along", "wide"), [(0, 10), (25, 9), (50, 8), (100, 6)])
def test_a_taper_runs_straight_from_end_to_end(along: float, wide: float) -> None:
    """From 10 to 6 over 100: at a quarter 9, at half 8."""
    assert width_at(board("A", 100, 10, width_end_nm=nm(6)), nm(along)) == nm(wide)


def test_square_boards_lose_their_edges_and_milled_ones_do_not() -> None:
    """A square board gives all but 1/8 inch at each edge, a milled one all, at its narrower end."""
    tapered = board("A", 100, 6, width_end_nm=nm(10))
    assert usable_across(tapered, Rules(), nm(50), nm(75)) == (nm(0.125), nm(8 - 0.125))
    milled = replace(tapered, profile=EdgeProfile(kind=EdgeKind.SHIPLAP, reach_nm=nm(0.5)))
    assert usable_across(milled, Rules(), nm(50), nm(75)) == (0, nm(8))


def test_a_piece_may_end_where_rot_begins() -> None:
    """Rot that only touches a piece is not in it; a stain is no rot."""
    work, laid = plain()
    for flaws, count in (
        ((flaw(40.25, 41),), 0),
        ((flaw(0, 0.5),), 0),
        ((flaw(10, 12, Severity.BLEMISH),), 0),
        ((flaw(39, 41), flaw(0, 1)), 2),
    ):
        boards = tuple(replace(each, flaws=flaws) if each.id == "A" else each for each in work.boards)
        hanging = Hanging(replace(work, boards=boards), laid)
        assert len(found(FindingCode.IN_LOST_WOOD, hanging)) == count


def test_pieces_of_one_board_on_two_surfaces_must_not_clash() -> None:
    """A board's pieces are held to its kerfs, whatever surfaces they hang on."""
    work, laid = one_wide_board()
    (surface,) = work.surfaces
    other = replace(surface, id="other wall")
    both = replace(work, surfaces=(surface, other))
    again = replace(laid.surfaces[0], surface_id="other wall")
    clashing = found(FindingCode.PIECES_CLASH, scored(both, laid.surfaces[0], again))
    assert len(clashing) == 4
    assert {finding.surface_id for finding in clashing} == {"other wall"}
    assert all("on wall" in finding.message for finding in clashing)


def test_how_near_pieces_lie_is_told_where_they_are_farther_apart() -> None:
    """Pieces 1/16 inch apart along and overlapping across are told by the 1/16, against a crosscut's kerf."""
    work, laid = one_wide_board()
    near = layout(with_piece(laid.surfaces[0], "1b", along_from_nm=nm(40.3125), along_to_nm=nm(96.5625)))
    (finding,) = found(FindingCode.PIECES_CLASH, Hanging(work, near))
    assert (finding.measured, finding.allowed) == (nm(1 / 16), nm(1 / 8))
    assert 'lies 1/16" from piece 1a' in finding.message


def test_spares_are_counted_over_the_whole_pile() -> None:
    """One board of five is not cut into: one spare may be asked for, two may not."""
    work, laid = plain()
    for asked, count in ((0, 0), (1, 0), (2, 1)):
        hanging = Hanging(replace(work, rules=Rules(hold_back=asked)), laid)
        assert len(found(FindingCode.SPARES_SHORT, hanging)) == count
