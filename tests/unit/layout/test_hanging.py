"""What a piece looks like on the surface."""

import math

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry.base import BaseGeometry

from builders import course, job, nm, opening, outline, piece, rectangle, socket, surface_layout, wall
from by_eye import filled
from plankwright.layout.hanging import _corners, called, hung_pieces
from plankwright.layout.regions import as_polygon, may_region
from plankwright.measure import INCH, MILLIMETRE
from plankwright.model import CutOut, Direction, Edge, HungPiece, KeepOut, Rules, Surface
from plankwright.model.surface import twice_signed_area

NO_GAP = Rules(expansion_gap_nm=0)


def _hung(
    surface: Surface, along: tuple[float, float], across: tuple[float, float], rules: Rules = NO_GAP
) -> HungPiece:
    """Hang one piece."""
    only = course(1, across, piece(surface, "1a A1", along, across))
    (hung,) = hung_pieces(job(surface, [], rules), surface_layout(surface, only))
    return hung


def test_a_plain_piece_hangs_as_it_is_cut() -> None:
    """Four corners anticlockwise from the lower left, all points and widths those of the blank."""
    hung = _hung(wall(96, 48), (10, 58), (5, 10.5))
    assert hung.shape == outline((10, 5), (58, 5), (58, 10.5), (10, 10.5))
    assert hung.long_point_nm == hung.short_point_nm == nm(48)
    assert hung.width_left_nm == hung.width_right_nm == nm(5.5)
    assert hung.notches == ()
    assert (hung.label, hung.board_id) == ("1a", "A1")


def test_an_opening_is_notched_with_its_gap_to_the_nanometre() -> None:
    """A window reaches two inches into the course; the expansion gap comes off besides."""
    surface = wall(96, 48, openings=(opening("window", 20, 8, 50, 40),))
    hung = _hung(surface, (0.25, 95.75), (4.25, 10), Rules(expansion_gap_nm=nm(0.25)))
    assert hung.notches == ((rectangle(19.75, 7.75, 50.25, 10), "window"),)
    assert hung.shape == outline(
        (0.25, 4.25),
        (95.75, 4.25),
        (95.75, 10),
        (50.25, 10),
        (50.25, 7.75),
        (19.75, 7.75),
        (19.75, 10),
        (0.25, 10),
    )
    assert hung.long_point_nm == hung.short_point_nm == nm(95.5)


def test_a_cut_out_within_a_piece_is_a_notch_and_leaves_its_outer_edge_alone() -> None:
    """A socket box in the middle of a board is a hole: named among the notches, not in the corners."""
    hung = _hung(wall(96, 48, cut_outs=(socket(30, 6, 32, 9),)), (10, 58), (5, 10.5))
    assert hung.notches == ((rectangle(30, 6, 32, 9), "socket"),)
    assert len(hung.shape) == 4


def test_a_cut_out_at_the_edge_is_cut_into_the_shape() -> None:
    """A socket across a seam notches both pieces, each by its share."""
    surface = wall(96, 48, cut_outs=(socket(30, 9, 32, 13),))
    layout = surface_layout(
        surface,
        course(1, (5, 10.5), piece(surface, "1a A1", (0, 96), (5, 10.5))),
        course(2, (10.5, 16), piece(surface, "2a A2", (0, 96), (10.5, 16))),
    )
    lower, upper = hung_pieces(job(surface, [], NO_GAP), layout)
    assert lower.notches == ((rectangle(30, 9, 32, 10.5), "socket"),)
    assert upper.notches == ((rectangle(30, 10.5, 32, 13), "socket"),)
    assert twice_signed_area(lower.shape) == 2 * (nm(96) * nm(5.5) - nm(2) * nm(1.5))


def test_notches_stand_in_order_from_the_left() -> None:
    """Openings and cut-outs mixed come in the order in which they are met along the piece."""
    surface = wall(96, 48, openings=(opening("hatch", 60, 8, 70, 20),), cut_outs=(socket(30, 6, 32, 9),))
    hung = _hung(surface, (0, 96), (5, 10.5))
    assert [name for _, name in hung.notches] == ["socket", "hatch"]


def test_an_end_under_a_rafter_has_a_long_and_a_short_point() -> None:
    """At 45 degrees a course of five inches is five inches shorter along its upper edge, at each end."""
    gable = wall(96, 48, outline=outline((0, 0), (96, 0), (48, 48)))
    hung = _hung(gable, (10, 48), (10, 15))
    assert hung.shape == outline((10, 10), (48, 10), (48, 15), (15, 15))
    assert hung.long_point_nm == nm(38)
    assert hung.short_point_nm == nm(33)
    assert hung.width_left_nm == hung.width_right_nm == nm(5)


def test_a_piece_under_the_ridge_comes_to_a_point() -> None:
    """The triangle at the top has no upper edge: its short point is nothing, its width that of its blank."""
    gable = wall(96, 48, outline=outline((0, 0), (96, 0), (48, 48)))
    hung = _hung(gable, (43, 53), (43, 48))
    assert hung.shape == outline((43, 43), (53, 43), (48, 48))
    assert (hung.long_point_nm, hung.short_point_nm) == (nm(10), 0)
    assert hung.width_left_nm == hung.width_right_nm == nm(5)


def test_a_starter_on_a_sloping_floor_is_tapered_and_not_angled() -> None:
    """A floor that rises an inch over the wall takes an inch off one end and nothing off the length."""
    surface = wall(96, 48, outline=outline((0, 0), (96, 1), (96, 48), (0, 48)))
    hung = _hung(surface, (0, 96), (0, 5.5))
    assert hung.long_point_nm == hung.short_point_nm == nm(96)
    assert (hung.width_left_nm, hung.width_right_nm) == (nm(5.5), nm(4.5))


def test_widths_at_the_ends_follow_a_floor_measured_in_several_places() -> None:
    """Only the heights at the two ends of the piece count, whatever lies between."""
    surface = wall(96, 48, outline=outline((0, 0.5), (32, 0), (64, 0.25), (96, 0.75), (96, 48), (0, 48)))
    hung = _hung(surface, (0, 96), (0, 5.5))
    assert (hung.width_left_nm, hung.width_right_nm) == (nm(5), nm(4.75))


def test_upright_courses_are_measured_along_themselves() -> None:
    """A board that stands under a sloping ceiling: its length is its height, left is its lower end."""
    surface = wall(
        96,
        48,
        outline=outline((0, 0), (96, 0), (96, 24), (0, 48)),
        courses_run=Direction.VERTICAL,
        start=Edge.RIGHT,
    )
    hung = _hung(surface, (0, 26), (0, 8))
    assert hung.shape == outline((88, 0), (96, 0), (96, 24), (88, 26))
    assert (hung.long_point_nm, hung.short_point_nm) == (nm(26), nm(24))
    assert (hung.width_left_nm, hung.width_right_nm) == (nm(8), nm(8))


def test_of_a_piece_that_is_parted_the_larger_part_is_shown() -> None:
    """An opening over the whole height of a course leaves two parts of one blank."""
    surface = wall(96, 48, openings=(opening("slot", 60, 0, 62, 48),))
    hung = _hung(surface, (10, 90), (5, 10))
    assert hung.shape == outline((10, 5), (60, 5), (60, 10), (10, 10))


def test_a_piece_outside_its_surface_is_refused() -> None:
    """Only a layout that nobody checked can hold one."""
    gable = wall(96, 48, outline=outline((0, 0), (96, 0), (48, 48)))
    with pytest.raises(ValueError, match="piece 1a lies wholly outside the surface wall"):
        _hung(gable, (0, 10), (40, 45))


def test_corners_closer_than_a_nanometre_are_one() -> None:
    """Where the geometry library leaves a speck of an edge, also where the ring begins and ends."""
    speck = shapely.Polygon([(0, 0), (9, 0), (9, 0.3), (9, 5), (0, 5), (0.2, 0.3)])
    assert _corners(speck) == ((0, 0), (9, 0), (9, 5), (0, 5))


@pytest.mark.parametrize(
    ("what", "name", "said"),
    [
        ("", "left", "left"),
        ("socket", "left", "socket (left)"),
        ("Socket", "left socket", "left socket"),
        ("socket", "socket-by-bench", "socket-by-bench"),
        ("heating pipe, up to the room above", "heating-pipe", "heating pipe, up to the room above"),
        ("wire between the sockets and the switch", "socket-wire", "wire between the sockets and the switch"),
        ("cable of the lamp", "lamp-cable", "cable of the lamp"),
        ("Rohr in der Küche", "küche", "Rohr in der Küche"),
        ("pipe", "pipe-2", "pipe-2"),
    ],
)
def test_things_are_called_once_by_what_they_are(what: str, name: str, said: str) -> None:
    """What it is and its name, but nothing said twice."""
    place = rectangle(0, 0, 1, 1)
    assert called(CutOut(id=name, place=place, what=what)) == said
    assert called(KeepOut(id=name, place=place, what=what)) == said


WALLS = {
    "plain": wall(120, 60),
    "window": wall(120, 60, openings=(opening("window", 40, 15, 75, 45),), cut_outs=(socket(20, 9, 22, 13),)),
    "gable": wall(120, 90, outline=outline((0, 0), (120, 0), (120, 40), (60, 90), (0, 40))),
    "uneven": wall(120, 60, outline=outline((0, 1), (60, 0), (120, 2), (120, 60), (0, 59))),
    "upright": wall(
        120, 60, courses_run=Direction.VERTICAL, start=Edge.RIGHT, openings=(opening("door", 30, 0, 60, 44),)
    ),
}


@settings(max_examples=25)
@given(
    name=st.sampled_from(sorted(WALLS)),
    heights=st.lists(st.sampled_from([4.0, 5.5, 7.25]), min_size=30, max_size=30),
    cuts=st.lists(st.floats(10, 110).map(lambda at: round(at * 64) / 64), max_size=4, unique=True),
    start_from_far=st.booleans(),
)
def test_what_hangs_and_what_is_bare_make_up_the_whole(
    name: str, heights: list[float], cuts: list[float], *, start_from_far: bool
) -> None:
    """The areas of all pieces, less holes, and of all that is bare come to the area that may be covered."""
    surface = WALLS[name]
    if start_from_far and surface.courses_run is Direction.HORIZONTAL:
        surface = wall(
            120,
            60,
            outline=surface.outline,
            openings=surface.openings,
            cut_outs=surface.cut_outs,
            start=Edge.TOP,
        )
    rules = Rules(expansion_gap_nm=nm(0.25))
    joints = dict.fromkeys(range(1, 40), cuts)
    layout, _ = filled(surface, heights, joints, rules, bare=("2a", "5b"))
    may = may_region(surface, rules)
    hung = sum(_region(each).area for each in hung_pieces(job(surface, [], rules), layout))
    holes = shapely.union_all([as_polygon(cut_out.place) for cut_out in surface.cut_outs])
    bare = shapely.union_all([as_polygon(place) for place in layout.bare]).intersection(may)
    whole = hung + bare.area + may.intersection(holes).difference(bare).area
    # Corners on slopes are rounded to the nanometre: an edge of a metre may be off by a metre times that.
    assert math.isclose(whole, may.area, abs_tol=len(layout.pieces) * 1000 * MILLIMETRE)
    assert len(layout.pieces) > 5
    assert may.area > INCH * INCH


def _region(hung: HungPiece) -> BaseGeometry:
    """Give a piece with its holes cut out."""
    return shapely.Polygon(hung.shape).difference(
        shapely.union_all([as_polygon(place) for place, _ in hung.notches])
    )
