"""A search on a screen: begun, followed, stopped; and one that came to nothing or was cut off."""

import threading
from collections.abc import Iterator
from dataclasses import replace
from html import unescape
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from at_desk import Waiting, keep_small_job, make_desk, small_kept, waiting_search
from kept_jobs import work_after
from page_forms import forms_of
from plankwright.model import MarkKind
from plankwright.web.app import make_app
from plankwright.web.desk import Desk
from plankwright.web.screens import search as screen
from plankwright.workshop.jobs.kept import KeptJob, KeptSearch, Made, SearchState
from village import small_layout


@pytest.fixture
def waiting() -> Waiting:
    """Give a search that goes on until it is told to end."""
    return waiting_search()


@pytest.fixture
def slow_desk(tmp_path: Path, waiting: Waiting) -> Desk:
    """Give a desk whose searches go on until they are told to end."""
    return make_desk(tmp_path, begin=lambda _errand: waiting)


@pytest.fixture
def slow(slow_desk: Desk) -> Iterator[TestClient]:
    """Ask an app whose searches go on until they are told to end."""
    with TestClient(
        make_app(slow_desk),
        base_url="http://localhost",
        client=("127.0.0.1", 50_000),
        raise_server_exceptions=False,
    ) as asking:
        yield asking


@pytest.fixture
def bare(desk: Desk, tmp_path: Path) -> str:
    """Keep the small job without a layout; give its id."""
    return desk.store.add(small_kept(tmp_path / "bare")).id


def under_way(slow_desk: Desk, slow: TestClient, waiting: Waiting, folder: Path) -> str:
    """Begin a search that goes on, and wait until it was told how far it is."""
    job = slow_desk.store.add(small_kept(folder))
    assert slow.post(f"/jobs/{job.id}/search", data={"effort": "glance"}).status_code == 200
    assert waiting.told.wait(30)
    return job.id


def ended(desk: Desk, job_id: str, state: SearchState, **more: object) -> KeptSearch:
    """Keep a search that ended in some way."""
    begun = desk.store.begin_search(KeptSearch(job_id=job_id, made=Made.SEARCHED, effort="glance"))
    desk.store.note_search(begun.id, stage="laying", done=0.5, told="all covered", best=small_layout())
    desk.store.end_search(replace(begun, state=state, **more))  # type: ignore[arg-type]
    return begun


def test_a_search_leads_to_the_layout_that_it_found(desk: Desk, client: TestClient, bare: str) -> None:
    """By the page of the search, which goes on when it is over."""
    answer = client.post(f"/jobs/{bare}/search", data={"effort": "glance", "seed": "7"})
    assert answer.url.path == f"/jobs/{bare}/layout"
    assert "Enough" in answer.text
    search = desk.store.last_search(bare)
    assert search is not None
    assert (search.state, search.seed, search.effort) == (SearchState.DONE, 7, "glance")


@pytest.mark.parametrize(
    ("then", "path"),
    [("hanging", "hanging"), ("cutting", "cutting"), ("//elsewhere", "layout"), ("", "layout")],
)
def test_one_goes_on_where_one_came_from(client: TestClient, small: str, then: str, path: str) -> None:
    """On a screen of ours, whatever is asked for."""
    answer = client.get(f"/jobs/{small}/search", params={"then": then}, follow_redirects=False)
    assert answer.headers["location"] == f"/jobs/{small}/{path}"


@pytest.mark.parametrize(
    ("fields", "sentence"),
    [
        ({"effort": "for ever"}, "“for ever” is no effort"),
        ({"effort": "glance", "seed": "seven"}, "“seven” is no seed"),
        ({"effort": "glance", "seed": "-1"}, "“-1” is no seed"),
        ({"effort": "glance", "seed": "9" * 400}, "is no seed"),
        ({"effort": "glance", "made": "swapped"}, "Choose what is to be laid out"),
        ({"effort": "glance", "made": "again"}, "no layout to go on from"),
    ],
)
def test_a_form_that_will_not_do_is_shown_again(
    desk: Desk, client: TestClient, bare: str, fields: dict[str, str], sentence: str
) -> None:
    """With why, and with what was filled in; nothing is begun."""
    answer = client.post(f"/jobs/{bare}/search", data=fields)
    assert answer.status_code == 422
    assert sentence in unescape(answer.text)
    assert f'value="{fields.get("seed", "")}"' in answer.text
    assert desk.store.last_search(bare) is None


def test_a_job_that_is_none_yet_is_not_searched(desk: Desk, client: TestClient, bare: str) -> None:
    """It says what is missing."""
    desk.store.change(bare, "all boards taken out", lambda kept: replace(kept, boards=()))
    answer = client.post(f"/jobs/{bare}/search", data={"effort": "glance"})
    assert answer.status_code == 422
    assert "o board is measured yet" in answer.text


def test_once_work_has_begun_nothing_is_laid_out_from_scratch(
    desk: Desk, client: TestClient, small: str
) -> None:
    """What is left is, and the piece that hangs stays."""
    work = work_after((MarkKind.HUNG, "1a"))
    desk.store.change(small, "1a hung", lambda kept: replace(kept, work=work))
    refused = client.post(f"/jobs/{small}/search", data={"effort": "glance", "made": "searched"})
    assert refused.status_code == 422
    assert "have what is left laid out anew instead" in refused.text
    assert client.post(f"/jobs/{small}/search", data={"effort": "glance"}).status_code == 200
    kept = desk.store.job(small)
    assert kept.layout_id is not None
    assert desk.store.layout(small, kept.layout_id).made is Made.AGAIN


def test_surfaces_that_were_added_are_laid_out_from_scratch(
    desk: Desk, client: TestClient, small: str
) -> None:
    """As little change as can be is nothing that could be found for them."""

    def another(kept: KeptJob) -> KeptJob:
        (surface,) = kept.definition["surface"]
        return replace(
            kept, definition={**kept.definition, "surface": [surface, {**surface, "id": "second"}]}
        )

    desk.store.change(small, "a surface added", another)
    answer = client.post(f"/jobs/{small}/search", data={"effort": "glance", "made": "again"})
    assert answer.status_code == 422
    assert "other surfaces than the layout" in answer.text


def test_a_page_shows_how_far_a_search_is(
    slow_desk: Desk, slow: TestClient, waiting: Waiting, tmp_path: Path
) -> None:
    """In words, with the best so far drawn; without script it loads itself again."""
    job_id = under_way(slow_desk, slow, waiting, tmp_path / "village")
    page = slow.get(f"/jobs/{job_id}/search").text
    assert "Laying courses" in page
    assert "All is covered." in page
    assert 'value="50"' in page
    assert '<noscript><meta http-equiv="refresh" content="2"></noscript>' in page
    picture = page.split('<img src="')[1].split('"')[0]
    assert slow.get(picture).text.startswith("<svg")
    assert slow.get(picture.replace("/0.svg", "/1.svg")).status_code == 404


def test_the_app_answers_while_it_searches(
    slow_desk: Desk, slow: TestClient, waiting: Waiting, tmp_path: Path
) -> None:
    """And the layout says that a search is under way."""
    job_id = under_way(slow_desk, slow, waiting, tmp_path / "village")
    assert f'href="/jobs/{job_id}/search"' in slow.get(f"/jobs/{job_id}/layout").text


def test_a_search_that_is_stopped_keeps_the_best_so_far(
    slow_desk: Desk, slow: TestClient, waiting: Waiting, tmp_path: Path
) -> None:
    """The page that follows it is told that it is over."""
    job_id = under_way(slow_desk, slow, waiting, tmp_path / "village")
    slow.post(f"/jobs/{job_id}/search/stop", data={"then": "cutting"}, follow_redirects=False)
    events = slow.get(f"/jobs/{job_id}/search/events").text
    assert "event: over\n" in events
    assert slow_desk.store.job(job_id).layout_id is not None
    answer = slow.get(f"/jobs/{job_id}/search?then=cutting", follow_redirects=False)
    assert answer.headers["location"] == f"/jobs/{job_id}/cutting"


def test_a_page_is_told_of_every_step(
    slow_desk: Desk, slow: TestClient, waiting: Waiting, tmp_path: Path
) -> None:
    """Each part of it by an event of its own, until the search is over."""
    job_id = under_way(slow_desk, slow, waiting, tmp_path / "village")
    timer = threading.Timer(0.3, slow_desk.searches.stop, [job_id])
    timer.start()
    answer = slow.get(f"/jobs/{job_id}/search/events")
    timer.join()
    assert answer.headers["content-type"].startswith("text/event-stream")
    names = [line.removeprefix("event: ") for line in answer.text.splitlines() if line.startswith("event: ")]
    assert {"progress", "told", "best"} <= set(names)
    assert names[-1] == "over"
    assert names.count("told") == 1


def test_nobody_is_told_for_ever(
    slow_desk: Desk,
    slow: TestClient,
    waiting: Waiting,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """After a while a page has to ask again; the search goes on."""
    monkeypatch.setattr(screen, "_LONGEST_S", 0.0)
    job_id = under_way(slow_desk, slow, waiting, tmp_path / "village")
    assert "over" not in slow.get(f"/jobs/{job_id}/search/events").text
    search = slow_desk.store.last_search(job_id)
    assert search is not None
    assert search.state is SearchState.RUNNING


def test_of_no_search_nothing_is_told(client: TestClient, bare: str) -> None:
    """A page that asks all the same goes on at once; a job that is not there is none."""
    assert "event: over\n" in client.get(f"/jobs/{bare}/search/events").text
    assert client.get("/jobs/nothing/search/events").status_code == 404


def test_a_search_that_failed_says_why_and_what_to_do(desk: Desk, client: TestClient, bare: str) -> None:
    """It can be begun again as it was."""
    ended(desk, bare, SearchState.FAILED, trouble="There was too little memory.")
    page = client.get(f"/jobs/{bare}/search")
    assert "There was too little memory." in page.text
    (form,) = [one for one in forms_of(page.text, str(page.url)) if one.action.endswith("/search")]
    assert ("effort", "glance") in form.fields
    assert client.post(form.action, data=form.data()).url.path == f"/jobs/{bare}/layout"
    assert "came to nothing" not in client.get(f"/jobs/{bare}/layout").text


def test_what_a_search_had_found_when_it_was_cut_off_can_be_used(
    desk: Desk, client: TestClient, bare: str
) -> None:
    """It passes the checker again first, and its answer says that it was stopped."""
    ended(desk, bare, SearchState.CUT_OFF)
    assert "cut off" in client.get(f"/jobs/{bare}/layout").text
    page = client.get(f"/jobs/{bare}/search?then=cutting")
    (form,) = [one for one in forms_of(page.text, str(page.url)) if one.action.endswith("/use")]
    assert client.post(form.action, data=form.data()).url.path == f"/jobs/{bare}/cutting"
    kept = desk.store.job(bare)
    assert kept.layout_id is not None
    laid = desk.store.layout(bare, kept.layout_id)
    assert laid.layout.pieces == small_layout().pieces
    assert laid.answer is not None
    assert laid.answer.stopped
    desk.store.undo(bare)
    assert "cut off" not in client.get(f"/jobs/{bare}/layout").text


def test_what_does_not_fit_any_more_is_not_used(desk: Desk, client: TestClient, bare: str) -> None:
    """The boards were changed since; it is not offered, and refused if somebody asks all the same."""
    search = ended(desk, bare, SearchState.CUT_OFF)
    desk.store.change(bare, "board A taken out", lambda kept: replace(kept, boards=kept.boards[1:]))
    assert "/search/use" not in client.get(f"/jobs/{bare}/search").text
    answer = client.post(f"/jobs/{bare}/search/use", data={"search": str(search.id)})
    assert answer.status_code == 422
    assert "search again" in answer.text
    assert desk.store.job(bare).layout_id is None


@pytest.mark.parametrize("number", ["", "x", "98765", "9" * 40])
def test_a_search_that_is_not_there_is_a_clear_sentence(client: TestClient, bare: str, number: str) -> None:
    """Also one of another job would be."""
    answer = client.post(f"/jobs/{bare}/search/use", data={"search": number})
    assert answer.status_code == 404
    assert 'role="alert"' in answer.text


def test_the_search_of_another_job_is_not_used(desk: Desk, client: TestClient, bare: str, small: str) -> None:
    """Numbers of searches count for all jobs."""
    search = ended(desk, small, SearchState.CUT_OFF)
    assert client.post(f"/jobs/{bare}/search/use", data={"search": str(search.id)}).status_code == 404


def test_a_search_that_is_given_up_is_kept_as_cut_off(
    slow_desk: Desk, slow: TestClient, waiting: Waiting, tmp_path: Path
) -> None:
    """As when the app is closed in the middle of it: the best so far is there after."""
    job_id = under_way(slow_desk, slow, waiting, tmp_path / "village")
    slow_desk.searches.give_up_all()
    search = slow_desk.store.last_search(job_id)
    assert search is not None
    assert (search.state, search.best) == (SearchState.CUT_OFF, small_layout())
    assert "The search was cut off" in slow.get(f"/jobs/{job_id}/search").text


def test_the_small_job_keeps_its_layout_when_a_search_is_cut_off(
    slow_desk: Desk, slow: TestClient, waiting: Waiting, tmp_path: Path
) -> None:
    """Nothing is taken that nobody asked for."""
    job = keep_small_job(slow_desk.store, tmp_path / "village")
    slow.post(f"/jobs/{job.id}/search", data={"effort": "glance"})
    assert waiting.told.wait(30)
    slow_desk.searches.give_up(job.id)
    assert slow_desk.store.job(job.id).layout_id == job.layout_id
