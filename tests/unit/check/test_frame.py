"""The frame of the courses, on walls hung from every side."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builders import box_outline, nm, rectangle, studs
from plankwright.check.frame import Extent, box_of, frame_of
from plankwright.model import Direction, Edge, Surface

LENGTHS = st.integers(min_value=-(10**10), max_value=10**10)
STARTS = {
    Edge.BOTTOM: Direction.HORIZONTAL,
    Edge.TOP: Direction.HORIZONTAL,
    Edge.LEFT: Direction.VERTICAL,
    Edge.RIGHT: Direction.VERTICAL,
}


def hung_from(start: Edge) -> Surface:
    """Make a surface 100 wide and 40 high with courses from one side."""
    return Surface(
        id="wall", outline=box_outline(100, 40), courses_run=STARTS[start], start=start, framing=studs(8)
    )


@pytest.mark.parametrize(
    ("start", "u_from", "u_to", "v_from", "v_to"),
    [
        (Edge.BOTTOM, 10, 30, 5, 12),
        (Edge.TOP, 10, 30, 28, 35),
        (Edge.LEFT, 5, 12, 10, 30),
        (Edge.RIGHT, 5, 12, 70, 90),
    ],
)
def test_extents_are_along_and_away_from_the_start(
    start: Edge, u_from: float, u_to: float, v_from: float, v_to: float
) -> None:
    """A rectangle from 10 to 30 across and 5 to 12 up, told from each side by hand."""
    place, frame = rectangle(10, 5, 30, 12), frame_of(hung_from(start))
    extent = frame.extent(place.left, place.bottom, place.right, place.top)
    assert extent == Extent(u_from=nm(u_from), u_to=nm(u_to), v_from=nm(v_from), v_to=nm(v_to))
    assert frame.box(extent).equals(box_of(place))


@given(start=st.sampled_from(list(STARTS)), x=LENGTHS, y=LENGTHS)
def test_there_and_back_is_the_same_point(start: Edge, x: int, y: int) -> None:
    """A point of the surface told in the frame of the courses comes back as it was."""
    frame = frame_of(hung_from(start))
    assert frame.surface_point(*frame.point(x, y)) == (x, y)


def test_a_rectangle_grows_on_all_sides() -> None:
    """Growing a 20 by 7 inch rectangle by 1 inch makes it 22 by 9."""
    assert box_of(rectangle(10, 5, 30, 12), nm(1)).area == nm(22) * nm(9)
