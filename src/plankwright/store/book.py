"""The book of all jobs: one file, made ready before anything is kept in it."""

from collections.abc import Callable
from pathlib import Path

from plankwright.store.database import make_ready
from plankwright.store.jobs import Jobs
from plankwright.store.layouts import Layouts
from plankwright.store.on_file import Texts
from plankwright.store.searches import Searches


class Book(Jobs, Layouts, Searches):
    """All that is kept; fulfils `workshop.jobs.ports.Store`."""

    __slots__ = ()

    def setting(self, name: str, otherwise: Callable[[], str]) -> str:
        """Give a setting; when there is none yet, what it is from now on."""
        with self.writing() as database:
            row = database.execute("SELECT value FROM setting WHERE name = ?", (name,)).fetchone()
            if row is not None:
                return str(row["value"])
            value = otherwise()
            database.execute("INSERT INTO setting (name, value) VALUES (?, ?)", (name, value))
            return value

    def put_setting(self, name: str, value: str) -> None:
        """Set a setting."""
        with self.writing() as database:
            database.execute("INSERT OR REPLACE INTO setting (name, value) VALUES (?, ?)", (name, value))


def open_book(path: Path, texts: Texts) -> Book:
    """Open the file of jobs, make it where there is none, and bring an older one up to today.

    Parameters
    ----------
    path
        The file.
    texts
        How layouts and marks are written.

    Raises
    ------
    StoreError
        If it cannot be used; the message says why.
    """
    make_ready(path)
    return Book(path, texts)
