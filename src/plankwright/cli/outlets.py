"""Stdout and stderr, also when one is full, or whoever reads it has enough."""

import contextlib
import errno
import io
import os
import sys
from typing import TextIO

import click

from plankwright.errors import FileTroubleError

_ENOUGH = frozenset({errno.EPIPE, errno.EINVAL})
"""What a system says when a reader has gone; the second where pipes are not those of POSIX."""


def show(text: str, *, bold: bool = False, color: bool | None = None) -> None:
    """Show a text on stdout.

    When its reader has gone, as that of `| head` has, nothing more is shown, and the work goes on: what is
    still to be written and the exit code are for others.

    Parameters
    ----------
    text
        The text; a line end follows it.
    bold
        Whether it stands out.
    color
        Whether colour and weight are shown; where a terminal is there to show them when left out.

    Raises
    ------
    FileTroubleError
        If it cannot be written.
    """
    try:
        click.echo(click.style(text, bold=True) if bold else text, color=color)
    except OSError as trouble:
        give_up(sys.stdout)
        if trouble.errno not in _ENOUGH:
            raise not_shown(trouble) from trouble


def tell(text: str) -> None:
    """Tell a text on stderr; where that cannot be, nobody could be told so either.

    Parameters
    ----------
    text
        The text; a line end follows it.
    """
    try:
        click.echo(text, err=True)
    except OSError:
        give_up(sys.stderr)


def not_shown(trouble: OSError) -> FileTroubleError:
    """Make the error that says why the answer cannot be seen."""
    reason = (trouble.strerror or "unknown reason").lower()
    return FileTroubleError(f"The answer cannot be shown ({reason}): see where the output goes.")


def give_up(stream: TextIO) -> None:
    """Let everything more for a stream vanish, also what is left in it when the interpreter ends."""
    with contextlib.suppress(OSError, ValueError, io.UnsupportedOperation):
        os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())
