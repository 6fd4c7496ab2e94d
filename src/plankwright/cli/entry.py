"""The way in, and where errors become a sentence and an exit code. No traceback gets past it."""

import contextlib
import io
import os
import sys
from collections.abc import Sequence
from typing import TYPE_CHECKING

import click

from plankwright.cli.commands import plankwright
from plankwright.cli.fault_report import write_report
from plankwright.cli.json_text import problems_as_json, write_json
from plankwright.cli.leaving import leave
from plankwright.cli.talk import Talk
from plankwright.errors import BadInputError, ExitCode, PlankwrightError

if TYPE_CHECKING:
    from plankwright.bootstrap import Bench


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
    given = list(sys.argv[1:] if arguments is None else arguments)
    _never_stumble_over_a_character()
    leave(_run(given, Talk(bench=bench)))


def _run(arguments: list[str], talk: Talk) -> int:
    try:
        left = plankwright.main(arguments, prog_name="plankwright", standalone_mode=False, obj=talk)
    except (KeyboardInterrupt, click.Abort):
        click.echo("Stopped.", err=True)
        return ExitCode.STOPPED
    except Exception as error:  # noqa: BLE001 - whatever it is, a user gets a sentence and a code
        return _explain(error, arguments, talk)
    return left if isinstance(left, int) else ExitCode.DONE


def _explain(error: Exception, arguments: list[str], talk: Talk) -> int:
    match error:
        case BrokenPipeError():
            code = _leave_quietly()
        case click.ClickException():
            error.show()
            code = ExitCode.BAD_INPUT
        case BadInputError():
            code = _tell_problems(error, talk)
        case PlankwrightError() if error.exit_code != ExitCode.OUR_FAULT:
            click.echo(str(error), err=True)
            code = error.exit_code
        case PlankwrightError():
            code = _tell_fault(error, arguments, str(error))
        case _:
            code = _tell_fault(error, arguments, PlankwrightError.default_message)
    return code


def _tell_problems(error: BadInputError, talk: Talk) -> int:
    if talk.json:
        click.echo(write_json({"problems": problems_as_json(error.problems)}))
    for line in (str(error), *getattr(error, "__notes__", ())):
        click.echo(line, err=True)
    return error.exit_code


def _tell_fault(error: Exception, arguments: list[str], sentence: str) -> int:
    report = write_report(error, arguments)
    where = f"A full report is in {report}." if report else "No report could be written either."
    click.echo(f"{sentence}\n{where}", err=True)
    return ExitCode.OUR_FAULT


def _leave_quietly() -> int:
    """Say nothing more, also not when the interpreter ends: whoever read our output has enough of it."""
    with contextlib.suppress(OSError, ValueError, io.UnsupportedOperation):
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    return ExitCode.DONE


def _never_stumble_over_a_character() -> None:
    """Let a terminal that lacks a character show a stand-in instead of failing."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")
