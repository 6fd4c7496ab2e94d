"""What a person does with the app, a step each; every step ends when the page shows that it is done."""

import re

from playwright.sync_api import Locator, Page, expect

SEARCH_MS = 180_000
"""A search on a busy machine takes its time. [ms]"""

_NO_PHONE = 600
"""No phone is so wide. [CSS px]"""


def field(within: Page | Locator, label: str) -> Locator:
    """Give a field that is in sight, by its label."""
    return within.get_by_role("textbox", name=label, exact=True)


def hit(what: Locator) -> None:
    """Tap something on a phone, click it elsewhere."""
    size = what.page.viewport_size
    if size is not None and size["width"] < _NO_PHONE:
        what.tap()
    else:
        what.click()


def begin_job(page: Page, name: str) -> None:
    """Begin a job from nothing."""
    page.goto("/")
    field(page, "What you call it").fill(name)
    hit(page.get_by_role("button", name="Begin", exact=True))
    expect(page.get_by_role("heading", level=1, name=name)).to_be_visible()


def go_to(page: Page, screen: str) -> None:
    """Go to a screen of the job, with the keys for measuring out of the way."""
    settled(page)
    if keys(page).is_visible():
        press(page, "hide these keys")
    hit(page.get_by_role("navigation", name="Screens of this job").get_by_role("link", name=screen))
    expect(
        page.get_by_role("navigation", name="Screens of this job").get_by_role("link", name=screen)
    ).to_have_attribute("aria-current", "page")
    settled(page)


def settled(page: Page) -> None:
    """Wait until whatever the page has asked for is there and in its place."""
    expect(page.locator(".htmx-request, .htmx-swapping, .htmx-settling, .htmx-added")).to_have_count(0)


def keys(page: Page) -> Locator:
    """Give the keys for measuring, which open for the field that one is in."""
    return page.get_by_role("group", name="Keys for measuring")


def press(page: Page, *faces: str) -> None:
    """Tap keys, by what they are called aloud."""
    for face in faces:
        hit(keys(page).get_by_role("button", name=face, exact=True))


def counted(page: Page, boards: int) -> None:
    """Wait until so many boards are in the tally."""
    told = "1 board." if boards == 1 else f"{boards} boards, the newest first."
    expect(page.locator("#found").get_by_role("status")).to_have_text(told)


def tally_board(page: Page, length: str, width: str = "", thickness: str = "") -> None:
    """Fill in a board and add it; what is left out is as on the board before."""
    for label, value in (("Length", length), ("Width", width), ("Thickness", thickness)):
        if value:
            field(page, label).fill(value)
    hit(page.locator("#entry").get_by_role("button", name="Add board").first)


def same_again(page: Page, times: int, have: int) -> int:
    """Add boards like the last one; give how many there are then."""
    for number in range(have + 1, have + times + 1):
        # The keys for measuring have one of their own, above the one of the page.
        hit(page.get_by_role("button", name=re.compile("^Same again")).last)
        counted(page, number)
    return have + times


def measure_wall(page: Page) -> None:
    """Measure a wall of 12 ft by 8 ft, with studs, a door, and a socket that is tapped on the drawing."""
    go_to(page, "Surfaces")
    hit(page.get_by_role("link", name="Add a surface"))
    size = page.get_by_role("group", name="How large")
    field(size, "Width").fill("12 ft")
    field(size, "Height").fill("8 ft")
    field(page, "Name").fill("entry")
    field(page, "First centre").fill("16")
    field(page, "Then every").fill("16")
    fill_opening(page)
    tap_socket(page)
    hit(page.get_by_role("button", name="Save", exact=True))
    expect(page.get_by_role("heading", name="entry")).to_be_visible()


def fill_opening(page: Page) -> None:
    """Add a door."""
    hit(page.get_by_role("button", name="Add a door or window"))
    door = page.get_by_role("group", name="Opening 1")
    for label, value in (
        ("From the left", "100"),
        ("From below", "0"),
        ("Width", "32"),
        ("Height", "80"),
        ("Name", "door"),
    ):
        field(door, label).fill(value)


def tap_at(drawing: Locator, *, across: float, down: float) -> None:
    """Tap on a drawing, at shares of its width and height; it may be drawn anew meanwhile."""
    width, height = drawing.evaluate(
        "one => [one.getBoundingClientRect().width, one.getBoundingClientRect().height]"
    )
    # Lines that are drawn over it take the tap as well.
    drawing.click(position={"x": width * across, "y": height * down}, force=True)


def tap_socket(page: Page) -> None:
    """Add a socket, and tap on the drawing where its middle is."""
    hit(page.get_by_role("button", name="Add one by its centre"))
    socket = page.get_by_role("group", name="Socket or pipe 1")
    expect(socket).to_be_visible()
    tap_at(page.locator("#sight .tap-area"), across=0.15, down=0.8)
    expect(field(socket, "Centre, from left")).not_to_have_value("")
    expect(field(socket, "Centre, up")).not_to_have_value("")
    field(socket, "Width").fill("2-1/4")
    field(socket, "Height").fill("3-3/4")


def lay_out(page: Page) -> None:
    """Have the job laid out at a glance, and wait for the answer."""
    go_to(page, "Layout")
    page.get_by_role("radio", name="A glance").check()
    hit(page.get_by_role("button", name="Lay it out"))
    expect(page.get_by_role("region", name="The answer")).to_contain_text("Enough", timeout=SEARCH_MS)
    settled(page)
