"""What is made least: area bare, joints in sight, wood, pieces."""

import pytest

from builders import board, nm, opening, rectangle, studs, wall
from choosing import PLAIN, Question, pieces_of, plain
from plankwright.model import ConcealedZone


def test_the_smaller_part_is_left_bare() -> None:
    """Fifty inches beside a door, and forty on its other side, for one board."""
    surface = wall(96, 12, framing=studs(24, 72), openings=(opening("door", 50, 0, 56, 12),))
    question = Question(boards=[board("A", 50, 6)], surface=surface, more={"bare_allowed": True})
    assert pieces_of(question.answer()) == [(0, 0, 50)]


@pytest.mark.parametrize(("kerf", "taken"), [(0.125, 0), (4.5, 1)])
def test_a_board_that_leaves_something_useful_is_charged_for_the_piece_and_a_kerf(
    kerf: float, taken: int
) -> None:
    """Of 130 in 34 are left for later; of 100 in 4 are lost, which costs more than a kerf of less."""
    boards = [board("A", 130, 6), board("B", 100, 6)]
    rules = plain(crosscut_kerf_nm=nm(kerf), shortest_piece_nm=nm(16))
    assert pieces_of(Question(boards=boards, rules=rules).answer()) == [(taken, 0, 96)]


def test_a_wide_board_is_charged_for_its_lane() -> None:
    """Of twelve and a half inches a second lane is left; an inch beyond the course is lost."""
    boards = [board("A", 96, 12.5), board("B", 96, 7)]
    rules = plain(rip_kerf_nm=nm(0.25))
    assert pieces_of(Question(boards=boards, rules=rules).answer()) == [(0, 0, 96)]
    assert pieces_of(Question(boards=boards, rules=rules, more={"lanes": 1}).answer()) == [(1, 0, 96)]


def test_one_piece_is_better_than_two_of_the_same_wood() -> None:
    """Even where the joint would be hidden."""
    zone = ConcealedZone(id="bench", place=rectangle(0, 0, 96, 12))
    boards = [board("A", 48, 6), board("B", 48, 6), board("C", 96, 6)]
    question = Question(boards=boards, surface=wall(96, 12, concealed=(zone,), framing=studs(48)))
    assert pieces_of(question.answer()) == [(2, 0, 96)]


def test_a_board_that_is_only_thought_of_is_taken_where_there_is_no_other() -> None:
    """It just fits, and yet a board of the pile is ripped from 10 inches, or joined, when there is one."""
    surface = wall(96, 12, framing=studs(48))
    pile = [board("A", 48, 10), board("B", 48, 10)]
    new = {"first_new": 2, "prices": Question(boards=[]).prices(new=10**9)}
    asked = Question(boards=[*pile, board("new", 96, 6)], rules=PLAIN, surface=surface, more=new)
    assert [which for which, _, _ in pieces_of(asked.answer())] == [0, 1]
    short = Question(boards=[pile[0], pile[1], board("new", 96, 6)], courses=[(0, 10.5)], more=new)
    assert short.answer().impossible
    lone = Question(boards=[*pile, board("new", 96, 11)], courses=[(0, 10.5)], surface=surface, more=new)
    assert [which for which, _, _ in pieces_of(lone.answer())] == [2]
