"""Whoever's browser runs no scripts does the same with plain forms and pages."""

import re

from playwright.sync_api import Page, expect

from browser.doing import SEARCH_MS, begin_job, counted, field, go_to, same_again, tally_board
from browser.running_app import OpenApp


def test_from_nothing_to_a_hung_wall(plain_page: Page, app: OpenApp) -> None:
    """A job, boards, a wall with a door, a layout, a board that broke, and all of it hung."""
    page = plain_page
    begin_job(page, "back room")
    go_to(page, "Tally")
    tally_board(page, "97", "5-1/4", "3/4")
    counted(page, 1)
    same_again(page, 3, 1)

    go_to(page, "Surfaces")
    page.get_by_role("link", name="Add a surface").tap()
    size = page.get_by_role("group", name="How large")
    field(size, "Width").fill("8 ft")
    field(size, "Height").fill("10")
    page.get_by_role("radio", name="Solid").check()
    page.get_by_role("button", name="Add a door or window").tap()
    door = page.get_by_role("group", name="Opening 1")
    for label, value in (("From the left", "40"), ("From below", "0"), ("Width", "20"), ("Height", "5")):
        field(door, label).fill(value)
    page.get_by_role("button", name="Draw it").tap()
    expect(page.get_by_role("img").first).to_be_visible()
    page.get_by_role("button", name="Save", exact=True).tap()
    expect(page.get_by_role("heading", level=2, name="wall")).to_be_visible()

    go_to(page, "Layout")
    page.get_by_role("radio", name="A glance").check()
    page.get_by_role("button", name="Lay it out").tap()
    expect(page.get_by_role("region", name="The answer")).to_contain_text("Enough", timeout=SEARCH_MS)
    page.get_by_role("link", name="Go on to cutting").tap()
    page.get_by_role("button", name="Cut: next board").tap()

    go_to(page, "Hanging")
    page.get_by_role("group", name="Course 1").get_by_role("link", name="It broke").tap()
    page.get_by_role("checkbox").first.check()
    page.get_by_role("button", name="It broke: lay out the rest anew").tap()
    news = page.get_by_role("heading", name="What changed")
    again = page.get_by_role("link", name="Look again")
    for _ in range(100):
        expect(news.or_(again)).to_be_visible(timeout=SEARCH_MS)
        if news.is_visible():
            break
        page.wait_for_timeout(500)
        again.tap()
    page.get_by_role("button", name="Read, go on").tap()
    hang_all(page)
    (card,) = app.store.cards()
    assert card.hung == card.pieces > 0
    page.get_by_role("link", name="See what is left over").tap()
    page.get_by_role("button", name="Begin a job with these").tap()
    expect(page.get_by_role("heading", level=1)).to_be_visible()
    assert len(app.store.cards()) == 2


def hang_all(page: Page) -> None:
    """Hang one piece after the other, to the last."""
    last = page.get_by_text("everything hangs")
    bar = page.get_by_role("group", name=re.compile(r"^Course \d+$"))
    for _ in range(20):
        expect(last.or_(bar)).to_be_visible()
        if last.is_visible():
            return
        bar.get_by_role("button", name=re.compile("hangs$")).tap()
    raise AssertionError("There is no end to it")
