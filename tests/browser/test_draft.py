"""A board that is half typed outlives that the page is left, until it is added or thrown away."""

import pytest
from playwright.sync_api import Page, expect

from browser.doing import field, go_to, settled
from browser.running_app import OpenApp
from browser.watching import Watch
from builders import board, nm
from kept_jobs import bare_job, plain, with_boards

STILL_HERE = "What you had typed is still here."


@pytest.fixture
def job(app: OpenApp) -> str:
    """Keep a job of one board; give its id."""
    return app.store.add(bare_job("hall", plain("F1"))).id


@pytest.fixture
def half_typed(page: Page, job: str) -> Page:
    """Type the length of a board and a note, and add nothing."""
    page.goto(f"/jobs/{job}/tally")
    field(page, "Length").fill("50")
    page.get_by_text("More: lot, species").tap()
    field(page, "Note").fill("cupped")
    expect(page.locator("#echo")).to_contain_text("4' 2\" long")
    settled(page)
    return page


def _put_back(page: Page) -> None:
    expect(page.get_by_text(STILL_HERE)).to_be_visible()
    expect(field(page, "Length")).to_have_value("50")
    expect(field(page, "Note")).to_have_value("cupped")
    expect(page.locator("#echo")).to_contain_text("4' 2\" long")


def _add(page: Page) -> None:
    page.locator("#entry").get_by_role("button", name="Add board", exact=True).first.tap()


def test_it_outlives_that_the_page_is_loaded_anew(half_typed: Page) -> None:
    """Where it is folded away, it is unfolded."""
    half_typed.reload()
    _put_back(half_typed)


def test_it_outlives_that_another_screen_is_looked_at(half_typed: Page) -> None:
    """Another tab of the app, and back."""
    go_to(half_typed, "Surfaces")
    go_to(half_typed, "Tally")
    _put_back(half_typed)


def test_once_added_nothing_is_put_back(half_typed: Page, app: OpenApp, job: str) -> None:
    """It would be added twice."""
    half_typed.reload()
    _put_back(half_typed)
    _add(half_typed)
    expect(half_typed.locator("#entry").get_by_role("status").first).to_contain_text("Board F2 added")
    half_typed.reload()
    expect(field(half_typed, "Mark")).to_have_value("F3")
    expect(field(half_typed, "Length")).to_have_value("")
    expect(half_typed.get_by_text(STILL_HERE)).to_have_count(0)
    assert [(one.id, one.length_nm) for one in app.store.job(job).boards[1:]] == [("F2", nm(50))]


def test_it_is_thrown_away_when_one_says_so(half_typed: Page) -> None:
    """For good."""
    half_typed.reload()
    half_typed.get_by_role("button", name="Throw away").tap()
    expect(field(half_typed, "Length")).to_have_value("")
    expect(field(half_typed, "Width")).to_have_value('5-1/4"')
    expect(half_typed.get_by_text(STILL_HERE)).to_have_count(0)
    half_typed.reload()
    settled(half_typed)
    expect(half_typed.get_by_text(STILL_HERE)).to_have_count(0)
    expect(field(half_typed, "Length")).to_have_value("")


def test_what_was_refused_is_still_there_on_the_page_loaded_anew(half_typed: Page, watch: Watch) -> None:
    """With what was mended since, too."""
    watch.expect(r"status of 422", r"htmx:afterRequest")
    field(half_typed, "Width").fill("5x")
    _add(half_typed)
    expect(half_typed.get_by_role("alert")).to_be_visible()
    expect(half_typed.get_by_text(STILL_HERE)).to_have_count(0)
    field(half_typed, "Width").fill("6")
    half_typed.reload()
    _put_back(half_typed)
    expect(field(half_typed, "Width")).to_have_value("6")


def test_the_mark_that_was_guessed_is_not_kept(half_typed: Page, app: OpenApp, job: str) -> None:
    """Another phone may have added a board that is called so."""
    app.store.change(job, "one more", lambda kept: with_boards(kept, plain("F1"), plain("F2")), key="")
    half_typed.reload()
    _put_back(half_typed)
    expect(field(half_typed, "Mark")).to_have_value("F3")


def test_a_board_that_was_changed_meanwhile_is_not_written_over_unseen(
    page: Page, app: OpenApp, job: str, watch: Watch
) -> None:
    """What was typed before that goes back into the form, and is refused as it would have been then."""
    watch.expect(r"status of 409", r"htmx:afterRequest")
    page.goto(f"/jobs/{job}/tally/board?id=F1")
    field(page, "Note").fill("cupped")
    app.store.change(job, "longer", lambda kept: with_boards(kept, board("F1", 120, 5.25)), key="")
    page.reload()
    expect(page.get_by_text(STILL_HERE)).to_be_visible()
    expect(field(page, "Note")).to_have_value("cupped")
    page.get_by_role("button", name="Save").tap()
    expect(page.get_by_text("As it is now:")).to_be_visible()
    assert app.store.job(job).boards[0].note == ""


def test_a_board_that_waits_on_the_phone_is_not_put_back(half_typed: Page, watch: Watch) -> None:
    """It is on its way already."""
    watch.expect(r"htmx:(sendError|afterRequest)", r"ERR_INTERNET_DISCONNECTED")
    half_typed.context.set_offline(True)
    _add(half_typed)
    expect(half_typed.get_by_role("region", name="Waiting on this phone")).to_be_visible()
    expect(field(half_typed, "Mark")).to_have_value("F3")
    assert half_typed.evaluate("Object.keys(sessionStorage).filter((name) => name.includes('draft'))") == []
    half_typed.context.set_offline(False)
