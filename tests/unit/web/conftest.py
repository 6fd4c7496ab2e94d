"""Fixtures for asking the app as a browser does: a desk, a client on this machine, and two jobs."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from at_desk import keep_small_job, make_desk
from plankwright.web.app import make_app
from plankwright.web.desk import Desk
from plankwright.workshop.jobs.bring_job import example_job


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    """Give a desk on a store of its own; its searches are over as soon as they have begun."""
    return make_desk(tmp_path)


@pytest.fixture
def client(desk: Desk) -> Iterator[TestClient]:
    """Ask the app from this machine."""
    with TestClient(
        make_app(desk),
        base_url="http://localhost",
        client=("127.0.0.1", 50_000),
        follow_redirects=True,
        raise_server_exceptions=False,
    ) as asking:
        yield asking


@pytest.fixture
def example(desk: Desk) -> str:
    """Keep the example job, with nothing laid out; give its id."""
    return desk.store.add(example_job(desk.bench.files)).id


@pytest.fixture
def small(desk: Desk, tmp_path: Path) -> str:
    """Keep the small job with its layout, and work by that; give its id."""
    return keep_small_job(desk.store, tmp_path / "village").id
