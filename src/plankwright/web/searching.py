"""Searches under way, each in a process of its own, and what becomes of what they find."""

import logging
import threading
import time
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Protocol

from plankwright.errors import PlankwrightError
from plankwright.workshop.jobs.choose_layout import TAKEN, work_by
from plankwright.workshop.jobs.kept import KeptJob, KeptLayout, KeptSearch, NotThereError, SearchState
from plankwright.workshop.jobs.ports import Store
from plankwright.workshop.jobs.search_layout import Errand, Sight

_LOG = logging.getLogger(__name__)
_EVERY_S = 0.4
"""No oftener is it written down how far a search is, but for a better layout. [s]"""


class Running(Protocol):
    """Work in a process of its own; `crews.apart.Apart` is one."""

    def stop(self) -> None:
        """Have it come to its end soon, with what it has found."""
        ...

    def give_up(self) -> None:
        """End it at once."""
        ...

    def follow(self, listen: Callable[[Sight], None]) -> KeptLayout:
        """Wait for its end, and hand on what it tells meanwhile."""
        ...


Begin = Callable[[Errand], Running]
"""Begins a search in a process of its own."""


@dataclass(slots=True)
class _UnderWay:
    search: KeptSearch
    errand: Errand
    running: Running
    thread: threading.Thread | None = None
    stopping: bool = False
    given_up: bool = False


class SearchesUnderWay:
    """Begins searches, follows them, and keeps what they find.

    Parameters
    ----------
    store
        The book of jobs.
    begin
        Who begins a search.
    """

    def __init__(self, store: Store, begin: Begin) -> None:
        self._store, self._begin = store, begin
        self._by_job: dict[str, _UnderWay] = {}
        self._lock, self._beginning = threading.Lock(), threading.Lock()

    def begin(self, job_id: str, errand: Errand, wishes: str = "") -> KeptSearch:
        """Begin a search for a job; one that is under way for it already is given up.

        Parameters
        ----------
        job_id
            The job.
        errand
            What to find.
        wishes
            What it has to go round, to be kept with it.
        """
        with self._beginning:
            self.give_up(job_id)
            search = self._store.begin_search(
                KeptSearch(
                    job_id=job_id, made=errand.made, effort=errand.effort, seed=errand.seed, wishes=wishes
                )
            )
            under_way = _UnderWay(search, errand, self._running(search, errand))
            under_way.thread = threading.Thread(
                target=self._follow, args=(under_way,), name=f"search {search.id}", daemon=True
            )
            with self._lock:
                self._by_job[job_id] = under_way
            under_way.thread.start()
        return search

    def stop(self, job_id: str) -> None:
        """Have the search for a job come to its end soon, and keep the best that it has."""
        under_way = self._of(job_id)
        if under_way is not None:
            under_way.stopping = True
            under_way.running.stop()
        else:
            self._end_unfollowed(job_id)

    def give_up(self, job_id: str) -> None:
        """End the search for a job at once, with nothing kept but the best so far."""
        under_way = self._of(job_id)
        if under_way is not None:
            under_way.given_up = True
            under_way.running.give_up()
            self._wait(under_way)

    def give_up_all(self) -> None:
        """End every search at once, as when the app is closed; each is kept as cut off."""
        for job_id in list(self._by_job):
            self.give_up(job_id)

    def _running(self, search: KeptSearch, errand: Errand) -> Running:
        try:
            return self._begin(errand)
        except BaseException:
            trouble = PlankwrightError.default_message
            self._store.end_search(replace(search, state=SearchState.FAILED, trouble=trouble))
            raise

    def _end_unfollowed(self, job_id: str) -> None:
        """Keep a search as cut off whose end could not be written down, as when the disk was full."""
        last = self._store.last_search(job_id)
        if last is not None and last.state is SearchState.RUNNING:
            self._store.end_search(replace(last, state=SearchState.CUT_OFF))

    def _of(self, job_id: str) -> _UnderWay | None:
        with self._lock:
            return self._by_job.get(job_id)

    @staticmethod
    def _wait(under_way: _UnderWay) -> None:
        if under_way.thread is not None:
            under_way.thread.join()

    def _follow(self, under_way: _UnderWay) -> None:
        search = under_way.search
        listener = _Listener(self._store, search.id)
        ended = search
        try:
            found = under_way.running.follow(listener.hear)
            kept = self._store.keep_layout(search.job_id, found)
            self._store.change(search.job_id, TAKEN[search.made], _taking(kept.id, under_way.errand))
            state = SearchState.STOPPED if under_way.stopping else SearchState.DONE
            ended = replace(search, state=state, layout_id=kept.id)
        except NotThereError:
            ended = replace(search, state=SearchState.FAILED, trouble="The job was put away meanwhile.")
        except PlankwrightError as trouble:
            ended = replace(search, state=SearchState.FAILED, trouble=str(trouble))
        except Exception:  # noqa: BLE001 - whatever it is, the search must be kept as ended
            _LOG.exception("A search could not be followed to its end")
            ended = replace(search, state=SearchState.FAILED, trouble=PlankwrightError.default_message)
        finally:
            if under_way.given_up and ended.state is SearchState.FAILED:
                ended = replace(search, state=SearchState.CUT_OFF)
            self._keep_end(ended)
            with self._lock:
                if self._by_job.get(search.job_id) is under_way:
                    del self._by_job[search.job_id]

    def _keep_end(self, ended: KeptSearch) -> None:
        try:
            self._store.end_search(ended)
        except PlankwrightError:
            _LOG.exception("The end of a search could not be written down")


def _taking(layout_id: int, errand: Errand) -> Callable[[KeptJob], KeptJob]:
    """Have the job worked by a layout, unless something was marked, or a mark taken back, meanwhile."""
    return lambda kept: work_by(kept, layout_id) if kept.work == errand.work else kept


class _Listener:
    """Writes down how far a search is, and not too often."""

    def __init__(self, store: Store, search_id: int) -> None:
        self._store, self._search_id = store, search_id
        self._written = float("-inf")

    def hear(self, sight: Sight) -> None:
        now = time.monotonic()
        if sight.best is None and now < self._written + _EVERY_S:
            return
        self._written = now
        self._store.note_search(
            self._search_id, stage=sight.stage, done=sight.done, told=sight.told, best=sight.best
        )
