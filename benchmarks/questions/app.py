"""The app at its fullest: how long it takes to answer, and how much comes over the network."""

import tempfile
from collections.abc import Callable, Mapping, Sequence
from functools import partial
from pathlib import Path

from starlette.testclient import TestClient

from benchmarks.clock import Moment
from benchmarks.families import app
from benchmarks.family import Family, Figure, Row, Rows
from benchmarks.instance import Instance
from benchmarks.job_folder import write_job
from benchmarks.spread import middle
from plankwright import files
from plankwright.bootstrap import begin_search, set_up_bench
from plankwright.store import Book, open_book
from plankwright.web.app import make_app
from plankwright.web.desk import Desk
from plankwright.web.searching import SearchesUnderWay
from plankwright.workshop.jobs.kept import KeptJob
from plankwright.workshop.jobs.start_job import copy_of

LIMIT_S = 0.3
"""What the figures must reach."""

JOBS = 20
"""In the list. [jobs]"""

TIMES = 25
"""So often each page is asked for; the mean counts, since a clock of processors is coarse."""

SCREENS: Mapping[str, str] = {
    "list of jobs": "/",
    "job": "/jobs/{}",
    "tally": "/jobs/{}/tally",
    "how far the boards reach": "/jobs/{}/tally/count",
    "surfaces": "/jobs/{}/surfaces",
}
"""What is asked for."""


def measure(instance: Instance, _effort: object) -> Row:
    """Keep the job many times over, ask for its screens, and read the same boards from a file beside it.

    Parameters
    ----------
    instance
        With many boards.
    """
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made)
        _, tally = write_job(instance.job, folder)
        definition = files.definition_of(folder)
        kept = KeptJob(id="", definition=definition, boards=instance.job.boards)
        unit = files.read_definition(definition, ()).unit
        store = open_book(folder / "jobs.db", files)
        ids = [store.add(kept if number == 0 else copy_of(kept)).id for number in range(JOBS)]
        with _asking(store) as client:
            pages = {name: path.format(ids[0]) for name, path in SCREENS.items()}
            return {
                "boards": len(instance.job.boards),
                "page_s": {name: _mean_s(partial(_get, client, path)) for name, path in pages.items()},
                "page_bytes": {name: _transferred(client, path) for name, path in pages.items()},
                "read_tally_s": _mean_s(lambda: files.read_tally(tally, unit=unit)),
                "failed": "",
            }


def _asking(store: Book) -> TestClient:
    desk = Desk(bench=set_up_bench(), store=store, searches=SearchesUnderWay(store, begin_search))
    return TestClient(make_app(desk), base_url="http://localhost", client=("127.0.0.1", 50_000))


def _get(client: TestClient, path: str) -> bytes:
    return client.get(path).raise_for_status().content


def _mean_s(work: Callable[[], object]) -> float:
    """Give how long some work takes, once it was done before. [s]"""
    work()
    start = Moment()
    for _ in range(TIMES):
        work()
    return start.since_s() / TIMES


def _transferred(client: TestClient, path: str) -> int:
    """Give how much comes over the network for a page, packed as it comes. [bytes]"""
    answer = client.get(path).raise_for_status()
    return int(answer.headers.get("content-length") or answer.num_bytes_downloaded)


def _figures(rows: Rows, _others: Mapping[str, Rows]) -> Sequence[Figure]:
    figures = []
    for name in SCREENS:
        times = [row["page_s"][name] for row in rows]
        as_often = [row["page_s"][name] / row["read_tally_s"] for row in rows]
        sizes = [row["page_bytes"][name] / 1000 for row in rows]
        figures += [
            Figure(
                name=f"{name}: server time",
                must=f"≤ {LIMIT_S} s",
                value=middle(times, "{:.3f} s"),
                met=max(times) <= LIMIT_S,
            ),
            Figure(
                name=f"{name}: server time, as a multiple of reading the same boards from tally.csv",
                value=middle(as_often, "{:.2f}"),
            ),
            Figure(name=f"{name}: the page itself, packed", value=middle(sizes, "{:.1f} kB")),
        ]
    return figures


APP = Family(
    name="app",
    what=f"The app with {JOBS} jobs of {app.BOARDS} boards each, asked for its pages.",
    count=3,
    effort="glance",
    instance=app.instance,
    measure=measure,
    figures=_figures,
    fresh=False,
)
