"""What everything kept in the file shares: the file, and the texts that values are kept as."""

import contextlib
import sqlite3
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import UTC, datetime
from functools import lru_cache
from pathlib import Path
from typing import Protocol

from plankwright.model import Layout, Mark
from plankwright.store.database import connected, writing
from plankwright.store.trouble import told
from plankwright.workshop.jobs.kept import NotThereError

NO_SUCH_JOB = "There is no such job, or it was put away."

_LARGEST = 2**63 - 1
"""No row has a larger number."""


class Texts(Protocol):
    """How layouts and marks are written: as in the files of a job folder."""

    def layout_to_json(self, layout: Layout) -> str:
        """Write a layout."""
        ...

    def layout_from_json(self, text: str, file: str = ...) -> Layout:
        """Read a layout."""
        ...

    def mark_to_json(self, mark: Mark) -> str:
        """Write a mark."""
        ...

    def mark_from_json(self, text: str) -> Mark:
        """Read a mark."""
        ...


@dataclass(frozen=True, slots=True)
class OnFile:
    """Something kept in the file.

    Parameters
    ----------
    path
        The file, made ready.
    texts
        How layouts and marks are written.
    """

    path: Path
    texts: Texts

    @contextlib.contextmanager
    def reading(self) -> Iterator[sqlite3.Connection]:
        """Open the file to read it, as it is at one moment."""
        with told(self.path), connected(self.path) as database:
            database.execute("BEGIN")
            yield database

    @contextlib.contextmanager
    def writing(self) -> Iterator[sqlite3.Connection]:
        """Open the file to write it, all that is done within or nothing."""
        with told(self.path), connected(self.path) as database, writing(database):
            yield database

    def _layout_from(self, text: str) -> Layout:
        """Read a layout as it is kept; whoever looks again at the same text gets the same value."""
        return _read_once(self.texts.layout_from_json, text)


@lru_cache(maxsize=48)
def _read_once(read: Callable[[str], Layout], text: str) -> Layout:
    return read(text)


def number_of_row(number: int) -> int:
    """Give a number by which rows are looked for; that of none where it is larger than the file can hold."""
    return number if abs(number) <= _LARGEST else 0


def demand_job(database: sqlite3.Connection, job_id: str) -> None:
    """Refuse to keep anything for a job that was forgotten meanwhile.

    Raises
    ------
    NotThereError
        If it is not there; one that was put away is.
    """
    if database.execute("SELECT 1 FROM job WHERE id = ?", (job_id,)).fetchone() is None:
        raise NotThereError(NO_SUCH_JOB)


def now() -> str:
    """Tell the time, so finely that of two steps the later one is known. [ISO 8601, UTC]"""
    return datetime.now(UTC).isoformat(timespec="microseconds")
