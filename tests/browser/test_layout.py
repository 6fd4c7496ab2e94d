"""The layout is looked at, and had otherwise: a piece stays, a board is left out, two are swapped."""

import re

import pytest
from playwright.sync_api import Page, expect

from browser.doing import SEARCH_MS, settled
from browser.entry_wall import laid_out
from browser.running_app import OpenApp


@pytest.fixture
def job_id(app: OpenApp) -> str:
    """Keep the entry wall with its layout, and nothing cut yet; give its id."""
    return laid_out().keep(app.store)


def boards_of(app: OpenApp, job_id: str) -> dict[str, str]:
    """Give the board of each piece of the layout that is worked by."""
    number = app.store.job(job_id).layout_id
    assert number is not None
    return {piece.label: piece.board_id for piece in app.store.layout(job_id, number).layout.pieces}


def test_a_piece_is_tapped_for_its_board_and_cuts(page: Page, app: OpenApp, job_id: str) -> None:
    """On the drawing, which can be made larger."""
    page.goto(f"/jobs/{job_id}/layout")
    drawing = page.get_by_role("region", name="Drawing of entry")
    before = drawing.locator("svg").bounding_box()
    page.get_by_role("link", name="Larger").tap()
    after = drawing.locator("svg").bounding_box()
    assert before is not None
    assert after is not None
    assert after["width"] > before["width"]
    page.get_by_role("link", name="Smaller").tap()
    drawing.locator("a[href$='/3a']").tap()
    expect(page.get_by_role("heading", level=1, name="Piece 3a")).to_be_visible()
    expect(page.get_by_text(f"Board {boards_of(app, job_id)['3a']},").first).to_be_visible()
    expect(page.get_by_role("region", name="Drawing of the board with its cuts")).to_be_visible()


def test_the_rest_is_laid_out_around_what_is_asked_for(page: Page, app: OpenApp, job_id: str) -> None:
    """One piece stays, the board of another is not used; then both layouts are compared."""
    before = boards_of(app, job_id)
    page.goto(f"/jobs/{job_id}/layout/pieces/0/3a")
    page.get_by_role("button", name="Keep this piece here").tap()
    expect(page.get_by_role("region", name="Asked for")).to_contain_text("3a")
    page.goto(f"/jobs/{job_id}/layout/pieces/0/5a")
    page.get_by_role("button", name=f"Do not use board {before['5a']}").tap()
    page.get_by_role("button", name="Lay out again around that").tap()
    expect(page.get_by_role("heading", level=1, name=re.compile("^Laying out around"))).to_be_visible()
    expect(page.get_by_role("region", name="The answer")).to_contain_text("Enough", timeout=SEARCH_MS)
    after = boards_of(app, job_id)
    assert after["3a"] == before["3a"]
    assert before["5a"] not in after.values()

    settled(page)
    page.get_by_role("link", name="All layouts, and compare").tap()
    page.get_by_role("link", name=re.compile("^Layout 1$")).tap()
    page.get_by_role("link", name="Compare with the one that is worked by").tap()
    expect(page.get_by_role("heading", level=1)).to_have_text("Layout 2 beside layout 1")
    expect(page.get_by_role("row", name=re.compile("^Cuts"))).to_be_visible()


def test_two_pieces_swap_their_boards(page: Page, app: OpenApp, job_id: str) -> None:
    """At once where nothing else has to change; and it is taken back."""
    before = boards_of(app, job_id)
    page.goto(f"/jobs/{job_id}/layout/pieces/0/3a")
    page.get_by_label("Swap boards with").select_option("0:4a")
    page.get_by_role("button", name="Swap", exact=True).tap()
    expect(page.get_by_role("heading", level=1, name="Layout", exact=True)).to_be_visible()
    after = boards_of(app, job_id)
    assert (after["3a"], after["4a"]) == (before["4a"], before["3a"])
    page.get_by_role("banner").get_by_role("button", name=re.compile("^Undo")).tap()
    settled(page)
    assert boards_of(app, job_id) == before
