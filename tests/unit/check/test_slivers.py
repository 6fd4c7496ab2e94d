"""Which strips count as slivers, worked out by hand."""

from collections.abc import Sequence

import pytest

from builders import board, course, job, nm, on_surface, opening, outline, piece, socket, surface_layout, wall
from plankwright.check.case import open_surface
from plankwright.check.slivers import check_slivers
from plankwright.model import CutOut, Direction, Edge, Opening, Point, Rectangle, Rules, Surface

NO_GAP = Rules(expansion_gap_nm=0)


def slivers(surface: Surface, across: tuple[float, float] = (0, 8)) -> list[int | None]:
    """Give how narrow the slivers get that one piece of 96 by 8 leaves; under 2 inches counts."""
    hung = piece(surface, "1a A", (0, 96), across)
    work = job(surface, [board("A", 100, 9)], NO_GAP)
    case = open_surface(work, surface_layout(surface, course(1, across, hung)))
    return [finding.measured for finding in check_slivers(case)]


def under(*corners: tuple[float, float]) -> Surface:
    """Make a surface of other corners."""
    return wall(96, 8, outline=outline(*corners))


@pytest.mark.parametrize(
    ("sill", "head", "widths"),
    [
        (0, 6, []),
        (0, 6.5, [1.5]),
        (2, 8, []),
        (1, 8, [1]),
        (1, 6.5, [1, 1.5]),
        (0, 8, []),
        (3, 5, []),
    ],
)
def test_a_notch_leaves_strips_above_and_below(sill: float, head: float, widths: Sequence[float]) -> None:
    """A window through a course of 8 leaves what is over it and under it; under 2 inches it is a sliver."""
    window: Opening = opening("window", 30, sill, 60, head)
    assert sorted(slivers(wall(96, 8, openings=(window,))), key=str) == [nm(width) for width in widths]


def test_a_socket_leaves_slivers_as_an_opening_does() -> None:
    """A box 1/2 inch below the edge leaves a strip as wide."""
    box: CutOut = socket(30, 4, 32, 7.5)
    assert slivers(wall(96, 8, cut_outs=(box,))) == [nm(0.5)]


def test_a_steep_point_is_no_sliver_and_a_long_one_is() -> None:
    """At a slope every end runs out to a point; only one thin over more than 16 inches counts.

    A slope of 8 over 8 is thinner than 2 over 2 inches, one of 8 over 80 over 20.
    """
    assert slivers(under((0, 0), (96, 0), (88, 8), (0, 8))) == []
    assert slivers(under((0, 0), (96, 0), (32, 8), (0, 8))) == []
    assert slivers(under((0, 0), (96, 0), (16, 8), (0, 8))) == [pytest.approx(0, abs=2_000)]


def test_an_end_that_is_all_but_square_is_no_sliver() -> None:
    """Under a ceiling that rises 3/8 inch in 8 feet an upright board ends nearly square."""
    surface = wall(
        96,
        96,
        outline=outline((0, 0), (96, 0), (96, 96), (0, 95.625)),
        courses_run=Direction.VERTICAL,
        start=Edge.LEFT,
    )
    upright = piece(surface, "1a A", (0, 96), (0, 8))
    case = open_surface(
        job(surface, [board("A", 100, 9)], NO_GAP), surface_layout(surface, course(1, (0, 8), upright))
    )
    assert list(check_slivers(case)) == []


def test_a_slope_that_leaves_a_thin_end_is_a_sliver_however_short() -> None:
    """An end tapered to 1 inch is thinner than 2 over the last eighth of its slope."""
    assert slivers(under((0, 0), (96, 0), (96, 1), (88, 8), (0, 8))) == [pytest.approx(nm(1), abs=2_000)]


def test_corners_a_hair_apart_are_taken_as_one() -> None:
    """A slope that begins half a micrometre beside a corner leaves the same sliver as one at the corner."""
    left, right = outline((16, 8), (0, 8)), outline((0, 0), (96, 0))
    surface = wall(96, 8, outline=(*right, (nm(96) - 500, 50), *left))
    assert slivers(surface) == [pytest.approx(0, abs=2_000)]


def test_a_hanging_sliver_over_a_door_is_found_from_every_side() -> None:
    """The same strip is found when the courses stand upright or start at the top or at the right."""
    for start, runs in (
        (Edge.BOTTOM, Direction.HORIZONTAL),
        (Edge.TOP, Direction.HORIZONTAL),
        (Edge.LEFT, Direction.VERTICAL),
        (Edge.RIGHT, Direction.VERTICAL),
    ):
        size = (96, 8) if runs is Direction.HORIZONTAL else (8, 96)
        plain = wall(*size, courses_run=runs, start=start)
        one: Point = on_surface(plain, 30, 0)
        two: Point = on_surface(plain, 60, 6.5)
        place = Rectangle(
            left=min(one[0], two[0]),
            bottom=min(one[1], two[1]),
            right=max(one[0], two[0]),
            top=max(one[1], two[1]),
        )
        door = Opening(id="door", place=place)
        assert slivers(wall(*size, courses_run=runs, start=start, openings=(door,))) == [nm(1.5)]


def test_a_course_that_is_narrow_itself_is_told_elsewhere() -> None:
    """A course of 1-1/2 inches is too narrow as a course, and no sliver besides."""
    window = opening("window", 30, 0.5, 60, 8)
    assert slivers(wall(96, 8, openings=(window,)), across=(0, 1.5)) == []
