"""The screen of papers: what can be had, why not, and the files themselves."""

import re
import zipfile
from dataclasses import replace
from io import BytesIO

import pytest
from starlette.testclient import TestClient

from kept_jobs import bare_job
from plankwright.web.desk import Desk
from village import small_job

FILES = (
    "sheets.pdf",
    "cut-list.csv",
    "cut-list.xlsx",
    "layout.json",
    "job.zip",
    "map-wall.svg",
    "map-wall.dxf",
)


def links(page: str) -> set[str]:
    """Give the files that a page leads to."""
    return set(re.findall(r'href="/jobs/\w+/paper/([^"?]+)', page))


def without_board(desk: Desk, job_id: str) -> None:
    """Take a board out of the tally that the layout needs."""
    desk.store.change(job_id, "board A taken out", lambda job: replace(job, boards=job.boards[1:]))


def test_every_paper_is_a_link_that_gives_a_file(client: TestClient, small: str) -> None:
    """A plain one, to be kept under the name of the job."""
    page = client.get(f"/jobs/{small}/paper")
    assert page.status_code == 200
    assert links(page.text) == {*FILES, "tally.csv", "tally.xlsx"}
    for file in links(page.text):
        got = client.get(f"/jobs/{small}/paper/{file}")
        assert got.status_code == 200, file
        assert got.headers["content-disposition"].startswith('attachment; filename="village hall'), file
        assert got.content, file


def test_what_is_looked_at_opens_in_the_browser(client: TestClient, small: str) -> None:
    """The pack, to print it from there."""
    page = client.get(f"/jobs/{small}/paper").text
    assert re.search(r'href="[^"]+sheets.pdf[^"]+look=1"[^>]+target="_blank"', page)
    got = client.get(f"/jobs/{small}/paper/sheets.pdf?look=1")
    assert got.headers["content-type"] == "application/pdf"
    assert got.headers["content-disposition"].startswith("inline;")


def test_paper_is_letter_with_inches_unless_another_is_chosen(client: TestClient, small: str) -> None:
    """A link for each; the one that holds is marked."""
    current = re.compile(r'paper\?paper=(\w+)" aria-current="true"')
    assert current.findall(client.get(f"/jobs/{small}/paper").text) == ["letter"]
    other = client.get(f"/jobs/{small}/paper?paper=a4").text
    assert current.findall(other) == ["a4"]
    assert "sheets.pdf?paper=a4" in other
    letter, a4 = (
        client.get(f"/jobs/{small}/paper/map-wall.svg?paper={size}").text for size in ("letter", "a4")
    )
    assert letter != a4


@pytest.mark.parametrize("path", ["paper", "paper/ready", "paper/sheets.pdf"])
def test_a_paper_of_no_size_is_refused(client: TestClient, small: str, path: str) -> None:
    """In a sentence that says which there are."""
    got = client.get(f"/jobs/{small}/{path}?paper=a5")
    assert got.status_code == 422
    assert "choose Letter or A4" in got.text


def test_the_pack_is_put_together_while_one_looks(client: TestClient, small: str) -> None:
    """A part of the page asks for that; it says when it is done, and how large it is."""
    assert f'hx-get="/jobs/{small}/paper/ready?paper=letter"' in client.get(f"/jobs/{small}/paper").text
    part = client.get(f"/jobs/{small}/paper/ready?paper=letter").text
    assert re.search(r"Put together: \d+\.\d MB", part)
    assert "<html" not in part


def test_without_a_layout_it_says_why_and_gives_the_tally(client: TestClient, desk: Desk) -> None:
    """And what to do next."""
    job_id = desk.store.add(bare_job("porch", *small_job().boards)).id
    page = client.get(f"/jobs/{job_id}/paper")
    assert page.status_code == 200
    assert "Nothing is laid out yet" in page.text
    assert f'href="/jobs/{job_id}/surfaces">Measure a surface' in page.text
    assert links(page.text) == {"tally.csv", "tally.xlsx"}
    assert f'href="/jobs/{job_id}/hazards"' in page.text
    for file in FILES:
        got = client.get(f"/jobs/{job_id}/paper/{file}")
        assert got.status_code == 422, file
        assert "lay it out first" in got.text
        assert "content-disposition" not in got.headers


def test_of_a_layout_that_fits_no_longer_there_is_no_paper(
    client: TestClient, desk: Desk, small: str
) -> None:
    """The page says what fits no longer, and leads to laying out anew."""
    without_board(desk, small)
    page = client.get(f"/jobs/{small}/paper")
    assert page.status_code == 409
    assert "board A, which is not in the tally" in page.text
    assert re.search(rf'href="/jobs/{small}/layout#anew">Lay it out anew', page.text)
    assert links(page.text) == {"tally.csv", "tally.xlsx"}
    for file in FILES:
        got = client.get(f"/jobs/{small}/paper/{file}")
        assert got.status_code == 409, file
        assert "board A" in got.text
        assert "plankwright now" not in got.text
        assert "content-disposition" not in got.headers
    part = client.get(f"/jobs/{small}/paper/ready").text
    assert "board A" in part


@pytest.mark.parametrize("file", ["map-ceiling.svg", "sheets.exe", "%2e%2e", "layout.json.bak", "job"])
def test_a_paper_that_is_none_is_not_there(client: TestClient, small: str, file: str) -> None:
    """Whatever is asked for."""
    assert client.get(f"/jobs/{small}/paper/{file}").status_code == 404


def test_the_whole_job_comes_as_one_file(client: TestClient, small: str) -> None:
    """With the results in it."""
    got = client.get(f"/jobs/{small}/paper/job.zip")
    assert 'filename="village hall.zip"' in got.headers["content-disposition"]
    with zipfile.ZipFile(BytesIO(got.content)) as archive:
        assert {"job.toml", "tally.csv", "out/layout.json", "out/sheets.pdf"} <= set(archive.namelist())


def test_a_spreadsheet_knows_the_csv_for_utf_8(client: TestClient, small: str) -> None:
    """By the mark that it begins with."""
    for file in ("tally.csv", "cut-list.csv"):
        assert client.get(f"/jobs/{small}/paper/{file}").content.startswith(b"\xef\xbb\xbf")
