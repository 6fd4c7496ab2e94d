"""The way in, and where errors become a sentence and an exit code. No traceback gets past it."""

import contextlib
import errno
import io
import os
import signal
import sys
import threading
import traceback
from collections.abc import Iterator, Sequence
from types import FrameType
from typing import TYPE_CHECKING, NoReturn

import click

from plankwright.cli.commands import plankwright
from plankwright.cli.fault_report import write_report
from plankwright.cli.json_text import problems_as_json, write_json
from plankwright.cli.leaving import leave
from plankwright.cli.outlets import give_up, not_shown, tell
from plankwright.cli.talk import Talk
from plankwright.errors import BadInputError, ExitCode, FileTroubleError, PlankwrightError

if TYPE_CHECKING:
    from plankwright.bootstrap import Bench


_STOPPED = "Stopped."
_STDERR = 2
"""Where the system keeps it."""


def run(arguments: Sequence[str] | None, bench: "Bench | None") -> NoReturn:
    """Run one command and leave; parameters and errors are those of `plankwright.cli.main`."""
    given = list(sys.argv[1:] if arguments is None else arguments)
    _never_stumble_over_a_character()
    leave(_run(given, Talk(bench=bench)))


def _run(arguments: list[str], talk: Talk) -> int:
    try:
        with _ctrl_c_ends_loading():
            left = plankwright.main(arguments, prog_name="plankwright", standalone_mode=False, obj=talk)
    except (KeyboardInterrupt, click.Abort):
        tell(_STOPPED)
        return ExitCode.STOPPED
    except SystemExit:  # The library leaves so when whoever reads its help has enough of it.
        give_up(sys.stdout)
        return ExitCode.DONE
    except Exception as error:  # noqa: BLE001 - whatever it is, a user gets a sentence and a code
        return _explain(error, arguments, talk)
    return left if isinstance(left, int) else ExitCode.DONE


@contextlib.contextmanager
def _ctrl_c_ends_loading() -> Iterator[None]:
    """End the process at once when Ctrl-C comes while something is loaded; else let it interrupt as ever.

    Native libraries print an interruption or turn it into errors of their own, and nothing is lost yet.
    """

    def on_signal(_number: int, frame: FrameType | None) -> None:
        if any(
            at.f_code.co_filename.startswith("<frozen importlib") for at, _ in traceback.walk_stack(frame)
        ):
            os.write(_STDERR, f"{_STOPPED}\n".encode())
            os._exit(ExitCode.STOPPED)
        raise KeyboardInterrupt

    if threading.current_thread() is not threading.main_thread():
        yield  # Signals are not ours to handle here.
        return
    before = signal.signal(signal.SIGINT, on_signal)
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, before)


def _explain(error: Exception, arguments: list[str], talk: Talk) -> int:
    code: int
    match error:
        case click.ClickException():
            with contextlib.suppress(OSError):
                error.show()
            code = ExitCode.BAD_INPUT
        case BadInputError():
            code = _tell_problems(error, talk)
        case PlankwrightError() if error.exit_code != ExitCode.OUR_FAULT:
            tell(str(error))
            code = error.exit_code
        case PlankwrightError():
            code = _tell_fault(error, arguments, str(error))
        case OSError() if error.filename is None and error.errno == errno.ENOSPC:
            give_up(sys.stdout)  # The library's own help and version do not go through our hands.
            tell(str(not_shown(error)))
            code = ExitCode.FILE_TROUBLE
        case _:
            code = _tell_fault(error, arguments, PlankwrightError.default_message)
    return code


def _tell_problems(error: BadInputError, talk: Talk) -> int:
    if talk.json:
        with contextlib.suppress(FileTroubleError):  # The problems below weigh more.
            talk.answer(write_json({"problems": problems_as_json(error.problems)}))
    for line in (str(error), *getattr(error, "__notes__", ())):
        tell(line)
    return error.exit_code


def _tell_fault(error: Exception, arguments: list[str], sentence: str) -> int:
    report = write_report(error, arguments)
    where = f"A full report is in {report}." if report else "No report could be written either."
    tell(f"{sentence}\n{where}")
    return ExitCode.OUR_FAULT


def _never_stumble_over_a_character() -> None:
    """Let a terminal that lacks a character show a stand-in instead of failing."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")
