"""Whether a page is made for thumbs: nothing to be pressed is too small, and it does not slide sideways."""

from playwright.sync_api import Page

SMALLEST = 44
"""What is pressed is no smaller, across and up, but for links within a text. [CSS px]"""

_SMALL = """smallest => [...document.querySelectorAll(
    "button, .button, input:not([type=hidden]), select, textarea, summary, a"
)].map(one => {
    const pressed = one.matches("[type=checkbox], [type=radio]") ? one.closest("label") ?? one : one;
    const box = pressed.getBoundingClientRect();
    const told = `${Math.round(box.width)} × ${Math.round(box.height)}: ${one.outerHTML.slice(0, 100)}`;
    const seen = one.checkVisibility({visibilityProperty: true}) && box.width > 1 && box.right > 0;
    const counts = seen && !one.closest("[aria-hidden=true]") && getComputedStyle(one).display !== "inline";
    return counts && Math.min(box.width, box.height) < smallest ? told : "";
}).filter(Boolean)"""


def thumb_faults(page: Page) -> list[str]:
    """Give what is too small for a thumb, and by how much the page is too wide."""
    faults: list[str] = page.evaluate(_SMALL, SMALLEST)
    beyond = page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
    return [*faults, f"{beyond} px wider than the window"] if beyond > 0 else faults
