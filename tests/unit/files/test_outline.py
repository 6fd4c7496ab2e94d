"""Outlines from what was measured, and how boxes lie on them."""

import pytest

from builders import rectangle
from job_texts import WIDE, outlined, read
from plankwright.files.outline import overlap, share_inside
from plankwright.measure import INCH
from plankwright.model import Point

SQUARE = ((0, 0), (10 * INCH, 0), (10 * INCH, 10 * INCH), (0, 10 * INCH))


def corners(outline: str) -> list[tuple[float, float]]:
    """Read an outline and give its corners in inches."""
    (surface,) = read(outlined(outline)).surfaces
    return [(x / INCH, y / INCH) for x, y in surface.outline]


@pytest.mark.parametrize(
    ("outline", "expected"),
    [
        pytest.param(WIDE, [(0, 0), (144, 0), (144, 96), (0, 96)], id="rectangle"),
        pytest.param(
            "heights = [{at = 0, height = 90}, {at = 50, height = 92}, {at = 100, height = 91}]",
            [(0, 0), (100, 0), (100, 91), (50, 92), (0, 90)],
            id="level floor",
        ),
        pytest.param(
            "level = 'ceiling'\n"
            "heights = [{at = 0, height = 90}, {at = 50, height = 92}, {at = 100, height = 91}]",
            [(0, 2), (50, 0), (100, 1), (100, 92), (0, 92)],
            id="level ceiling",
        ),
        pytest.param(
            "heights = [{at = 0, height = 0}, {at = 50, height = 50}, {at = 100, height = 0}]",
            [(0, 0), (100, 0), (50, 50)],
            id="gable by heights",
        ),
        pytest.param(
            "heights = [{at = 0, height = 90}, {at = 50, height = 91}, {at = 100, height = 92}]",
            [(0, 0), (100, 0), (100, 92), (0, 90)],
            id="height on the straight line",
        ),
        pytest.param("corners = [[0, 0], [9, 0], [0, 9]]", [(0, 0), (9, 0), (0, 9)], id="anticlockwise"),
        pytest.param("corners = [[0, 9], [9, 0], [0, 0]]", [(0, 0), (9, 0), (0, 9)], id="clockwise"),
        pytest.param(
            "corners = [[0, 0], [4, 0], [9, 0], [9, 0], [0, 9], [0, 0]]",
            [(0, 0), (9, 0), (0, 9)],
            id="needless corners",
        ),
    ],
)
def test_outlines_go_round_anticlockwise_without_needless_corners(
    outline: str, expected: list[tuple[float, float]]
) -> None:
    """However it was measured, the same outline comes out, wherever it begins."""
    found = corners(outline)
    begin = found.index(expected[0])
    assert found[begin:] + found[:begin] == expected


@pytest.mark.parametrize(
    "crossing",
    [
        "corners = [[0, 0], [9, 9], [9, 0], [0, 9]]",
        "corners = [[0, 0], [10, 0], [10, 10], [5, 0], [0, 10]]",  # a corner touches a side
        "corners = [[0, 0], [10, 0], [10, 5], [4, 5], [4, 2], [4, 8], [0, 8]]",  # a side runs back
    ],
)
def test_outlines_that_meet_themselves_are_refused(crossing: str) -> None:
    """No outline crosses, touches or retraces itself."""
    (problem,) = read(outlined(crossing)).report.problems
    assert "cross or touch their own path" in problem.what


@pytest.mark.parametrize(
    ("box", "outline", "share"),
    [
        ((2, 2, 4, 4), SQUARE, 1.0),
        ((8, 8, 12, 12), SQUARE, 0.25),
        ((10, 0, 12, 2), SQUARE, 0.0),
        ((20, 20, 22, 22), SQUARE, 0.0),
        ((0, 0, 10, 10), ((0, 0), (10 * INCH, 0), (0, 10 * INCH)), 0.5),
        ((0, 0, 4, 4), ((0, 0), (10 * INCH, 0), (10 * INCH, 10 * INCH)), 0.5),
    ],
)
def test_the_share_inside_is_the_area_in_common(
    box: tuple[float, float, float, float], outline: tuple[Point, ...], share: float
) -> None:
    """Touching is none."""
    assert share_inside(rectangle(*box), outline) == pytest.approx(share)


def test_boxes_that_touch_do_not_overlap() -> None:
    """A shared edge is no overlap."""
    assert not overlap(rectangle(0, 0, 2, 2), rectangle(2, 0, 4, 2))
    assert overlap(rectangle(0, 0, 2, 2), rectangle(1, 1, 4, 2))
