"""Whoever has only a keyboard does the same: every stop is seen, and every step lands where one goes on."""

import re

import pytest
from playwright.sync_api import Locator, Page, expect

from browser.doing import SEARCH_MS, counted, field, settled

_MOST_STOPS = 80
"""So often one presses Tab until one gives up."""

# What has the focus: whether it is outlined, and whether some of it is in the window and not covered.
_SEEN = """() => {
    const at = document.activeElement;
    const whole = at.closest("label") ?? at;
    const box = whole.getBoundingClientRect();
    const style = getComputedStyle(at);
    // A piece of a drawing is marked by the line around it.
    const shape = at instanceof SVGElement && at.querySelector("path, rect, polygon");
    const line = shape ? getComputedStyle(shape).strokeWidth : style.outlineWidth;
    const onTop = (share) => {
        const top = document.elementFromPoint(box.x + box.width / 2, box.y + box.height * share);
        return top !== null && whole.contains(top);
    };
    return {
        what: at.outerHTML.slice(0, 120),
        outlined: (shape || style.outlineStyle !== "none") && parseFloat(line) >= 1,
        inSight: [0.1, 0.3, 0.5, 0.7, 0.9].some(onTop),
    };
}"""


def tab_to(page: Page, wanted: Locator) -> None:
    """Press Tab until something has the focus; every stop on the way is in sight."""
    expect(wanted).to_have_count(1)
    settled(page)
    for _ in range(_MOST_STOPS):
        page.keyboard.press("Tab")
        seen = page.evaluate(_SEEN)
        assert seen["outlined"], seen["what"]
        assert seen["inSight"], seen["what"]
        if wanted.evaluate("one => one === document.activeElement"):
            return
    raise AssertionError(f"Tab does not lead to {wanted}")


def enter(page: Page, wanted: Locator) -> None:
    """Go to something with Tab, and press Enter on it."""
    tab_to(page, wanted)
    page.keyboard.press("Enter")


def fill(page: Page, wanted: Locator, value: str) -> None:
    """Go to a field with Tab, and type."""
    tab_to(page, wanted)
    page.keyboard.type(value)


def test_from_the_list_of_jobs_to_a_hung_course(desktop_page: Page) -> None:
    """A job, two boards, a surface, a layout, a board cut and hung."""
    page = desktop_page
    page.goto("/")
    fill(page, field(page, "What you call it"), "back room")
    page.keyboard.press("Enter")
    expect(page.get_by_role("heading", level=1, name="back room")).to_be_visible()

    screens = page.get_by_role("navigation", name="Screens of this job")
    enter(page, screens.get_by_role("link", name="Tally"))
    fill(page, field(page, "Length"), "97")
    fill(page, field(page, "Width"), "5-1/4")
    fill(page, field(page, "Thickness"), "3/4")
    page.keyboard.press("Enter")
    counted(page, 1)
    settled(page)
    expect(field(page, "Length")).to_be_focused()
    page.keyboard.type("98")
    page.keyboard.press("Enter")
    counted(page, 2)
    settled(page)
    expect(field(page, "Length")).to_be_focused()

    enter(page, screens.get_by_role("link", name="Surfaces"))
    enter(page, page.get_by_role("link", name="Add a surface"))
    size = page.get_by_role("group", name="How large")
    fill(page, field(size, "Width"), "8 ft")
    fill(page, field(size, "Height"), "10")
    tab_to(page, page.get_by_role("radio", name="Studs or strips"))
    page.keyboard.press("ArrowRight")
    expect(page.get_by_role("radio", name="Solid")).to_be_checked()
    enter(page, page.get_by_role("button", name="Save", exact=True))
    expect(page.get_by_role("heading", level=2, name="wall")).to_be_visible()

    enter(page, screens.get_by_role("link", name="Layout"))
    tab_to(page, page.get_by_role("radio", name="Steady"))
    page.keyboard.press("ArrowUp")
    expect(page.get_by_role("radio", name="A glance")).to_be_checked()
    enter(page, page.get_by_role("button", name="Lay it out"))
    expect(page.get_by_role("region", name="The answer")).to_contain_text("Enough", timeout=SEARCH_MS)
    settled(page)
    enter(page, page.get_by_role("link", name="Go on to cutting"))
    expect(page.get_by_role("heading", level=1)).to_contain_text("Cut board")
    enter(page, page.get_by_role("button", name="Cut: next board"))
    settled(page)
    enter(page, screens.get_by_role("link", name="Hanging"))
    enter(page, page.get_by_role("group", name="Course 1").get_by_role("button", name="1a hangs"))
    expect(page.get_by_role("heading", level=1)).to_contain_text(re.compile(r"Hang course\s*2"))


@pytest.mark.parametrize(
    "spoilt",
    [
        ":focus-visible { outline: none !important; }",
        "form { visibility: hidden; }",
        "body::after { content: ''; position: fixed; inset: 0; z-index: 99; background: white; }",
    ],
)
def test_a_stop_that_is_not_seen_is_found(desktop_page: Page, spoilt: str) -> None:
    """Without an outline, or below something else; or one that is never come to."""
    desktop_page.goto("/")
    desktop_page.add_style_tag(content=spoilt)
    with pytest.raises(AssertionError):
        tab_to(desktop_page, desktop_page.locator("#f-name"))
