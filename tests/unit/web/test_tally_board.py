"""One board of the tally: looked at, changed, taken out, whatever it is called."""

from urllib.parse import quote

import pytest
from starlette.testclient import TestClient

from builders import board, flaw, nm
from kept_jobs import bare_job
from page_forms import Form, forms_of, take_back
from plankwright.model import MarkKind, Severity
from plankwright.web.desk import Desk
from plankwright.workshop.jobs.mark_kept import mark_kept
from plankwright.workshop.mark_work import Happened

BOARD = board("F1", 97, 5.25, lot="dado", flaws=(flaw(3, 6), flaw(40, 44, Severity.BLEMISH)), note="cupped")


@pytest.fixture
def job(desk: Desk) -> str:
    """Keep a job of two boards; give its id."""
    return desk.store.add(bare_job("hall", BOARD, board("F2", 44, 6))).id


def _url(job: str, name: str = "F1") -> str:
    return f"http://localhost/jobs/{job}/tally/board?id={quote(name, safe='/')}"


def _forms(client: TestClient, job: str, name: str = "F1") -> tuple[Form, Form]:
    """Give the form that changes the board and the one that takes it out."""
    answer = client.get(_url(job, name))
    assert answer.status_code == 200
    own = [form for form in forms_of(answer.text, _url(job, name)) if form.action == _url(job, name)]
    change, out = own
    return change, out


def test_a_board_that_is_saved_untouched_stays_as_it_is(client: TestClient, desk: Desk, job: str) -> None:
    """With its flaws."""
    change, _ = _forms(client, job)
    assert client.post(change.action, data=change.data()).status_code == 200
    assert desk.store.job(job).boards[0] == BOARD


def test_a_change_is_kept_and_told(client: TestClient, desk: Desk, job: str) -> None:
    """The board keeps its place."""
    change, _ = _forms(client, job)
    answer = client.post(change.action, data=change.filled(length="96", id="F7").data())
    assert "Board F1 changed" in answer.text
    assert [(one.id, one.length_nm) for one in desk.store.job(job).boards] == [("F7", nm(96)), ("F2", nm(44))]


def test_what_will_not_do_is_shown_again(client: TestClient, desk: Desk, job: str) -> None:
    """With what was typed."""
    change, _ = _forms(client, job)
    answer = client.post(change.action, data=change.filled(length="8x").data())
    assert answer.status_code == 422
    assert 'value="8x"' in answer.text
    assert "unknown unit" in answer.text
    assert desk.store.job(job).boards[0] == BOARD


def test_what_somebody_else_changed_is_not_written_over(client: TestClient, desk: Desk, job: str) -> None:
    """What was typed is shown beside what is there now, and may be saved over it then."""
    change, _ = _forms(client, job)
    client.post(change.action, data=change.filled(length="96").data())
    answer = client.post(change.action, data=change.filled(length="90", note="mine").data())
    assert answer.status_code == 409
    assert "As it is now:" in answer.text
    assert "8&#39; 0&#34;" in answer.text
    assert 'value="90"' in answer.text
    assert desk.store.job(job).boards[0].length_nm == nm(96)
    again = next(form for form in forms_of(answer.text, _url(job)) if "note" in form.names)
    assert client.post(again.action, data=again.data()).status_code == 200
    changed = desk.store.job(job).boards[0]
    assert (changed.length_nm, changed.note) == (nm(90), "mine")


def test_a_form_that_is_sent_twice_changes_the_board_once(client: TestClient, desk: Desk, job: str) -> None:
    """As by a thumb that taps twice."""
    change, _ = _forms(client, job)
    for _ in range(2):
        answer = client.post(change.action, data=change.filled(length="96").data())
        assert answer.status_code == 200
    assert len(desk.store.changes(job)) == 1


def test_a_board_taken_out_meanwhile_can_be_added_again(client: TestClient, desk: Desk, job: str) -> None:
    """What was typed is not lost."""
    change, out = _forms(client, job)
    client.post(out.action, data=out.data())
    answer = client.post(change.action, data=change.filled(length="90").data())
    assert answer.status_code == 404
    again = next(form for form in forms_of(answer.text, _url(job)) if "note" in form.names)
    assert client.post(again.action, data=again.data()).status_code == 200
    assert [(one.id, one.length_nm) for one in desk.store.job(job).boards] == [("F2", nm(44)), ("F1", nm(90))]


def test_a_board_is_taken_out_and_told(client: TestClient, desk: Desk, job: str) -> None:
    """Undo brings it back."""
    _, out = _forms(client, job)
    assert "Board F1 taken out" in client.post(out.action, data=out.data()).text
    assert [one.id for one in desk.store.job(job).boards] == ["F2"]
    take_back(client, job, "tally")
    assert [one.id for one in desk.store.job(job).boards] == ["F1", "F2"]


def test_a_board_changed_meanwhile_is_not_taken_out(client: TestClient, desk: Desk, job: str) -> None:
    """It is shown as it is now."""
    change, out = _forms(client, job)
    client.post(change.action, data=change.filled(length="96").data())
    answer = client.post(out.action, data=out.data())
    assert answer.status_code == 409
    assert "As it is now:" in answer.text
    assert len(desk.store.job(job).boards) == 2


@pytest.mark.parametrize("name", ["a/b", "..", ".", "board", "count", "ü&?+%2F #", '"q"', "<b>", "'"])
def test_a_board_is_found_whatever_it_is_called(client: TestClient, desk: Desk, name: str) -> None:
    """By the link of the list."""
    job = desk.store.add(bare_job("hall", board(name, 97, 5))).id
    links = client.get(f"/jobs/{job}/tally").text
    assert f"/tally/board?id={quote(name, safe='/')}" in links
    change, _ = _forms(client, job, name)
    assert client.post(change.action, data=change.filled(note="seen").data()).status_code == 200
    assert desk.store.job(job).boards[0].note == "seen"


def test_the_short_address_of_a_board_leads_to_it(client: TestClient, job: str) -> None:
    """As one might write it by hand."""
    assert str(client.get(f"/jobs/{job}/tally/F1").url) == _url(job)


@pytest.mark.parametrize("path", ["board?id=X", "board", "X", "again/and/again"])
def test_a_board_that_is_not_there_is_told(client: TestClient, job: str, path: str) -> None:
    """With a page, and no fault."""
    answer = client.get(f"/jobs/{job}/tally/{path}")
    assert answer.status_code == 404
    assert "There is no board" in answer.text


def test_a_board_of_which_pieces_are_cut_stays(client: TestClient, desk: Desk, small: str) -> None:
    """What is left of it may be marked as lost."""
    kept = desk.store.job(small)
    assert kept.layout_id is not None
    layout = desk.store.layout(small, kept.layout_id)
    event = Happened(kind=MarkKind.CUT, names=("1a",))
    reading = desk.bench.files.read_definition(kept.definition, kept.boards)
    desk.store.change(small, "1a cut", lambda job: mark_kept(job, reading.job, layout, [event]))
    _, out = _forms(client, small, "A")
    answer = client.post(out.action, data=out.data())
    assert answer.status_code == 422
    assert "must stay in the tally" in answer.text
