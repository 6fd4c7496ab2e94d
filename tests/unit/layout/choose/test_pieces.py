"""Rules (2) to (4): which pieces there are."""

import pytest

from builders import board, flaw, nm, outline, rectangle, studs, wall
from choosing import can_cover, plain
from plankwright.layout.capacity import Capacity
from plankwright.model import BlemishPolicy, ConcealedZone, KeepOut, Severity

STAINED = board("A", 96, 6, flaws=(flaw(40, 44, Severity.BLEMISH),))


@pytest.mark.parametrize(("length", "right"), [(96, True), (95.96875, False)])
def test_a_piece_is_no_longer_than_its_stick(length: float, *, right: bool) -> None:
    """(2) A run of 96 takes a board as long, and no board a 32nd shorter."""
    assert can_cover([board("A", length, 6)]) is right


@pytest.mark.parametrize(("shortest", "right"), [(24, True), (24.03125, False)])
def test_a_piece_that_butts_is_no_shorter_than_allowed(shortest: float, *, right: bool) -> None:
    """(3) The only joint that the two boards could have is 24 inches from an end."""
    surface = wall(96, 12, framing=studs(0.75, 24, 95.25))
    boards = [board("A", 72, 6), board("B", 25, 6)]
    assert can_cover(boards, plain(shortest_piece_nm=nm(shortest)), surface=surface) is right


def test_a_run_of_its_own_may_be_shorter_than_the_shortest_piece() -> None:
    """(3) Ten inches beside nothing else, off a longer board, where pieces that butt have sixteen."""
    surface = wall(10, 12, framing=studs(5))
    assert can_cover([board("A", 20, 6)], plain(shortest_piece_nm=nm(16)), surface=surface)


@pytest.mark.parametrize(("points", "right"), [(2, True), (3, False)])
def test_a_piece_that_butts_is_nailed_as_often_as_the_rules_ask(points: int, *, right: bool) -> None:
    """(3) From the end to the joint at 48 there are the studs at 24 and 48."""
    surface = wall(96, 12, framing=studs(24, 48, 72))
    boards = [board("A", 48, 6), board("B", 48, 6)]
    assert can_cover(boards, plain(nailing_points=points), surface=surface) is right


def test_a_stud_that_a_pipe_keeps_nails_from_does_not_count() -> None:
    """(3) The same with a pipe along the stud at 24."""
    pipe = KeepOut(id="pipe", place=rectangle(23, -1, 25, 13))
    surface = wall(96, 12, framing=studs(24, 48, 72), keep_outs=(pipe,))
    boards = [board("A", 48, 6), board("B", 48, 6)]
    assert can_cover(boards, plain(nailing_points=1), surface=surface)
    assert not can_cover(boards, plain(nailing_points=2), surface=surface)


def test_a_joint_needs_framing() -> None:
    """(3) Two halves do not butt where there is no stud in the middle."""
    boards = [board("A", 48, 6), board("B", 48, 6)]
    assert can_cover(boards, surface=wall(96, 12, framing=studs(12, 48)))
    assert not can_cover(boards, surface=wall(96, 12, framing=studs(12, 47)))


def test_a_blemished_stick_does_not_hang_in_sight() -> None:
    """(4) Neither whole nor in part: the blemish parts the board, and its clean parts are too short."""
    assert not can_cover([STAINED])
    assert can_cover([STAINED], plain(blemishes=BlemishPolicy.ANYWHERE))


@pytest.mark.parametrize(("right_end", "hidden"), [(44, True), (43, False)])
def test_a_blemished_stick_hangs_where_the_whole_piece_is_concealed(
    right_end: float, *, hidden: bool
) -> None:
    """(4) With a joint each side of the blemish, since its board is parted there."""
    zone = ConcealedZone(id="bench", place=rectangle(0, 0, right_end, 12))
    surface = wall(96, 12, concealed=(zone,), framing=studs(40, 44))
    assert can_cover([STAINED], surface=surface) is hidden


@pytest.mark.parametrize(("crosscut", "right"), [(8.5, True), (8.46875, False)])
def test_no_piece_has_an_end_that_no_saw_cuts(crosscut: float, *, right: bool) -> None:
    """(3) Through six inches at 45 degrees the cut is six times the root of two, 8.485 inches."""
    gable = wall(96, 48, outline=outline((0, 0), (96, 0), (48, 48)), framing=studs(48))
    saws = Capacity(crosscut=nm(crosscut))
    assert can_cover([board("A", 96, 6)], surface=gable, courses=[(6, 12)], capacity=saws) is right
