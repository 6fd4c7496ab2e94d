"""A search can be stopped with the best so far, and one that is cut off loses nothing and says so."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from browser.doing import SEARCH_MS, go_to
from browser.opening import PHONE
from browser.running_app import AppApart
from plankwright import files
from plankwright.store import open_book
from plankwright.workshop.jobs.kept import SearchState


def begin_with_example(page: Page) -> None:
    """Begin with the example, and have it laid out; that takes long enough to be stopped."""
    page.goto("/")
    page.get_by_role("button", name="Begin with the example").tap()
    go_to(page, "Layout")
    page.get_by_role("radio", name="Thorough").check()
    page.get_by_role("button", name="Lay it out").tap()
    expect(page.get_by_role("heading", level=1, name="Laying out")).to_be_visible()
    best = page.get_by_role("region", name="The best so far").get_by_role("img")
    expect(best).to_be_visible(timeout=SEARCH_MS)


def test_the_best_so_far_is_kept(page: Page) -> None:
    """It is drawn while it improves, and worked by once one has stopped."""
    begin_with_example(page)
    expect(page.get_by_role("progressbar")).to_be_visible()
    page.get_by_role("button", name="Stop and keep the best so far").tap()
    expect(page.get_by_role("region", name="The answer")).to_be_visible(timeout=SEARCH_MS)
    expect(page.get_by_role("link", name="Go on to cutting")).to_be_visible()


@pytest.fixture
def apart(tmp_path: Path) -> Iterator[AppApart]:
    """Have the app open in a process of its own."""
    app = AppApart(tmp_path / "jobs.db")
    app.start()
    yield app
    app.end()


def test_a_power_cut_in_the_middle_of_a_search(browser: Browser, apart: AppApart, tmp_path: Path) -> None:
    """All that was entered is there; the screen says that the search was cut off, and offers to go on."""
    context = browser.new_context(base_url=apart.url, **PHONE)
    page = context.new_page()
    begin_with_example(page)
    book = open_book(tmp_path / "jobs.db", files)
    (card,) = book.cards()
    before = book.job(card.id)

    apart.kill()
    apart.start()
    assert book.job(card.id) == before
    search = book.last_search(card.id)
    assert search is not None
    assert search.state is SearchState.CUT_OFF
    page.goto(f"/jobs/{card.id}/layout")
    expect(page.get_by_text("The last search was cut off")).to_be_visible()
    page.get_by_role("link", name="See what it had found").tap()
    expect(page.get_by_role("heading", level=1, name="The search was cut off")).to_be_visible()
    expect(page.get_by_role("button", name="Search again")).to_be_visible()
    page.get_by_role("button", name="Use it").tap()
    expect(page.get_by_role("link", name="Go on to cutting")).to_be_visible()
    context.close()
