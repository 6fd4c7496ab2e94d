"""Fixtures for using the app as people do: a browser, the app open on a store of its own, and pages of it."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect, sync_playwright

from at_desk import keep_small_job
from browser.entry_wall import laid_out
from browser.opening import DESKTOP, FAR, PHONE, OpenPage
from browser.running_app import OpenApp, opened, real_desk
from browser.watching import Watch
from tools.find_browser import ARGUMENTS, find_browser, needed

# A busy machine takes its time; nothing that is right waits so long.
expect.set_options(timeout=20_000)


# Not for the whole session: Playwright keeps an event loop running in this thread until it is closed, beside
# which tests elsewhere could not run one of their own.
@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    """Launch a browser, once for all tests of a module."""
    program = find_browser()
    if program is None:
        without = "no browser was found: run python tools/find_browser.py"
        if needed():
            pytest.fail(without)
        pytest.skip(without)
    with sync_playwright() as playwright:
        arguments = [*ARGUMENTS, f"--host-resolver-rules=MAP {FAR} 127.0.0.1"]
        launched = playwright.chromium.launch(executable_path=program, args=arguments)
        yield launched
        launched.close()


@pytest.fixture
def app(tmp_path: Path) -> Iterator[OpenApp]:
    """Have the app open on a store of its own; searches are real."""
    with opened(real_desk(tmp_path)) as app:
        yield app


@pytest.fixture
def app_url(app: OpenApp) -> str:
    """Give where the app is asked."""
    return app.url


@pytest.fixture
def watch(app_url: str) -> Watch:
    """Watch what pages do besides what one sees."""
    return Watch(app_url)


@pytest.fixture
def open_page(browser: Browser, app_url: str, watch: Watch) -> Iterator[OpenPage]:
    """Open pages; each is closed in the end, and nothing may have been amiss on any."""
    contexts = []

    def open_one(**options: Any) -> Page:  # noqa: ANN401 - as Playwright takes them
        context = browser.new_context(base_url=app_url, **options)
        contexts.append(context)
        watch.over(context)
        return context.new_page()

    yield open_one
    for context in contexts:
        context.close()
    assert watch.amiss == []


@pytest.fixture
def page(open_page: OpenPage) -> Page:
    """Open a page on a phone."""
    return open_page(**PHONE)


@pytest.fixture
def desktop_page(open_page: OpenPage) -> Page:
    """Open a page on a laptop."""
    return open_page(**DESKTOP)


@pytest.fixture
def plain_page(open_page: OpenPage) -> Page:
    """Open a page on a phone whose browser runs no scripts."""
    return open_page(**PHONE, java_script_enabled=False)


@pytest.fixture
def small(app: OpenApp, tmp_path: Path) -> str:
    """Keep the small job with its layout, and work by that; give its path."""
    return f"/jobs/{keep_small_job(app.store, tmp_path / 'village').id}"


@pytest.fixture
def worked_on(app: OpenApp) -> str:
    """Keep the entry wall, laid out and partly hung, and another job that is put away; give its path."""
    job_id = laid_out().keep_begun(app.store)
    away = app.store.add(laid_out().job)
    app.store.put_away(away.id)
    return f"/jobs/{job_id}"
