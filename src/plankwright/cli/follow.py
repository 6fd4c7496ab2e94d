"""Follow a search: show how far it is, and let Ctrl-C keep the best so far instead of throwing it away.

The search runs in a thread of its own, because a solver that computes in native code holds up the thread that
called it, and Python hands a signal to the main thread only.
"""

import contextlib
import signal
import threading
from collections.abc import Callable, Iterator
from types import FrameType
from typing import Generic, TypeVar

from rich.console import Console
from rich.progress import BarColumn, TaskID, TextColumn
from rich.progress import Progress as Display

from plankwright.cli.talk import Talk
from plankwright.layout.result import Progress, Watch
from plankwright.measure import TapeStyle
from plankwright.workshop.tell_progress import tell_progress

Found = TypeVar("Found")

_LOOK_EVERY_S = 0.1
_STOPPING = "Stopping: the best layout so far is kept. Press Ctrl-C again to give it up."


def follow(search: Callable[[Watch], Found], talk: Talk, tape: TapeStyle) -> Found:
    """Run a search and follow it to its end.

    Parameters
    ----------
    search
        Takes somebody who watches; ends soon after that one says stop.
    talk
        How this run speaks.
    tape
        How areas are written.

    Returns
    -------
    Found
        What the search gives.

    Raises
    ------
    KeyboardInterrupt
        If Ctrl-C is pressed twice.
    """
    stop = threading.Event()
    with _shown(talk, tape) as report, _stopped_by_ctrl_c(stop, talk):
        errand = _Errand(search, Watch(report=report, stopped=stop.is_set))
        errand.start()
        while errand.is_alive():
            errand.join(_LOOK_EVERY_S)
    return errand.outcome()


class _Errand(threading.Thread, Generic[Found]):
    """A search in a thread that does not keep the program alive, and what it came to."""

    def __init__(self, search: Callable[[Watch], Found], watch: Watch) -> None:
        super().__init__(name="search", daemon=True)
        self._search = search
        self._watch = watch
        self._found: list[Found] = []
        self._error: BaseException | None = None

    def run(self) -> None:
        try:
            self._found.append(self._search(self._watch))
        except BaseException as error:  # noqa: BLE001 - handed on to whoever asks for the outcome
            self._error = error

    def outcome(self) -> Found:
        if self._error is not None:
            raise self._error
        return self._found[0]


@contextlib.contextmanager
def _stopped_by_ctrl_c(stop: threading.Event, talk: Talk) -> Iterator[None]:
    def on_signal(_number: int, _frame: FrameType | None) -> None:
        if stop.is_set():
            raise KeyboardInterrupt
        stop.set()
        talk.say(_STOPPING)

    if threading.current_thread() is not threading.main_thread():
        yield  # Signals are not ours to handle here.
        return
    before = signal.signal(signal.SIGINT, on_signal)
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, before)


@contextlib.contextmanager
def _shown(talk: Talk, tape: TapeStyle) -> Iterator[Callable[[Progress], None]]:
    if not talk.shows_progress:
        yield lambda _progress: None
        return
    columns = (
        TextColumn("{task.description}"),
        BarColumn(bar_width=20),
        TextColumn("{task.percentage:>3.0f} %"),
        TextColumn("{task.fields[stage]}: {task.fields[best]}"),
    )
    with Display(*columns, console=Console(stderr=True), transient=True) as display:
        rows: dict[str, TaskID] = {}

        def report(progress: Progress) -> None:
            if progress.surface_id not in rows:
                rows[progress.surface_id] = display.add_task(
                    progress.surface_id, total=1.0, stage="", best=""
                )
            display.update(
                rows[progress.surface_id],
                completed=progress.done,
                stage=progress.stage,
                best=tell_progress(progress, tape),
            )

        yield report
