"""A phone on the home network: let in once it brings the word, and of use without a certificate."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from at_desk import keep_small_job
from browser.doing import counted, tally_board
from browser.opening import FAR, PHONE
from browser.running_app import OpenApp, opened, real_desk
from browser.watching import LOST, Watch


@pytest.fixture
def far_app(tmp_path: Path) -> Iterator[OpenApp]:
    """Have the app open as a phone on the home network finds it."""
    with opened(real_desk(tmp_path), far=FAR) as app:
        yield app


@pytest.fixture
def far_page(browser: Browser, far_app: OpenApp) -> Iterator[Page]:
    """Open a page on such a phone."""
    context = browser.new_context(base_url=far_app.url, **PHONE)
    watch = Watch(far_app.url)
    watch.expect("status of 403", LOST)
    watch.over(context)
    yield context.new_page()
    context.close()
    assert watch.amiss == []


def test_a_phone_joins_by_the_word_and_works(far_page: Page, far_app: OpenApp, tmp_path: Path) -> None:
    """Without it nothing is shown; with it boards are tallied, and wait while the connection is lost."""
    job = keep_small_job(far_app.store, tmp_path / "village")
    far_page.goto("/")
    expect(far_page.get_by_text("not known here yet")).to_be_visible()
    expect(far_page.get_by_text("village hall")).to_be_hidden()

    far_page.goto(f"/join/{far_app.desk.door.word}")
    expect(far_page.get_by_role("link", name="village hall")).to_be_visible()
    assert far_page.evaluate("isSecureContext") is False
    far_page.goto(f"/jobs/{job.id}/tally")
    far_page.context.set_offline(True)
    tally_board(far_page, "90", "5", "3/4")
    waiting = far_page.get_by_role("region", name="Waiting on this phone")
    expect(waiting).to_contain_text("1 board waits on this phone")
    far_page.context.set_offline(False)
    expect(waiting).to_be_hidden()
    counted(far_page, 4)

    far_page.goto(f"/jobs/{job.id}/cutting")
    expect(far_page.get_by_text("set it to stay on while you work")).to_be_visible()
