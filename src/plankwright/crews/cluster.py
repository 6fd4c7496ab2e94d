"""Other machines, by way of a Dask scheduler and its workers."""

import contextlib
import logging
import pickle
import time
from collections.abc import Callable, Collection, Iterator, Sequence
from concurrent.futures import CancelledError
from importlib.metadata import version
from queue import Empty, SimpleQueue
from typing import TYPE_CHECKING, Any, TypeVar
from uuid import uuid4

from plankwright.crews.finishing import finishing
from plankwright.crews.trouble import CrewError
from plankwright.layout.result import Progress, Watch

if TYPE_CHECKING:
    from distributed import Client, Future

Common = TypeVar("Common")
Given = TypeVar("Given")
Found = TypeVar("Found")

_OURS = "plankwright"
_LOGGERS = ("distributed", "distributed.client")
"""The library gives each of these a level of its own."""

_AHEAD = 64
"""At least so much is begun ahead, so that workers that come later have something to do as well."""

_EVERY_S = 1.0
"""No more often does work on a worker tell how far it is, and ask whether it is enough."""


class Cluster:
    """Does work on the workers of a Dask scheduler.

    Parameters
    ----------
    address
        Of the scheduler, such as `tcp://192.0.2.7:8786`.
    patience_s
        How long to wait for the scheduler, and then for a first worker of it. [s]
    """

    def __init__(self, address: str, *, patience_s: float = 10.0) -> None:
        self.address = address
        self.patience_s = patience_s

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
            If no scheduler is at the address, it has no workers, they lack this program, or they go away.
        """
        with self._client() as client:
            from distributed import Event  # noqa: PLC0415 - an extra that most do without

            errand = f"{_OURS}-{uuid4().hex}"
            told: SimpleQueue[bytes] = SimpleQueue()
            client.subscribe_topic(errand, lambda event: told.put(event[1]))
            # It goes to each worker once, not with each piece of the work.
            [shared] = client.scatter([common], broadcast=True, hash=False)
            ahead = max(_AHEAD, 2 * sum(client.nthreads().values()))

            def begin(place: int) -> "Future[Any]":
                return client.submit(_do, work, shared, given[place], errand, pure=False)

            def stop(_under_way: "Collection[Future[Any]]") -> None:
                Event(errand, client).set()

            def hand_on() -> None:
                with contextlib.suppress(Empty):
                    while True:
                        watch.report(pickle.loads(told.get_nowait()))  # noqa: S301 - as all that workers give

            for place, done in finishing(
                begin, len(given), ahead=ahead, stopped=watch.stopped, stop=stop, meanwhile=hand_on
            ):
                if not done.cancelled():
                    for found in done.result():
                        yield place, found
                elif not watch.stopped():
                    raise self._gone()

    @contextlib.contextmanager
    def _client(self) -> "Iterator[Client]":
        client = self._connected()
        with _hushed(), self._told_when_gone():
            try:
                self._demand_workers(client)
                yield client
            finally:
                client.close()

    def _connected(self) -> "Client":
        try:
            from distributed import Client  # noqa: PLC0415 - an extra that most do without
            from distributed.comm.addressing import get_address_host_port  # noqa: PLC0415 - as above
        except ImportError as missing:
            raise CrewError(
                "To work on other machines, Dask must be there: install plankwright with its extra “cluster”."
            ) from missing
        try:
            get_address_host_port(self.address, strict=False)
        except ValueError as trouble:
            raise CrewError(
                f"“{self.address}” is no address of a Dask scheduler: it looks like tcp://192.0.2.7:8786."
            ) from trouble
        try:
            return Client(self.address, timeout=self.patience_s, set_as_default=False)
        except Exception as trouble:  # What answers there may be anything.
            raise CrewError(
                f"No Dask scheduler answers at {self.address}: see that one runs there, and that the address "
                "is right."
            ) from trouble

    def _demand_workers(self, client: "Client") -> None:
        try:
            client.wait_for_workers(1, timeout=self.patience_s)
        except TimeoutError as trouble:
            raise CrewError(
                f"The Dask scheduler at {self.address} has no workers: start some with “dask worker "
                f"{self.address}”."
            ) from trouble
        ours = _ours()
        answers: dict[str, Any] = client.run(version, _OURS, on_error="return")
        others = sorted({str(each) for each in answers.values() if each != ours})
        if others:
            raise CrewError(
                f"Not all workers of the Dask scheduler at {self.address} have plankwright {ours}: install "
                "it on each of them, as here."
            )

    @contextlib.contextmanager
    def _told_when_gone(self) -> Iterator[None]:
        from distributed import KilledWorker  # noqa: PLC0415 - an extra that most do without
        from distributed.comm.core import CommClosedError  # noqa: PLC0415 - as above

        try:
            yield
        except (KilledWorker, CommClosedError, CancelledError) as trouble:
            raise self._gone() from trouble

    def _gone(self) -> CrewError:
        return CrewError(
            f"The Dask scheduler at {self.address} or its workers went away before all was done: there may "
            "be too little memory on them."
        )


def _do(
    work: Callable[[Common, Given, Watch], Found], common: Common, each: Given, errand: str
) -> tuple[Found, ...]:
    """Do the work on a worker; nothing once it is enough."""
    line = _Line(errand)
    return () if line.enough() else (work(common, each, Watch(line.tell, line.enough)),)


class _Line:
    """The line from a worker to whoever sent it on an errand."""

    def __init__(self, errand: str) -> None:
        from distributed import Event, get_worker  # noqa: PLC0415 - an extra that most do without

        self._errand, self._worker, self._event = errand, get_worker(), Event(errand)
        self._told = self._asked = -_EVERY_S
        self._enough = False

    def tell(self, progress: Progress) -> None:
        now = time.monotonic()
        if now >= self._told + _EVERY_S:
            self._told = now
            self._worker.log_event(self._errand, pickle.dumps(progress))

    def enough(self) -> bool:
        now = time.monotonic()
        if not self._enough and now >= self._asked + _EVERY_S:
            self._asked = now
            self._enough = bool(self._event.is_set())
        return self._enough


@contextlib.contextmanager
def _hushed() -> Iterator[None]:
    """Keep the library from showing tracebacks beside the sentence that we say."""
    loggers = [logging.getLogger(name) for name in _LOGGERS]
    levels = [logger.level for logger in loggers]
    try:
        for logger in loggers:
            logger.setLevel(logging.CRITICAL + 1)
        yield
    finally:
        for logger, level in zip(loggers, levels, strict=True):
            logger.setLevel(level)


def _ours() -> str:
    return version(_OURS)
