"""Rule (1), and which kinds of courses there are."""

from typing import Any

import pytest

from builders import board, nm, opening, studs, wall
from choosing import Question, can_cover, plain
from plankwright.layout.capacity import Capacity
from plankwright.layout.choose.kinds import Kind
from plankwright.model import Board, ConcealedZone, EdgeKind, EdgeProfile, Rectangle

TONGUE = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25))


def _kinds(*boards: Board, **more: Any) -> tuple[Kind, ...]:  # noqa: ANN401 - as a question has
    return Question(boards=boards, **more).chooser()._model.kinds


def _lanes(*boards: Board, lanes: int, heights: tuple[float, ...]) -> tuple[int, ...]:
    rules = plain(rip_kerf_nm=nm(0.25))
    question = Question(boards=boards, rules=rules, heights=heights, more={"lanes": lanes})
    return question.chooser()._model.lanes


@pytest.mark.parametrize(("width", "right"), [(5.875, True), (5.84375, False)])
def test_a_piece_is_no_narrower_than_its_course_by_more_than_the_tolerance(
    width: float, *, right: bool
) -> None:
    """(1) Six inches high, an eighth of tolerance, and boards to the 32nd."""
    assert (
        can_cover([board("A", 96, width)], plain(width_tolerance_nm=nm(0.125), gap_tolerance_nm=nm(0.125)))
        is right
    )


def test_a_board_that_no_saw_rips_is_as_wide_as_its_course() -> None:
    """(1) Six inches make a course of six, and an inch more is too much."""
    crosscut_only = Capacity(crosscut=nm(12), rip=0)
    assert can_cover([board("A", 96, 6)], capacity=crosscut_only)
    assert can_cover([board("A", 96, 7)])
    assert not can_cover([board("A", 96, 7)], capacity=crosscut_only)


def test_a_board_much_wider_than_its_course_is_left_out_of_a_quick_look() -> None:
    """Of a board that is to lose half an inch at the most, one that loses more is none."""
    boards = [board("A", 96, 6.75)]
    assert can_cover(boards, more={"rip_at_most": nm(0.75)})
    assert not can_cover(boards, more={"rip_at_most": nm(0.5)})


def test_a_board_that_has_room_for_another_lane_is_looked_at_however_wide() -> None:
    """Twelve inches are two courses of six, when no kerf is taken."""
    assert can_cover([board("A", 96, 12)], more={"rip_at_most": 0})
    assert not can_cover([board("A", 96, 12)], more={"rip_at_most": 0, "lanes": 1})


def test_a_stick_is_ripped_into_two_lanes_when_both_make_the_lowest_course() -> None:
    """Two of four inches and a kerf of a quarter take eight and a quarter."""
    boards = board("A", 96, 8.25), board("B", 96, 8.125)
    assert _lanes(*boards, lanes=2, heights=(4, 6)) == (2, 1)
    assert _lanes(*boards, lanes=1, heights=(4, 6)) == (1, 1)


def test_courses_that_stay_take_any_wood() -> None:
    """One kind, whose pieces are compared where they butt."""
    (kind,) = _kinds(board("A", 96, 6), board("B", 96, 6, profile=TONGUE), courses=[(0, 6)])
    assert kind.sticks == (0, 1)
    assert kind.stays
    assert kind.once


def test_courses_that_are_counted_take_mates_or_have_their_joints_hidden() -> None:
    """Two profiles make two kinds with joints in sight, and one of all wood with hidden joints only."""
    zone = ConcealedZone(id="bench", place=Rectangle(left=nm(12), bottom=0, right=nm(36), top=nm(12)))
    surface = wall(96, 12, concealed=(zone,), framing=studs(24, 72))
    kinds = _kinds(board("A", 96, 6), board("B", 96, 6, profile=TONGUE), surface=surface, heights=[6])
    assert [kind.sticks for kind in kinds] == [(0,), (1,), (0, 1)]
    assert [[place.at for place in kind.places if place.joint] for kind in kinds] == [
        [nm(24), nm(72)],
        [nm(24), nm(72)],
        [nm(24)],
    ]
    assert not any(kind.stays for kind in kinds)


def test_places_are_told_run_by_run() -> None:
    """A door parts the course in two runs, with a stud in the first."""
    surface = wall(96, 12, framing=studs(24, 60), openings=(opening("door", 48, 0, 72, 12),))
    (kind,) = _kinds(board("A", 96, 6), surface=surface)
    assert [(place.at, place.run, place.joint) for place in kind.places] == [
        (nm(0), 0, False),
        (nm(24), 0, True),
        (nm(48), 0, False),
        (nm(72), 1, False),
        (nm(96), 1, False),
    ]
    assert [kind.joined(place) for place in range(-1, 5)] == [False, True, True, False, True, False]


def test_a_course_across_an_edge_is_there_once() -> None:
    """A window from 6 inches up makes two bands; a course of 4 can lie in one of them or across the edge."""
    surface = wall(96, 12, openings=(opening("window", 30, 6, 60, 12),))
    kinds = _kinds(board("A", 96, 4), surface=surface, heights=[4])
    assert [(kind.row.first_band, kind.row.last_band, kind.once) for kind in kinds] == [
        (0, 0, False),
        (0, 1, True),
        (1, 1, False),
    ]
