"""Shapes cut with one another: nothing is lost, and nothing is made up."""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, box
from shapely.geometry import GeometryCollection, LineString, MultiPolygon, Point

from plankwright.check.shapes import areal, common, joined, less, line_in, line_off, polygons
from plankwright.check.slack import SLACK

COORDINATES = st.integers(0, 8 * 10**9)


def test_only_what_has_an_area_is_a_shape() -> None:
    """Points, lines, emptiness and slivers thinner than a micrometre are no shapes, thicker ones are."""
    sliver, strip = box(0, 0, 1e9, 0.9 * SLACK), box(0, 2e4, 1e9, 2e4 + 1.1 * SLACK)
    mixed = GeometryCollection([Point(0, 0), LineString([(0, 0), (1e9, 0)]), sliver, strip, Polygon()])
    assert polygons(mixed) == (strip,)
    assert areal(mixed) == MultiPolygon([strip])
    assert areal(box(0, 0, 5, 5)) == box(0, 0, 5, 5)


def test_rectangles_are_cut_exactly() -> None:
    """What 10 by 10 and 10 by 10 have in common, together and less one another, to the square nanometre."""
    one, other = box(0, 0, 10e9, 10e9), box(4e9, 5e9, 14e9, 15e9)
    assert common(one, other).area == 30e18
    assert joined([one, other]).area == 170e18
    assert less(one, other).area == 70e18
    assert less(one) == one
    assert joined([]).is_empty


def test_touching_is_nothing_in_common() -> None:
    """Rectangles that share an edge or a corner share no area."""
    assert common(box(0, 0, 5e6, 5e6), box(5e6, 0, 9e6, 5e6)).is_empty
    assert common(box(0, 0, 5e6, 5e6), box(5e6, 5e6, 9e6, 9e6)).is_empty


def test_a_line_is_parted_by_an_area() -> None:
    """Of a line of 10 through a square of 4, 4 lie in it and 6 off it; its edge counts as in it."""
    square = box(3e6, 0, 7e6, 4e6)
    for height in (2e6, 4e6):
        line = LineString([(0, height), (10e6, height)])
        assert (line_in(line, square).length, line_off(line, square).length) == (4e6, 6e6)


def test_edges_that_all_but_coincide_lose_nothing() -> None:
    """A surface under a slope of which plain floating point found two points where 8.6 m² are.

    The first shape is the second less further bands along two of its edges, so that it lies within it, and
    its lower edges run along those of the second to a millionth of a nanometre.
    """
    inner = Polygon(
        (
            (1219563836.2101855, 993232347.3591576),
            (78459981.93447444, 1652227361.9257367),
            (5317210620.450449, 2558734036.8201127),
            (6792145310.989623, 12929214.312490579),
        )
    )
    outer = Polygon(
        (
            (1219563836.2101855, 993232347.3591576),
            (18356267.62600226, 1686937654.0151079),
            (5313466928.251323, 2603196794.671777),
            (6816660006.5188875, 8616700.813713202),
        )
    )
    assert common(inner, outer).area == pytest.approx(inner.area, rel=1e-8)
    assert inner.area == pytest.approx(8.6e18, rel=0.01)


@settings(deadline=None)
@given(
    corners=st.lists(st.tuples(COORDINATES, COORDINATES), min_size=3, max_size=3, unique=True),
    strips=st.lists(COORDINATES, min_size=1, max_size=5, unique=True).map(sorted),
)
def test_what_is_cut_in_strips_adds_up_again(corners: list[tuple[int, int]], strips: list[int]) -> None:
    """A triangle cut by upright lines has the area of its parts, up to the rounding of its corners."""
    triangle = areal(Polygon(corners))
    edges = [0, *strips, 8 * 10**9]
    parts = [
        common(triangle, box(left, 0, right, 8e9)).area for left, right in pairwise(edges) if left < right
    ]
    # Each part is off by the rounding of its corners, and slivers thinner than a micrometre drop out.
    assert sum(parts) == pytest.approx(triangle.area, abs=len(parts) * SLACK * 40e9)
