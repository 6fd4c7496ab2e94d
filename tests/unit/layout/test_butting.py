"""Where planned pieces butt, and which may."""

from dataclasses import replace
from itertools import pairwise

import pytest

from builders import board, job, nm, rectangle, wall
from choosing import plain
from plankwright.layout.butting import (
    can_butt,
    joints_near,
    joints_of,
    mate_groups,
    thickness_reach,
    too_near,
)
from plankwright.layout.plan import PlannedCourse, Stick
from plankwright.layout.sticks import whole_sticks
from plankwright.layout.strips import Strips
from plankwright.model import ConcealedZone, EdgeKind, EdgeProfile
from plans import planned_course, planned_piece

BENCH = ConcealedZone(id="bench", place=rectangle(30, 0, 60, 12))
WALL = wall(96, 48, concealed=(BENCH,))
WORK = job(WALL, [board("A", 200, 6)])
STRIPS = Strips(WALL, plain(stagger_nm=nm(12)))
TONGUE = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25))


def _course(low: float, *ends: float) -> PlannedCourse:
    """Plan a course of six inches whose pieces reach from each of these places to the next."""
    pieces = (planned_piece(WORK, 0, along, 6) for along in pairwise(ends))
    return planned_course((low, low + 6), *pieces)


def _stick(number: int, thickness: float, profile: EdgeProfile | None = None) -> Stick:
    (stick,) = whole_sticks(
        board("A", 97, 6, thickness_nm=nm(thickness), profile=profile or EdgeProfile()), number, plain()
    )
    return stick


def test_pieces_butt_where_one_begins_as_another_ends() -> None:
    """Behind the bench the joint is hidden; in the third course the bench hides half of it only."""
    assert joints_of(STRIPS, _course(0, 0, 16, 48, 96)) == [(nm(16), False), (nm(48), True)]
    assert joints_of(STRIPS, _course(9, 0, 48, 96)) == [(nm(48), False)]


def test_beside_what_is_bare_nothing_butts() -> None:
    """A gap of an inch."""
    parted = planned_course(
        (0, 6), planned_piece(WORK, 0, (0, 20), 6), planned_piece(WORK, 0, (21, 96), 6), bare=((20, 21),)
    )
    assert joints_of(STRIPS, parted) == []


def test_joints_in_sight_of_touching_courses_are_near() -> None:
    """Those below and above count, one further off and a hidden one do not."""
    courses = [_course(0, 0, 20, 48, 96), _course(12, 0, 70, 96), _course(18, 0, 80, 96)]
    assert joints_near(STRIPS, nm(6), nm(12), courses) == [nm(20), nm(70)]


@pytest.mark.parametrize(("at", "near"), [(31.984375, True), (32, False), (8, False), (8.015625, True)])
def test_joints_stand_too_near_within_the_stagger(at: float, *, near: bool) -> None:
    """Twelve inches from 20, on either side; just twelve are enough."""
    assert too_near(STRIPS, _course(12, 0, 20, 96), _course(18, 0, at, 96)) is near


def test_a_hidden_joint_stands_near_nothing() -> None:
    """Behind the bench in the lower course, in sight above it."""
    assert not too_near(STRIPS, _course(6, 0, 48, 96), _course(12, 0, 48, 96))


@pytest.mark.parametrize(("length", "can"), [(16, True), (15.984375, False)])
def test_a_piece_that_butts_is_as_long_as_the_shortest(length: float, *, can: bool) -> None:
    """Sixteen inches."""
    rules = plain(shortest_piece_nm=nm(16))
    assert can_butt(0, nm(length), [nm(8)], rules) is can


@pytest.mark.parametrize(
    ("nails", "can"),
    [
        ((8, 24), True),
        ((8,), False),
        ((0, 32), True),
        ((0.25, 31.75), True),
        ((0.125, 24), False),
        ((8, 40), False),
    ],
)
def test_a_piece_that_butts_is_nailed_often_enough(nails: tuple[float, ...], *, can: bool) -> None:
    """Twice from 0 to 32, a quarter of an inch from its ends, or at a joint on the very member."""
    rules = plain(nailing_points=2, nail_end_nm=nm(0.25))
    assert can_butt(0, nm(32), [nm(at) for at in nails], rules) is can


def test_a_shim_makes_up_for_as_much_as_it_is_thick() -> None:
    """What is left of the step may be as high as the tolerance."""
    assert thickness_reach(plain(thickness_tolerance_nm=nm(0.0625))) == nm(0.0625)
    assert thickness_reach(plain(thickness_tolerance_nm=nm(0.0625), shim_up_to_nm=nm(0.25))) == nm(0.3125)


def test_mates_have_one_profile() -> None:
    """Two groups, in the order in which the profiles are met."""
    square, tongued, other = _stick(0, 0.75), _stick(1, 0.75, TONGUE), _stick(2, 0.75)
    assert mate_groups([square, tongued, other], plain()) == [[square, other], [tongued]]


def test_mates_lie_within_the_tolerance_of_thickness() -> None:
    """From 3/4 to 7/8 and from 13/16 to 15/16; what would be part of one of these makes no group."""
    rules = plain(thickness_tolerance_nm=nm(0.125))
    sticks = [_stick(number, thickness) for number, thickness in enumerate((0.75, 0.8125, 0.875, 0.9375))]
    assert mate_groups(sticks, rules) == [sticks[:3], sticks[1:]]


def test_without_wood_there_are_no_mates() -> None:
    """No group, rather than an empty one."""
    assert mate_groups([], plain()) == []


def test_a_stick_is_its_own_mate() -> None:
    """However thick."""
    stick = replace(_stick(0, 0.75), thickness=nm(3))
    assert mate_groups([stick], plain()) == [[stick]]
