"""A surface turned so that its courses run to the right and begin below."""

import pytest
import shapely

from builders import nm, opening, outline, rectangle, socket, wall
from plankwright.layout.ground import Ground, box, common, crossings, less
from plankwright.layout.strips import Strips
from plankwright.model import Direction, Edge, KeepOut, Rules
from plans import span

NO_GAP = Rules(expansion_gap_nm=0)

WAYS = {
    Edge.BOTTOM: (Direction.HORIZONTAL, (10, 3)),
    Edge.TOP: (Direction.HORIZONTAL, (10, 47)),
    Edge.LEFT: (Direction.VERTICAL, (3, 10)),
    Edge.RIGHT: (Direction.VERTICAL, (77, 10)),
}
"""Where the place 10 in along the courses and 3 in across them lies on a wall of 80 by 50 inches."""


@pytest.mark.parametrize("start", WAYS)
def test_places_are_turned_back_to_the_surface(start: Edge) -> None:
    """From each of the four sides the same place along and across is another place on the wall."""
    courses_run, (x, y) = WAYS[start]
    ground = Ground(Strips(wall(80, 50, courses_run=courses_run, start=start), NO_GAP))
    assert ground.point(nm(10), nm(3)) == (nm(x), nm(y))


@pytest.mark.parametrize("start", WAYS)
def test_regions_and_rectangles_are_turned_alike(start: Edge) -> None:
    """A box cut out of a lean-to wall lies where the wall has been turned to, and its gaps with it."""
    courses_run, _ = WAYS[start]
    surface = wall(
        80,
        50,
        outline=outline((0, 0), (80, 0), (80, 20), (0, 50)),
        courses_run=courses_run,
        start=start,
        openings=(opening("window", 10, 10, 30, 30),),
        cut_outs=(socket(10, 10, 30, 30),),
    )
    ground = Ground(Strips(surface, NO_GAP))
    assert ground.may.area == 80 * 35 * nm(1) ** 2 - 400 * nm(1) ** 2
    assert ground.may.intersection(ground.cut_outs[0]).area == 0


def test_keep_outs_are_grown_by_the_clearance() -> None:
    """A pipe an inch wide bars three inches with an inch of clearance."""
    pipe = KeepOut(id="pipe", place=rectangle(20, 0, 21, 50), what="water pipe")
    (barred,) = Ground(Strips(wall(80, 50, keep_outs=(pipe,)), NO_GAP)).keep_outs
    assert barred.bounds == (nm(19), nm(-1), nm(22), nm(51))


def test_what_hangs_of_a_blank_leaves_out_gaps_and_openings() -> None:
    """Of 20 by 10 inches an opening with its gap takes 10.25 by 5.25."""
    surface = wall(80, 50, openings=(opening("window", 30, 15, 60, 40),))
    ground = Ground(Strips(surface, Rules()))
    assert ground.hung(span(20, 40, 10, 20)).area == (200 - 10.25 * 5.25) * nm(1) ** 2


def test_what_only_touches_is_nothing() -> None:
    """A line, and a sliver of half a micrometre, are rounding and no wood."""
    near = box(span(0, 10, 0, 10))
    assert common(near, box(span(10, 20, 0, 10))).is_empty
    assert common(near, shapely.box(nm(10) - 500, 0, nm(20), nm(10))).is_empty
    assert less(near, shapely.box(500, -1, nm(20), nm(20))).is_empty


def test_a_line_is_parted_by_a_hole() -> None:
    """Ten inches through a frame of two inches all round are in it at both ends."""
    frame = less(box(span(0, 10, 0, 10)), box(span(2, 8, 2, 8)))
    parts = crossings(frame, (nm(5), 0), (nm(5), nm(10)))
    assert sorted(part.bounds[1::2] for part in parts) == [(0, nm(2)), (nm(8), nm(10))]
