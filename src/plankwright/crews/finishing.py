"""Begin work and take what finishes, in whatever order it does, until all has or somebody says stop."""

from collections.abc import Callable, Collection, Iterator
from functools import partial
from queue import Empty, SimpleQueue
from typing import Any, Protocol, TypeVar

_LOOK_EVERY_S = 0.1


class Promised(Protocol):
    """Work under way, in this machine's or in Dask's terms."""

    def add_done_callback(self, fn: Callable[[Any], object], /) -> object:
        """Have something called once the work has come to its end."""
        ...


Work = TypeVar("Work", bound=Promised)


def finishing(
    begin: Callable[[int], Work],
    count: int,
    *,
    ahead: int,
    stopped: Callable[[], bool],
    stop: Callable[[Collection[Work]], object],
    meanwhile: Callable[[], object],
) -> Iterator[tuple[int, Work]]:
    """Give each piece of work, with its place, once it has come to its end.

    Parameters
    ----------
    begin
        Begins the work of a place.
    count
        How many places there are.
    ahead
        So much may be begun and not finished: enough for nobody to be idle, few enough to be stopped soon.
    stopped
        Asked often; once it answers yes, no more is begun.
    stop
        Called then with what is under way; it must come to its end soon.
    meanwhile
        Called often, and once more before the last is given.
    """
    finished: SimpleQueue[int] = SimpleQueue()
    under_way: dict[int, Work] = {}
    begun, told = 0, False
    while True:
        if not told and stopped():
            told = True
            stop(tuple(under_way.values()))
        while not told and begun < count and len(under_way) < ahead:
            work = under_way[begun] = begin(begun)
            work.add_done_callback(partial(_note, finished, begun))
            begun += 1
        if not under_way:
            return
        try:
            place = finished.get(timeout=_LOOK_EVERY_S)
        except Empty:
            continue
        finally:
            meanwhile()
        yield place, under_way.pop(place)


def _note(finished: SimpleQueue[int], place: int, _done: object) -> None:
    finished.put(place)
