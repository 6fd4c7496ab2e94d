"""Moments that no link leads to: nothing there yet, something refused, a search, a board that broke.

Each is a function that brings a page there.
"""

import re
from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import TypeAlias

from playwright.sync_api import Page, expect

from browser.doing import SEARCH_MS, field, settled
from browser.entry_wall import laid_out
from browser.running_app import OpenApp
from kept_jobs import bare_job
from plankwright.workshop.jobs.kept import KeptSearch, Made, SearchState

Moment: TypeAlias = Callable[[Page, OpenApp], None]
"""Brings a page there, on a phone."""

SCREENS = ("", "tally", "surfaces", "layout", "cutting", "hanging", "paper", "left", "hazards", "steps")


def no_jobs(page: Page, _app: OpenApp) -> None:
    """Nothing was begun yet."""
    page.goto("/")


def no_such_job(page: Page, _app: OpenApp) -> None:
    """An address that leads nowhere."""
    page.goto("/jobs/nowhere")


def refused_job(page: Page, _app: OpenApp) -> None:
    """A job without a name, sent past the browser's own check."""
    page.goto("/")
    page.locator("[required]").evaluate_all("fields => fields.forEach(one => { one.required = false; })")
    page.get_by_role("button", name="Begin", exact=True).tap()
    expect(page.get_by_role("alert")).to_be_visible()


def bare(screen: str) -> Moment:
    """Give a screen of a job of which nothing was measured yet."""

    def go(page: Page, app: OpenApp) -> None:
        page.goto(f"/jobs/{app.store.add(bare_job()).id}/{screen}")

    return go


def refused_board(page: Page, app: OpenApp) -> None:
    """A board that cannot be, with all of the form open and the keys for measuring."""
    page.goto(f"/jobs/{app.store.add(laid_out().job).id}/tally")
    field(page, "Length").fill("no length")
    page.locator("#entry").get_by_role("button", name="Add board").tap()
    expect(page.get_by_role("alert")).to_be_visible()
    page.locator("#entry details").evaluate_all("all => all.forEach(one => { one.open = true; })")
    settled(page)
    field(page, "Width").tap()
    expect(page.get_by_role("group", name="Keys for measuring")).to_be_visible()


def waiting_board(page: Page, app: OpenApp) -> None:
    """Boards that wait on the phone, one of them refused."""
    page.goto(f"/jobs/{app.store.add(laid_out().job).id}/tally")
    page.context.set_offline(True)
    for length in ("no length", "96"):
        field(page, "Length").fill(length)
        page.locator("#entry").get_by_role("button", name="Add board").tap()
        expect(field(page, "Length")).to_have_value("")
    page.context.set_offline(False)
    expect(page.get_by_role("region", name="Waiting on this phone")).to_contain_text("not added")


def refused_surface(page: Page, app: OpenApp) -> None:
    """A surface that cannot be, with a row of everything."""
    page.goto(f"/jobs/{app.store.add(bare_job()).id}/surfaces/new")
    for words in ("Add a door or window", "Add one by its centre", "Add a strip going up"):
        page.get_by_role("button", name=words).tap()
        settled(page)
    page.get_by_role("button", name="Save", exact=True).tap()
    expect(page.get_by_role("alert")).to_be_visible()


def cut_off_search(page: Page, app: OpenApp) -> None:
    """A search that was cut off, and had found something."""
    _ended_search(page, app, SearchState.CUT_OFF)


def failed_search(page: Page, app: OpenApp) -> None:
    """A search that came to nothing."""
    _ended_search(page, app, SearchState.FAILED)


def running_search(page: Page, app: OpenApp) -> None:
    """A search under way."""
    _ended_search(page, app, SearchState.RUNNING)


def _ended_search(page: Page, app: OpenApp, state: SearchState) -> None:
    job = app.store.add(laid_out().job)
    search = app.store.begin_search(KeptSearch(job_id=job.id, made=Made.SEARCHED, effort="steady"))
    best = laid_out().layout.layout
    app.store.note_search(search.id, stage="laying courses", done=0.4, told="all is covered", best=best)
    if state is not SearchState.RUNNING:
        trouble = "There was too little memory." if state is SearchState.FAILED else ""
        kept = app.store.search(search.id)
        app.store.end_search(replace(kept, state=state, trouble=trouble))
    page.goto(f"/jobs/{job.id}/search")


def broken_piece(page: Page, app: OpenApp) -> None:
    """What changed after a piece broke."""
    page.goto(f"/jobs/{laid_out().keep_begun(app.store)}/hanging")
    page.get_by_role("group", name="Course 3").get_by_role("link", name="It broke").tap()
    page.get_by_role("checkbox").first.check()
    page.get_by_role("radio", name="Yes, it was sawn").check()
    page.get_by_role("button", name="It broke: lay out the rest anew").tap()
    expect(page.get_by_role("heading", name="What changed")).to_be_visible(timeout=SEARCH_MS)


def other_boards(page: Page, app: OpenApp) -> None:
    """Another board for a piece, with something else asked for already."""
    ask_otherwise(page, app)
    page.get_by_role("link", name=re.compile("^5a board")).tap()
    page.get_by_role("link", name="Put another board here").tap()
    expect(page.get_by_role("heading", level=1, name="Another board for piece 5a")).to_be_visible()


def ask_otherwise(page: Page, app: OpenApp) -> None:
    """Something is asked for that the layout has otherwise."""
    page.goto(f"/jobs/{laid_out().keep(app.store)}/layout/pieces/0/4a")
    page.get_by_role("button", name=re.compile("^Do not use board")).tap()
    expect(page.get_by_role("region", name="Asked for")).to_be_visible()
    page.get_by_text("Courses and pieces in words").tap()


def outdated(screen: str) -> Moment:
    """Give a screen of a job whose layout asks for a board that is there no longer."""

    def go(page: Page, app: OpenApp) -> None:
        job_id = laid_out().keep_begun(app.store)
        app.store.change(job_id, "boards lost", lambda job: replace(job, boards=job.boards[-8:]))
        page.goto(f"/jobs/{job_id}/{screen}")

    return go


MOMENTS: Mapping[str, Moment] = {
    "no jobs": no_jobs,
    "no such job": no_such_job,
    "refused job": refused_job,
    **{f"bare {screen or 'job'}": bare(screen) for screen in SCREENS},
    "refused board": refused_board,
    "waiting board": waiting_board,
    "refused surface": refused_surface,
    "running search": running_search,
    "cut off search": cut_off_search,
    "failed search": failed_search,
    "broken piece": broken_piece,
    "something asked for": ask_otherwise,
    "other boards": other_boards,
    **{f"outdated {screen}": outdated(screen) for screen in ("layout", "hanging", "paper")},
}
"""All of them, by name."""
