"""Boards of a spreadsheet brought into a tally."""

import pytest
from starlette.testclient import TestClient

from builders import board
from kept_jobs import bare_job
from page_forms import take_back
from plankwright.web.desk import Desk

CSV = "id,lot,length,width,thickness\nA,floor,97,5-1/4,3/4\nB,stage,44,6,3/4\n"


@pytest.fixture
def job(desk: Desk) -> str:
    """Keep a job of one board; give its id."""
    return desk.store.add(bare_job("hall", board("Z", 97, 5))).id


def _bring(
    client: TestClient, job: str, content: str, name: str = "pile.csv", key: str = ""
) -> tuple[int, str]:
    answer = client.post(
        f"/jobs/{job}/tally/brought", files={"file": (name, content.encode())}, data={"key": key}
    )
    return answer.status_code, answer.text


def _ids(desk: Desk, job: str) -> list[str]:
    return [one.id for one in desk.store.job(job).boards]


def test_boards_come_behind_those_that_are_there(client: TestClient, desk: Desk, job: str) -> None:
    """In one step, which is told and can be taken back."""
    status, page = _bring(client, job, CSV)
    assert status == 200
    assert "Two boards brought along" in page
    assert _ids(desk, job) == ["Z", "A", "B"]
    take_back(client, job, "tally")
    assert _ids(desk, job) == ["Z"]


def test_problems_are_listed_with_their_rows_and_nothing_is_added(
    client: TestClient, desk: Desk, job: str
) -> None:
    """All of them at once."""
    status, page = _bring(client, job, CSV.replace("97", "8x").replace("44", "9y"))
    assert status == 422
    assert "Line 2:" in page
    assert "Line 3:" in page
    assert _ids(desk, job) == ["Z"]


def test_what_is_doubtful_about_the_file_is_told_with_what_was_added(
    client: TestClient, desk: Desk, job: str
) -> None:
    """The columns that were not read, say."""
    status, page = _bring(client, job, CSV.replace("lot", "weather"))
    assert status == 200
    assert "2 boards are in the tally now." in page
    assert "These columns are not read: “weather”." in page
    assert _ids(desk, job) == ["Z", "A", "B"]


def test_a_file_that_is_sent_twice_is_added_once(client: TestClient, desk: Desk, job: str) -> None:
    """As when a page is loaded again."""
    for _ in range(2):
        assert _bring(client, job, CSV, key="abc")[0] == 200
    assert _ids(desk, job) == ["Z", "A", "B"]


def test_another_file_from_a_page_gone_back_to_is_not_lost_silently(
    client: TestClient, desk: Desk, job: str
) -> None:
    """The page was sent before: it says so."""
    _bring(client, job, CSV, key="abc")
    status, page = _bring(client, job, CSV.replace("A,", "C,").replace("B,", "D,"), key="abc")
    assert status == 409
    assert "nothing was added this time" in page
    assert _ids(desk, job) == ["Z", "A", "B"]


def test_boards_called_as_others_are_refused(client: TestClient, desk: Desk, job: str) -> None:
    """None of the file is added."""
    status, page = _bring(client, job, CSV.replace("A,", "Z,"))
    assert status == 422
    assert "Boards called Z are in the tally already" in page
    assert _ids(desk, job) == ["Z"]


@pytest.mark.parametrize("name", ["pile.pdf", "pile"])
def test_other_files_are_refused(client: TestClient, desk: Desk, job: str, name: str) -> None:
    """With what to choose."""
    status, page = _bring(client, job, CSV, name)
    assert status == 422
    assert "choose one whose name ends in .csv or .xlsx" in page
    assert _ids(desk, job) == ["Z"]


def test_without_a_file_one_is_asked_for(client: TestClient, job: str) -> None:
    """A browser sends an empty field then."""
    answer = client.post(f"/jobs/{job}/tally/brought", data={"key": "abc"})
    assert answer.status_code == 422
    assert "choose a spreadsheet first" in answer.text


def test_a_file_that_is_no_workbook_is_refused_and_no_fault(client: TestClient, job: str) -> None:
    """Whatever its name says."""
    status, page = _bring(client, job, "PK\x03\x04 not really", "pile.xlsx")
    assert status == 422
    assert "Nothing was added" in page
