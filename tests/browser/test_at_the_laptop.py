"""The same at a laptop with a mouse: from nothing to a hung course."""

import re

from playwright.sync_api import Page, expect

from browser.doing import begin_job, counted, field, go_to, lay_out, measure_wall, tally_board
from browser.running_app import OpenApp


def test_from_nothing_to_a_hung_course(desktop_page: Page, app: OpenApp) -> None:
    """Boards that are alike are tallied at once; the first course is cut and hung."""
    page = desktop_page
    begin_job(page, "back room")
    go_to(page, "Tally")
    page.get_by_text("More: lot, species, edge, note").click()
    field(page, "How many alike").fill("30")
    tally_board(page, "12' 6\"", "7-1/4", "3/4")
    counted(page, 30)
    measure_wall(page)
    lay_out(page)
    page.get_by_role("link", name="Go on to cutting").click()
    page.get_by_role("button", name="Cut: next board").click()
    go_to(page, "Hanging")
    expect(page.get_by_role("heading", level=1)).to_have_text(re.compile(r"Hang course\s*1"))
    page.get_by_role("group", name="Course 1").get_by_role("button", name=re.compile("hangs?$")).last.click()
    expect(page.get_by_role("heading", level=1)).to_have_text(re.compile(r"Hang course\s*2"))
    (card,) = app.store.cards()
    assert card.boards == 30
    assert card.hung > 0
