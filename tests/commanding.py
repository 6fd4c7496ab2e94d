"""Running a command as a user does, and what it came to."""

from dataclasses import dataclass
from typing import Protocol

from plankwright.workshop.lay_out import Search
from plankwright.workshop.ports import Files


@dataclass(frozen=True, slots=True, kw_only=True)
class Ran:
    """What a command came to.

    Parameters
    ----------
    code
        Its exit code.
    out, err
        What it said on stdout and on stderr.
    """

    code: int
    out: str
    err: str


class Run(Protocol):
    """Runs `plankwright` with some arguments."""

    def __call__(self, *arguments: object, search: Search | None = None, files: Files | None = None) -> Ran:
        """Run it; with real files and a search that finds the small layout when they are left out."""
        ...
