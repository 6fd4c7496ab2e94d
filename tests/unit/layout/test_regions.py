"""What may and what must be covered."""

from dataclasses import replace

import shapely
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry.base import BaseGeometry

from builders import box_outline, nm, opening, outline, rectangle, studs, wall
from plankwright.layout.regions import (
    along_and_across,
    as_polygon,
    course_strip,
    extent_in_course,
    may_region,
    must_region,
    side_of_edge,
)
from plankwright.measure import INCH
from plankwright.model import Direction, Edge, EdgeTrim, Rules, Surface

GAP = Rules(expansion_gap_nm=nm(0.25))
ROUNDING = 1e-3
"""What floating-point numbers may be off by. [nm]"""


def _same(region: BaseGeometry, expected: BaseGeometry) -> bool:
    return bool(region.symmetric_difference(expected).area < INCH * ROUNDING)


def test_a_plain_wall_is_kept_clear_by_the_gap_on_every_side() -> None:
    """A quarter inch comes off each side, to the nanometre."""
    assert may_region(wall(96, 48), GAP).equals(as_polygon(rectangle(0.25, 0.25, 95.75, 47.75)))


def test_no_gap_leaves_the_outline_as_it_is() -> None:
    """Without a gap the whole surface may be covered."""
    assert may_region(wall(96, 48), Rules(expansion_gap_nm=0)).equals(as_polygon(rectangle(0, 0, 96, 48)))


def test_an_opening_is_kept_clear_on_all_four_sides() -> None:
    """A window takes itself and the gap around it."""
    surface = wall(96, 48, openings=(opening("window", 20, 10, 50, 40),))
    expected = as_polygon(rectangle(0.25, 0.25, 95.75, 47.75)).difference(
        as_polygon(rectangle(19.75, 9.75, 50.25, 40.25))
    )
    assert may_region(surface, GAP).equals(expected)


def test_a_corner_that_turns_inwards_is_mitred() -> None:
    """In an L-shaped wall the gap keeps its sharp corner: no round one and none cut off."""
    ell = wall(100, 100, outline=outline((0, 0), (100, 0), (100, 100), (60, 100), (60, 40), (0, 40)))
    expected = shapely.Polygon(
        outline((0.25, 0.25), (99.75, 0.25), (99.75, 99.75), (60.25, 99.75), (60.25, 39.75), (0.25, 39.75))
    )
    assert may_region(ell, GAP).equals(expected)


def test_a_floor_out_of_level_keeps_its_nearly_flat_corners() -> None:
    """Heights an eighth of an inch apart over four feet are neither straightened nor moved."""
    surface = wall(96, 90, outline=outline((0, 0), (48, 0.125), (96, 0), (96, 90), (0, 90)))
    may = may_region(surface, GAP)
    assert may.contains(shapely.Point(nm(48), nm(0.3751)))
    assert not may.contains(shapely.Point(nm(48), nm(0.3749)))


def test_the_gap_under_a_rafter_is_measured_square_to_it() -> None:
    """At 45 degrees a gap of a quarter inch is 0.3536 inches upright."""
    gable = wall(48, 24, outline=outline((0, 0), (48, 0), (24, 24)))
    may = may_region(gable, GAP)
    assert may.contains(shapely.Point(nm(24), nm(24 - 0.3537)))
    assert not may.contains(shapely.Point(nm(24), nm(24 - 0.3535)))


def test_trim_wider_than_the_gap_hides_what_it_covers() -> None:
    """A baseboard of 3-1/2 inches and no other trim: only the bottom of what must be covered rises."""
    surface = wall(96, 48, trim=EdgeTrim(bottom=nm(3.5), top=nm(0.125)))
    assert must_region(surface, GAP).equals(as_polygon(rectangle(0.25, 3.5, 95.75, 47.75)))


def test_a_casing_hides_what_it_covers() -> None:
    """Around a window with a casing of two inches nothing within two inches must be covered."""
    surface = wall(96, 48, openings=(opening("window", 20, 10, 50, 40, trim=2),))
    expected = as_polygon(rectangle(0.25, 0.25, 95.75, 47.75)).difference(
        as_polygon(rectangle(18, 8, 52, 42))
    )
    assert must_region(surface, GAP).equals(expected)


def test_trim_along_a_slope_reaches_into_the_corner_beside_it() -> None:
    """Where trim on the rafter meets the gap on the wall below, no wedge between them is left to cover."""
    gable = wall(
        96,
        84,
        outline=outline((0, 0), (96, 0), (96, 48), (48, 84), (0, 48)),
        trim=EdgeTrim(top=nm(1)),
    )
    corners = shapely.get_coordinates(must_region(gable, GAP))
    assert len({(round(x), round(y)) for x, y in corners}) == 5


def test_what_must_be_covered_is_nothing_where_trim_covers_all() -> None:
    """A strip narrower than its trim needs no boards."""
    assert must_region(wall(96, 4, trim=EdgeTrim(bottom=nm(2), top=nm(2))), GAP).is_empty


def test_an_edge_belongs_to_the_side_that_it_faces() -> None:
    """A right angle's four edges, and an edge at exactly 45 degrees, which counts as top or bottom."""
    corners = box_outline(10, 10)
    sides = [side_of_edge(*edge) for edge in zip(corners, (*corners[1:], corners[0]), strict=True)]
    assert sides == [Edge.BOTTOM, Edge.RIGHT, Edge.TOP, Edge.LEFT]
    assert side_of_edge((10, 0), (0, 10)) is Edge.TOP
    assert side_of_edge((0, 0), (10, 10)) is Edge.BOTTOM
    assert side_of_edge((10, 0), (0, 11)) is Edge.RIGHT


def test_a_course_is_measured_from_its_start_side() -> None:
    """The first five inches from each of the four sides."""
    level = {Edge.BOTTOM: rectangle(0, 0, 96, 5), Edge.TOP: rectangle(0, 43, 96, 48)}
    for start, expected in level.items():
        assert course_strip(wall(96, 48, start=start), 0, nm(5)) == expected
    upright = {Edge.LEFT: rectangle(0, 0, 5, 48), Edge.RIGHT: rectangle(91, 0, 96, 48)}
    for start, expected in upright.items():
        surface = _upright(start)
        assert course_strip(surface, 0, nm(5)) == expected
        assert extent_in_course(surface, expected) == (0, nm(48), 0, nm(5))


def _upright(start: Edge) -> Surface:
    return wall(
        96, 48, courses_run=Direction.VERTICAL, start=start, framing=studs(8, 40, runs=Direction.HORIZONTAL)
    )


def test_along_and_across_follow_the_courses() -> None:
    """The same point, seen from the start side of each kind of course."""
    point = (nm(10), nm(3))
    assert along_and_across(wall(96, 48), point) == (nm(10), nm(3))
    assert along_and_across(wall(96, 48, start=Edge.TOP), point) == (nm(10), nm(45))
    assert along_and_across(_upright(Edge.LEFT), point) == (nm(3), nm(10))
    assert along_and_across(_upright(Edge.RIGHT), point) == (nm(3), nm(86))


def test_no_spur_is_left_where_a_band_runs_into_a_slope() -> None:
    """Turned as courses from the right see it, such a region would cross itself. Drawn by chance, in nm."""
    wide = 2_146_176_488
    corners = ((0, 0), (wide, 0), (wide, 369_877_172), (42_098_837, 447_037_797), (0, 369_877_172))
    surface = replace(wall(96, 48), outline=corners, trim=EdgeTrim(bottom=16_296_324, left=49_382_800))
    must = must_region(surface, Rules(expansion_gap_nm=0))
    assert shapely.transform(must, lambda points: [wide, 0] - points).is_valid


def test_no_line_is_left_where_a_band_shrinks_to_nothing() -> None:
    """Beside a sloping floor the gap takes what, cut on whole nanometres, is thinner than one."""
    corners = ((267778233, 0), (525062621, 64814925), (428148876, 308519043), (0, 308519043), (0, 0))
    surface = replace(wall(21, 12), outline=corners, trim=EdgeTrim(bottom=26666712))
    rules = Rules(expansion_gap_nm=8_000_000)
    may, must = may_region(surface, rules), must_region(surface, rules)
    assert {may.geom_type, must.geom_type} <= {"Polygon", "MultiPolygon"}
    assert must.difference(may).area < may.length  # within a nanometre


@given(
    heights=st.lists(st.integers(60, 100), min_size=2, max_size=6),
    gap=st.sampled_from([0.0, 0.125, 0.5]),
    trims=st.tuples(*[st.sampled_from([0.0, 0.75, 3.5])] * 4),
)
def test_what_must_be_covered_may_be_covered(
    heights: list[int], gap: float, trims: tuple[float, float, float, float]
) -> None:
    """Under any ceiling, gap and trim, the one region lies within the other, to a nanometre."""
    step = 24
    width = step * (len(heights) - 1)
    ceiling = [(step * index, height) for index, height in reversed(list(enumerate(heights)))]
    bottom, top, left, right = map(nm, trims)
    surface = wall(
        width,
        100,
        outline=outline((0, 0), (width, 0), *ceiling),
        openings=(opening("hatch", 4, 10, 16, 30, trim=1),),
        trim=EdgeTrim(bottom=bottom, top=top, left=left, right=right),
    )
    rules = Rules(expansion_gap_nm=nm(gap))
    may, must = may_region(surface, rules), must_region(surface, rules)
    assert must.difference(may).area <= must.length
    assert may.difference(shapely.Polygon(surface.outline)).area <= may.length
    if gap == 0 and not any(trims):
        assert _same(may, shapely.Polygon(surface.outline).difference(as_polygon(rectangle(4, 10, 16, 30))))
