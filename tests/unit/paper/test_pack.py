"""The pages that the trade adds: boxes to tick, rows that no page splits, sources, labels to be read."""

import re
from dataclasses import replace
from functools import cache

import pymupdf
import pytest
import zxingcpp

from plankwright.draw.view import A4, LETTER, Page
from plankwright.paper.leaf import DONE, Grid, Leaf, Part
from plankwright.paper.pack import Pack, Section
from plankwright.paper.stickers import board_stickers, piece_stickers
from plankwright.paper.work_sheets import work_sheets_pdf
from plankwright.trade.source import Said, Source, Trust
from plankwright.workshop.advice.fill_pack import fill_pack
from porch import porch_job, porch_layout, short_porch_layout
from printed import BODY, Sheets, lettering, words

TABLE = Source(
    key="table", title="Table of the hall", address="https://example.org/a/very/long/way", trust=Trust.READ
)
WORD = Source(key="word", title="Word of mouth", trust=Trust.PRACTICE)
ROWS = tuple(
    (f"B{number}", "look at both faces and at the ends" if number % 3 else f"pull{DONE}")
    for number in range(60)
)
LEAF = Leaf(
    title="Getting ready",
    headline=Said("Sixty boards.", (TABLE,)),
    parts=(
        Part(title="Nothing here"),
        Part(title="Words", said=(Said("By hand.", (WORD, TABLE)), Said("And by eye."))),
        Part(title="Board by board", grid=Grid(columns=("board", "do"), rows=ROWS, ticks=(1,))),
    ),
)


@cache
def sheets(page: Page = LETTER) -> Sheets:
    """Print the porch with a leaf of many rows."""
    pack = Pack(before=(Section(title="Before you cut", leaves=(LEAF,)),))
    return Sheets(work_sheets_pdf(porch_job(), porch_layout(), page, pack=pack))


@cache
def whole(page: Page = LETTER) -> Sheets:
    """Print the porch with everything that the trade adds."""
    pack = fill_pack(porch_job(), porch_layout())
    return Sheets(work_sheets_pdf(porch_job(), porch_layout(), page, pack=pack))


def test_a_leaf_is_told_with_the_numbers_of_its_sources() -> None:
    """In the order in which they are met, and listed at the end."""
    text = " ".join(words(page) for page in sheets().headed("Before you cut"))
    assert "Sixty boards. [1]" in text
    assert "By hand. [2, 1]" in text
    assert "Nothing here" not in text
    (page,) = sheets().headed("Where the figures come from")
    said = words(page).replace("\u200b", "")
    assert "1 Table of the hall, https://example.org/a/very/long/way (read)." in said
    assert "2 Word of mouth (common practice, no source)." in said


@pytest.mark.parametrize("page", [LETTER, A4], ids=lambda page: page.name)
def test_no_row_is_split_over_two_pages(page: Page) -> None:
    """Each board stands once, on one page, and what is to be done to it beside it."""
    found: list[str] = []
    for one in sheets(page).headed("Before you cut"):
        spans = [(text.strip(), place) for text, _, place in lettering(one)]
        boards = [(text, place) for text, place in spans if re.fullmatch(r"B\d+", text)]
        found += [text for text, _ in boards]
        for text, place in boards:
            beside = [other for other, at in spans if abs(at.y0 - place.y0) < 3 and at.x0 > place.x1]
            assert any(one.startswith(("look", "pull")) for one in beside), text
    assert found == [row[0] for row in ROWS]


@pytest.mark.parametrize("lines", range(41, 48))
def test_no_title_stands_alone_at_the_foot_of_a_page(lines: int) -> None:
    """However long what stands before is, its headline and what comes first below it stand on its page."""
    before = Part(title="Lines", said=(Said("One more."),) * lines)
    leaf = replace(LEAF, title="Something before", parts=(before,))
    pack = Pack(before=(Section(title="Before you cut", leaves=(leaf, LEAF)),))
    document = Sheets(work_sheets_pdf(porch_job(), porch_layout(), LETTER, pack=pack))
    (page,) = [words(page) for page in document.headed("Before you cut") if "Getting ready" in words(page)]
    assert "Getting ready Sixty boards. [1] Words By hand." in page


def test_what_nobody_checked_stands_on_the_first_sheet() -> None:
    """Below what the checker leaves to whoever hangs the boards."""
    pack = Pack(mind=("Nobody knows what holds it.",))
    first = words(
        Sheets(work_sheets_pdf(porch_job(), porch_layout(), LETTER, (), ("Odd.",), pack=pack)).pages[0]
    )
    assert "Mind • Odd. • Nobody knows what holds it." in first


def test_the_first_sheet_bars_the_saw_until_the_cut_list() -> None:
    """Getting boards ready comes before it, and cuts nothing."""
    first = words(whole().pages[0])
    ready, cut = first.index("Getting boards ready”, column by column"), first.index("Cut board by board")
    assert ready < first.index("Trim and rip nothing on the way: that is on the cut list.") < cut


@pytest.mark.parametrize(
    ("note", "told"), [("worm holes", True), ("worm holes, heated in May", False), ("", False)]
)
def test_boards_with_insects_are_heated_before_they_come_into_the_room(note: str, told: bool) -> None:  # noqa: FBT001 - a parameter
    """The first sheet says what “Getting boards ready” says; without insects nothing of them."""
    boards = tuple(replace(one, note=note) for one in porch_job().boards)
    job = replace(porch_job(), boards=boards)
    pack = fill_pack(job, porch_layout())
    first = words(Sheets(work_sheets_pdf(job, porch_layout(), LETTER, pack=pack)).pages[0])
    heat, dry = (
        "Heat boards with signs of insects and their lots outside first",
        "Have the boards in the room",
    )
    assert (heat in first) is told
    assert first.find(heat) < first.index(dry)


def test_what_is_missing_is_looked_up_under_to_buy() -> None:
    """Where the pack has that list."""
    pack = fill_pack(porch_job(), short_porch_layout())
    first = words(Sheets(work_sheets_pdf(porch_job(), short_porch_layout(), LETTER, pack=pack)).pages[0])
    assert "get the boards that are missing (list: “To buy”), add them to the tally" in first


def test_boxes_to_tick_stand_in_the_cells_and_done_ones_are_ticked() -> None:
    """A square a row, and two strokes in those that are done; the word is not printed besides."""
    pages = sheets().headed("Before you cut")
    drawings = [drawing for page in pages for drawing in page.get_drawings()]
    boxes = [one for one in drawings if 10 < one["rect"].width < 13 and 10 < one["rect"].height < 13]
    assert len(boxes) >= len(ROWS)
    assert all("(done)" not in words(page) for page in pages)


def test_it_is_black_and_white_and_large_enough() -> None:
    """Lettering of eleven points and more outside labels, and no colour but grey on the added pages."""
    for head in ("Before you cut", "Before you hang", "To buy", "What can hurt you", "Where the figures"):
        for page in whole().headed(head):
            assert all(size >= BODY for _, size, _ in lettering(page))
            inks = {one["color"] for one in page.get_drawings()} | {
                one["fill"] for one in page.get_drawings()
            }
            assert all(ink is None or max(ink) - min(ink) < 0.02 for ink in inks)


def test_the_cover_names_every_part_with_its_page() -> None:
    """From the prep list to the labels."""
    cover = words(whole().pages[0])
    for name in (
        "Moisture and movement",
        "Getting boards ready",
        "Cut list",
        "Nails",
        "Boxes and edges",
        "To buy",
        "What can hurt you",
        "Where the figures come from",
        "Labels for boards",
        "Labels for pieces",
    ):
        assert re.search(rf"{name} page \d+", cover), name


@pytest.mark.parametrize("page", [LETTER, A4], ids=lambda page: page.name)
def test_every_label_is_read_by_its_code(page: Page) -> None:
    """Cropped one by one from the sheet, each says what it should, and its id stands large beside it."""
    job, layout = porch_job(), porch_layout()
    pack = fill_pack(job, layout)
    expected = (*board_stickers(job, layout), *piece_stickers(job, layout, pack.planned))
    first = next(number for number, one in enumerate(whole(page).pages) if _is_labels(one))
    found: list[tuple[str, str]] = []
    for sheet in whole(page).pages[first:]:
        found += list(_labels_on(sheet))
    assert [said for _, said in found] == [one.said for one in expected]
    assert [name for name, _ in found] == [one.id for one in expected]


def _is_labels(page: pymupdf.Page) -> bool:
    return not any(text.startswith("Page ") for text, _, _ in lettering(page))


def _labels_on(page: pymupdf.Page) -> list[tuple[str, str]]:
    """Give the id and the read code of each label on a sheet, cell by cell."""
    width, height = page.rect.width / 3, page.rect.height / 8
    found = []
    for row in range(8):
        for column in range(3):
            cell = pymupdf.Rect(column * width, row * height, (column + 1) * width, (row + 1) * height)
            names = [
                text
                for text, size, place in lettering(page)
                if size > 11 and cell.contains(place) and text.strip()
            ]
            if not names:
                continue
            picture = page.get_pixmap(clip=cell, dpi=300, colorspace=pymupdf.csGRAY)
            image = memoryview(picture.samples).cast("B", (picture.height, picture.width))
            (code,) = zxingcpp.read_barcodes(image)
            found.append(("".join(names).replace("\u200b", "").strip(), code.text))
    return found
