"""Kinds of courses."""

from builders import nm, opening, rectangle, wall
from choosing import plain
from plankwright.layout.plan import PlannedCourse
from plankwright.layout.rows import Row, fixed_stack, free_stack
from plankwright.layout.strips import Strips
from plankwright.model import ConcealedZone, Surface


def _bands(surface: Surface, *heights: float, end: float) -> dict[tuple[int, int], Row]:
    """Give the rows of a stretch from the floor up by the bands that they begin and end in."""
    strips = Strips(surface, plain())
    stack = free_stack(strips, [nm(height) for height in heights], (0, nm(end), nm(end)), ())
    assert stack.low == 0
    assert stack.must_end == stack.may_end == nm(end)
    assert not stack.fixed
    return {(row.first_band, row.last_band): row for row in stack.rows}


def test_a_plain_wall_has_one_kind_of_course() -> None:
    """At every height asked for."""
    (row,) = _bands(wall(96, 48), 4, 6, end=48).values()
    assert row.heights == (nm(4), nm(6))
    assert row.runs == Strips(wall(96, 48), plain()).runs(0, nm(6))
    assert row.strip is None


def test_a_window_makes_bands_and_kinds_across_their_edges() -> None:
    """Below, beside and above it; two runs beside it only."""
    rows = _bands(wall(96, 48, openings=(opening("window", 30, 12, 60, 36),)), 4, 6, end=48)
    assert {bands: len(row.runs) for bands, row in rows.items()} == {
        (0, 0): 1,
        (0, 1): 1,
        (1, 1): 2,
        (1, 2): 1,
        (2, 2): 1,
    }


def test_the_casing_makes_bands_too() -> None:
    """Trim of an inch ends what must be covered an inch from where boards may hang."""
    strips = Strips(wall(96, 48, openings=(opening("window", 30, 12, 60, 36, trim=1),)), plain())
    assert free_stack(strips, [nm(6)], (0, nm(48), nm(48)), ()).edges == (nm(11), nm(12), nm(36), nm(37))


def test_a_concealed_zone_makes_bands() -> None:
    """Its joints are hidden in its band, and not in a course across its upper edge."""
    zone = ConcealedZone(id="bench", place=rectangle(20, 0, 60, 18))
    rows = _bands(wall(96, 48, concealed=(zone,)), 6, end=48)
    hidden = {
        bands: [joint.at / nm(1) for joint in row.runs[0].joints if joint.hidden]
        for bands, row in rows.items()
    }
    assert hidden == {(0, 0): [24, 40, 56], (0, 1): [], (1, 1): []}


def test_a_course_lies_across_a_band_that_is_lower_than_it() -> None:
    """In a band of three inches lie courses of two but none of four, and across it goes four only."""
    zones = ConcealedZone(id="shelf", place=rectangle(20, 20, 60, 23))
    rows = _bands(wall(96, 48, concealed=(zones,)), 2, 4, end=48)
    assert rows[1, 1].heights == (nm(2),)
    assert rows[0, 2].heights == (nm(4),)
    assert rows[0, 1].heights == (nm(2), nm(4))


def test_heights_that_fit_nowhere_make_no_kind() -> None:
    """A course of twenty on a stretch of twelve."""
    assert _bands(wall(96, 48), 20, end=12) == {}


def test_edges_outside_the_stretch_make_no_bands() -> None:
    """Of a window above it."""
    assert set(_bands(wall(96, 48, openings=(opening("window", 30, 12, 60, 36),)), 6, end=12)) == {(0, 0)}


def test_courses_that_stay_are_each_of_their_own_kind() -> None:
    """With their own strip and height, in order; others may lie between them."""
    strips = Strips(wall(96, 48), plain())
    stay = PlannedCourse(nm(5), nm(11), ())
    stack = fixed_stack(strips, [PlannedCourse(0, nm(5), ()), PlannedCourse(nm(11), nm(15), ())], [stay])
    assert stack.fixed
    assert [(row.strip, row.heights) for row in stack.rows] == [
        ((0, nm(5)), (nm(5),)),
        ((nm(11), nm(15)), (nm(4),)),
    ]
    assert stack.beside == (stay,)
