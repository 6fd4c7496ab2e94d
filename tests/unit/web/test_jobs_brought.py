"""A job is brought along and taken along in a browser, and what is refused is shown with everything typed."""

import io
import zipfile
from urllib.parse import unquote

import pytest
from starlette.testclient import TestClient

from plankwright import files
from plankwright.store import Book, StoreError
from plankwright.web import visit
from plankwright.web.desk import Desk
from village import JOB_TOML, TALLY_CSV, small_layout

JOB = ("job.toml", JOB_TOML.encode())
TALLY = ("tally.csv", TALLY_CSV.encode())
LAYOUT = ("layout.json", files.layout_to_json(small_layout()).encode())
Sent = tuple[str, bytes]


def bring(client: TestClient, *sent: Sent, units: str = "inches") -> tuple[int, str, str]:
    """Send files as the form does; give the status, the page and where it is."""
    answer = client.post("/jobs/brought", data={"units": units}, files=[("files", one) for one in sent])
    return answer.status_code, answer.text, answer.url.path


def test_a_job_folder_becomes_a_job(client: TestClient, desk: Desk) -> None:
    """Which is shown next, with its layout."""
    status, page, path = bring(client, JOB, TALLY, LAYOUT)
    (card,) = desk.store.cards()
    assert (status, path) == (200, f"/jobs/{card.id}")
    assert "village hall" in page
    assert (card.boards, card.surfaces, card.pieces) == (3, 1, 2)


def test_a_spreadsheet_alone_becomes_a_job(client: TestClient, desk: Desk) -> None:
    """A number without a unit means what was chosen."""
    metric = TALLY_CSV.replace("97,5-1/4,3/4", "2500,130,20").encode()
    status, _, _ = bring(client, ("Boards of the barn.csv", metric), units="mm")
    (card,) = desk.store.cards()
    assert status == 200
    assert (card.name, card.boards, card.surfaces) == ("boards of the barn", 3, 0)
    assert desk.store.job(card.id).boards[0].length_nm == 2_500_000_000


def test_what_is_no_job_is_told_and_nothing_is_kept(client: TestClient, desk: Desk) -> None:
    """The page is shown again with what was chosen."""
    status, page, _ = bring(client, ("film.mov", b"\x00" * 99), units="mm")
    assert status == 422
    assert "No job is among these files" in page
    assert '<option value="mm" selected>' in page
    assert desk.store.cards() == ()


def test_nothing_sent_is_told_too(client: TestClient) -> None:
    """Whoever has no script may send the form without a file."""
    for answer in (
        client.post("/jobs/brought", data={"units": "inches"}),
        client.post("/jobs/brought", files=[("files", ("", b""))]),
        client.post("/jobs/brought", json={"files": "job.toml"}),
        client.post("/jobs/brought", data={"files": "job.toml"}),
    ):
        assert answer.status_code == 422
        assert "No job is among these files" in answer.text


def test_every_problem_of_the_files_is_told(client: TestClient) -> None:
    """Each as a sentence with its line."""
    bad = TALLY_CSV.replace("97,5-1/4,3/4\nB", "x,5-1/4,3/4\nB").replace("C,stage,97", "C,stage,").encode()
    status, page, _ = bring(client, JOB, ("tally.csv", bad))
    assert status == 422
    assert "Line 2: the length" in page
    assert "Line 4: the length is missing" in page


def test_units_that_are_none_are_told(client: TestClient) -> None:
    """Somebody may have sent another form than ours."""
    status, page, _ = bring(client, TALLY, units="furlongs")
    assert status == 422
    assert "furlongs" in page


def test_a_file_that_is_too_large_is_told(client: TestClient, monkeypatch: pytest.MonkeyPatch) -> None:
    """A film was picked by mistake."""
    monkeypatch.setattr(visit, "MOST_BYTES", 1_000_000)
    status, page, _ = bring(client, JOB, ("tally.csv", b"x" * 1_000_001))
    assert status == 422
    assert "tally.csv is larger than 1 MB: choose another file." in page


def test_more_files_than_any_folder_has_are_refused(client: TestClient, desk: Desk) -> None:
    """A whole disk was picked by mistake."""
    status, page, _ = bring(client, *[(f"{number}.csv", b"x") for number in range(60)])
    assert status == 400
    assert "could not be read" in page
    assert desk.store.cards() == ()


@pytest.mark.parametrize(
    ("content", "kind"),
    [
        (b"--x\r\nnothing of the kind", "multipart/form-data; boundary=x"),
        (b"\x00\xff", "multipart/form-data; boundary="),
        (b"x", "multipart/form-data"),
        (b"%zz=%ff&&==", "application/x-www-form-urlencoded"),
        (b"\xff\xfe", "text/plain"),
    ],
)
def test_what_is_no_form_is_no_fault(client: TestClient, content: bytes, kind: str) -> None:
    """It is refused in a sentence."""
    for path in ("/jobs/brought", "/jobs"):
        answer = client.post(path, content=content, headers={"content-type": kind})
        assert 400 <= answer.status_code < 500
        assert "<h1>" in answer.text


def test_a_job_is_taken_along_and_comes_back(client: TestClient, desk: Desk, small: str) -> None:
    """As one file, which is called after the job."""
    answer = client.get(f"/jobs/{small}/export")
    assert answer.headers["content-type"] == "application/zip"
    assert "village%20hall.zip" in answer.headers["content-disposition"]
    status, _, path = bring(client, ("village hall.zip", answer.content))
    assert status == 200
    again, before = desk.store.job(path.rpartition("/")[2]), desk.store.job(small)
    assert (again.definition, again.boards) == (before.definition, before.boards)
    assert again.layout_id != before.layout_id


@pytest.mark.parametrize(
    "name", ['the "old" hall', "hall/2", "..", "hall\\2", "Säle", "楠木", "a%0d%0ab", "hall; x=1", "🪚"]
)
def test_a_job_may_be_called_anything(client: TestClient, name: str) -> None:
    """Its file is called as like it as can be, and lands in no other folder."""
    path = client.post("/jobs", data={"name": name, "units": "mm"}).url.path
    answer = client.get(f"{path}/export")
    assert answer.status_code == 200
    with zipfile.ZipFile(io.BytesIO(answer.content)) as archive:
        assert "job.toml" in archive.namelist()
    how, _, called = answer.headers["content-disposition"].partition("filename*=UTF-8''")
    assert unquote(called) == f"{name.replace('/', '-').replace(chr(92), '-')}.zip"
    assert how.startswith("attachment; ")
    assert how.count('"') == 2


def test_a_file_of_jobs_that_is_in_use_is_told(client: TestClient, desk: Desk, small: str) -> None:
    """On every page, as one sentence; nothing is lost."""

    def refuse(_self: Book) -> None:
        raise StoreError("jobs.db is in use by another program for too long: close that one, or try again.")

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Book, "reading", refuse)
        patch.setattr(Book, "writing", refuse)
        for answer in (
            client.get("/"),
            client.get(f"/jobs/{small}"),
            client.post("/jobs", data={"name": "porch", "units": "mm"}),
            client.post(f"/jobs/{small}/undo"),
        ):
            assert answer.status_code == 503
            assert "jobs.db is in use by another program for too long" in answer.text
    assert desk.store.job(small).layout_id is not None
