"""What a page must not do is seen: an error, a request to elsewhere, a fault of the app."""

import pytest
from playwright.sync_api import Browser, Page

from browser.opening import FAR
from browser.running_app import OpenApp
from browser.watching import Watch


@pytest.mark.parametrize(
    ("done", "told"),
    [
        ("setTimeout(() => { throw new Error('broken'); })", "page: broken"),
        ("console.error('not well')", "console: not well"),
        (f"location = 'http://{FAR}:9/'", f"asked for http://{FAR}:9/"),
        (
            "document.body.append(Object.assign(document.createElement('script'), {text: '1'}))",
            "Content Security",
        ),
        ("fetch('/nowhere')", "status of 404"),
    ],
)
def test_what_is_amiss_is_seen(browser: Browser, app: OpenApp, done: str, told: str) -> None:
    """And not when it was expected."""
    context = browser.new_context(base_url=app.url)
    watch = Watch(app.url)
    watch.over(context)
    page = context.new_page()
    page.goto("/")
    assert watch.amiss == []
    page.evaluate(f"() => {{ {done} }}")
    _until_seen(page, watch)
    context.close()
    assert told in " ".join(watch.amiss)
    watch.expect(".")
    assert watch.amiss == []


def _until_seen(page: Page, watch: Watch) -> None:
    for _ in range(100):
        if watch.amiss:
            return
        page.wait_for_timeout(50)
