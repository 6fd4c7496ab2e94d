"""Work in a process of its own: functions of a module, so that the other process finds them."""

import os
import signal
import time
from collections.abc import Callable
from pathlib import Path

from plankwright.errors import BadInputError, Problem
from plankwright.workshop.jobs.kept import NotThereError

_FOREVER_S = 60.0
Tell = Callable[[str], None]
Stopped = Callable[[], bool]


def count(most: int, tell: Tell, _stopped: Stopped) -> int:
    """Count, and tell of each number."""
    for number in range(most):
        tell(str(number))
    return most


def until_stopped(given: str, tell: Tell, stopped: Stopped) -> str:
    """Tell that it has begun, and go on until it is told to stop."""
    tell(f"{given}: {os.getpid()}")
    end = time.monotonic() + _FOREVER_S
    while not stopped():
        if time.monotonic() > end:
            return "never stopped"
        time.sleep(0.01)
    return f"{given}, stopped"


def deaf(_given: str, tell: Tell, _stopped: Stopped) -> str:
    """Tell that it has begun, and never ask whether it is to stop."""
    tell(str(os.getpid()))
    time.sleep(_FOREVER_S)
    return "never ended"


def tell_for_ever(_given: str, tell: Tell, stopped: Stopped) -> str:
    """Tell again and again, until somebody wants it to stop."""
    end = time.monotonic() + _FOREVER_S
    while not stopped() and time.monotonic() < end:
        tell(str(os.getpid()))
    return "told"


def refused(what: str, _tell: Tell, _stopped: Stopped) -> None:
    """End with an error for users."""
    if what == "not there":
        raise NotThereError
    raise BadInputError([Problem(file="tally.csv", place="line 3", what=what)])


def faulty(_given: object, tell: Tell, _stopped: Stopped) -> None:
    """End with a fault of ours."""
    tell("about to fail")
    _ = 1 // 0


def unsendable(_given: object, _tell: Tell, _stopped: Stopped) -> object:
    """Find what cannot be sent to another process."""
    return lambda: None


def gone(_given: object, tell: Tell, _stopped: Stopped) -> None:
    """End the process before its time."""
    tell("about to go")
    os._exit(3)


def interrupted(_given: object, _tell: Tell, _stopped: Stopped) -> str:
    """Be sent Ctrl-C, as the terminal sends it to everybody."""
    os.kill(os.getpid(), signal.SIGINT)
    return "went on"


def name_process(file: str, tell: Tell, stopped: Stopped) -> str:
    """Leave a file that names this process, and go on."""
    Path(file).write_text(str(os.getpid()), encoding="ascii")
    return until_stopped(file, tell, stopped)
