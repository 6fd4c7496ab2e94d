"""The last step is taken back from every screen, and taken again, and it is said which it is."""

import re
from functools import partial

import pytest
from starlette.testclient import TestClient

from kept_jobs import plain, with_boards
from page_forms import forms_of, take_back
from plankwright.model import Board
from plankwright.web.desk import Desk
from plankwright.workshop.jobs.kept import KeptJob


def add(desk: Desk, job_id: str, *names: str) -> None:
    """Add boards, a step each."""
    for name in names:
        board = plain(name)
        desk.store.change(job_id, f"board {name} added", partial(_with_one_more, board))


def _with_one_more(board: Board, job: KeptJob) -> KeptJob:
    return with_boards(job, *job.boards, board)


def names_of(desk: Desk, job_id: str) -> str:
    """Give what the boards are called."""
    return "".join(board.id for board in desk.store.job(job_id).boards)


def test_a_second_tap_takes_nothing_more_back(client: TestClient, desk: Desk, small: str) -> None:
    """It names the step that was shown, which is not the last one any more; that is said."""
    add(desk, small, "D", "E")
    shown = {"screen": "tally", "step": str(desk.store.changes(small)[0].id)}
    first = client.post(f"/jobs/{small}/undo", data=shown).text
    assert "Taken back: board E added" in first
    second = client.post(f"/jobs/{small}/undo", data=shown).text
    assert "Nothing was taken back" in second
    assert names_of(desk, small) == "ABCD"


def test_what_was_taken_back_is_offered_to_be_taken_again_by_name(
    client: TestClient, desk: Desk, small: str
) -> None:
    """Right where it was taken back, and among the last steps; a second tap does nothing more."""
    add(desk, small, "D", "E")
    take_back(client, small, "tally")
    page = take_back(client, small, "tally")
    assert "Taken back: board D added" in page.text
    again = next(form for form in forms_of(page.text, str(page.url)) if form.action.endswith("/redo"))
    assert "Take again: board D added" in client.get(f"/jobs/{small}/steps").text
    assert "Taken again: board D added" in client.post(again.action, data=again.data()).text
    assert "Nothing was taken again" in client.post(again.action, data=again.data()).text
    assert names_of(desk, small) == "ABCD"


def test_an_old_address_tells_of_no_step_that_is_not_so_any_more(
    client: TestClient, desk: Desk, small: str
) -> None:
    """As when the page is loaded again later."""
    add(desk, small, "D")
    address = str(take_back(client, small, "tally").url)
    assert "Taken back: board D added" in client.get(address).text
    add(desk, small, "E")
    assert "Taken back" not in client.get(address).text


def test_the_last_step_is_taken_back_from_any_screen(client: TestClient, desk: Desk, small: str) -> None:
    """It is named where it is offered, and one stays where one was."""
    add(desk, small, "D", "E")
    page = client.get(f"/jobs/{small}/steps").text
    assert "Take back: board E added" in page
    answer = take_back(client, small, "steps")
    assert answer.url.path == f"/jobs/{small}/steps"
    assert "Take back: board D added" in answer.text
    assert names_of(desk, small) == "ABCD"


def test_it_is_taken_again(client: TestClient, desk: Desk, small: str) -> None:
    """As often as it was taken back."""
    add(desk, small, "D", "E")
    for _ in range(2):
        take_back(client, small, "steps")
    assert names_of(desk, small) == "ABC"
    for _ in range(3):
        step = desk.store.taken_back(small)
        client.post(f"/jobs/{small}/redo", data={"screen": "steps", "step": "" if step is None else step.id})
    assert names_of(desk, small) == "ABCDE"


def test_where_there_is_nothing_to_take_back_nothing_is_offered(
    client: TestClient, desk: Desk, example: str
) -> None:
    """And asking for it all the same is no matter."""
    page = client.get(f"/jobs/{example}/steps").text
    assert "No step was taken yet." in page
    assert "Take back:" not in page
    before = desk.store.job(example)
    for what in ("undo", "redo"):
        assert client.post(f"/jobs/{example}/{what}").status_code == 200
    assert desk.store.job(example) == before


def test_the_last_steps_are_listed_with_the_newest_first(client: TestClient, desk: Desk, small: str) -> None:
    """With their times."""
    add(desk, small, "D", "E", "<F>")
    page = client.get(f"/jobs/{small}/steps").text
    told = re.findall(r"<li>board (\S+) added", page)
    assert told == ["&lt;F&gt;", "E", "D"]
    assert re.search(r"20\d\d-\d\d-\d\d \d\d:\d\d</span>", page)


@pytest.mark.parametrize(
    ("screen", "path"),
    [
        ("tally", "/tally"),
        ("layout", "/layout"),
        ("", ""),
        ("nowhere", ""),
        ("../../phone", ""),
        ("//evil.example", ""),
        ("https://evil.example", ""),
        ("tally\r\nset-cookie: x", ""),
    ],
)
@pytest.mark.parametrize("what", ["undo", "redo"])
def test_one_is_led_to_screens_of_the_job_and_nowhere_else(
    client: TestClient, small: str, screen: str, path: str, what: str
) -> None:
    """Whatever a form says."""
    answer = client.post(f"/jobs/{small}/{what}", data={"screen": screen}, follow_redirects=False)
    assert answer.status_code == 303
    assert answer.headers["location"].partition("?")[0] == f"/jobs/{small}{path}"


@pytest.mark.parametrize("what", ["undo", "redo", "steps"])
def test_steps_of_a_job_that_is_not_there_are_told(client: TestClient, what: str) -> None:
    """In a sentence."""
    asked = client.get if what == "steps" else client.post
    answer = asked(f"/jobs/nobody/{what}")
    assert answer.status_code == 404
    assert "There is no such job, or it was put away." in answer.text


def test_looking_takes_nothing_back(client: TestClient, small: str) -> None:
    """Only a form does: a link could be followed by whoever looks ahead."""
    for what in ("undo", "redo"):
        assert client.get(f"/jobs/{small}/{what}").status_code == 405
