"""The list of jobs: begun, copied, put away and brought back, deleted for good."""

import re

from starlette.testclient import TestClient

from plankwright.web.desk import Desk
from plankwright.workshop.jobs.local_time import local_time


def names(desk: Desk, *, put_away: bool = False) -> list[str]:
    """Give what the jobs are called that are there, or that were put away."""
    return [card.name for card in desk.store.cards() if (card.removed_at is not None) == put_away]


def test_without_a_job_it_leads_to_the_example(client: TestClient, desk: Desk) -> None:
    """And a job begins with it."""
    page = client.get("/").text
    assert "No job is kept here yet" in page
    begun = client.post("/jobs/example")
    assert begun.status_code == 200
    assert names(desk) == ["Entry wall out of the village hall"]


def test_a_name_that_will_not_do_is_shown_again(client: TestClient, desk: Desk) -> None:
    """With what was filled in, and why."""
    refused = client.post("/jobs", data={"name": " ", "units": "feet"})
    assert refused.status_code == 422
    assert 'role="alert"' in refused.text
    assert '<option value="feet" selected>' in refused.text
    assert names(desk) == []


def test_every_field_has_an_id_of_its_own(client: TestClient, small: str) -> None:
    """Else a label would lead to the wrong one."""
    page = client.get("/").text
    assert small in page
    ids = re.findall(r' id="([^"]+)"', page)
    assert len(ids) == len(set(ids))


def test_a_job_that_was_put_away_is_brought_back_from_the_top(
    client: TestClient, desk: Desk, small: str
) -> None:
    """The first thing on the list is what was just done, and how to take it back."""
    page = client.post(f"/jobs/{small}/put-away").text
    (told,) = re.findall(r'<div class="gone row" role="status">(.*?)</div>', page, re.DOTALL)
    assert "village hall was put away." in told
    assert f'action="/jobs/{small}/bring-back"' in told
    assert names(desk, put_away=True) == ["village hall"]
    page = client.post(f"/jobs/{small}/bring-back").text
    assert 'class="gone row"' not in page
    assert names(desk) == ["village hall"]


def test_only_a_job_that_is_put_away_is_said_to_be(client: TestClient, small: str) -> None:
    """Whatever the address says."""
    for away in (small, "none", ""):
        page = client.get(f"/?away={away}")
        assert page.status_code == 200
        assert 'class="gone row"' not in page.text


def test_a_job_is_deleted_only_after_it_was_put_away(client: TestClient, desk: Desk, small: str) -> None:
    """Then it is gone."""
    client.post(f"/jobs/{small}/forget")
    assert names(desk) == ["village hall"]
    client.post(f"/jobs/{small}/put-away")
    client.post(f"/jobs/{small}/forget")
    assert desk.store.cards() == ()


def test_a_copy_has_the_measurements_and_no_layout(client: TestClient, desk: Desk, small: str) -> None:
    """It is a job of its own."""
    client.post(f"/jobs/{small}/copy")
    (copy,) = [card for card in desk.store.cards() if card.id != small]
    assert (copy.name, copy.boards, copy.surfaces, copy.pieces) == ("village hall (copy)", 3, 1, 0)


def test_jobs_of_one_name_are_told_apart_by_when_they_were_changed(
    client: TestClient, desk: Desk, small: str
) -> None:
    """And what a copy takes along is said beside its button."""
    page = client.get("/").text
    (card,) = desk.store.cards()
    assert card.id == small
    assert f"Last changed {local_time(card.changed_at)}" in page
    assert "layout and progress stay here" in page
