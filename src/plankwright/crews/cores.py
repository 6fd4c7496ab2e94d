"""All cores of this machine: a process for each, as the search holds up the one that it runs in."""

import contextlib
import os
import signal
import threading
from collections.abc import Callable, Collection, Iterator, Sequence
from concurrent.futures import Future, ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from dataclasses import dataclass
from multiprocessing import get_context, parent_process
from multiprocessing.queues import Queue
from multiprocessing.synchronize import Event
from queue import Empty
from typing import Any, TypeVar

from plankwright.crews.finishing import finishing
from plankwright.crews.trouble import CrewError
from plankwright.layout.crew import ALONE
from plankwright.layout.result import Progress, Watch

Common = TypeVar("Common")
Given = TypeVar("Given")
Found = TypeVar("Found")

_MOST = 61
"""Windows waits for no more processes at once."""

_ENDED = (
    "A process at work ended before its time: there may be too little memory for so many at once. In a "
    "script of your own, call this below “if __name__ == '__main__':”, as every process reads the script "
    "anew."
)


class Cores:
    """Does work in as many processes as there are cores.

    Parameters
    ----------
    count
        How many processes; as many as this one may use cores when left out.
    """

    def __init__(self, count: int | None = None) -> None:
        self.count = min(_MOST, count or _cores())

    def share_out(
        self,
        work: Callable[[Common, Given, Watch], Found],
        common: Common,
        given: Sequence[Given],
        *,
        watch: Watch,
    ) -> Iterator[tuple[int, Found]]:
        """Do the work; parameters are those of `Crew`.

        Raises
        ------
        CrewError
            If a process ends before its time.
        """
        count = min(self.count, len(given))
        if count <= 1:
            yield from ALONE.share_out(work, common, given, watch=watch)
            return
        # Processes are begun afresh: a copy of one in which threads and solvers are at work may hang.
        context = get_context("spawn")
        enough, told = context.Event(), context.Queue()
        pool = ProcessPoolExecutor(count, context, _begin, (_Errand(work, common, enough, told),))

        def begin(place: int) -> "Future[Any]":
            with out_of_reach_of_ctrl_c():
                return pool.submit(_do, given[place])

        def stop(under_way: Collection["Future[Any]"]) -> None:
            enough.set()
            for each in under_way:
                each.cancel()

        def hand_on() -> None:
            with contextlib.suppress(Empty):
                while True:
                    watch.report(told.get_nowait())

        try:
            for place, done in finishing(
                begin, len(given), ahead=2 * count, stopped=watch.stopped, stop=stop, meanwhile=hand_on
            ):
                if not done.cancelled():
                    yield place, done.result()
        except BrokenProcessPool as trouble:
            raise CrewError(_ENDED) from trouble
        finally:
            enough.set()
            pool.shutdown(wait=True, cancel_futures=True)
            told.close()


def _cores() -> int:
    try:
        return len(os.sched_getaffinity(0))
    except AttributeError:  # Only Linux tells how many of them this process may use.
        return os.cpu_count() or 1


@contextlib.contextmanager
def out_of_reach_of_ctrl_c() -> Iterator[None]:
    """Begin processes that Ctrl-C does not reach: the one that began them tells them when it is enough."""
    try:
        before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
    except AttributeError:  # There is no such thing on Windows.
        yield
        return
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)


@dataclass(frozen=True, slots=True)
class _Errand:
    """What a process is for."""

    work: Callable[[Any, Any, Watch], Any]
    common: Any
    enough: Event
    told: "Queue[Progress]"


_ERRAND: list[_Errand] = []
"""Of this process, once it has begun; it goes there once and not with each piece of the work."""


def _begin(errand: _Errand) -> None:
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    threading.Thread(target=end_with_parent, daemon=True).start()
    errand.told.cancel_join_thread()  # What nobody is told any more must not keep the process.
    _ERRAND[:] = [errand]


def _do(each: object) -> object:
    (errand,) = _ERRAND
    return errand.work(errand.common, each, Watch(errand.told.put, errand.enough.is_set))


def end_with_parent() -> None:
    """End this process with the one that began it, also when that is ended at once."""
    parent = parent_process()
    if parent is not None:
        parent.join()
        os._exit(1)
