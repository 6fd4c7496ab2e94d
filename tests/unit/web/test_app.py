"""The app put together: begun and closed without losing anything, and every page of it answered."""

import re
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from at_desk import make_desk, waiting_search
from kept_jobs import whole_job
from plankwright.web.app import make_app
from plankwright.web.desk import Desk
from plankwright.web.screens import ROUTES
from plankwright.workshop.jobs.kept import KeptSearch, Made, SearchState
from plankwright.workshop.jobs.search_layout import Errand
from village import small_job

ERRAND = Errand(job=small_job(), made=Made.SEARCHED, effort="glance")
PLACES = {
    "job_id": "{job_id}",
    "place": "0",
    "number": "1",
    "layout_id": "1",
    "search_id": "1",
    "board_id": "A",
    "surface_id": "wall",
    "label": "1a",
    "word": "let-me-in",
}
"""What stands for a part of an address that is not fixed; of any other, something that is hardly there."""


def pages() -> list[str]:
    """Give the address of every page that can be looked at."""
    return sorted({route.path for route in ROUTES if "GET" in (route.methods or ())})


def filled(path: str, job_id: str) -> str:
    """Give an address with its parts filled in."""

    def part(match: re.Match[str]) -> str:
        name = match[1].partition(":")[0]
        return PLACES.get(name, "1").format(job_id=job_id)

    return re.sub(r"\{([^}]+)\}", part, path)


def test_a_search_that_the_last_run_left_is_told_as_cut_off(tmp_path: Path) -> None:
    """When the app was killed in the middle of it."""
    desk = make_desk(tmp_path)
    job_id = desk.store.add(whole_job()).id
    search = desk.store.begin_search(KeptSearch(job_id=job_id, made=Made.SEARCHED, effort="glance"))
    with TestClient(make_app(desk), base_url="http://localhost", client=("127.0.0.1", 1)):
        assert desk.store.search(search.id).state is SearchState.CUT_OFF


def test_a_search_under_way_ends_with_the_app(tmp_path: Path) -> None:
    """No process is left behind, and it is told as cut off."""
    running = waiting_search()
    desk = make_desk(tmp_path, begin=lambda _errand: running)
    job_id = desk.store.add(whole_job()).id
    with TestClient(make_app(desk), base_url="http://localhost", client=("127.0.0.1", 1)):
        search = desk.searches.begin(job_id, ERRAND)
        assert desk.store.search(search.id).state is SearchState.RUNNING
    assert running.given_up
    assert desk.store.search(search.id).state is SearchState.CUT_OFF


def test_it_is_asked_for_by_the_addresses_that_it_was_told(desk: Desk) -> None:
    """Besides those of this machine."""
    app = make_app(desk, ["192.168.1.2"])
    with TestClient(app, base_url="http://localhost", client=("127.0.0.1", 1)) as asking:
        assert asking.get("/", headers={"host": "192.168.1.2:8642"}).status_code == 200
        assert asking.get("/", headers={"host": "192.168.1.3:8642"}).status_code == 403


def test_what_pages_look_and_act_by_comes_from_here(client: TestClient) -> None:
    """Every sheet and script that the first page names is there, and is what it says it is."""
    page = client.get("/").text
    named = re.findall(r'(?:href|src)="(/static/[^"]+)"', page)
    assert len(named) > 5
    for address in named:
        answer = client.get(address)
        assert answer.status_code == 200, address
        kind = {"css": "text/css", "js": "javascript", "svg": "image/svg+xml"}[address.rpartition(".")[2]]
        assert kind in answer.headers["content-type"]


@pytest.mark.parametrize(
    "path", ["/static/", "/static/../app.py", "/static/%2e%2e/app.py", "/static/nothing.css"]
)
def test_nothing_else_comes_from_there(client: TestClient, path: str) -> None:
    """Neither a list of what is there nor what lies beside it."""
    assert client.get(path).status_code in {404, 405}


def test_long_pages_are_packed_for_the_way(client: TestClient) -> None:
    """A phone in a barn has a slow connection."""
    assert client.get("/", headers={"accept-encoding": "gzip"}).headers["content-encoding"] == "gzip"


def test_every_address_is_answered_by_one_page() -> None:
    """Two would hide each other."""
    answered = [(method, route.path) for route in ROUTES for method in route.methods or ()]
    assert len(answered) == len(set(answered))


@pytest.mark.parametrize("path", pages())
@pytest.mark.parametrize("whose", ["example", "small", "nobody"])
def test_no_page_is_ever_a_fault(
    client: TestClient, request: pytest.FixtureRequest, path: str, whose: str
) -> None:
    """With a job that has just begun, one that is laid out, and one that is not there."""
    job_id = "nobody" if whose == "nobody" else request.getfixturevalue(whose)
    answer = client.get(filled(path, job_id))
    assert answer.status_code < 500, answer.text[-2_000:]
    if whose == "nobody" and "{job_id}" in path:
        assert answer.status_code == 404
    assert answer.content


@pytest.mark.parametrize("path", [path for path in pages() if "{" in path and path.count("{") > 1])
@pytest.mark.parametrize("odd", ["-1", "99999999999999999999999", "%00", "%F0%9F%AA%9A", "..", "0" * 5_000])
def test_odd_parts_of_an_address_are_no_fault(client: TestClient, small: str, path: str, odd: str) -> None:
    """Something is not there; nothing worse."""
    address = re.sub(r"\{(?!job_id)[^}]+\}", odd, path).replace("{job_id}", small)
    assert client.get(address).status_code < 500
