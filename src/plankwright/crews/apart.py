"""Work in a process of its own, which tells how it gets on and can be stopped; whoever began it goes on."""

import contextlib
import logging
import signal
import threading
import traceback
from collections.abc import Callable
from dataclasses import dataclass
from multiprocessing import get_context
from multiprocessing.connection import Connection
from multiprocessing.synchronize import Event
from pickle import PicklingError
from typing import Any, Generic, TypeVar

from plankwright.crews.cores import end_with_parent, out_of_reach_of_ctrl_c
from plankwright.crews.trouble import CrewError
from plankwright.errors import PlankwrightError

Given = TypeVar("Given")
Told = TypeVar("Told")
Found = TypeVar("Found")

_LOG = logging.getLogger(__name__)

_ENDED = "The process that did it ended before its time: there may be too little memory, or it was stopped."
_OUR_FAULT = "Something went wrong inside the program; this is our fault, not yours."


@dataclass(frozen=True, slots=True)
class _Word:
    """What comes through the line: something told, what was found, or what went wrong."""

    told: Any = None
    found: Any = None
    trouble: PlankwrightError | None = None
    fault: str = ""
    over: bool = False


class Apart(Generic[Given, Told, Found]):
    """A piece of work in a process of its own.

    Parameters
    ----------
    work
        A function of a module: takes what it is given, whom to tell how it gets on, and whom to ask whether
        it is to stop.
    given
        Plain values.
    """

    def __init__(
        self,
        work: Callable[[Given, Callable[[Told], None], Callable[[], bool]], Found],
        given: Given,
    ) -> None:
        # Begun afresh: a copy of a process in which threads are at work may hang.
        context = get_context("spawn")
        self._enough = context.Event()
        self._line, far_end = context.Pipe(duplex=False)
        self._process = context.Process(target=_do, args=(work, given, far_end, self._enough))
        with out_of_reach_of_ctrl_c():
            self._process.start()
        far_end.close()

    def stop(self) -> None:
        """Have it come to its end soon, with what it has found."""
        self._enough.set()

    def give_up(self) -> None:
        """End it at once, with whatever it does lost."""
        self._process.kill()

    def follow(self, listen: Callable[[Told], None]) -> Found:
        """Wait for its end, and hand on what it tells meanwhile.

        Parameters
        ----------
        listen
            Is told what it tells, in the thread that follows it.

        Returns
        -------
        Found
            What it found.

        Raises
        ------
        PlankwrightError
            If the work ended with one, that one.
        CrewError
            If the process ended before its time, or by a fault of ours.
        """
        found: Found = self._outcome(self._last_word(listen))
        return found

    def _last_word(self, listen: Callable[[Told], None]) -> _Word:
        try:
            while not (word := self._line.recv()).over:
                listen(word.told)
        except EOFError:
            raise CrewError(_ENDED) from None
        except BaseException:
            # Nobody is there to hear what it finds.
            self.give_up()
            raise
        else:
            last: _Word = word
            return last
        finally:
            self._line.close()
            self._process.join()

    @staticmethod
    def _outcome(word: _Word) -> Any:  # noqa: ANN401 - what the work gives
        if word.trouble is not None:
            raise word.trouble
        if word.fault:
            _LOG.error("Work apart ended by a fault of ours:\n%s", word.fault)
            raise CrewError(_OUR_FAULT)
        return word.found


def _do(work: Callable[..., Any], given: object, line: Connection, enough: Event) -> None:
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    threading.Thread(target=end_with_parent, daemon=True).start()
    try:
        word = _Word(found=work(given, lambda told: line.send(_Word(told=told)), enough.is_set), over=True)
    except PlankwrightError as trouble:
        word = _Word(trouble=trouble, over=True)
    except Exception:  # noqa: BLE001 - told of to whoever follows; not every error can be sent
        word = _Word(fault=traceback.format_exc(), over=True)
    with contextlib.suppress(OSError):  # Nobody may be there to hear it any more.
        _send(line, word)


def _send(line: Connection, word: _Word) -> None:
    try:
        line.send(word)
    except (AttributeError, TypeError, PicklingError):  # What it holds is no plain value.
        line.send(_Word(fault=traceback.format_exc(), over=True))
