"""Work for a crew: functions of a module, so that other processes find them."""

import os
import time
from pathlib import Path

from plankwright.layout.result import Progress, Watch
from plankwright.model import Bound

FOREVER_S = 60.0


def divided(common: int, each: int, _watch: Watch) -> float:
    """Divide; by nothing, it fails."""
    return common / each


def gone(_common: object, _each: int, _watch: Watch) -> None:
    """End the process."""
    os._exit(3)


def wait_for_stop(_common: object, each: int, watch: Watch) -> str:
    """Be done at once when there is nothing to do; else work until told that it is enough."""
    end = time.monotonic() + FOREVER_S
    while each and not watch.stopped():
        if time.monotonic() > end:
            return "never stopped"
        time.sleep(0.01)
    return "stopped" if each else "done"


def tell_and_wait(folder: str, each: int, watch: Watch) -> str:
    """Leave a file that names this process, and work on."""
    (Path(folder) / f"process-{each}").write_text(str(os.getpid()), encoding="ascii")
    return wait_for_stop(folder, 1, watch)


def tell_of_it(common: str, each: int, watch: Watch) -> str:
    """Tell what it is, as a search tells how far it is, and work on."""
    watch.report(Progress(surface_id=f"{common}-{each}", stage="at it", done=0.5, best=None, bound=Bound()))
    return wait_for_stop(common, 1, watch)
