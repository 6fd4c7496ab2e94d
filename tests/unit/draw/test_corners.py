"""Where courses run round corners, on the map."""

from dataclasses import replace

import pytest

from builders import nm, wall
from corner import corner_job, corner_layout
from plankwright.draw import LETTER, wall_map, write_svg
from plankwright.draw.corners import marks_beyond, tell_corners
from plankwright.model import Edge


def test_each_wall_tells_its_corners() -> None:
    """By the name of the wall beyond."""
    work = corner_job()
    assert tell_corners(work, "north") == "courses run round the right corner to east"
    assert tell_corners(work, "east") == "courses run round the left corner to north"
    assert tell_corners(replace(work, linked=()), "north") == ""
    south = replace(work.surfaces[0], id="south")
    three = replace(work, surfaces=(*work.surfaces, south), linked=(("north", "east", "south"),))
    assert (
        tell_corners(three, "east")
        == "courses run round the left corner to north and the right corner to south"
    )


def test_the_map_tells_them() -> None:
    """Above the drawing, and to whoever has it read out."""
    drawing = write_svg(wall_map(corner_job(), corner_layout().surfaces[0], LETTER))
    assert "from the bottom · 3 pieces from 3 boards · courses run round the right corner to east" in drawing
    assert "Courses run round the right corner to east." in drawing
    alone = write_svg(wall_map(replace(corner_job(), linked=()), corner_layout().surfaces[0], LETTER))
    assert "corner" not in alone


@pytest.mark.parametrize(
    ("start", "heights", "raised", "more"),
    [
        (Edge.BOTTOM, (90, 90), (0, 0), 0),
        (Edge.BOTTOM, (90, 80), (0, 2), -2),
        (Edge.BOTTOM, (90, 80), (3, 2), 1),
        (Edge.TOP, (90, 90), (0, 0), 0),
        (Edge.TOP, (90, 80), (0, 2), -8),
    ],
)
def test_marks_read_otherwise_on_a_wall_that_begins_elsewhere(
    start: Edge, heights: tuple[float, float], raised: tuple[float, float], more: float
) -> None:
    """A mark at 50 inches is at 48 on a wall that is raised by two."""
    one, other = (
        wall(60, height, start=start, raised_nm=nm(by)) for height, by in zip(heights, raised, strict=True)
    )
    assert marks_beyond(one, other) == nm(more)
