"""Work for a crew: functions of a module, so that other processes find them."""

import os
import time
from collections.abc import Callable
from pathlib import Path

FOREVER_S = 60.0


def divided(common: int, each: int, _stopped: Callable[[], bool]) -> float:
    """Divide; by nothing, it fails."""
    return common / each


def gone(_common: object, _each: int, _stopped: Callable[[], bool]) -> None:
    """End the process."""
    os._exit(3)


def wait_for_stop(_common: object, each: int, stopped: Callable[[], bool]) -> str:
    """Be done at once when there is nothing to do; else work until told that it is enough."""
    end = time.monotonic() + FOREVER_S
    while each and not stopped():
        if time.monotonic() > end:
            return "never stopped"
        time.sleep(0.01)
    return "stopped" if each else "done"


def tell_and_wait(folder: str, each: int, stopped: Callable[[], bool]) -> str:
    """Leave a file that names this process, and work on."""
    (Path(folder) / f"process-{each}").write_text(str(os.getpid()), encoding="ascii")
    return wait_for_stop(folder, 1, stopped)
