"""Every screen can be used by everybody: axe finds nothing serious, in light and dark, small and large."""

import pytest
from playwright.sync_api import Page

from browser.axe import grave_faults
from browser.moments import MOMENTS
from browser.opening import DESKTOP, PHONE, OpenPage
from browser.running_app import OpenApp
from browser.thumbs import thumb_faults
from browser.watching import LOST, Watch
from plankwright.web.screens import ROUTES
from tools.walk_screens import walk_screens

SIZES = {"phone": PHONE, "desktop": DESKTOP}

NO_SCREENS = {
    "/join/{word}",
    *(
        f"/jobs/{{job_id}}/{path}"
        for path in (
            "export",
            "layout/boards/{place}/{label:path}",
            "layout/kept/{number}/maps/{place}.svg",
            "left/tally",
            "paper/ready",
            "paper/{file}",
            "search",
            "search/events",
            "search/{number}/best/{place}.svg",
            "surfaces/{place}/drawing",
            "tally/boards",
            "tally/tally.csv",
            "tally/{board_id:path}",
        )
    ),
}
"""Paths of files, of parts of a screen, of what only leads on, and of what is among the moments."""


@pytest.mark.parametrize("size", SIZES)
def test_every_screen(open_page: OpenPage, app_url: str, worked_on: str, size: str) -> None:
    """Of a job that is worked on; in the dark only colours can differ. Nothing is too small for a thumb."""
    page = open_page(**SIZES[size])
    faults = []
    for path in walk_screens(app_url, "/", worked_on).values():
        page.emulate_media(color_scheme="light")
        page.goto(path)
        faults += [f"{path}: {fault}" for fault in grave_faults(page)]
        faults += [f"{path}: {fault}" for fault in thumb_faults(page)]
        page.emulate_media(color_scheme="dark")
        faults += [f"{path}, dark: {fault}" for fault in grave_faults(page, "color-contrast")]
    assert faults == []


@pytest.mark.parametrize("moment", MOMENTS)
def test_every_moment(page: Page, app: OpenApp, watch: Watch, moment: str) -> None:
    """On a phone, where nothing is there yet, or something went wrong or is under way."""
    watch.expect(LOST, r"status of 4\d\d")
    MOMENTS[moment](page, app)
    assert [*grave_faults(page), *thumb_faults(page)] == []
    page.emulate_media(color_scheme="dark")
    assert grave_faults(page, "color-contrast") == []


def test_every_screen_is_walked_to(app_url: str, worked_on: str) -> None:
    """So that none is left out above: whatever the app answers is a screen, or known to be none."""
    routes = {route.path for route in ROUTES if "GET" in (route.methods or ())}
    assert routes - walk_screens(app_url, "/", worked_on).keys() == NO_SCREENS


def test_a_spoilt_page_is_found_out(page: Page) -> None:
    """A picture without words, a field without a label, and letters that are hardly seen."""
    page.goto("/")
    assert grave_faults(page) == []
    page.evaluate(
        """document.getElementById("main").innerHTML =
        '<img src="/static/mark.svg"><input><p style="color: #aaa; background: #fff">hardly seen</p>'"""
    )
    found = " ".join(grave_faults(page))
    for rule in ("image-alt", "label", "color-contrast"):
        assert rule in found


def test_what_is_too_small_or_too_wide_is_found_out(page: Page) -> None:
    """A thumb would miss it, and the page slide."""
    page.goto("/")
    assert thumb_faults(page) == []
    page.add_style_tag(content="button { min-height: 0 !important; height: 20px; } h1 { width: 500px; }")
    found = thumb_faults(page)
    assert any("<button" in fault for fault in found)
    assert found[-1] == "126 px wider than the window"
