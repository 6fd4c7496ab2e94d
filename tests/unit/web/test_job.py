"""The front page of a job: how far it has come, and the next thing to do."""

import re
from dataclasses import replace

from starlette.testclient import TestClient

from kept_jobs import bare_job, work_after
from page_forms import forms_of
from plankwright.model import MarkKind
from plankwright.web.desk import Desk
from plankwright.workshop.jobs.kept import KeptSearch, Made


def primary(page: str) -> list[tuple[str, str]]:
    """Give the buttons that most would press: where they lead, and what they say."""
    return re.findall(r'class="button primary" href="[^"]*/([\w#]*)">([^<]+)<', page)


def test_a_job_from_nothing_begins_with_measuring(client: TestClient, desk: Desk) -> None:
    """One thing to do, in words."""
    page = client.get(f"/jobs/{desk.store.add(bare_job()).id}")
    assert page.status_code == 200
    assert "Nothing is measured yet." in page.text
    assert primary(page.text) == [("tally", "Tally the boards")]


def test_the_example_can_be_laid_out(client: TestClient, example: str) -> None:
    """All of it is measured."""
    page = client.get(f"/jobs/{example}").text
    assert "71 boards are tallied and one surface is measured." in page
    assert primary(page) == [("layout", "Lay it out")]


def test_what_is_laid_out_is_cut_next(client: TestClient, small: str) -> None:
    """And nothing has to be mended."""
    page = client.get(f"/jobs/{small}").text
    assert primary(page) == [("cutting", "Cut the first boards")]
    assert "needs mending" not in page


def test_work_goes_on_where_it_was_left(client: TestClient, desk: Desk, small: str) -> None:
    """What hangs is counted."""
    work = work_after((MarkKind.HUNG, "1"), (MarkKind.CUT, "2a"))
    desk.store.change(small, "course 1 hung", lambda job: replace(job, work=work))
    page = client.get(f"/jobs/{small}").text
    assert primary(page) == [("hanging", "Go on hanging")]
    assert "One of two pieces hangs; one more is cut." in page


def test_a_layout_that_fits_no_longer_is_owned_up_to(client: TestClient, desk: Desk, small: str) -> None:
    """With what is wrong, each thing a link to where it is mended."""
    desk.store.change(small, "board A taken out", lambda job: replace(job, boards=job.boards[1:]))
    page = client.get(f"/jobs/{small}").text
    assert "fits no longer" in page
    assert re.search(rf'<li><a href="/jobs/{small}/layout">[^<]*board A', page)
    assert primary(page) == [("layout#anew", "Lay it out anew")]


def test_what_is_left_is_laid_out_anew_from_here(client: TestClient, desk: Desk, small: str) -> None:
    """With one tap, once work has begun."""
    desk.store.change(small, "1a hung", lambda job: replace(job, work=work_after((MarkKind.HUNG, "1a"))))
    desk.store.change(small, "board B taken out", lambda job: replace(job, boards=job.boards[:1]))
    page = client.get(f"/jobs/{small}")
    (form,) = [one for one in forms_of(page.text, str(page.url)) if one.action.endswith("/search")]
    assert dict(form.fields)["made"] == "again"
    client.post(form.action, data=form.data())
    search = desk.store.last_search(small)
    assert search is not None
    assert search.made is Made.AGAIN


def test_a_search_under_way_is_shown(client: TestClient, desk: Desk, example: str) -> None:
    """With a link to it."""
    search = desk.store.begin_search(KeptSearch(job_id=example, made=Made.SEARCHED, effort="steady"))
    desk.store.note_search(search.id, stage="laying courses", done=0.4, told="all is covered", best=None)
    page = client.get(f"/jobs/{example}").text
    assert "A layout is being searched for" in page
    assert 'value="0.4"' in page
    assert "all is covered" in page
    assert primary(page) == [("search", "See how far the search is")]


def test_the_road_and_the_ways_lead_to_every_screen(client: TestClient, small: str) -> None:
    """None of the links is dead."""
    page = client.get(f"/jobs/{small}").text
    screens = set(re.findall(rf'href="/jobs/{small}/(\w+)"', page))
    assert {"tally", "surfaces", "layout", "cutting", "hanging", "paper"} <= screens
    assert {"rules", "trade", "hazards", "left", "steps"} <= screens
    for screen in screens:
        assert client.get(f"/jobs/{small}/{screen}").status_code == 200, screen


def test_a_job_that_is_none_is_not_there(client: TestClient) -> None:
    """In a sentence."""
    assert client.get("/jobs/none").status_code == 404
