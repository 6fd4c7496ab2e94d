"""Marks along the sides of a drawing."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plankwright.draw.rulers import (
    Mark,
    dimension,
    level_ruler,
    level_ruler_depth,
    ruler,
    ruler_depth,
    spread,
)
from plankwright.draw.scene import Anchor, Line, Span, Text
from plankwright.model import Edge


def test_places_that_are_apart_stay_where_they_are() -> None:
    """Nothing moves that need not."""
    assert spread([0.0, 5.0, 20.0], 3.0, (-10.0, 30.0)) == [0.0, 5.0, 20.0]


def test_places_that_crowd_move_apart_around_their_middle() -> None:
    """Two marks at the same place move by the same to either side."""
    assert spread([10.0, 10.0], 4.0, (0.0, 20.0)) == [8.0, 12.0]


def test_places_stay_within_their_span() -> None:
    """Marks at the very end move inwards only."""
    assert spread([19.0, 20.0], 4.0, (0.0, 20.0)) == [16.0, 20.0]


def test_more_marks_than_there_is_room_for_share_it_evenly() -> None:
    """Nothing leaves the span even then."""
    assert spread([5.0] * 5, 10.0, (0.0, 8.0)) == [0.0, 2.0, 4.0, 6.0, 8.0]


def test_nothing_and_one_are_spread_too() -> None:
    """A side without marks, and one with a single mark outside its span."""
    assert spread([], 3.0, (0.0, 1.0)) == []
    assert spread([7.0], 3.0, (0.0, 5.0)) == [5.0]


@given(st.lists(st.floats(0, 100), min_size=1, max_size=20).map(sorted), st.floats(0.1, 4))
def test_spread_places_keep_their_order_and_distance(places: list[float], apart: float) -> None:
    """Whatever is marked, no text touches the next and none leaves the sheet."""
    result = spread(places, apart, (-5.0, 105.0))
    least = min(apart, 110.0 / max(1, len(places) - 1))
    assert all(after - before >= least - 1e-9 for before, after in pairwise(result))
    assert result[0] >= -5.0 - 1e-9
    assert result[-1] <= 105.0 + 1e-9


def _marks(*places: float) -> list[Mark]:
    return [Mark(at=place, spans=(Span(text=f"{place:g}"),)) for place in places]


@pytest.mark.parametrize(
    ("edge", "anchor", "turned"),
    [
        (Edge.LEFT, Anchor.END, False),
        (Edge.RIGHT, Anchor.START, False),
        (Edge.TOP, Anchor.START, True),
        (Edge.BOTTOM, Anchor.END, True),
    ],
)
def test_marks_stand_outside_their_side(edge: Edge, anchor: Anchor, turned: bool) -> None:  # noqa: FBT001
    """Texts read away from the drawing, upwards above and below it, and within the depth told beforehand."""
    marks = _marks(20.0, 40.0)
    depth = ruler_depth([mark.spans for mark in marks])
    items = ruler(edge, 100.0, marks, (0.0, 60.0))
    texts = [item for item in items if isinstance(item, Text)]
    assert [(text.said, text.anchor, text.turned) for text in texts] == [
        ("20", anchor, turned),
        ("40", anchor, turned),
    ]
    outwards = -1 if edge in {Edge.LEFT, Edge.TOP} else 1
    for text, mark in zip(texts, marks, strict=True):
        across, along = (text.y, text.x) if turned else (text.x, text.y)
        assert 0 < (across - 100.0) * outwards < depth
        assert along == mark.at
    assert sum(isinstance(item, Line) for item in items) == 2


def test_a_side_without_marks_takes_no_room() -> None:
    """Nothing is drawn and nothing is kept free."""
    assert ruler(Edge.LEFT, 0.0, [], (0.0, 1.0)) == ()
    assert ruler_depth([]) == 0.0
    assert level_ruler_depth([], 100.0) == 0.0


def test_many_marks_are_lettered_smaller() -> None:
    """A hundred marks on a hand's breadth still do not overlap."""
    texts = [
        item for item in ruler(Edge.LEFT, 0.0, _marks(*range(100)), (0.0, 150.0)) if isinstance(item, Text)
    ]
    assert all(after.y - before.y >= 1.15 * before.size for before, after in pairwise(texts))


def test_marks_above_a_board_read_to_the_right_while_they_can() -> None:
    """Three marks fit side by side; forty are turned."""
    few = [
        item for item in level_ruler(20.0, _marks(10, 50, 90), 100.0, above=True) if isinstance(item, Text)
    ]
    many = [
        item for item in level_ruler(20.0, _marks(*range(40)), 100.0, above=True) if isinstance(item, Text)
    ]
    assert not any(text.turned for text in few)
    assert all(text.turned for text in many)
    assert all(text.y < 20.0 for text in (*few, *many))


def test_a_dimension_line_breaks_for_its_text() -> None:
    """Two strokes at the ends, two parts of a line, and the text between them."""
    *lines, text = dimension((0.0, 5.0), (100.0, 5.0), "12' 0\"")
    assert isinstance(text, Text)
    assert (text.x, text.y, text.said) == (50.0, 5.0, "12' 0\"")
    spans = [line.places for line in lines if isinstance(line, Line)]
    assert spans[0][0] == (0.0, 5.0)
    assert spans[1][1] == (100.0, 5.0)
    assert spans[0][1][0] < 50.0 < spans[1][0][0]
    assert len(spans) == 4


def test_an_upright_dimension_reads_upwards() -> None:
    """Beside a drawing the text is turned along its line."""
    *_, text = dimension((5.0, 0.0), (5.0, 100.0), "8' 0\"")
    assert isinstance(text, Text)
    assert text.turned
