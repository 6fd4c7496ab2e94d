"""A layout laid open: which joints there are, which show, and which courses are neighbours."""

from typing import Any

import pytest

from builders import board, course, job, opening, outline, piece, rectangle, surface_layout, wall
from plankwright.check.case import Joint, open_surface
from plankwright.measure import INCH
from plankwright.model import ConcealedZone, EdgeTrim

ROW = (0.25, 8.25)


def zone(name: str, left: float, bottom: float, right: float, top: float) -> ConcealedZone:
    """Make a fixture."""
    return ConcealedZone(id=name, place=rectangle(left, bottom, right, top))


def joints(left_end: float = 40, right_start: float = 40, **more: Any) -> tuple[Joint, ...]:  # noqa: ANN401
    """Give the joints of two pieces in one course of a wall 96.5 by 8.5."""
    hung_on = wall(96.5, 8.5, **more)
    pieces = (
        piece(hung_on, "1a A", (0.25, left_end), ROW),
        piece(hung_on, "1b B", (right_start, 96.25), ROW),
    )
    work = job(hung_on, [board("A", 60, 9), board("B", 60, 9)])
    return open_surface(work, surface_layout(hung_on, course(1, ROW, *pieces))).joints


def test_pieces_that_meet_make_one_joint() -> None:
    """Two pieces that touch make a joint in sight where they touch."""
    (joint,) = joints()
    assert (joint.left.piece.label, joint.right.piece.label) == ("1a", "1b")
    assert joint.at_nm == 40 * INCH
    assert joint.in_sight


@pytest.mark.parametrize(("apart", "count"), [(1 / 16, 1), (-1 / 16, 1), (5 / 64, 0), (-5 / 64, 0)])
def test_ends_meet_within_the_gap_tolerance(apart: float, count: int) -> None:
    """Ends up to 1/16 inch apart, or over one another, meet; farther they do not."""
    assert len(joints(right_start=40 + apart)) == count


@pytest.mark.parametrize(
    ("zones", "shows"),
    [
        ((zone("bench", 30, 0, 50, 9),), False),
        ((zone("bench", 40, 0, 50, 9),), False),
        ((zone("bench", 30, 0, 50, 8),), True),
        ((zone("bench", 41, 0, 50, 9),), True),
        ((zone("bench", 30, 0, 50, 4), zone("panel", 30, 4, 50, 9)), True),
    ],
    ids=["behind it", "along its side", "peeping out above", "beside it", "half behind each of two"],
)
def test_a_joint_is_hidden_wholly_behind_one_fixture(
    zones: tuple[ConcealedZone, ...],
    *,
    shows: bool,
) -> None:
    """What peeps out shows, and half behind one and half behind another is not hidden behind either."""
    assert joints(concealed=zones)[0].in_sight is shows


def test_trim_hides_a_joint_where_nothing_must_be_covered() -> None:
    """Behind casings and trim that cover the whole height of the course a joint does not show."""
    assert not joints(trim=EdgeTrim(bottom=5 * INCH, top=4 * INCH))[0].in_sight
    assert joints(trim=EdgeTrim(bottom=5 * INCH))[0].in_sight


def test_ends_that_meet_in_an_opening_make_no_joint() -> None:
    """Where a window is cut out of both pieces nothing meets."""
    assert joints(openings=(opening("window", 35, 0, 45, 8.5),)) == ()
    assert len(joints(openings=(opening("window", 35, 0, 45, 5),))) == 1


def test_ends_that_meet_in_one_point_make_no_joint() -> None:
    """Under a ridge the tips of two pieces that touch in the ridge's point alone do not butt."""
    tip = outline((0, 0), (96.5, 0), (96.5, 8.5), (40, 0.25), (0, 8.5))
    assert joints(outline=tip) == ()


def test_pieces_side_by_side_in_one_course_make_no_joint() -> None:
    """Ends that meet at different heights, because a piece is misplaced, do not butt."""
    hung_on = wall(96.5, 16.5)
    pieces = (piece(hung_on, "1a A", (0.25, 40), ROW), piece(hung_on, "1b B", (40, 96.25), (8.25, 16.25)))
    work = job(hung_on, [board("A", 60, 9), board("B", 60, 9)])
    assert open_surface(work, surface_layout(hung_on, course(1, ROW, *pieces))).joints == ()


@pytest.mark.parametrize(("second_from", "pairs"), [(8.25, 1), (8.3125, 1), (8.5, 0), (16.25, 0)])
def test_only_courses_that_touch_are_neighbours(second_from: float, pairs: int) -> None:
    """A course left bare between two parts them; a gap within the tolerance does not."""
    hung_on = wall(96.5, 30)
    second = (second_from, second_from + 8)
    rows = (
        course(1, ROW, piece(hung_on, "1a A", (0.25, 50), ROW)),
        course(2, (8.25, 8.25)),
        course(3, second, piece(hung_on, "3a B", (0.25, 50), second)),
    )
    case = open_surface(job(hung_on, [board("A", 60, 9)]), surface_layout(hung_on, *rows))
    assert len(list(case.neighbouring_rows)) == pairs


def test_an_unknown_surface_is_refused() -> None:
    """A surface that the job does not have cannot be laid open."""
    stranger = wall(50, 50, id="barn")
    with pytest.raises(KeyError):
        open_surface(job(wall(50, 50), []), surface_layout(stranger))


def test_pieces_are_told_from_the_start_side_whatever_their_order() -> None:
    """Rows and pieces are sorted by where they hang, as they may be listed in any order."""
    hung_on = wall(96.5, 16.5)
    high = (8.25, 16.25)
    rows = (
        course(2, high, piece(hung_on, "2a C", (0.25, 96.25), high)),
        course(1, ROW, piece(hung_on, "1b B", (40, 96.25), ROW), piece(hung_on, "1a A", (0.25, 40), ROW)),
    )
    case = open_surface(job(hung_on, []), surface_layout(hung_on, *rows))
    assert [hung.piece.label for hung in case.hung] == ["1a", "1b", "2a"]
    assert all(hung.board is None for hung in case.hung)
