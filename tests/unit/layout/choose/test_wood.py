"""Rules (9) and (10): pieces fit into their sticks."""

import pytest

from builders import board, nm, opening, studs, wall
from choosing import Question, can_cover, plain
from plankwright.layout.capacity import Capacity

HALVES = wall(104, 12, framing=studs(24, 80), openings=(opening("door", 48, 0, 56, 12),))
"""Two runs of 48 inches."""


@pytest.mark.parametrize(("length", "right"), [(96.125, True), (96.09375, False)])
def test_pieces_of_a_lane_and_the_kerf_between_them_fit_into_the_stick(length: float, *, right: bool) -> None:
    """(9) Two pieces of 48 and a kerf of an eighth; no kerf beyond the last."""
    rules = plain(crosscut_kerf_nm=nm(0.125))
    assert can_cover([board("A", length, 6)], rules, surface=HALVES) is right


def test_without_a_kerf_two_pieces_take_just_their_length() -> None:
    """(9) Split rather than sawn."""
    assert can_cover([board("A", 96, 6)], surface=HALVES)


def test_a_stick_gives_no_two_pieces_that_are_together_longer() -> None:
    """(9) Each fits alone, and one of the two runs needs another board."""
    assert not can_cover([board("A", 90, 6)], surface=HALVES)
    assert can_cover([board("A", 90, 6), board("B", 48, 6)], surface=HALVES)


@pytest.mark.parametrize(("width", "right"), [(13.25, True), (13.21875, False)])
def test_two_lanes_and_the_kerf_between_them_fit_into_the_width(width: float, *, right: bool) -> None:
    """(10) Courses of six and of seven and a kerf of a quarter, out of one board."""
    rules, surface = plain(rip_kerf_nm=nm(0.25)), wall(96, 13)
    assert can_cover([board("A", 96, width)], rules, surface=surface, courses=[(0, 6), (6, 13)]) is right


def test_a_stick_that_is_not_to_be_ripped_gives_one_course() -> None:
    """(10) Wide enough for two, but only one lane is looked at."""
    courses = [(0, 6), (6, 12)]
    assert not can_cover([board("A", 96, 13)], courses=courses, more={"lanes": 1})
    assert can_cover([board("A", 96, 13), board("B", 96, 6)], courses=courses, more={"lanes": 1})


def test_a_lane_is_as_wide_as_the_highest_course_of_its_pieces() -> None:
    """(10) Runs of 48 in courses of 7 and of 5: two of either in a lane, and 12 inches do.

    A lane with a piece of both is 7 wide, so that two such do not do.
    """
    rules = plain()
    surface = wall(96, 12, framing=studs(48))
    whole = Question(
        boards=[board("A", 96, 12)], rules=rules, surface=surface, courses=[(0, 7), (7, 12)]
    ).answer()
    assert whole.cuts is not None
    parts = sorted(
        (piece.stick.across_from, piece.stick.across_to, cut.height)
        for cut in whole.cuts
        for piece in cut.pieces
    )
    assert all(far - near == height for near, far, height in parts)
    assert max(far for _, far, _ in parts) == nm(12)


@pytest.mark.parametrize(("rip", "right"), [(6, True), (5.96875, False)])
def test_the_saw_takes_the_first_lane_off(rip: float, *, right: bool) -> None:
    """(10) Two courses of six: the strip between fence and blade is six wide."""
    saws = Capacity(rip=nm(rip))
    assert can_cover([board("A", 96, 12)], courses=[(0, 6), (6, 12)], capacity=saws) is right
