"""The command `plankwright`: it reads what was asked, has the workshop do it, and shows the answer.

Answers go to stdout, everything else to stderr. This is the only room that knows a terminal.
"""

import signal
import threading
from collections.abc import Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from plankwright.bootstrap import Bench

__all__ = ["main"]


def main(arguments: Sequence[str] | None = None, *, bench: "Bench | None" = None) -> None:
    """Run one command and leave with its exit code.

    Parameters
    ----------
    arguments
        Without the program's name; those of the process when left out.
    bench
        The rooms wired together; a stand-in when tested.

    Raises
    ------
    SystemExit
        Always, with a code of `plankwright.errors.ExitCode`.
    """
    if threading.current_thread() is threading.main_thread():
        # Until the way in is loaded, Ctrl-C ends the process at once: a traceback would tell nobody anything.
        before = signal.signal(signal.SIGINT, signal.SIG_DFL)
        from plankwright.cli.entry import run  # noqa: PLC0415 - loaded while Ctrl-C is quiet

        signal.signal(signal.SIGINT, before)
    else:
        from plankwright.cli.entry import run  # noqa: PLC0415 - as above
    run(arguments, bench)
