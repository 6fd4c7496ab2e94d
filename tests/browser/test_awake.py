"""The screen stays awake while one cuts and hangs, as far as the browser lets us."""

import pytest
from playwright.sync_api import Page, expect

_SPY = """
window.asked = 0;
Object.defineProperty(navigator, "wakeLock", {value: {request: async () => {
    window.asked += 1;
    return Object.assign(new EventTarget(), {release: async () => {}});
}}});
"""


@pytest.mark.parametrize("screen", ["cutting", "hanging"])
def test_the_screen_is_kept_awake_while_one_works(page: Page, small: str, screen: str) -> None:
    """And it says so."""
    page.add_init_script(_SPY)
    page.goto(f"{small}/{screen}")
    expect(page.get_by_text("The screen stays awake while this page is open.")).to_be_visible()
    assert page.evaluate("window.asked") == 1


def test_it_may_go_dark_elsewhere(page: Page, small: str) -> None:
    """Nobody looks at the tally for minutes."""
    page.add_init_script(_SPY)
    page.goto(f"{small}/tally")
    expect(page.get_by_role("heading", level=1, name="Tally")).to_be_visible()
    assert page.evaluate("window.asked") == 0
