"""The surfaces of a job that is laid out or worked on: what may still be changed, and what that holds up."""

import re
from dataclasses import replace
from html import unescape
from typing import Any

from httpx2 import Response
from starlette.testclient import TestClient

from kept_jobs import work_after
from page_forms import Form, forms_of
from plankwright.model import MarkKind
from plankwright.web.desk import Desk

WALL = {"id": "east", "outline": "plain", "width": "12 ft", "height": "8 ft", "backing": "solid"}


def surfaces_of(desk: Desk, job: str) -> list[dict[str, Any]]:
    """Give the surfaces of a job as they are kept."""
    return list(desk.store.job(job).definition["surface"])


def form_of(page: Response, ends: str) -> Form:
    """Give the form of a page whose address ends so."""
    return next(form for form in forms_of(page.text, str(page.url)) if form.action.endswith(ends))


def alert(page: Response) -> str:
    """Give what is told to be wrong."""
    found = re.search(r'role="alert">.*?</section>', page.text, re.DOTALL)
    return unescape(found[0]) if found else ""


def begin(desk: Desk, job: str) -> None:
    """Hang the first piece of the small job."""
    work = work_after((MarkKind.HUNG, "1a"))
    desk.store.change(job, "1a hung", lambda kept: replace(kept, work=work))


def test_no_surface_is_added_once_work_has_begun(client: TestClient, desk: Desk, small: str) -> None:
    """The pages say so beforehand, and what was typed all the same stays."""
    begin(desk, small)
    assert "Work on this job has begun" in client.get(f"/jobs/{small}/surfaces").text
    assert "it takes no further surface" in client.get(f"/jobs/{small}/surfaces/new").text
    refused = client.post(f"/jobs/{small}/surfaces/new", data=WALL)
    assert refused.status_code == 422
    assert "Work on this job has begun. Begin another job for a further surface" in alert(refused)
    assert dict(form_of(refused, "/new").fields)["width"] == "12 ft"
    assert len(surfaces_of(desk, small)) == 1


def test_what_a_change_holds_up_is_said_once_work_has_begun(
    client: TestClient, desk: Desk, small: str
) -> None:
    """On the page of a surface and on that of the rules."""
    told = "cutting and hanging wait until what is left is laid out anew"
    for page in ("surfaces/0", "rules"):
        assert told not in client.get(f"/jobs/{small}/{page}").text
    begin(desk, small)
    for page in ("surfaces/0", "rules"):
        assert told in client.get(f"/jobs/{small}/{page}").text


def test_a_surface_that_is_renamed_keeps_its_layout(client: TestClient, desk: Desk, small: str) -> None:
    """Cutting goes on at once, in one step that can be taken back."""
    form = form_of(client.get(f"/jobs/{small}/surfaces/0"), "/0")
    assert client.post(form.action, data=form.filled(id="north side").data()).status_code == 200
    kept = desk.store.job(small)
    assert kept.layout_id is not None
    laid = desk.store.layout(small, kept.layout_id).layout
    assert [one.surface_id for one in laid.surfaces] == ["north side"]
    desk.store.undo(small)
    before = desk.store.job(small)
    assert before.layout_id is not None
    assert before.layout_id != kept.layout_id
    assert surfaces_of(desk, small)[0]["id"] == "wall"
