"""A desk for the app on a store of its own, with searches that are over at once or wait to be told to end."""

import threading
from collections.abc import Callable
from functools import partial
from pathlib import Path

from plankwright import files
from plankwright.bootstrap import Bench
from plankwright.crews.trouble import CrewError
from plankwright.layout.crew import ALONE
from plankwright.store import open_book
from plankwright.web.desk import Desk
from plankwright.web.door import Door
from plankwright.web.searching import Begin, SearchesUnderWay
from plankwright.workshop.jobs.choose_layout import work_by
from plankwright.workshop.jobs.kept import KeptJob, KeptLayout, KeptSearch, Made
from plankwright.workshop.jobs.ports import Store
from plankwright.workshop.jobs.search_layout import Errand, Sight, search_layout
from plankwright.workshop.lay_out import Search
from village import StandInSearch, small_layout, small_result, write_small_job

WORD = "let-me-in"
"""What a phone must bring to the desk of the tests."""


class AtOnce:
    """A search that is done by whoever follows it, in this process.

    Parameters
    ----------
    bench
        Who searches.
    errand
        What to find.
    """

    def __init__(self, bench: Bench, errand: Errand) -> None:
        self._bench, self._errand = bench, errand
        self._enough = threading.Event()

    def stop(self) -> None:
        """Have it come to its end soon."""
        self._enough.set()

    def give_up(self) -> None:
        """End it at once."""
        self._enough.set()

    def follow(self, listen: Callable[[Sight], None]) -> KeptLayout:
        """Search."""
        bench = self._bench
        return search_layout(
            self._errand, listen, self._enough.is_set, search=bench.search, again=bench.again, crew=ALONE
        )


class Waiting:
    """A search that tells one sight and goes on until it is stopped or given up.

    Parameters
    ----------
    found
        What it gives when it is stopped.
    sight
        What it tells at first.
    """

    def __init__(self, found: KeptLayout, sight: Sight) -> None:
        self.found, self.sight = found, sight
        self.told = threading.Event()
        self.given_up = False
        self._end = threading.Event()

    def stop(self) -> None:
        """Have it come to its end with what it has found."""
        self._end.set()

    def give_up(self) -> None:
        """End it with nothing."""
        self.given_up = True
        self._end.set()

    def follow(self, listen: Callable[[Sight], None]) -> KeptLayout:
        """Tell what is seen, and wait to be told to end."""
        listen(self.sight)
        self.told.set()
        self._end.wait()
        if self.given_up:
            raise CrewError("The process that did it ended before its time.")
        return self.found


class SearchesAtOnce(SearchesUnderWay):
    """Searches that are over, and kept, as soon as they have begun."""

    def begin(self, job_id: str, errand: Errand, wishes: str = "") -> KeptSearch:
        """Begin a search, and wait for its end."""
        search = super().begin(job_id, errand, wishes)
        for thread in threading.enumerate():
            if thread.name == f"search {search.id}":
                thread.join()
        return search


def found_small() -> KeptLayout:
    """Give the layout of the small job as a search would give it, without an answer."""
    return KeptLayout(layout=small_layout(), made=Made.SEARCHED)


def waiting_search() -> Waiting:
    """Give a search of the small job that waits to be told to end."""
    return Waiting(
        found_small(), Sight(stage="laying courses", done=0.5, told="all is covered", best=small_layout())
    )


def make_desk(
    folder: Path,
    *,
    search: Search | None = None,
    begin: Begin | None = None,
    address: str = "",
    word: str = WORD,
) -> Desk:
    """Give a desk on a store of its own.

    Parameters
    ----------
    folder
        Where the store is made.
    search
        Who searches; one that finds the layout of the small job when left out.
    begin
        Begins a search that goes on by itself; one that is over at once when left out.
    address, word
        As of a `Desk`.
    """
    bench = Bench(files=files, search=search or StandInSearch(small_result()))
    store = open_book(folder / "jobs.db", files)
    searches = (
        SearchesAtOnce(store, partial(AtOnce, bench)) if begin is None else SearchesUnderWay(store, begin)
    )
    return Desk(bench=bench, store=store, searches=searches, address=address, door=Door(word))


def small_kept(folder: Path) -> KeptJob:
    """Give the small job as it would be kept, written into a folder and read from there."""
    write_small_job(folder)
    return KeptJob(
        id="", definition=files.definition_of(folder), boards=tuple(files.read_job(folder).job.boards)
    )


def keep_small_job(store: Store, folder: Path) -> KeptJob:
    """Keep the small job with its layout, and work by that."""
    kept = store.add(small_kept(folder))
    laid = store.keep_layout(kept.id, found_small())
    return store.change(kept.id, "a new layout taken", lambda job: work_by(job, laid.id))
