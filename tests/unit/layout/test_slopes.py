"""Cuts along sloping sides, by right triangles of three to four to five."""

import pytest
import shapely

from builders import nm, outline, rectangle, wall
from plankwright.layout.capacity import Capacity
from plankwright.layout.regions import as_polygon
from plankwright.layout.slopes import highest_sawn, too_long_to_saw
from plankwright.layout.strips import Strips
from plankwright.model import Direction, Edge, Rules

FLAT = wall(40, 30, outline=outline((0, 0), (40, 0), (0, 30)))
"""A side that goes four along for each three up."""


def test_the_highest_course_is_told_by_its_cut() -> None:
    """Six inches up make a cut of ten."""
    assert highest_sawn(FLAT, nm(10)) == (nm(6),)


def test_a_wall_without_slopes_bars_nothing() -> None:
    """However small the saw."""
    assert highest_sawn(wall(40, 30), nm(1)) == ()


def test_of_courses_that_run_upright_the_height_goes_along_the_wall() -> None:
    """Eight inches along make a cut of ten."""
    upright = wall(
        40,
        30,
        outline=outline((0, 0), (40, 0), (0, 30)),
        courses_run=Direction.VERTICAL,
        start=Edge.LEFT,
    )
    assert highest_sawn(upright, nm(10)) == (nm(8),)


@pytest.mark.parametrize(("crosscut", "barred"), [(10, ()), (9.5, ((nm(24), nm(32)),))])
def test_a_slope_through_a_course_is_cut_across(crosscut: float, barred: tuple[tuple[int, int], ...]) -> None:
    """From 6 to 12 up, the side goes from 32 back to 24: ten inches of cut."""
    shape = shapely.Polygon(FLAT.outline).intersection(as_polygon(rectangle(0, 6, 40, 12)))
    assert too_long_to_saw(FLAT, shape, 0, nm(crosscut)) == barred


def test_a_corner_that_is_flat_is_ripped_to_a_taper() -> None:
    """It takes an inch off one of six over a foot: no crosscut, however small the saw."""
    surface = wall(40, 30, outline=outline((0, 0), (40, 0), (40, 5), (28, 6), (0, 6)))
    assert too_long_to_saw(surface, shapely.Polygon(surface.outline), 0, nm(3)) == ()


def test_a_run_says_where_no_saw_reaches() -> None:
    """As the strips of the surface see it."""
    rules = Rules(expansion_gap_nm=0)
    (run,) = Strips(FLAT, rules, Capacity(crosscut=nm(9.5), rip=nm(9.5))).runs(nm(6), nm(12))
    assert run.barred == ((nm(24), nm(32)),)
    (free,) = Strips(FLAT, rules).runs(nm(6), nm(12))
    assert free.barred == ()
