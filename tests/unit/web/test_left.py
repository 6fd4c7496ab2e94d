"""What is left over: listed, taken along as a tally, or the beginning of another job."""

import csv
import io

from starlette.testclient import TestClient

from at_walls import form_to, send, words_of
from plankwright.web.desk import Desk
from two_walls import keep_walls


def test_what_will_be_left_is_listed(client: TestClient, desk: Desk) -> None:
    """Whole boards, and offcuts with a mark of their own; and that not all hangs yet."""
    walls = keep_walls(desk.store).id
    words = words_of(client.get(f"/jobs/{walls}/left"))
    assert "Two whole boards and one offcut left" in words
    assert "as yet 0 of 5 pieces hang" in words
    assert "Each offcut has a new mark of its own here, such as B-1." in words
    assert 'E 8\' 1" 5-1/4" floor' in words


def test_it_can_be_taken_along_as_a_tally(client: TestClient, desk: Desk) -> None:
    """A file like any other tally."""
    walls = keep_walls(desk.store).id
    answer = client.get(f"/jobs/{walls}/left/tally")
    assert answer.headers["content-type"].startswith("text/csv")
    assert "left-over.csv" in answer.headers["content-disposition"]
    assert [row["id"] for row in csv.DictReader(io.StringIO(answer.text))] == ["B-1", "E", "F"]


def test_a_job_begins_with_it(client: TestClient, desk: Desk) -> None:
    """Its boards are tallied there, and nothing is measured yet."""
    walls = keep_walls(desk.store).id
    begun = send(client, form_to(client.get(f"/jobs/{walls}/left"), "/left/job"))
    assert begun.status_code == 200
    job_id = str(begun.url).rpartition("/")[2]
    kept = desk.store.job(job_id)
    assert job_id != walls
    assert [board.id for board in kept.boards] == ["B-1", "E", "F"]
    assert kept.definition["surface"] == []


def test_without_a_layout_nothing_is_left_over(client: TestClient, example: str) -> None:
    """The way to one is shown, and no job is begun."""
    assert "There is no layout to work by yet" in words_of(client.get(f"/jobs/{example}/left"))
    assert "There is no layout to work by yet" in words_of(client.post(f"/jobs/{example}/left/job"))
