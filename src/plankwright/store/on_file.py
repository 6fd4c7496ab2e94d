"""What everything kept in the file shares: the file, and the texts that values are kept as."""

import contextlib
import sqlite3
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Protocol

from plankwright.model import Layout, Mark
from plankwright.store.database import connected, writing
from plankwright.store.trouble import told


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


def now() -> str:
    """Tell the time. [ISO 8601, UTC]"""
    return datetime.now(UTC).isoformat(timespec="seconds")
