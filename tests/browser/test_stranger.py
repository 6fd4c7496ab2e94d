"""A stranger with only a phone goes from nothing to a hung wall, and prints the pack at the laptop."""

import re
from pathlib import Path

import pymupdf
from playwright.sync_api import Locator, Page, expect

from browser.doing import (
    SEARCH_MS,
    begin_job,
    counted,
    field,
    go_to,
    lay_out,
    measure_wall,
    press,
    same_again,
    tally_board,
)
from browser.opening import DESKTOP, OpenPage
from browser.running_app import OpenApp


def take_care(page: Page) -> Locator:
    """Give what is said of what can hurt."""
    return page.get_by_role("complementary", name="Take care")


def tally_forty(page: Page) -> None:
    """Tally forty boards: the first with thumbs alone, others as the one before, others typed."""
    go_to(page, "Tally")
    expect(take_care(page)).to_contain_text("Before you pull")
    field(page, "Length").tap()
    press(page, "1", "2", "feet", "6", "inches")
    expect(field(page, "Length")).to_have_value("12' 6\"")
    press(page, "next field", "7", "1/4 inch")
    expect(field(page, "Width")).to_have_value('7-1/4"')
    press(page, "next field", "3/4 inch", "Add board")
    counted(page, 1)
    have = same_again(page, 13, 1)
    press_length(page, "8", "feet", "8", "inches")
    counted(page, have + 1)
    have = same_again(page, 11, have + 1)
    tally_board(page, "6' 2\"")
    counted(page, have + 1)
    assert same_again(page, 13, have + 1) == 40


def press_length(page: Page, *faces: str) -> None:
    """Add a board of another length with thumbs; its width and thickness are those of the last one."""
    field(page, "Length").tap()
    press(page, *faces, "Add board")


def hang_two_courses(page: Page) -> None:
    """Cut a board, and hang the first course piece by piece and the second at once."""
    page.get_by_role("link", name="Go on to cutting").tap()
    expect(take_care(page)).to_contain_text("Before you cut")
    page.get_by_role("button", name="Cut: next board").tap()
    expect(page.get_by_text("1 of")).to_be_visible()
    go_to(page, "Hanging")
    expect(page.get_by_role("heading", level=1)).to_have_text(re.compile(r"Hang course\s*1"))
    expect(take_care(page)).to_contain_text("Before you nail")
    bar = page.get_by_role("group", name="Course 1")
    while bar.count():
        told = page.get_by_text(re.compile(r"^\d+ of \d+ pieces hangs?\.$"))
        before = told.inner_text()
        bar.get_by_role("button").first.tap()
        expect(told).not_to_have_text(before)
    expect(page.get_by_role("heading", level=1)).to_have_text(re.compile(r"Hang course\s*2"))
    page.get_by_role("button", name="All of 2 hang").tap()
    expect(page.get_by_role("heading", level=1)).to_have_text(re.compile(r"Hang course\s*3"))


def break_a_piece(page: Page) -> None:
    """Say that a piece of the third course broke, and go on by what is laid out then."""
    page.get_by_role("group", name="Course 3").get_by_role("link", name="It broke").tap()
    page.get_by_role("checkbox").first.check()
    page.get_by_role("radio", name="Yes, it was sawn").check()
    page.get_by_role("button", name="It broke: lay out the rest anew").tap()
    expect(page.get_by_role("heading", name="What changed")).to_be_visible(timeout=SEARCH_MS)
    page.get_by_role("button", name="Read, go on").tap()
    expect(page.get_by_role("heading", name="What changed")).to_be_hidden()
    expect(page.get_by_role("heading", level=1)).to_have_text(re.compile(r"Hang course\s*3"))


def test_from_nothing_to_a_hung_wall_and_its_papers(
    page: Page, open_page: OpenPage, app: OpenApp, tmp_path: Path
) -> None:
    """Without help: forty boards, a wall, a layout, two courses, a broken board, and on; then the pack."""
    begin_job(page, "back room")
    tally_forty(page)
    measure_wall(page)
    lay_out(page)
    hang_two_courses(page)
    break_a_piece(page)
    page.get_by_role("button", name="All of 3 hang").tap()
    expect(page.get_by_role("heading", level=1)).to_have_text(re.compile(r"Hang course\s*4"))

    (card,) = app.store.cards()
    assert card.boards == 40
    assert card.hung >= 3

    laptop = open_page(**DESKTOP)
    laptop.goto("/")
    laptop.get_by_role("link", name="back room").click()
    go_to(laptop, "Paper")
    with laptop.expect_download() as coming:
        laptop.get_by_role("link", name="Download (PDF)").click()
    pack = tmp_path / "pack.pdf"
    coming.value.save_as(pack)
    with pymupdf.open(pack) as paper:
        words = "".join(sheet.get_text() for sheet in paper)
        assert paper.page_count > 3
    assert "back room" in words
    assert "Course 4" in words
    assert "Course 2" not in words
