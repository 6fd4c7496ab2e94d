"""What is made least: area bare, joints in sight, wood, pieces."""

from dataclasses import replace

import pytest

from builders import board, nm, opening, rectangle, studs, wall
from choosing import Question, pieces_of, plain
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


def test_a_board_is_asked_for_only_where_the_pile_has_none() -> None:
    """It just fits, and yet boards of the pile are ripped from 10 inches and joined when they can be."""
    surface = wall(96, 12, framing=studs(48))
    pile = [board("A", 48, 10), board("B", 48, 10)]
    more = {"prices": Question(boards=[]).prices(new=10**9)}
    asked = Question(boards=pile, surface=surface, endless=[board("new", 96, 11)], more=more)
    assert [which for which, _, _ in pieces_of(asked.answer())] == [0, 1]
    higher = replace(asked, courses=[(0, 10.5)])
    assert [which for which, _, _ in pieces_of(higher.answer())] == [2]


def test_as_little_is_asked_for_as_can_be() -> None:
    """A board of the pile reaches from either end to the stud at 60; the shorter part is asked for."""
    surface = wall(96, 12, framing=studs(60))
    more = {"prices": Question(boards=[]).prices(new=10**6, new_wood=10**3)}
    asked = Question(boards=[board("A", 60, 6)], surface=surface, endless=[board("new", 96, 6)], more=more)
    assert sorted(pieces_of(asked.answer())) == [(0, 0, 60), (1, 60, 96)]


def test_boards_that_are_asked_for_never_run_out() -> None:
    """Three courses, each of two pieces, all of one sort that there is none of."""
    surface = wall(96, 18, framing=studs(48))
    more = {"prices": Question(boards=[]).prices(new=1)}
    asked = Question(boards=[], surface=surface, endless=[board("new", 48, 6)], more=more)
    courses = replace(asked, courses=[(0, 6), (6, 12), (12, 18)])
    assert len(pieces_of(courses.answer())) == 6
    counted = replace(asked, heights=[6], span=(0, 18, 18))
    assert len(pieces_of(counted.answer())) == 6
