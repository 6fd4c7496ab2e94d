"""Rules (6) to (8): the heights of courses add up to what is to be covered."""

import pytest

from builders import board, nm, opening, studs, wall
from choosing import can_cover, plain
from plankwright.model import Board


def _boards(*sizes: tuple[float, float]) -> list[Board]:
    return [board(f"A{place}", *size) for place, size in enumerate(sizes)]


def _sixes(count: int) -> list[Board]:
    return _boards(*[(96, 6)] * count)


def test_courses_reach_the_end_of_the_stretch() -> None:
    """(8) Twelve inches take two courses of six."""
    assert can_cover(_sixes(2), heights=[6])
    assert not can_cover(_sixes(1), heights=[6])


def test_courses_do_not_go_beyond_where_the_stretch_may_end() -> None:
    """(8) Two of seven cover twelve only if two inches go behind a trim, or are ripped off."""
    sevens, narrowest = _boards((96, 7), (96, 7)), plain(narrowest_course_nm=nm(7))
    assert can_cover(sevens, narrowest, heights=[7], span=(0, 12, 14))
    assert not can_cover(sevens, narrowest, heights=[7], span=(0, 12, 13.96875))
    assert can_cover(sevens, plain(narrowest_course_nm=nm(6)), heights=[7], span=(0, 12, 12))


@pytest.mark.parametrize(("narrowest", "right"), [(4, True), (4.0625, False)])
def test_the_closing_rip_leaves_no_course_lower_than_the_narrowest(narrowest: float, *, right: bool) -> None:
    """(6) Two courses of six on eight inches are four each at the best."""
    rules = plain(narrowest_course_nm=nm(narrowest))
    assert can_cover(_sixes(2), rules, heights=[6], span=(0, 8, 8)) is right


def test_only_courses_that_are_there_give_anything_up() -> None:
    """(6) One of six gives up two inches at the most beside one of four, which gives up none."""
    boards, rules = _boards((96, 6), (96, 4)), plain(narrowest_course_nm=nm(4))
    assert can_cover(boards, rules, heights=[4, 6], span=(0, 8, 8))
    assert not can_cover(boards, rules, heights=[4, 6], span=(0, 7.9375, 7.9375))


@pytest.mark.parametrize(("sill", "right"), [(6, True), (5.96875, True), (6.03125, False)])
def test_a_course_is_whole_until_it_lies_wholly_beside_an_opening(sill: float, *, right: bool) -> None:
    """(7) One long board lies below the window, or reaches up beside it; short ones lie beside it only.

    With the sill above the first course, the second is still one run, and the two short boards do not do.
    """
    surface = wall(96, 12, framing=studs(16, 80), openings=(opening("window", 32, sill, 64, 20),))
    assert can_cover(_boards((96, 6), (32, 6), (32, 6)), surface=surface, heights=[6]) is right


def test_a_course_that_reaches_beyond_an_edge_is_not_below_it() -> None:
    """(7) Below a window halves butt on the stud behind it; across its sill they would on the notch."""
    surface = wall(96, 12, framing=studs(16, 48, 80), openings=(opening("window", 32, 6, 64, 20),))
    halves, beside = [(48.0, 4.0)] * 2, [(32.0, 4.0)] * 2
    assert can_cover(_boards(*halves, (96, 4), *beside), surface=surface, heights=[4])
    assert not can_cover(_boards(*halves, *halves, *beside), surface=surface, heights=[4])


def test_two_courses_do_not_lie_across_one_edge() -> None:
    """(7) The upper of two lies beside the window, in two runs that a saw of three inches makes too long."""
    surface = wall(96, 9, framing=studs(16, 80), openings=(opening("window", 47, 3, 49, 20),))
    rules, boards = plain(crosscut_kerf_nm=nm(3)), _boards((96, 4), (96, 5))
    assert can_cover(_boards((96, 4), (97, 5)), rules, surface=surface, heights=[4, 5], span=(0, 9, 9))
    assert not can_cover(boards, rules, surface=surface, heights=[4, 5], span=(0, 9, 9))


def test_one_course_at_the_most_lies_across_an_edge() -> None:
    """(7) Courses of four below and beside a window from six on: one below, one across, one beside."""
    surface = wall(96, 12, framing=studs(16, 80), openings=(opening("window", 32, 6, 64, 20),))
    assert can_cover(_boards((96, 4), (96, 4), (32, 4), (32, 4)), surface=surface, heights=[4])
    assert not can_cover(_boards((96, 4), *[(32, 4)] * 6), surface=surface, heights=[4])


def test_courses_that_keep_their_places_need_not_add_up() -> None:
    """There may be others between them."""
    surface = wall(96, 36)
    assert can_cover(_boards((96, 6), (96, 7)), surface=surface, courses=[(0, 6), (20, 27)])


def test_a_stretch_that_no_height_fits_is_not_covered() -> None:
    """(8) Courses of twenty on a stretch of twelve: none is not enough, not even when all may be bare."""
    assert not can_cover(_boards((96, 20)), heights=[20])
    assert not can_cover(_boards((96, 20)), heights=[20], more={"bare_allowed": True})


def test_no_course_lies_within_a_band_that_another_lies_across() -> None:
    """(7) Where one of eight lies across all of a low window, the two boards beside it have no place left."""
    surface = wall(96, 12, framing=studs(16, 80), openings=(opening("window", 32, 6, 64, 8),))
    whole, beside = [(96.0, 2.0)] * 2, [(32.0, 2.0)] * 2
    assert can_cover(_boards((96, 8), *whole), surface=surface, heights=[2, 8])
    assert not can_cover(_boards((96, 8), *whole[:1], *beside), surface=surface, heights=[2, 8])
