"""Two people at one job: neither overwrites the other unseen, and what was done can be taken back."""

import re

from playwright.sync_api import expect

from browser.doing import counted, field
from browser.opening import PHONE, OpenPage
from browser.running_app import OpenApp
from browser.watching import Watch


def test_a_board_changed_on_two_phones(open_page: OpenPage, app: OpenApp, small: str, watch: Watch) -> None:
    """The second is told, with the board as it is now and what was filled in; nothing is lost."""
    watch.expect(r"status of 409")
    one, other = open_page(**PHONE), open_page(**PHONE)
    for phone in (one, other):
        phone.goto(f"{small}/tally/board?id=A")
    field(one, "Length").fill("80")
    one.get_by_role("button", name="Save", exact=True).first.tap()
    counted(one, 3)
    field(other, "Note").fill("nail holes")
    other.get_by_role("button", name="Save", exact=True).first.tap()

    expect(other.get_by_role("alert")).to_contain_text("changed")
    expect(other.get_by_role("region", name="As it is now")).to_contain_text("6' 8\"")
    expect(field(other, "Note")).to_have_value("nail holes")
    board = app.store.job(small.removeprefix("/jobs/")).boards[0]
    assert (board.length_nm, board.note) == (80 * 25_400_000, "")


def test_what_was_taken_out_comes_back(open_page: OpenPage, app: OpenApp, small: str) -> None:
    """A board by Undo; a job by bringing it back."""
    phone = open_page(**PHONE)
    phone.goto(f"{small}/tally/board?id=C")
    phone.get_by_text("Take it out of the tally").tap()
    phone.get_by_role("button", name="Take out C").tap()
    counted(phone, 2)
    phone.get_by_role("banner").get_by_role("button", name=re.compile("^Undo")).tap()
    counted(phone, 3)

    phone.goto("/")
    phone.get_by_text("Copy, take along, put away").tap()
    phone.get_by_role("button", name="Put away").tap()
    expect(phone.get_by_role("heading", name="Put away")).to_be_visible()
    assert [card.removed_at is None for card in app.store.cards()] == [False]
    phone.get_by_role("button", name="Bring back", exact=True).tap()
    expect(phone.get_by_role("link", name="village hall")).to_be_visible()
    assert len(app.store.job(small.removeprefix("/jobs/")).boards) == 3
