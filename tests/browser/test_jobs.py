"""The list of jobs: begin, bring along, copy, take along, put away for good."""

from pathlib import Path

from playwright.sync_api import Page, expect

from browser.doing import begin_job, hit
from browser.running_app import OpenApp


def names(app: OpenApp) -> list[str]:
    """Give what the jobs are called that are there, in order of the alphabet."""
    return sorted(card.name for card in app.store.cards() if card.removed_at is None)


def test_a_job_is_begun_from_nothing(page: Page, app: OpenApp) -> None:
    """With nothing but its name."""
    begin_job(page, "back room")
    assert names(app) == ["back room"]


def test_a_job_is_taken_along_and_brought_to_another_app(
    desktop_page: Page, app: OpenApp, worked_on: str, tmp_path: Path
) -> None:
    """Packed into one file, with its layout and all that hangs."""
    page = desktop_page
    before = app.store.job(worked_on.removeprefix("/jobs/"))
    page.goto("/")
    page.get_by_text("Copy, take along, put away").click()
    with page.expect_download() as coming:
        page.get_by_role("link", name="Take along").click()
    packed = tmp_path / coming.value.suggested_filename
    coming.value.save_as(packed)

    page.get_by_label("Files").set_input_files(packed)
    hit(page.get_by_role("button", name="Bring along"))
    expect(page.get_by_role("heading", level=1, name="entry wall")).to_be_visible()
    assert page.url.removeprefix(app.url) != worked_on
    after = app.store.job(page.url.rpartition("/")[2])
    assert after.boards == before.boards
    assert after.definition == before.definition
    assert after.work is not None
    assert before.work is not None
    assert after.work.marks == before.work.marks


def test_a_job_is_copied_and_deleted_for_good(page: Page, app: OpenApp, small: str) -> None:
    """Its copy stays; before it is gone for good, it is put away."""
    page.goto("/")
    page.get_by_text("Copy, take along, put away").tap()
    page.get_by_role("button", name="Copy").tap()
    expect(page.get_by_role("heading", level=1)).to_have_text("village hall (copy)")
    page.goto("/")
    card = page.get_by_role("listitem").filter(has=page.locator(f"a[href='{small}']"))
    card.get_by_text("Copy, take along, put away").tap()
    card.get_by_role("button", name="Put away").tap()
    page.get_by_text("Delete for good").tap()
    page.get_by_role("button", name="Delete village hall for good").tap()
    expect(page.get_by_role("heading", name="Put away")).to_be_hidden()
    assert names(app) == ["village hall (copy)"]
    assert len(app.store.cards()) == 1
