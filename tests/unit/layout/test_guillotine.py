"""Straight cuts free what is asked for, in as few passes as can be, with the saws at hand."""

import pytest

from plankwright.layout.guillotine import Pass, Patch, Sawing, fewest_passes, leftovers, whole_board
from plankwright.model import Board, CutKind

CROSSCUT, RIP = CutKind.CROSSCUT, CutKind.RIP
SAWING = Sawing(crosscut_kerf_nm=3, rip_kerf_nm=2)
BOARD = Board(id="B", length_nm=1000, width_start_nm=100, width_end_nm=100, thickness_nm=20)


def passes(
    *pieces: Patch, keep: tuple[Patch, ...] = (), sawing: Sawing = SAWING, rip_first: bool = False
) -> list[tuple[CutKind, int]] | None:
    """Give the kind and the mark of each pass."""
    found = fewest_passes(BOARD, pieces, keep, sawing, rip_first=rip_first)
    return None if found is None else [(one.kind, one.at_nm) for one in found]


def test_whole_board_needs_no_cut() -> None:
    """A board that hangs as found is not cut."""
    assert passes(Patch(0, 1000, 0, 100)) == []


def test_every_side_off_the_edge_is_one_pass() -> None:
    """A piece out of the middle needs four passes; the blade goes beyond its mark."""
    assert passes(Patch(10, 600, 5, 80)) == [(CROSSCUT, 7), (CROSSCUT, 600), (RIP, 3), (RIP, 80)]


def test_blade_may_hang_off_the_end() -> None:
    """Less than a kerf is trimmed off with the blade half in the air, on either side."""
    assert passes(Patch(1, 999, 0, 100)) == [(CROSSCUT, -2), (CROSSCUT, 999)]


def test_equal_strips_are_ripped_before_they_are_cut_to_length() -> None:
    """One rip serves two pieces of the same width: three passes instead of four."""
    pieces = Patch(0, 400, 0, 60), Patch(403, 1000, 0, 60)
    assert passes(*pieces) == [(RIP, 60), (CROSSCUT, 400)]


def test_unequal_strips_are_cut_to_length_before_they_are_ripped() -> None:
    """Pieces of different widths must be parted first."""
    pieces = Patch(0, 400, 0, 60), Patch(403, 1000, 0, 70)
    assert passes(*pieces) == [(CROSSCUT, 400), (RIP, 60), (RIP, 70)]


def test_what_is_worth_keeping_is_not_ripped() -> None:
    """A rest is cut off before the piece is ripped, though ripping first would take as many passes."""
    piece, rest = Patch(0, 400, 0, 60), Patch(403, 1000, 0, 100)
    assert passes(piece, keep=(rest,), rip_first=True) == [(CROSSCUT, 400), (RIP, 60)]
    assert passes(piece, rip_first=True) == [(RIP, 60), (CROSSCUT, 400)]


def test_board_too_wide_for_the_crosscut_saw_is_ripped_first() -> None:
    """With a saw that crosscuts 80, a board 100 wide is ripped to 80 before."""
    small = Sawing(crosscut_kerf_nm=3, rip_kerf_nm=2, crosscut_nm=80, rip_nm=80)
    assert passes(Patch(0, 400, 0, 80), sawing=small) == [(RIP, 80), (CROSSCUT, 400)]


def test_nothing_is_found_when_no_saw_is_big_enough() -> None:
    """A piece too wide for the crosscut saw cannot be cut to length."""
    small = Sawing(crosscut_kerf_nm=3, rip_kerf_nm=2, crosscut_nm=80, rip_nm=80)
    assert passes(Patch(0, 400, 0, 90), sawing=small) is None


def test_narrower_side_decides_what_can_be_ripped() -> None:
    """The fence may stand on either side of the blade, so the narrower side must fit."""
    saw = Sawing(crosscut_kerf_nm=3, rip_kerf_nm=2, rip_nm=30)
    assert passes(Patch(0, 1000, 0, 70), Patch(0, 1000, 72, 100), sawing=saw) == [(RIP, 70)]
    assert passes(Patch(0, 1000, 0, 49), Patch(0, 1000, 51, 100), sawing=saw) is None


def test_waste_is_ripped_off_strip_by_strip() -> None:
    """Waste wider than the rip saw takes is no hindrance; no rip saw at all is."""
    saw = Sawing(crosscut_kerf_nm=3, rip_kerf_nm=2, rip_nm=30)
    assert passes(Patch(0, 1000, 0, 50), sawing=saw) == [(RIP, 50)]
    none = Sawing(crosscut_kerf_nm=3, rip_kerf_nm=2, crosscut_nm=100, rip_nm=0)
    assert passes(Patch(0, 1000, 0, 50), sawing=none) is None
    assert passes(Patch(0, 1000, 1, 100), sawing=none) is None


def test_without_a_crosscut_saw_nothing_is_cut_to_length() -> None:
    """With saws listed but none that crosscuts, a piece must be as long as its board."""
    none = Sawing(crosscut_kerf_nm=3, rip_kerf_nm=2, crosscut_nm=0, rip_nm=100)
    assert passes(Patch(0, 900, 0, 100), sawing=none) is None
    assert passes(Patch(0, 1000, 0, 50), sawing=none) == [(RIP, 50)]


def test_taper_is_crosscut_at_its_present_width() -> None:
    """A tapered board is crosscut where it is narrow enough."""
    board = Board(id="T", length_nm=1000, width_start_nm=120, width_end_nm=80, thickness_nm=20)
    saw = Sawing(crosscut_kerf_nm=3, rip_kerf_nm=2, crosscut_nm=100)
    assert fewest_passes(board, [Patch(500, 1000, 0, 80)], (), saw, rip_first=False) is not None
    assert fewest_passes(board, [Patch(0, 400, 0, 104)], (), saw, rip_first=False) is None


def test_pinwheel_cannot_be_freed() -> None:
    """Five pieces in a pinwheel leave no straight way through."""
    pinwheel = [
        Patch(0, 600, 0, 30),
        Patch(603, 1000, 0, 60),
        Patch(400, 1000, 62, 100),
        Patch(0, 397, 32, 100),
        Patch(400, 600, 32, 60),
    ]
    assert passes(*pinwheel) is None
    assert passes(*pinwheel[:2]) is not None


def test_saw_in_hand_goes_on_as_long_as_it_can() -> None:
    """All crosscuts come before the rips when the order is free."""
    pieces = Patch(0, 300, 0, 60), Patch(303, 600, 0, 70), Patch(603, 1000, 0, 80)
    assert passes(*pieces) == [(CROSSCUT, 300), (CROSSCUT, 600), (RIP, 60), (RIP, 70), (RIP, 80)]


@pytest.mark.parametrize("rip_first", [False, True])
def test_leftovers_are_every_part_but_the_pieces(rip_first: bool) -> None:  # noqa: FBT001 - a parameter
    """Pieces, leftovers and kerfs make up the board."""
    piece = Patch(10, 600, 5, 80)
    found = fewest_passes(BOARD, [piece], (), SAWING, rip_first=rip_first)
    assert found is not None
    parts = (piece, *leftovers(whole_board(BOARD), found, [piece]))
    kerfs = sum(kerf_area(one) for one in found)
    assert sum(area(part) for part in parts) + kerfs == 1000 * 100


def area(patch: Patch) -> int:
    """Give the area of a rectangle."""
    return (patch.along_to - patch.along_from) * (patch.across_to - patch.across_from)


def kerf_area(one: Pass) -> int:
    """Give what a pass takes that lies wholly inside its part."""
    if one.kind is CROSSCUT:
        return SAWING.crosscut_kerf_nm * (one.through.across_to - one.through.across_from)
    return SAWING.rip_kerf_nm * (one.through.along_to - one.through.along_from)
