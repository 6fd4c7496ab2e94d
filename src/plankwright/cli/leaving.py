"""Leave the program, also while a search that was given up still runs in native code."""

import os
import sys
import threading
from typing import NoReturn

from plankwright.errors import ExitCode

SEARCH_THREAD = "search"
"""Name of the thread that a search runs in."""


def leave(code: int) -> NoReturn:
    """Leave with an exit code.

    Parameters
    ----------
    code
        The exit code.

    Raises
    ------
    SystemExit
        Unless a search was given up: a solver cannot be interrupted, and would crash when the interpreter is
        taken down around it. The process is ended at once then.
    """
    if code == ExitCode.STOPPED and any(thread.name == SEARCH_THREAD for thread in threading.enumerate()):
        sys.stdout.flush()
        sys.stderr.flush()
        os._exit(code)
    sys.exit(code)
