"""Rule (5): courses are covered from end to end."""

from builders import board, nm, opening, studs, wall
from choosing import Question, can_cover, pieces_of
from plankwright.model import Board

TWO_PARTS = wall(96, 12, framing=studs(48))
"""A joint can stand in the middle only."""


def _halves(count: int) -> list[Board]:
    return [board(f"A{place}", 48, 6) for place in range(count)]


def test_half_a_course_is_not_covered() -> None:
    """(5) Two halves are."""
    assert can_cover(_halves(2))
    assert not can_cover(_halves(1))


def test_what_no_board_is_left_for_is_bare_when_it_may_be() -> None:
    """(5) With the other half covered, since area costs most."""
    (cut,) = Question(boards=_halves(1), surface=TWO_PARTS, more={"bare_allowed": True}).answer().cuts or ()
    (piece,) = cut.pieces
    (bare,) = cut.bare
    assert sorted([(piece.start, piece.end), bare]) == [(nm(0), nm(48)), (nm(48), nm(96))]


def test_both_sides_of_a_door_are_covered() -> None:
    """(5) Forty inches on the left and thirty on the right, and nothing between."""
    surface = wall(96, 12, framing=studs(24, 72), openings=(opening("door", 40, 0, 66, 12),))
    boards = [board("A", 36, 6), board("B", 40, 6)]
    assert pieces_of(Question(boards=boards, surface=surface).answer()) == [(0, 66, 96), (1, 0, 40)]
    assert not can_cover(boards[1:], surface=surface)


def test_a_piece_goes_over_a_window_that_its_course_only_touches() -> None:
    """(5) A course notched around a window is one run, and no joint stands on the notch."""
    surface = wall(96, 12, framing=studs(24, 72), openings=(opening("window", 36, 3, 60, 12),))
    assert not can_cover([board("A", 36, 6), board("B", 36, 6)], surface=surface)
    assert can_cover([board("A", 96, 6)], surface=surface)
    assert can_cover([board("A", 72, 6), board("B", 24, 6)], surface=surface)
    assert not can_cover([board("A", 49, 6), board("B", 47, 6)], surface=surface)


def test_counted_courses_are_covered_too() -> None:
    """(5) Two courses of six take four halves, and three do not do."""
    assert can_cover(_halves(4), heights=[6])
    assert not can_cover(_halves(3), heights=[6])
