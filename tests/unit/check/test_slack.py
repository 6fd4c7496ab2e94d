"""What counts as a difference, and what as a shape."""

from shapely import Polygon, box
from shapely.geometry import GeometryCollection, LineString, MultiPolygon, Point

from plankwright.check.slack import SLACK, areal, differs, exceeds, polygons


def test_a_micrometre_is_no_difference() -> None:
    """Up to a micrometre nothing exceeds or differs; a nanometre more does."""
    assert not exceeds(5_000 + SLACK, 5_000)
    assert not differs(5_000, 5_000 + SLACK)
    assert exceeds(5_001 + SLACK, 5_000)
    assert differs(5_000, 5_001 + SLACK)
    assert not exceeds(0, 5_000)


def test_only_what_has_an_area_is_a_shape() -> None:
    """Points, lines, emptiness and slivers thinner than a micrometre are no shapes, thicker ones are."""
    sliver, strip = box(0, 0, 1e9, 0.9 * SLACK), box(0, 2e4, 1e9, 2e4 + 1.1 * SLACK)
    mixed = GeometryCollection([Point(0, 0), LineString([(0, 0), (1e9, 0)]), sliver, strip, Polygon()])
    assert polygons(mixed) == (strip,)
    assert areal(mixed) == MultiPolygon([strip])


def test_a_plain_polygon_stays_as_it_is() -> None:
    """A polygon is not wrapped."""
    assert areal(box(0, 0, 5, 5)) == box(0, 0, 5, 5)
