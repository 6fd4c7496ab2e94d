"""What goes wrong while one works: a course comes out otherwise, a piece is cut wrong; the rest follows."""

import re

import pytest
from playwright.sync_api import Page, expect

from browser.doing import SEARCH_MS, field
from browser.entry_wall import laid_out
from browser.running_app import OpenApp
from browser.watching import Watch

HIGHER_MM = 5


@pytest.fixture
def hanging(page: Page, worked_on: str) -> Page:
    """Open the third course to be hung, the first that does not hang yet."""
    page.goto(f"{worked_on}/hanging")
    expect(page.get_by_role("heading", level=1)).to_have_text(re.compile(r"Hang course\s*3"))
    return page


def go_on_after_news(page: Page, course: int) -> None:
    """Wait for what changed, read it, and be at the course that is next."""
    expect(page.get_by_role("heading", name="What changed")).to_be_visible(timeout=SEARCH_MS)
    page.get_by_role("button", name="Read, go on").tap()
    expect(page.get_by_role("heading", name="What changed")).to_be_hidden()
    expect(page.get_by_role("heading", level=1)).to_have_text(re.compile(rf"Hang course\s*{course}"))


def test_a_course_came_out_higher(hanging: Page, app: OpenApp) -> None:
    """It is measured, and all above it is laid out anew on it."""
    course = laid_out().layout.layout.surfaces[0].courses[2]
    edge_mm = max(piece.place.top for piece in course.pieces) / 1_000_000 + HIGHER_MM
    hanging.get_by_text("Course 3 came out otherwise").tap()
    hanging.get_by_role("textbox", name=re.compile("edge is at$")).fill(f"{edge_mm:.1f} mm")
    hanging.get_by_role("button", name="Mark course 3 as hung there").tap()
    go_on_after_news(hanging, 4)
    (card,) = (card for card in app.store.cards() if card.removed_at is None)
    assert card.hung == sum(len(one.pieces) for one in laid_out().layout.layout.surfaces[0].courses[:3])


def test_a_piece_was_cut_too_short(hanging: Page) -> None:
    """It is used where it fits, and another takes its place."""
    hanging.get_by_role("group", name="Course 3").get_by_role("link", name="Cut wrong").tap()
    hanging.get_by_role("radio").first.check()
    field(hanging, "How long it is now").fill("40")
    hanging.get_by_role("button", name="Mark it: lay out the rest anew").tap()
    go_on_after_news(hanging, 3)


def test_what_cannot_be_is_refused_and_stands_there(hanging: Page, watch: Watch) -> None:
    """A length that is none; the form is as it was filled in."""
    watch.expect(r"status of 422")
    hanging.get_by_role("group", name="Course 3").get_by_role("link", name="Cut wrong").tap()
    hanging.get_by_role("radio").first.check()
    field(hanging, "How long it is now").fill("no length")
    hanging.get_by_role("button", name="Mark it: lay out the rest anew").tap()
    expect(hanging.get_by_role("alert")).to_contain_text("no length")
    expect(field(hanging, "How long it is now")).to_have_value("no length")
    expect(hanging.get_by_role("radio").first).to_be_checked()
