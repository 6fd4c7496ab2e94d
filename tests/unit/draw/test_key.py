"""The key of a drawing and its scale bar."""

import pytest

from builders import TAPE
from plankwright.draw.key import ROW, Entry, draw_key, flow, scale_bar, swatch
from plankwright.draw.scene import Item, Rect, Text
from plankwright.draw.styles import Style
from plankwright.measure import System, TapeStyle


def _entry(text: str) -> Entry:
    return Entry(width=7.0, sample=swatch(Style.OPENING), text=text)


def _texts(items: tuple[Item, ...]) -> list[Text]:
    return [item for item in items if isinstance(item, Text)]


def test_entries_flow_into_rows_in_order() -> None:
    """Nothing is lost, and no row is wider than the room."""
    entries = [_entry(f"a thing of sort {number}") for number in range(9)]
    rows = flow(entries, 100.0)
    assert [entry for row in rows for entry in row] == entries
    assert len(rows) > 1
    for row in rows:
        assert sum(entry.extent(100.0) for entry in row) <= 100.0


def test_an_entry_wider_than_the_room_is_cut_off() -> None:
    """A single long word cannot leave the sheet."""
    (text,) = _texts(draw_key([_entry("an exceedingly long explanation")], 0.0, 0.0, 30.0))
    assert text.said.endswith("…")
    assert flow([], 30.0) == []


def test_rows_stand_below_each_other() -> None:
    """Each text stands in the middle of its row, right of its sample."""
    items = draw_key([_entry("door"), _entry("window")], 5.0, 50.0, 25.0)
    assert [text.y for text in _texts(items)] == [50.0 + ROW / 2, 50.0 + ROW * 1.5]
    samples = [item for item in items if isinstance(item, Rect)]
    assert all(rect.x + rect.width < text.x for rect, text in zip(samples, _texts(items), strict=True))


@pytest.mark.parametrize(
    ("scale", "tape", "end"),
    [
        (16, TAPE, "2 ft"),
        (30, TAPE, "4 ft"),
        (100, TAPE, "16 ft"),
        (1, TAPE, "1 ft"),
        (20, TapeStyle(system=System.METRIC), "1 m"),
        (50, TapeStyle(system=System.METRIC), "2 m"),
    ],
)
def test_a_scale_bar_ends_on_a_round_length(scale: int, tape: TapeStyle, end: str) -> None:
    """The longest usual one that is no longer than 60 mm, or the shortest of all."""
    bar = scale_bar(scale, tape, "Letter")
    items = bar.sample(0.0, 0.0)
    assert _texts(items)[-1].said == end
    assert bar.text == f"1:{scale} on Letter"
    parts = [item for item in items if isinstance(item, Rect)]
    assert [rect.style for rect in parts] == [Style.SOLID, Style.BOARD] * 2
