"""What the commands of one run share: how to speak, and the rooms they call."""

import os
import sys
from collections.abc import Iterable
from typing import TYPE_CHECKING

import click

from plankwright.cli.outlets import show, tell
from plankwright.errors import Problem

if TYPE_CHECKING:
    from plankwright.bootstrap import Bench


class Talk:
    """How a run speaks: answers on stdout, all else on stderr, and less of it when nobody looks.

    Parameters
    ----------
    bench
        The rooms wired together; the real ones when left out, and only once they are needed.
    """

    def __init__(self, bench: "Bench | None" = None) -> None:
        self._bench = bench
        self.quiet = False
        self.json = False

    @property
    def bench(self) -> "Bench":
        """The rooms wired together."""
        if self._bench is None:
            from plankwright.bootstrap import set_up_bench  # noqa: PLC0415 - the solvers take a second to load

            self._bench = set_up_bench()
        return self._bench

    @property
    def shows_progress(self) -> bool:
        """Whether somebody sits before stderr and wants to be told."""
        return not self.quiet and sys.stderr.isatty()

    def answer(self, text: str) -> None:
        """Give what was asked for, on stdout."""
        show(text)

    def headline(self, text: str) -> None:
        """Give the heart of the answer, standing out where a terminal can show it."""
        plain = os.environ.get("NO_COLOR") or os.environ.get("TERM") == "dumb"
        show(text, bold=True, color=False if plain else None)

    def remark(self, remarks: Iterable[Problem]) -> None:
        """Tell what is doubtful in the files that were read, on stderr, unless told to be quiet."""
        for found in remarks:
            self.say(f"Look again: {found}")

    def say(self, text: str) -> None:
        """Tell something besides, on stderr, unless told to be quiet."""
        if not self.quiet:
            tell(text)


pass_talk = click.make_pass_decorator(Talk)
"""Hands the run's `Talk` to a command."""
