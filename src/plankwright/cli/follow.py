"""Follow a search: show how far it is, and let Ctrl-C keep the best so far instead of throwing it away.

The search runs in a thread of its own, because a solver that computes in native code holds up the thread that
called it, and Python hands a signal to the main thread only.
"""

import contextlib
import signal
import threading
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from types import FrameType
from typing import Generic, TypeAlias, TypeVar

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
_MOST_ROWS = 12
"""No more rows than these stand at a time, as far as some are of what is done."""

_STOPPING = "Stopping: the best layout so far is kept. Press Ctrl-C again to give it up."


@dataclass(frozen=True, slots=True)
class Seen:
    """What is shown of an errand.

    Parameters
    ----------
    row
        What is being done: each name has a row of its own.
    stage
        How far that is, in a few plain words.
    done
        The same from 0 to 1.
    line
        What stands below the rows.
    """

    row: str
    stage: str
    done: float
    line: str = ""


Errand: TypeAlias = Callable[[Callable[[Seen], None], Callable[[], bool]], Found]
"""Something that takes long: it is told whom to show how far it is, and whom to ask whether it is to stop."""


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

    def errand(show: Callable[[Seen], None], stopped: Callable[[], bool]) -> Found:
        def report(progress: Progress) -> None:
            line = tell_progress(progress, tape)
            show(Seen(progress.surface_id, progress.stage, progress.done, line))

        return search(Watch(report=report, stopped=stopped))

    return follow_errand(errand, talk, _STOPPING)


def follow_errand(errand: Errand[Found], talk: Talk, stopping: str) -> Found:
    """Run something that takes long and follow it to its end.

    Parameters
    ----------
    errand
        Ends soon after it is told to stop.
    talk
        How this run speaks.
    stopping
        What to say when Ctrl-C is pressed for the first time.

    Returns
    -------
    Found
        What it gives.

    Raises
    ------
    KeyboardInterrupt
        If Ctrl-C is pressed twice.
    """
    stop = threading.Event()
    with _shown(talk) as display, _stopped_by_ctrl_c(stop, display or talk, stopping):
        show = _nobody_looks if display is None else display.show
        running = _Running(errand, show, stop.is_set)
        running.start()
        while running.is_alive():
            running.join(_LOOK_EVERY_S)
    return running.outcome()


class _Running(threading.Thread, Generic[Found]):
    """An errand in a thread that does not keep the program alive, and what it came to."""

    def __init__(
        self, errand: Errand[Found], show: Callable[[Seen], None], stopped: Callable[[], bool]
    ) -> None:
        super().__init__(name=SEARCH_THREAD, daemon=True)
        self._errand = errand
        self._show, self._stopped = show, stopped
        self._found: list[Found] = []
        self._error: BaseException | None = None

    def run(self) -> None:
        try:
            self._found.append(self._errand(self._show, self._stopped))
        except BaseException as error:  # noqa: BLE001 - handed on to whoever asks for the outcome
            self._error = error

    def outcome(self) -> Found:
        if self._error is not None:
            raise self._error
        return self._found[0]


@contextlib.contextmanager
def _stopped_by_ctrl_c(stop: threading.Event, whom: "Talk | _Display", stopping: str) -> Iterator[None]:
    def on_signal(_number: int, _frame: FrameType | None) -> None:
        if stop.is_set():
            raise KeyboardInterrupt
        stop.set()
        whom.say(stopping)

    if threading.current_thread() is not threading.main_thread():
        yield  # Signals are not ours to handle here.
        return
    before = signal.signal(signal.SIGINT, on_signal)
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, before)


def _nobody_looks(_seen: Seen) -> None:
    """Take note of nothing."""


@contextlib.contextmanager
def _shown(talk: Talk) -> "Iterator[_Display | None]":
    if not talk.shows_progress:
        yield None
        return
    with _Display() as display:
        yield display


class _Display(Rows):
    """A row for each thing that is done with how far it is; below them what was said last."""

    def __init__(self) -> None:
        self._ids: dict[str, TaskID] = {}
        self._line = self._said = ""
        super().__init__(
            TextColumn("{task.description}", markup=False),
            BarColumn(bar_width=20),
            TextColumn("{task.percentage:>3.0f} %"),
            TextColumn("{task.fields[stage]}", markup=False),
            console=Console(stderr=True),
            transient=True,
        )

    def show(self, seen: Seen) -> None:
        """Show how far it is, in the row of its name."""
        if seen.row not in self._ids:
            self._ids[seen.row] = self.add_task(seen.row, total=1.0, stage=seen.stage)
        self._line = f"{seen.row}: {seen.line}" if seen.line and len(self._ids) > 1 else seen.line
        self.update(self._ids[seen.row], completed=seen.done, stage=seen.stage, visible=True)
        standing = [task for task in self.tasks if task.visible]
        done = [task for task in standing if task.completed >= 1.0]
        for task in done[: max(0, len(standing) - _MOST_ROWS)]:
            self.update(task.id, visible=False)

    def say(self, text: str) -> None:
        """Show a text with the next picture, not at once: a signal may have come amid the drawing."""
        self._said = text

    def get_renderables(self) -> Iterator[RenderableType]:
        gone = sum(not task.visible for task in self.tasks)
        if gone:
            yield Text(f"{gone} more are done")
        yield self.make_tasks_table(self.tasks)
        yield from (Text(f"  {line}") for line in (self._line, self._said) if line)
