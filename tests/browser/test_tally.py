"""The tally with thumbs: keys for measuring, taps on the board, and entries that wait for a connection."""

import re
from collections.abc import Callable

import pytest
from playwright.sync_api import Locator, Page, expect

from browser.doing import field, keys, press, tap_at
from browser.opening import PHONE, OpenPage
from browser.running_app import OpenApp
from browser.watching import Watch
from builders import nm
from kept_jobs import bare_job, plain

LOST = (r"htmx:(sendError|afterRequest|timeout)", r"ERR_INTERNET_DISCONNECTED", r"status of 4(09|22)")
"""What a browser says of a lost connection, and of entries that are refused."""


@pytest.fixture
def job(app: OpenApp) -> str:
    """Keep a job of one board; give its id."""
    return app.store.add(bare_job("hall", plain("F1"))).id


@pytest.fixture
def tally(page: Page, job: str) -> Page:
    """Open its tally on a phone."""
    page.goto(f"/jobs/{job}/tally")
    return page


def _ids(app: OpenApp, job: str) -> list[str]:
    return [board.id for board in app.store.job(job).boards]


def _waiting(page: Page) -> Locator:
    return page.get_by_role("region", name="Waiting on this phone")


def _add(page: Page, length: str) -> None:
    field(page, "Length").fill(length)
    page.locator("#entry").get_by_role("button", name="Add board", exact=True).first.tap()


def _inches(text: str) -> float:
    whole, _, half = text.removesuffix('"').partition("-")
    return int(whole) + (0.5 if half else 0)


def _until(done: Callable[[], bool], page: Page) -> None:
    for _ in range(100):
        if done():
            return
        page.wait_for_timeout(100)
    pytest.fail("it has not come about")


def test_a_board_is_measured_with_thumbs_alone(tally: Page, app: OpenApp, job: str) -> None:
    """Feet, inches and fractions; the keyboard of the phone stays away."""
    field(tally, "Length").tap()
    expect(field(tally, "Length")).to_have_attribute("inputmode", "none")
    press(tally, "7", "feet", "3", "5/8 inch", "1/16 inch more")
    expect(field(tally, "Length")).to_have_value("7' 3-11/16\"")
    expect(tally.locator("#echo")).to_contain_text("Read as 7' 3\u201111/16\" long")
    press(tally, "Add board")
    expect(tally.locator("#entry").get_by_role("status").first).to_contain_text("Board F2 added")
    expect(field(tally, "Length")).to_be_focused()
    assert app.store.job(job).boards[-1].length_nm == nm(87.6875)


def test_what_is_typed_first_stands_in_place_of_what_was_kept(tally: Page) -> None:
    """The width of the board before; what is taken back is taken back mark by mark."""
    field(tally, "Width").tap()
    press(tally, "6")
    expect(field(tally, "Width")).to_have_value("6")
    press(tally, "1/2 inch", "take back", "4", "inches")
    expect(field(tally, "Width")).to_have_value('64"')
    press(tally, "next field")
    expect(field(tally, "Thickness")).to_be_focused()


def test_who_wants_the_keys_of_the_phone_has_them(tally: Page) -> None:
    """And may change back."""
    field(tally, "Length").tap()
    press(tally, "use the phone's own keys")
    expect(field(tally, "Length")).to_have_attribute("inputmode", "text")
    expect(tally.locator(".keys")).to_have_count(0)
    tally.get_by_role("button", name="Big keys").tap()
    expect(field(tally, "Length")).to_have_attribute("inputmode", "none")


def test_a_flaw_is_tapped_on_the_board(tally: Page, app: OpenApp, job: str) -> None:
    """Where it begins, then where it ends."""
    field(tally, "Length").fill("100")
    tally.get_by_text("Flaws", exact=True).tap()
    drawn, told = tally.locator("[data-tap] .pw-board"), tally.locator("[data-tap-told]")
    for share in (0.25, 0.5):
        expect(drawn).to_be_visible()
        tap_at(drawn, across=share, down=0.5)
        expect(told).to_have_text(re.compile(r'^(From|To) \d+(-1/2)?"\.$'))
    flaw = tally.get_by_role("group", name="Flaw 1")
    start, end = (_inches(field(flaw, name).input_value()) for name in ("From", "To"))
    assert start == pytest.approx(25, abs=1)
    assert end == pytest.approx(50, abs=1)
    expect(tally.get_by_role("group", name="Flaw 2")).to_be_visible()
    flaw.get_by_label("What it is").select_option("rot lost")
    tally.locator("#entry").get_by_role("button", name="Add board", exact=True).first.tap()
    _until(lambda: len(_ids(app, job)) == 2, tally)
    (kept,) = app.store.job(job).boards[-1].flaws
    assert (kept.what, kept.start_nm, kept.end_nm) == ("rot", nm(start), nm(end))


def test_without_a_connection_entries_wait_and_are_sent_in_order(
    tally: Page, app: OpenApp, job: str, watch: Watch
) -> None:
    """The page says which; the form goes on to the next board."""
    watch.expect(*LOST)
    tally.context.set_offline(True)
    _add(tally, "50")
    expect(_waiting(tally)).to_contain_text("1 board waits on this phone until it is connected again: F2.")
    expect(field(tally, "Mark")).to_have_value("F3")
    expect(field(tally, "Length")).to_have_value("")
    expect(field(tally, "Width")).to_have_value('5-1/4"')
    _add(tally, "51")
    tally.locator("#same-again").tap()
    expect(_waiting(tally)).to_contain_text(
        "3 boards wait on this phone until it is connected again: F2, F3, F4."
    )
    assert _ids(app, job) == ["F1"]
    expect(tally.locator("#totals")).to_contain_text("1 board, ")
    tally.context.set_offline(False)
    expect(_waiting(tally)).to_have_count(0)
    expect(tally.locator("#totals")).to_contain_text("4 boards, ")
    expect(tally.locator("#found").get_by_role("status")).to_have_text("4 boards, the newest first.")
    assert [(one.id, one.length_nm) for one in app.store.job(job).boards[1:]] == [
        ("F2", nm(50)),
        ("F3", nm(51)),
        ("F4", nm(51)),
    ]


def test_what_waits_survives_that_the_page_is_loaded_anew(
    tally: Page, app: OpenApp, job: str, watch: Watch
) -> None:
    """It is sent from any page of the app."""
    watch.expect(*LOST)
    tally.context.set_offline(True)
    _add(tally, "50")
    expect(_waiting(tally)).to_be_visible()
    tally.goto("about:blank")
    tally.context.set_offline(False)
    tally.goto("/")
    _until(lambda: _ids(app, job) == ["F1", "F2"], tally)


def test_an_entry_whose_answer_was_lost_is_added_once(
    tally: Page, app: OpenApp, job: str, watch: Watch
) -> None:
    """The computer had taken it; the phone could not know."""
    watch.expect(*LOST, "ERR_FAILED")

    def swallow(route: object) -> None:
        route.fetch(max_redirects=0)  # type: ignore[attr-defined]
        route.abort()  # type: ignore[attr-defined]

    tally.route(f"**/jobs/{job}/tally", swallow, times=1)
    _add(tally, "50")
    expect(_waiting(tally)).to_be_visible()
    assert _ids(app, job) == ["F1", "F2"]
    expect(_waiting(tally)).to_have_count(0, timeout=20_000)
    assert _ids(app, job) == ["F1", "F2"]


def test_an_entry_that_is_refused_later_is_kept_to_be_mended(
    tally: Page, app: OpenApp, job: str, watch: Watch
) -> None:
    """With the reason; nothing of it is lost."""
    watch.expect(*LOST)
    tally.context.set_offline(True)
    field(tally, "Mark").fill("F1")
    _add(tally, "50")
    tally.context.set_offline(False)
    expect(_waiting(tally)).to_contain_text("1 board was not added: F1.")
    expect(_waiting(tally)).to_contain_text("There is a board F1 already")
    _waiting(tally).get_by_role("button", name="Mend").tap()
    expect(field(tally, "Length")).to_have_value("50")
    field(tally, "Mark").fill("G1")
    tally.locator("#entry").get_by_role("button", name="Add board", exact=True).first.tap()
    expect(_waiting(tally)).to_have_count(0)
    assert _ids(app, job) == ["F1", "G1"]


def test_an_entry_that_is_refused_can_be_dropped(tally: Page, app: OpenApp, job: str, watch: Watch) -> None:
    """On purpose, and for good."""
    watch.expect(*LOST)
    tally.context.set_offline(True)
    _add(tally, "8x")
    tally.context.set_offline(False)
    expect(_waiting(tally)).to_contain_text("1 board was not added")
    _waiting(tally).get_by_text("Drop", exact=True).tap()
    _waiting(tally).get_by_role("button", name="Drop F2 for good").tap()
    expect(_waiting(tally)).to_have_count(0)
    assert _ids(app, job) == ["F1"]


def test_other_forms_say_that_they_were_not_sent(tally: Page, watch: Watch) -> None:
    """What was filled in still stands there."""
    watch.expect(*LOST)
    tally.get_by_role("link", name="F1").first.tap()
    expect(tally.get_by_role("heading", name="Board F1")).to_be_visible()
    field(tally, "Note").fill("cupped")
    tally.context.set_offline(True)
    tally.get_by_role("button", name="Save").tap()
    expect(tally.get_by_role("alert")).to_contain_text("There is no connection, so this was not sent.")
    expect(field(tally, "Note")).to_have_value("cupped")
    tally.context.set_offline(False)


def test_a_page_that_could_not_be_fetched_is_told_until_there_is_a_connection(
    tally: Page, watch: Watch
) -> None:
    """Then it can be asked for again."""
    watch.expect(*LOST)
    tally.context.set_offline(True)
    tally.get_by_role("link", name="Surfaces", exact=True).tap()
    expect(tally.get_by_role("alert")).to_contain_text("the page could not be fetched")
    tally.context.set_offline(False)
    expect(tally.get_by_role("alert")).to_have_count(0)


def test_same_again_keeps_what_is_typed(tally: Page, app: OpenApp, job: str) -> None:
    """It is below the form, and under the thumb in the keys."""
    field(tally, "Length").fill("50")
    tally.locator("#same-again").tap()
    expect(tally.get_by_role("alert")).to_have_text(
        "You have typed a board that is not added yet: add it first."
    )
    expect(field(tally, "Length")).to_have_value("50")
    assert _ids(app, job) == ["F1"]
    tally.get_by_text("More: lot, species").tap()
    tally.locator("#entry").get_by_role("button", name="Add board", exact=True).last.tap()
    expect(tally.locator("#found").get_by_role("status")).to_have_text("2 boards, the newest first.")


def test_the_keys_say_how_much_there_is_and_add_one_more_alike(tally: Page, app: OpenApp, job: str) -> None:
    """Both are behind them."""
    field(tally, "Length").tap()
    expect(keys(tally)).to_contain_text("1 board, 8' 1\" end to end.")
    press(tally, "Same again: F2")
    expect(tally.locator("#found").get_by_role("status")).to_have_text("2 boards, the newest first.")
    assert _ids(app, job) == ["F1", "F2"]


def test_next_behind_the_last_field_puts_the_keys_away(tally: Page) -> None:
    """Fields that are folded away do not count."""
    field(tally, "Thickness").tap()
    press(tally, "next field")
    expect(keys(tally)).to_have_count(0)


def test_a_phone_on_its_side_shows_what_is_typed_above_the_keys(open_page: OpenPage, job: str) -> None:
    """The keys are no higher than half of it."""
    page = open_page(**{**PHONE, "viewport": {"width": 844, "height": 390}})
    page.goto(f"/jobs/{job}/tally")
    for label in ("Length", "Thickness"):
        field(page, label).tap()
        pad, typed = keys(page).bounding_box(), field(page, label).bounding_box()
        assert pad is not None
        assert typed is not None
        assert pad["height"] <= 195
        assert typed["y"] + typed["height"] <= pad["y"]


def test_twice_as_large_letters_fit(tally: Page) -> None:
    """Nothing is wider than the page, and no key lies on another."""
    tally.evaluate("document.documentElement.style.fontSize = '32px'")
    field(tally, "Length").tap()
    faults = tally.evaluate(
        """() => {
          const wide = [...document.querySelectorAll("#entry .field, #entry label, .keys button")];
          return wide.filter((one) => one.checkVisibility() && one.scrollWidth > one.clientWidth + 1)
            .map((one) => one.textContent.trim());
        }"""
    )
    assert faults == []
    assert tally.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_the_keyboard_alone_will_do(desktop_page: Page, app: OpenApp, job: str) -> None:
    """Board after board, without a mouse."""
    desktop_page.goto(f"/jobs/{job}/tally")
    field(desktop_page, "Length").focus()
    for length, count in (("50", 2), ("51", 3)):
        desktop_page.keyboard.type(length)
        desktop_page.keyboard.press("Enter")
        expect(desktop_page.locator("#found").get_by_role("status")).to_have_text(
            f"{count} boards, the newest first."
        )
        expect(field(desktop_page, "Length")).to_be_focused()
    assert _ids(app, job) == ["F1", "F2", "F3"]
