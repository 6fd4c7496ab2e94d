"""The first screens are light: all that comes over the network is counted, scripts and styles too."""

from dataclasses import replace

import pytest
from playwright.sync_api import Page, Request

from browser.entry_wall import laid_out
from browser.running_app import OpenApp

MOST_BYTES = 150_000
JOBS, BOARDS = 20, 500


@pytest.fixture
def full(app: OpenApp) -> str:
    """Keep twenty jobs of five hundred boards; give the path of one."""
    job = laid_out().job
    boards = tuple(replace(board, id=f"{time}-{board.id}") for time in range(BOARDS) for board in job.boards)[
        :BOARDS
    ]
    ids = [
        app.store.add(replace(job, boards=boards, definition={**job.definition, "name": f"wall {number}"})).id
        for number in range(JOBS)
    ]
    return f"/jobs/{ids[0]}"


@pytest.mark.parametrize("screen", ["", "tally"])
def test_what_comes_over_the_network(page: Page, full: str, screen: str) -> None:
    """With nothing in the browser's store."""
    asked: list[Request] = []
    page.on("requestfinished", lambda request: asked.append(request))  # noqa: PLW0108 - it keeps a note on whom it calls
    page.goto(f"{full}/{screen}" if screen else "/", wait_until="networkidle")
    sizes = [request.sizes() for request in asked]
    assert len(sizes) > 5
    assert sum(size["responseBodySize"] + size["responseHeadersSize"] for size in sizes) < MOST_BYTES
