"""The tally as a browser without scripts fills it in, and as a phone catches up that had no connection."""

import re
from collections.abc import Mapping

import pytest
from starlette.responses import Response
from starlette.testclient import TestClient

from builders import board, nm
from kept_jobs import bare_job, plain
from page_forms import Form, forms_of, take_back
from plankwright.errors import FileTroubleError
from plankwright.measure import MILLIMETRE
from plankwright.web.desk import Desk

SIZES = {"id": "F1", "length": "97", "width": "5-1/4", "thickness": "3/4"}
BY_ITSELF = {"accept": "text/plain"}


@pytest.fixture
def empty(desk: Desk) -> str:
    """Keep a job without boards; give its id."""
    return desk.store.add(bare_job("hall")).id


def _form(page: str, url: str, form_id: str) -> Form:
    """Give a form of a page by the id that the page gives it."""
    order = re.findall(r'<form[^>]*?(?: id="([^"]*)")?[^>]*>', page)
    ids = [re.search(r' id="([^"]+)"', tag) for tag in re.findall(r"<form[^>]*>", page)]
    assert len(order) == len(ids)
    at = [found[1] if found else "" for found in ids].index(form_id)
    return forms_of(page, url)[at]


def _entry(client: TestClient, job: str) -> Form:
    url = f"http://localhost/jobs/{job}/tally"
    return _form(client.get(url).text, url, "entry")


def _add(client: TestClient, job: str, **fields: str) -> str:
    answer = client.post(f"/jobs/{job}/tally", data={**SIZES, **fields})
    assert answer.status_code == 200
    return answer.text


def _ids(desk: Desk, job: str) -> list[str]:
    return [one.id for one in desk.store.job(job).boards]


def _fields(page: str, form_id: str) -> Mapping[str, str]:
    return dict(_form(page, "http://localhost/", form_id).fields)


def test_a_board_is_added_and_told_with_undo_near(client: TestClient, desk: Desk, empty: str) -> None:
    """The keyboard is back in the length of the next one."""
    page = _add(client, empty)
    (added,) = desk.store.job(empty).boards
    assert (added.id, added.length_nm) == ("F1", nm(97))
    assert "Board F1 added" in page
    assert "8&#39; 1&#34; × 5-1/4&#34; × 3/4&#34;" in page
    assert 'form="take-back"' in page
    assert re.search(r'<input id="f-length"[^>]* autofocus', page)


def test_the_next_board_has_its_mark_and_what_is_kept(client: TestClient, empty: str) -> None:
    """So that often only the length is typed."""
    fields = _fields(_add(client, empty, lot="dado", tone="dark"), "entry")
    assert (fields["id"], fields["lot"], fields["width"], fields["tone"]) == ("F2", "dado", '5-1/4"', "dark")
    assert fields["length"] == ""


def test_a_refused_board_is_shown_again_with_all_that_was_typed(
    client: TestClient, desk: Desk, empty: str
) -> None:
    """Flaws and all, and why it will not do."""
    typed = {
        **SIZES,
        "length": "8x",
        "note": 'mind "this" <b>',
        "flaw.0.start": "3",
        "flaw.0.what": "rot lost",
    }
    answer = client.post(f"/jobs/{empty}/tally", data=typed)
    assert answer.status_code == 422
    assert "The length “8x” has an unknown unit" in answer.text
    fields = _fields(answer.text, "entry")
    assert typed.items() <= fields.items()
    assert _ids(desk, empty) == []


def test_a_board_called_like_another_is_refused_with_a_free_mark(
    client: TestClient, desk: Desk, empty: str
) -> None:
    """Nothing is written over."""
    _add(client, empty)
    answer = client.post(f"/jobs/{empty}/tally", data=SIZES)
    assert answer.status_code == 422
    assert "such as F2" in answer.text
    assert _ids(desk, empty) == ["F1"]


def test_several_alike_are_added_at_once(client: TestClient, desk: Desk, empty: str) -> None:
    """And taken back at once."""
    page = _add(client, empty, quantity="3")
    assert "Boards F1-1 to F1-3 added" in page
    assert len(_ids(desk, empty)) == 3
    assert _fields(page, "entry")["id"] == "F2"
    take_back(client, empty, "tally")
    assert _ids(desk, empty) == []


def test_same_again_adds_a_board_like_the_last(client: TestClient, desk: Desk, empty: str) -> None:
    """With the next mark, and without its flaws."""
    page = _add(client, empty, **{"flaw.0.start": "3", "flaw.0.end": "6", "flaw.0.what": "rot lost"})
    again = _form(page, f"http://localhost/jobs/{empty}/tally", "again")
    assert client.post(again.action, data=again.data()).status_code == 200
    first, second = desk.store.job(empty).boards
    assert (second.id, second.length_nm, len(first.flaws), second.flaws) == ("F2", nm(97), 1, ())


def test_same_again_needs_no_script(client: TestClient, desk: Desk, empty: str) -> None:
    """Its button sends the next board along, which is empty yet; sent twice it adds one board."""
    form = _form(_add(client, empty, lot="dado"), f"http://localhost/jobs/{empty}/tally", "entry")
    for _ in range(2):
        assert client.post(form.action, data={**form.data(), "again": "yes"}).status_code == 200
    first, second = desk.store.job(empty).boards
    assert (second.id, second.length_nm, second.lot) == ("F2", first.length_nm, "dado")


@pytest.mark.parametrize("typed", [{"length": "50"}, {"flaws": "3 rot"}, {"flaw.0.start": "3"}])
def test_same_again_does_not_throw_away_what_is_typed(
    client: TestClient, desk: Desk, empty: str, typed: dict[str, str]
) -> None:
    """Nothing is added; it still stands there."""
    form = _form(_add(client, empty), f"http://localhost/jobs/{empty}/tally", "entry")
    answer = client.post(form.action, data={**form.data(), **typed, "again": "yes"})
    assert answer.status_code == 422
    assert "You have typed a board that is not added yet: add it first." in answer.text
    assert typed.items() <= _fields(answer.text, "entry").items()
    assert _ids(desk, empty) == ["F1"]


def test_same_again_of_a_tally_without_boards_is_refused(client: TestClient, desk: Desk, empty: str) -> None:
    """There is nothing to be like."""
    assert client.post(f"/jobs/{empty}/tally", data={"id": "F1", "again": "yes"}).status_code == 422
    assert _ids(desk, empty) == []


def test_a_fault_of_a_refused_board_is_told_once(client: TestClient, empty: str) -> None:
    """Not again under the fields."""
    page = client.post(f"/jobs/{empty}/tally", data={**SIZES, "length": "8x"}).text
    assert page.count("has an unknown unit") == 1


def test_a_form_that_is_sent_twice_adds_one_board(client: TestClient, desk: Desk, empty: str) -> None:
    """As by a thumb that taps twice."""
    sent = _entry(client, empty).filled(**SIZES).data()
    for _ in range(2):
        assert client.post(f"/jobs/{empty}/tally", data=sent).status_code == 200
    assert _ids(desk, empty) == ["F1"]


def test_a_page_gone_back_to_loses_no_board_silently(client: TestClient, desk: Desk, empty: str) -> None:
    """It was sent before, with another board: it says so, and keeps what was typed."""
    form = _entry(client, empty)
    client.post(f"/jobs/{empty}/tally", data=form.filled(**SIZES).data())
    answer = client.post(f"/jobs/{empty}/tally", data=form.filled(**{**SIZES, "id": "F9"}).data())
    assert answer.status_code == 409
    assert "nothing was added this time" in answer.text
    again = _form(answer.text, f"http://localhost/jobs/{empty}/tally", "entry")
    assert client.post(again.action, data=again.data()).status_code == 200
    assert _ids(desk, empty) == ["F1", "F9"]


def test_a_full_disk_is_told_and_nothing_typed_is_lost(
    client: TestClient, desk: Desk, empty: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The form is shown again."""

    def full(*_args: object, **_more: object) -> None:
        raise FileTroubleError("jobs.db cannot grow: the disk is full.")

    monkeypatch.setattr(type(desk.store), "change", full)
    answer = client.post(f"/jobs/{empty}/tally", data=SIZES)
    assert answer.status_code in {422, 503}
    assert "the disk is full" in answer.text
    assert _fields(answer.text, "entry")["length"] == "97"


def test_an_entry_that_waited_is_kept_once_and_says_so(client: TestClient, desk: Desk, empty: str) -> None:
    """The first answer may have been lost on the way."""
    for _ in range(2):
        answer = client.post(f"/jobs/{empty}/tally", data={**SIZES, "key": "abc"}, headers=BY_ITSELF)
        assert (answer.status_code, answer.text) == (200, "kept abc")
    assert _ids(desk, empty) == ["F1"]


def test_an_entry_that_waited_and_was_changed_since_is_still_kept(
    client: TestClient, desk: Desk, empty: str
) -> None:
    """It had arrived; what became of the board then is another matter."""
    sent = {**SIZES, "key": "abc"}
    client.post(f"/jobs/{empty}/tally", data=sent, headers=BY_ITSELF)
    desk.store.undo(empty)
    answer = client.post(f"/jobs/{empty}/tally", data=sent, headers=BY_ITSELF)
    assert answer.text == "kept abc"


@pytest.mark.parametrize(("spoilt", "said"), [({"length": "8x"}, "“8x”"), ({"id": "there"}, "board there")])
def test_an_entry_that_waited_and_will_not_do_gets_a_sentence(
    client: TestClient, desk: Desk, spoilt: dict[str, str], said: str
) -> None:
    """In plain text, for the phone to show."""
    job = desk.store.add(bare_job("hall", plain("there"))).id
    answer = client.post(f"/jobs/{job}/tally", data={**SIZES, **spoilt, "key": "abc"}, headers=BY_ITSELF)
    assert answer.status_code == 422
    assert answer.headers["content-type"].startswith("text/plain")
    assert said in answer.text


def test_an_entry_for_a_job_that_was_put_away_is_refused(client: TestClient, desk: Desk, empty: str) -> None:
    """With a status that says that it is of no use to try again."""
    desk.store.put_away(empty)
    assert client.post(f"/jobs/{empty}/tally", data=SIZES, headers=BY_ITSELF).status_code == 404


def test_what_is_typed_is_read_back_and_drawn(client: TestClient, empty: str) -> None:
    """With a scale for taps, and nothing kept."""
    answer = client.post(
        f"/jobs/{empty}/tally/read", data={"length": "87-5/8", "width": "5", "thickness": "x"}
    )
    assert answer.status_code == 200
    assert "Read as 7&#39; 3-5/8&#34; long, 5&#34; wide." in answer.text
    assert "The thickness “x”" in answer.text
    assert 'data-tap-x-length="87.6250"' in answer.text
    assert "<svg" in answer.text
    assert "<html" not in answer.text


def test_a_metric_job_takes_taps_in_millimetres(client: TestClient, desk: Desk) -> None:
    """And its keys are those of a metric tape."""
    definition = {"name": "hall", "units": "mm", "surface": []}
    job = bare_job("hall", board("F1", 97, 5, length_nm=2_000 * MILLIMETRE))
    kept = desk.store.add(type(job)(id="", definition=definition, boards=job.boards))
    page = client.get(f"/jobs/{kept.id}/tally/board?id=F1").text
    assert 'data-tap-unit="mm"' in page
    assert 'data-tape-system="metric"' in page


def test_the_list_is_looked_through_by_mark_and_lot(client: TestClient, example: str) -> None:
    """Without scripts too."""
    page = client.get(f"/jobs/{example}/tally", params={"find": "F2", "lot": "hall floor"}).text
    shown = re.findall(r"<strong>(\w+)</strong> <span>", page)
    assert shown[0] == "F2"
    assert all(name.startswith("F2") for name in shown)
    assert f"{len(shown)} of 71 boards found." in page


def test_a_long_list_comes_in_parts(client: TestClient, example: str) -> None:
    """Fifty boards, the rest where it is asked for; all of them without scripts."""
    page = client.get(f"/jobs/{example}/tally").text
    assert page.count("/tally/board?id=") - page.count("Look at ") == 50
    rest = client.get(f"/jobs/{example}/tally/boards", params={"first": "50"}).text
    assert rest.count("<li>") == 21
    whole = client.get(f"/jobs/{example}/tally", params={"most": "100"}).text
    assert whole.count("/tally/board?id=") - whole.count("Look at ") == 71


@pytest.mark.parametrize("number", ["-1", "x", "9" * 500, "²", "1.5", ""])
def test_odd_numbers_in_the_address_do_no_harm(client: TestClient, example: str, number: str) -> None:
    """The list begins at its beginning."""
    answer = client.get(f"/jobs/{example}/tally/boards", params={"first": number, "most": number})
    assert answer.status_code == 200


def test_doubtful_boards_are_shown_with_a_way_to_them(client: TestClient, example: str) -> None:
    """To be looked at again."""
    page = client.get(f"/jobs/{example}/tally").text
    assert re.search(r"Look again.*board\?id=F25", page, re.DOTALL)


def test_how_far_the_boards_reach_is_a_page_and_a_part_of_one(client: TestClient, small: str) -> None:
    """The part has no frame around it."""
    page = client.get(f"/jobs/{small}/tally/count")
    part = client.get(f"/jobs/{small}/tally/count", headers={"hx-request": "true"})
    for answer in (page, part):
        assert "Enough for all 2 courses, with one board to spare." in answer.text
    assert "<html" in page.text
    assert "<html" not in part.text


def test_the_page_itself_does_not_wait_for_the_look(
    client: TestClient, example: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It takes longer than adding a board may."""

    def looked(*_args: object) -> tuple[str, ...]:
        raise AssertionError

    monkeypatch.setattr("plankwright.web.screens.tally.tell_reach", looked)
    assert client.get(f"/jobs/{example}/tally").status_code == 200


def test_care_is_asked_for_at_the_top_until_there_is_a_board(client: TestClient, empty: str) -> None:
    """Later it is folded away."""
    caution, form = '<aside class="caution"', 'id="entry"'
    before = client.get(f"/jobs/{empty}/tally").text
    assert before.index(caution) < before.index(form)
    after = _add(client, empty)
    assert after.index(caution) > after.index(form)


def test_the_tally_is_taken_along_as_a_spreadsheet(client: TestClient, desk: Desk, empty: str) -> None:
    """Nothing in it is taken for a formula."""
    _add(client, empty, note="=1+1")
    answer: Response = client.get(f"/jobs/{empty}/tally/tally.csv")  # type: ignore[assignment]
    assert answer.headers["content-type"].startswith("text/csv")
    assert "hall%20tally.csv" in answer.headers["content-disposition"]
    assert ",'=1+1," in client.get(f"/jobs/{empty}/tally/tally.csv").text
    assert desk.store.job(empty).boards[0].note == "=1+1"


def test_what_was_done_is_told_only_where_it_was_done(client: TestClient, empty: str) -> None:
    """An address that is opened again later says nothing that is not so any more."""
    added = client.post(f"/jobs/{empty}/tally", data=SIZES)
    address = str(added.url)
    assert "Board F1 added" in client.get(address).text
    take_back(client, empty, "tally")
    assert "just-done" not in client.get(address).text
