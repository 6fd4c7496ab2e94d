"""One request as the screens see it: what was asked and filled in, and the ways to answer."""

import threading
from collections.abc import Callable, Iterator

import pytest
from starlette.responses import PlainTextResponse, Response
from starlette.testclient import TestClient

from kept_jobs import plain, with_boards
from plankwright.web.app import make_app
from plankwright.web.desk import Desk
from plankwright.web.visit import Visit, job_url, page
from plankwright.workshop.jobs.kept import KeptJob

Asking = Callable[..., TestClient]


@pytest.fixture
def answered(desk: Desk) -> Iterator[Callable[[Callable[[Visit], Response]], TestClient]]:
    """Have one page of a test's own answered, for a job and for none."""
    opened: list[TestClient] = []

    def with_page(answer: Callable[[Visit], Response]) -> TestClient:
        app = make_app(desk)
        for place, path in enumerate(("/tried", "/jobs/{job_id}/tried")):
            app.router.routes.insert(place, page(path, answer, "GET", "POST"))
        asking = TestClient(
            app, base_url="http://localhost", client=("127.0.0.1", 50_000), raise_server_exceptions=False
        )
        opened.append(asking)
        return asking

    yield with_page
    for asking in opened:
        asking.close()


def add_d(job: KeptJob) -> KeptJob:
    """Add a board."""
    return with_boards(job, *job.boards, plain("D"))


def told(*words: object) -> Response:
    """Answer with some words."""
    return PlainTextResponse("|".join(map(str, words)))


def test_what_was_filled_in_is_read_by_its_name(answered: Asking) -> None:
    """Without blanks around it; what was not is empty, or what else was said."""
    asking = answered(lambda v: told(v.text("a"), v.text("b"), v.text("c", "none"), v.fields()))
    answer = asking.post("/tried", data={"a": "  7' 3 ", "b": ""})
    assert answer.text == "7' 3||none|[('a', \"  7' 3 \"), ('b', '')]"


def test_files_are_no_text_and_come_with_their_names(answered: Asking) -> None:
    """Several of one field too."""
    asking = answered(lambda v: told(v.text("files", "no text"), v.fields(), sorted(v.files.items())))
    sent = [("files", ("a.csv", b"1")), ("files", ("b.csv", b""))]
    answer = asking.post("/tried", files=sent, data={"a": "1"})
    assert answer.text == "no text|[('a', '1')]|[('files', [('a.csv', b'1'), ('b.csv', b'')])]"


def test_where_no_file_was_chosen_there_is_none(answered: Asking) -> None:
    """A browser sends one without a name then."""
    form = b'--x\r\ncontent-disposition: form-data; name="files"; filename=""\r\n\r\n\r\n--x--\r\n'
    asking = answered(lambda v: told(v.files, v.fields(), v.text("files", "no text")))
    answer = asking.post("/tried", content=form, headers={"content-type": "multipart/form-data; boundary=x"})
    assert answer.text == "{}|[]|no text"


def test_words_behind_the_question_mark_are_no_form(answered: Asking) -> None:
    """Looking at a page fills nothing in."""
    asking = answered(lambda v: told(v.asked("lot"), v.asked("x", "none"), v.text("lot"), v.fields()))
    assert asking.get("/tried?lot=%20hall%20&lot2").text == "hall|none||[]"


def test_the_job_is_read_once_in_a_visit(answered: Asking, desk: Desk, small: str) -> None:
    """All of a page is of one moment, whatever others do meanwhile."""

    def look(visit: Visit) -> Response:
        before = visit.job
        desk.store.change(visit.job_id, "D added", add_d)
        return told(visit.job is before, len(visit.reading.job.boards))

    assert answered(look).get(f"/jobs/{small}/tried").text == "True|3"


def test_a_step_changes_the_job_of_the_visit(answered: Asking, desk: Desk, small: str) -> None:
    """So that the page that follows shows it."""

    def act(visit: Visit) -> Response:
        assert len(visit.job.boards) == 3
        return told(len(visit.change("D added", add_d).boards), len(visit.job.boards))

    assert answered(act).post(f"/jobs/{small}/tried").text == "4|4"
    assert desk.store.changes(small, 1)[0].what == "D added"


def test_a_form_that_is_sent_twice_is_done_once(answered: Asking, desk: Desk, small: str) -> None:
    """By the key that it brings along; without one it is sent on purpose."""
    asking = answered(lambda v: told(len(v.change("D added", add_d).boards)))
    first = asking.post(f"/jobs/{small}/tried", data={"key": "phone-1"})
    again = asking.post(f"/jobs/{small}/tried", data={"key": "phone-1"})
    assert (first.text, again.text) == ("4", "4")
    assert len(desk.store.changes(small)) == 2


def test_a_job_that_is_not_there_is_told(answered: Asking) -> None:
    """Before anything is done."""
    asking = answered(lambda v: told(v.change("D added", add_d)))
    for answer in (asking.get("/jobs/nobody/tried"), asking.post("/jobs/nobody/tried")):
        assert answer.status_code == 404
        assert "There is no such job" in answer.text


def test_pages_of_a_job_offer_to_take_the_last_step_back(answered: Asking, desk: Desk, small: str) -> None:
    """Whatever page it is."""
    desk.store.change(small, "board D added", add_d)
    asking = answered(lambda v: v.show("steps.html", steps=()))
    assert "Take back: board D added" in asking.get(f"/jobs/{small}/tried").text


def test_one_is_led_on_after_a_form(answered: Asking, small: str) -> None:
    """To a page that may be loaded again; nothing is sent twice by that."""
    answer = answered(lambda v: v.go_to_job("tally")).post(f"/jobs/{small}/tried", follow_redirects=False)
    assert (answer.status_code, answer.headers["location"]) == (303, f"/jobs/{small}/tally")
    assert job_url(small) == f"/jobs/{small}"


@pytest.mark.parametrize(
    ("name", "plain_name", "whole"),
    [
        ("cuts.csv", "cuts.csv", "cuts.csv"),
        ("Säle.svg", "S_le.svg", "S%C3%A4le.svg"),
        ('a "b".csv', "a _b_.csv", "a%20%22b%22.csv"),
        ("../up/a.csv", "..-up-a.csv", "..-up-a.csv"),
        ("a\\b.csv", "a-b.csv", "a-b.csv"),
        ("50%.csv", "50%.csv", "50%25.csv"),
    ],
)
@pytest.mark.parametrize(("to_look_at", "how"), [(False, "attachment"), (True, "inline")])
def test_a_file_is_handed_out_under_its_name(
    answered: Asking,
    name: str,
    plain_name: str,
    whole: str,
    to_look_at: bool,  # noqa: FBT001 - a case
    how: str,
) -> None:
    """In the letters that every browser reads, and in all of them."""
    asking = answered(lambda v: v.download("id\n", name, "text/csv", to_look_at=to_look_at))
    answer = asking.get("/tried")
    assert answer.content == b"id\n"
    assert answer.headers["content-type"].startswith("text/csv")
    assert (
        answer.headers["content-disposition"] == f"{how}; filename=\"{plain_name}\"; filename*=UTF-8''{whole}"
    )


def test_what_takes_time_does_not_hold_up_others(answered: Asking) -> None:
    """Each request is answered in a thread of its own."""
    asking = answered(lambda _visit: told(threading.current_thread() is threading.main_thread()))
    assert asking.get("/tried").text == "False"


def test_a_page_is_looked_at_unless_it_is_said_otherwise() -> None:
    """With its head alone too, as some programs do."""
    assert page("/tried", lambda _visit: told()).methods == {"GET", "HEAD"}
    assert page("/tried", lambda _visit: told(), "POST").methods == {"POST"}
