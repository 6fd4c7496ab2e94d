"""The two walls as they are worked on from screens: filling in forms as a browser without scripts would."""

from html import unescape
from re import sub

from httpx2 import Response
from starlette.testclient import TestClient

from page_forms import Form, forms_of
from plankwright.model import Standing
from plankwright.web.desk import Desk

HERE = "http://localhost"


def words_of(answer: Response) -> str:
    """Give what a page says, without its tags."""
    return " ".join(unescape(sub(r"<[^>]*>", " ", answer.text)).split())


def form_to(answer: Response, ending: str, **fields: str) -> Form:
    """Give the first form of a page that goes to an address with that ending and has those fields."""
    for form in forms_of(answer.text, str(answer.url)):
        if form.action.endswith(ending) and fields.items() <= dict(form.fields).items():
            return form
    msg = f"no form goes to {ending}"
    raise AssertionError(msg)


def send(client: TestClient, form: Form, **values: str) -> Response:
    """Send a form, with some fields filled in."""
    return client.post(form.action, data=form.filled(**values).data())


def steps_of(desk: Desk, job_id: str) -> list[str]:
    """Give the steps that were taken with a job, the last one first."""
    return [step.what for step in desk.store.changes(job_id)]


def standing_of(desk: Desk, job_id: str) -> Standing:
    """Give how far a job is."""
    work = desk.store.job(job_id).work
    assert work is not None
    return work.standing
