"""Where pieces are nailed. Two nails from four inches on are common practice, without a source."""

import pytest
import shapely

from builders import nm, opening, outline, rectangle, socket, studs, wall
from plankwright.layout.ground import Ground
from plankwright.layout.nailing import nail_places
from plankwright.layout.strips import Strips
from plankwright.model import Framing, KeepOut, Rules, Surface
from plans import span

NO_GAP = Rules(expansion_gap_nm=0)


def _nails(
    surface: Surface, blank: tuple[float, float, float, float], rules: Rules = NO_GAP
) -> list[tuple[float, float]]:
    """Nail one piece; places in inches."""
    places = nail_places(Ground(Strips(surface, rules)), span(*blank))
    return [(along / nm(1), across / nm(1)) for along, across in places]


def _pipe(left: float, bottom: float, right: float, top: float) -> KeepOut:
    return KeepOut(id="pipe", place=rectangle(left, bottom, right, top), what="water pipe")


def test_two_nails_stand_on_each_centre_line_a_quarter_in_from_the_edges() -> None:
    """Six inches wide and across studs at 8, 24 and 40."""
    assert _nails(wall(48, 48), (0, 48, 10, 16)) == [
        (8, 11.5),
        (8, 14.5),
        (24, 11.5),
        (24, 14.5),
        (40, 11.5),
        (40, 14.5),
    ]


def test_a_narrow_board_takes_one_nail_in_the_middle() -> None:
    """Under four inches a second nail would only split it."""
    assert _nails(wall(48, 48), (0, 30, 0, 3.5)) == [(8, 1.75), (24, 1.75)]
    assert len(_nails(wall(48, 48), (0, 30, 0, 4))) == 4


def test_nails_keep_the_least_distance_from_the_edges_of_a_board_just_wide_enough() -> None:
    """A quarter of four inches is less than the inch and a half asked for."""
    rules = Rules(expansion_gap_nm=0, nail_edge_nm=nm(1.5))
    assert _nails(wall(16, 48), (0, 16, 0, 4), rules) == [(8, 1.5)]
    assert _nails(wall(16, 48), (0, 16, 0, 6), rules) == [(8, 1.5), (8, 4.5)]


def test_at_a_joint_the_nails_stand_between_the_end_and_the_side_of_the_stud() -> None:
    """From 1/4 in off the end to the side of the stud, 3/4 in off, they have the middle: 1/2 in."""
    surface = wall(48, 48)
    assert {along for along, _ in _nails(surface, (24, 48, 0, 6))} == {24.5, 40}
    assert {along for along, _ in _nails(surface, (0, 24, 0, 6))} == {8, 23.5}


def test_a_member_that_the_end_of_a_piece_hardly_reaches_takes_no_nail() -> None:
    """The end lies 7/8 in past the near side of a stud: nailed 1/4 in off; at 1/8 in past it is not."""
    surface = wall(48, 48)
    assert {along for along, _ in _nails(surface, (0, 24.125, 0, 6))} == {8, 23.5625}
    assert {along for along, _ in _nails(surface, (0, 23.375, 0, 6))} == {8}


def test_framing_along_the_courses_takes_no_nail() -> None:
    """A rail behind the course is not crossed by it."""
    rail = studs(3, runs=wall(48, 48).courses_run).members
    surface = wall(48, 48, framing=Framing(members=(*studs(8).members, *rail)))
    assert {along for along, _ in _nails(surface, (0, 48, 0, 6))} == {8}


def test_solid_backing_needs_no_places() -> None:
    """Nails may go anywhere, so none are told."""
    assert _nails(wall(48, 48, framing=Framing(solid=True)), (0, 48, 0, 6)) == []


def test_nails_move_clear_of_a_pipe_along_the_course() -> None:
    """From 4 to 5 with an inch of clearance, 3 to 6 is barred: 4.5 goes to 3, as 6 is too near the edge."""
    surface = wall(16, 48, keep_outs=(_pipe(0, 4, 16, 5),))
    assert _nails(surface, (0, 16, 0, 6)) == [(8, 1.5), (8, 3)]


def test_nails_that_come_too_close_to_each_other_are_one() -> None:
    """From 2 on upwards barred, both are drawn to the strip below it."""
    surface = wall(16, 48, keep_outs=(_pipe(0, 3, 16, 9),))
    assert _nails(surface, (0, 16, 0, 6)) == [(8, 1.5)]


def test_nails_move_off_the_centre_line_for_a_pipe_up_the_stud() -> None:
    """A pipe at 6.4 to 7.4 bars up to 8.4; 8.4 to 8.75 is left of the stud, the nails stand well inside."""
    surface = wall(16, 48, keep_outs=(_pipe(6.4, 0, 7.4, 48),))
    places = _nails(surface, (0, 16, 0, 6))
    assert [across for _, across in places] == [1.5, 4.5]
    assert all(8.5 < along < 8.65 for along, _ in places)


def test_where_all_of_a_stud_is_barred_there_is_no_nail() -> None:
    """A pipe right on the stud."""
    surface = wall(32, 48, keep_outs=(_pipe(7.5, 0, 8.5, 48),))
    assert {along for along, _ in _nails(surface, (0, 32, 0, 6))} == {24}


def test_nails_keep_away_from_a_socket_as_from_an_edge() -> None:
    """A socket from 2 to 4.25 up the board, over the centre line: the upper nail goes 1/2 in above it."""
    surface = wall(16, 48, cut_outs=(socket(7.75, 2, 10, 4.25),))
    assert _nails(surface, (0, 16, 0, 6)) == [(8, 1.5), (8, 4.75)]


def test_nails_keep_away_from_a_window_with_its_gap() -> None:
    """Under a window 3 in up the course 2.75 in are left: 1/2 in off the notch is 2.25, too near 1.5."""
    surface = wall(48, 48, openings=(opening("window", 16, 3, 32, 40),))
    assert _nails(surface, (0, 48, 0, 6), Rules()) == [(8, 1.5), (8, 4.5), (24, 1.5), (40, 1.5), (40, 4.5)]


def test_a_piece_that_runs_out_under_a_slope_is_nailed_half_an_inch_inside_it() -> None:
    """The slope meets the floor at 48 and 45 degrees: half an inch off it, along + across is 48 - 0.5 √2."""
    surface = wall(48, 48, outline=outline((0, 0), (48, 0), (0, 48)), framing=studs(8, 24, 44))
    places = _nails(surface, (0, 48, 0, 6))
    assert [across for along, across in places if along == 44] == [1.5, pytest.approx(4 - 0.5 * 2**0.5)]


def test_only_a_piece_nailed_too_seldom_is_nailed_near_a_slope() -> None:
    """At the last stud, from 47 on, places 1/2 in above the floor are left, but none 1/2 in off the slope."""
    lean_to = outline((0, 0), (48, 0), (0, 48))
    held = wall(48, 48, outline=lean_to, framing=studs(8, 24, 47.75))
    assert {along for along, _ in _nails(held, (0, 48, 0, 4))} == {8, 24}
    wanting = wall(48, 48, outline=lean_to, framing=studs(24, 47.75))
    (along, across) = _nails(wanting, (0, 48, 0, 4))[-1]
    assert along >= 47
    assert across >= 0.5
    assert along + across < 48


@pytest.mark.parametrize(("left", "right"), [(24, 24.4), (10, 20)])
def test_a_piece_that_reaches_no_stud_has_no_nails(left: float, right: float) -> None:
    """Too short for its end distances, or between two studs."""
    assert _nails(wall(48, 48), (left, right, 0, 6)) == []


def test_no_nail_stands_on_the_very_line_of_a_slope() -> None:
    """Even when the rules let nails stand on the edge: rounded, the place may miss what hangs."""
    surface = wall(24, 20, outline=outline((0, 0), (24, 0), (24, 8), (3, 19), (0, 8)), framing=studs(9, 18))
    ground = Ground(Strips(surface, Rules(expansion_gap_nm=nm(0.25), nail_edge_nm=0)))
    blank = span(0.75, 20, 10, 12)
    places = nail_places(ground, blank)
    assert len(places) == 2
    assert all(shapely.intersects_xy(ground.hung(blank), *place) for place in places)
