"""Whole boards for pieces that cannot be jointed, on walls that can be worked out by hand. [in]"""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from builders import board, flaw, nm, outline, wall
from plankwright.layout.bound_pieces import bound_on_pieces
from plankwright.layout.bounds import sharpened
from plankwright.layout.strips import Strips
from plankwright.measure import INCH
from plankwright.model import Board, Bound, Framing, JointPolicy, Rules, Surface

RULES = Rules(
    joints=JointPolicy.NEVER,
    end_trim_nm=0,
    straight_edge_loss_nm=0,
    expansion_gap_nm=0,
    crosscut_kerf_nm=0,
    rip_kerf_nm=0,
    gap_tolerance_nm=0,
    width_tolerance_nm=0,
    shortest_piece_nm=nm(100),
    narrowest_course_nm=nm(6),
)
SOLID = Framing(solid=True)
SQUARE_INCH = INCH**2


def boards(count: int, length: float, width: float = 6, **more: Any) -> list[Board]:  # noqa: ANN401 - any field
    """Make some boards that are alike."""
    return [board(f"{length}-{width}-{place}", length, width, **more) for place in range(count)]


def found(surface: Surface, pile: Sequence[Board], rules: Rules = RULES) -> Bound:
    """Give the bound at two sets of prices: on what is over half a board, and on the area of such pieces."""
    halves = ((nm(50), Fraction(0)), (nm(51), Fraction(nm(100) * nm(6), 2)))
    areas = ((nm(51), Fraction(nm(51) * nm(6))),)
    return bound_on_pieces(Strips(surface, rules), pile, rules, [halves, areas])


def test_pieces_over_half_a_board_take_one_each() -> None:
    """Three courses of 51 take three boards of 100, which two and a half would hold by their length."""
    bound = found(wall(51, 18, framing=SOLID), boards(5, 100))
    assert bound.wood_spent_nm2 == 3 * 600 * SQUARE_INCH
    assert found(wall(51, 18, framing=SOLID), boards(3, 100)) == bound
    assert found(wall(51, 18, framing=SOLID), boards(2, 100)).bare_nm2 > 0


def test_boards_are_counted_whole() -> None:
    """Five courses of 50 take two and a half boards by their length, so three."""
    assert found(wall(50, 30, framing=SOLID), boards(9, 100)).wood_spent_nm2 == 3 * 600 * SQUARE_INCH


def test_cheapest_boards_that_hold_the_pieces_are_counted() -> None:
    """Three courses of 50 take a board of 100 and one of 60, not two of 100."""
    pile = [*boards(2, 100), *boards(2, 60)]
    assert found(wall(50, 18, framing=SOLID), pile).wood_spent_nm2 == (600 + 360) * SQUARE_INCH


def test_what_is_lost_of_a_board_is_spent_with_it() -> None:
    """A board of 120 with a rotten end of 20 gives no more than one of 100."""
    bound = found(wall(51, 6, framing=SOLID), boards(2, 120, flaws=[flaw(100, 120)]))
    assert bound.wood_spent_nm2 == 720 * SQUARE_INCH


def test_offcut_that_is_worth_keeping_is_not_spent() -> None:
    """Of 100 a piece of 51 leaves 49, which is kept where pieces may be as short as 40."""
    rules = replace(RULES, shortest_piece_nm=nm(40))
    bound = found(wall(51, 6, framing=SOLID), boards(2, 100), rules)
    assert bound.wood_spent_nm2 == pytest.approx(51 * 6 * SQUARE_INCH, rel=1e-4)
    assert bound.wood_spent_nm2 <= 51 * 6 * SQUARE_INCH


def test_a_board_as_wide_as_two_courses_may_give_both() -> None:
    """Two boards 12 wide give four pieces, of the five that five lines 12 apart ask for."""
    assert found(wall(100, 24, framing=SOLID), boards(2, 100, 12)) == Bound()
    assert found(wall(100, 60, framing=SOLID), boards(2, 100, 12)).bare_nm2 > 0


def test_courses_narrower_than_the_boards_may_be_fewer() -> None:
    """A wall 18 high takes no more than two courses of 10, and so two pieces."""
    assert found(wall(51, 18, framing=SOLID), boards(2, 100, 10)).bare_nm2 == 0


def test_steps_ask_for_a_piece_each() -> None:
    """Of a stair of 60, 40 and 40, the two short steps share a board."""
    corners = outline((0, 0), (60, 0), (60, 6), (40, 6), (40, 18), (0, 18))
    surface = wall(60, 18, outline=corners, framing=SOLID)
    assert found(surface, boards(3, 100)).wood_spent_nm2 == 2 * 600 * SQUARE_INCH


def test_where_joints_may_fall_nothing_is_said() -> None:
    """A course could be made of two pieces of any lengths."""
    rules = replace(RULES, joints=JointPolicy.COUNT, shortest_piece_nm=nm(10))
    assert found(wall(51, 18, framing=SOLID), boards(2, 100), rules) == Bound()


def test_nothing_is_said_without_boards_or_where_courses_could_hide_in_gaps() -> None:
    """There is nothing to count, or nothing sure."""
    assert found(wall(51, 18, framing=SOLID), []) == Bound()
    wide_gaps = replace(RULES, gap_tolerance_nm=nm(6))
    assert found(wall(51, 18, framing=SOLID), boards(2, 100), wide_gaps) == Bound()


def test_the_higher_of_two_bounds_is_kept() -> None:
    """What is known stays when pieces counted whole say less, and is raised when they say more."""
    strips, pile = Strips(wall(51, 18, framing=SOLID), RULES), boards(3, 100)
    low, high = Bound(joints_in_sight=2, wood_spent_nm2=1), Bound(wood_spent_nm2=10**20)
    assert sharpened(low, strips, pile, RULES, []).joints_in_sight == 2
    assert sharpened(low, strips, pile, RULES, []).wood_spent_nm2 >= 2 * 600 * SQUARE_INCH
    assert sharpened(high, strips, pile, RULES, []) == high
    bare = Bound(bare_nm2=5)
    assert sharpened(bare, strips, pile, RULES, []) == bare
    assert sharpened(low, strips, boards(1, 100), RULES, []).bare_nm2 > 51 * SQUARE_INCH
