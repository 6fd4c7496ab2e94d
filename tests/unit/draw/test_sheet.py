"""How a sheet is parted."""

import pytest

from builders import nm
from plankwright.draw.lettering import text_width
from plankwright.draw.scene import Text
from plankwright.draw.sheet import Area, Heading, Table, fit, with_table

AREA = Area(left=10.0, top=20.0, right=210.0, bottom=170.0)
NO_DEPTHS = (0.0, 0.0, 0.0, 0.0)


def test_a_surface_is_drawn_as_large_as_a_whole_scale_allows() -> None:
    """A wall of 3 by 1.5 m on 200 by 150 mm is bound by its width: 1:15."""
    view = fit(AREA, (3_000_000_000, 1_500_000_000), NO_DEPTHS)
    assert view.scale == 15
    assert (view.left, view.bottom) == (10.0, 145.0)


def test_what_stands_along_the_sides_is_counted_in() -> None:
    """With 50 mm beside it the same wall is drawn at 1:20, clear of what stands there."""
    view = fit(AREA, (3_000_000_000, 1_500_000_000), (30.0, 0.0, 20.0, 0.0))
    assert (view.scale, view.left) == (20, 40.0)


def test_a_surface_is_never_drawn_larger_than_life() -> None:
    """A splash of an inch is an inch."""
    assert fit(AREA, (nm(1), nm(1)), NO_DEPTHS).scale == 1


def test_without_rows_there_is_no_table() -> None:
    """All the room is for the surface."""
    view, table = with_table(AREA, [], (3_000_000_000, 1_500_000_000), NO_DEPTHS)
    assert table is None
    assert view == fit(AREA, (3_000_000_000, 1_500_000_000), NO_DEPTHS)


@pytest.mark.parametrize(("size", "beside"), [((3, 1), False), ((1, 3), True)])
def test_a_table_stands_where_it_costs_least(size: tuple[int, int], beside: bool) -> None:  # noqa: FBT001
    """Below a wide wall, beside a high one."""
    rows = [(f"{number}a", "B17") for number in range(10)]
    view, table = with_table(AREA, rows, (size[0] * 10**9, size[1] * 10**9), NO_DEPTHS)
    assert table is not None
    assert (table.left > view.x(size[0] * 10**9)) is beside
    assert (table.top > view.bottom) is not beside
    assert table.capacity >= len(rows)


def test_rows_beyond_a_table_are_left_to_the_cut_list() -> None:
    """Six places: five rows and a word about the other fifteen."""
    table = Table(left=0.0, top=0.0, column=24.0, columns=2, rows=3)
    items = table.drawn("Small pieces", [(f"{number}a", "B17") for number in range(20)])
    said = [item.said for item in items if isinstance(item, Text)]
    assert said == [
        "Small pieces",
        *(f"{number}a  B17" for number in range(5)),
        "+ 15  on the cut list",
    ]


def test_one_long_row_does_not_widen_the_columns() -> None:
    """It goes on in the rows below it, word by word."""
    long = ("wire between the sockets and the switch, through the studs, up to the attic", 'at 0", 45-1/2"')
    rows = [long, *((f"{number}a", "B17") for number in range(10))]
    _, table = with_table(AREA, rows, (10**9, 3 * 10**9), NO_DEPTHS)
    assert table is not None
    assert table.column <= 48.0
    texts = [item for item in table.drawn("Small pieces", rows) if isinstance(item, Text)]
    assert all(text_width(text.spans, text.size) <= table.column for text in texts)
    said = " ".join(text.said.strip() for text in texts[1:])
    assert said.startswith(" ".join(long))
    assert said.endswith("9a  B17")


@pytest.mark.parametrize("letters", range(1, 61))
def test_what_stands_beside_a_name_is_never_lost(letters: int) -> None:
    """However much of the column the name takes, with or without blanks to break it at."""
    for name in (
        "n" * letters,
        ("gas line to the stove in the kitchen, up to the attic and on" * 2)[:letters],
    ):
        rows = [(name.strip(), 'at 0", 45-1/2"'), ("9a", "B17")]
        table = Table(left=0.0, top=0.0, column=48.0, columns=2, rows=9)
        texts = [item for item in table.drawn("Small pieces", rows) if isinstance(item, Text)]
        assert all(text_width(text.spans, text.size) <= 48.0 for text in texts)
        said = " ".join(" ".join(text.said for text in texts).split())
        assert said.endswith('at 0", 45-1/2" 9a B17')


def test_a_heading_says_all_lines_within_its_width() -> None:
    """Long names are cut off, long answers broken into lines."""
    heading = Heading(
        title="Boards out of the village hall that was pulled down last summer",
        of="entry wall",
        answer="Not settled whether it is enough: 3.6 sq ft left bare, 17 joints in sight.",
        facts="Wall 12' 0\" × 8' 0\"",
    )
    items, height = heading.drawn(8.0, 8.0, 90.0)
    texts = [item for item in items if isinstance(item, Text)]
    assert all(text_width(text.spans, text.size) <= 90.0 for text in texts)
    assert texts[0].said.endswith("…")
    assert " ".join(text.said for text in texts[1:-1]) == heading.answer
    assert texts[-1].said == heading.facts
    assert max(text.y + text.size / 2 for text in texts) <= 8.0 + height
