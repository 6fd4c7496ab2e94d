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

from rich.console import Console, RenderableType
from rich.progress import BarColumn, TaskID, TextColumn
from rich.progress import Progress as Rows
from rich.text import Text

from plankwright.cli.leaving import SEARCH_THREAD
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
    with _shown(talk, tape) as display, _stopped_by_ctrl_c(stop, display or talk):
        report = _nobody_looks if display is None else display.report
        errand = _Errand(search, Watch(report=report, stopped=stop.is_set))
        errand.start()
        while errand.is_alive():
            errand.join(_LOOK_EVERY_S)
    return errand.outcome()


class _Errand(threading.Thread, Generic[Found]):
    """A search in a thread that does not keep the program alive, and what it came to."""

    def __init__(self, search: Callable[[Watch], Found], watch: Watch) -> None:
        super().__init__(name=SEARCH_THREAD, daemon=True)
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
def _stopped_by_ctrl_c(stop: threading.Event, whom: "Talk | _Display") -> Iterator[None]:
    def on_signal(_number: int, _frame: FrameType | None) -> None:
        if stop.is_set():
            raise KeyboardInterrupt
        stop.set()
        whom.say(_STOPPING)

    if threading.current_thread() is not threading.main_thread():
        yield  # Signals are not ours to handle here.
        return
    before = signal.signal(signal.SIGINT, on_signal)
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, before)


def _nobody_looks(_progress: Progress) -> None:
    """Take note of nothing."""


@contextlib.contextmanager
def _shown(talk: Talk, tape: TapeStyle) -> "Iterator[_Display | None]":
    if not talk.shows_progress:
        yield None
        return
    with _Display(tape) as display:
        yield display


class _Display(Rows):
    """A row for each surface with how far its search is; below them the best so far of the last one."""

    def __init__(self, tape: TapeStyle) -> None:
        self._tape = tape
        self._ids: dict[str, TaskID] = {}
        self._best = self._said = ""
        super().__init__(
            TextColumn("{task.description}", markup=False),
            BarColumn(bar_width=20),
            TextColumn("{task.percentage:>3.0f} %"),
            TextColumn("{task.fields[stage]}", markup=False),
            console=Console(stderr=True),
            transient=True,
        )

    def report(self, progress: Progress) -> None:
        surface, stage = progress.surface_id, progress.stage
        if surface not in self._ids:
            self._ids[surface] = self.add_task(surface, total=1.0, stage=stage)
        self._best = tell_progress(progress, self._tape)
        self.update(self._ids[surface], completed=progress.done, stage=stage)

    def say(self, text: str) -> None:
        """Show a text with the next picture, not at once: a signal may have come amid the drawing."""
        self._said = text

    def get_renderables(self) -> Iterator[RenderableType]:
        yield self.make_tasks_table(self.tasks)
        yield from (Text(f"  {line}") for line in (self._best, self._said) if line)
