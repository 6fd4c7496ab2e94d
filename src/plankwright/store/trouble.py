"""What can go wrong with the file that a user can mend, as one sentence each; the rest is our fault."""

import contextlib
import sqlite3
from collections.abc import Iterator
from pathlib import Path

from plankwright.errors import FileTroubleError

_MENDABLE = {
    "SQLITE_BUSY": "is in use by another program for too long: close that one, or try again",
    "SQLITE_LOCKED": "is in use by another program for too long: close that one, or try again",
    "SQLITE_READONLY": "may not be written: check the permissions of the file and of its folder",
    "SQLITE_PERM": "may not be opened: check the permissions of the file and of its folder",
    "SQLITE_AUTH": "may not be opened: check the permissions of the file and of its folder",
    "SQLITE_FULL": "cannot grow: the disk is full",
    "SQLITE_IOERR": "cannot be read or written: check the disk that it lies on",
    "SQLITE_CANTOPEN": "cannot be opened: check the folder, and that it may be written",
    "SQLITE_NOTADB": "is no file of jobs: name another one, or restore a backup",
    "SQLITE_CORRUPT": "is damaged: restore a backup",
}


_DAMAGE = ("SQLITE_NOTADB", "SQLITE_CORRUPT")


class StoreError(FileTroubleError):
    """The file of jobs cannot be used; the message says why, and what to do."""


def is_damage(trouble: sqlite3.DatabaseError) -> bool:
    """Tell whether a file is damaged, or none of jobs at all."""
    return _name(trouble).startswith(_DAMAGE)


@contextlib.contextmanager
def told(path: Path) -> Iterator[None]:
    """Tell what a user can mend about the file in one sentence; let our own faults through.

    Raises
    ------
    StoreError
        If the file is locked, full, damaged, not to be written or no database.
    """
    try:
        yield
    except sqlite3.DatabaseError as trouble:
        name = _name(trouble)
        for code, sentence in _MENDABLE.items():
            if name.startswith(code):
                raise StoreError(f"{path} {sentence}.") from trouble
        raise


def _name(trouble: sqlite3.DatabaseError) -> str:
    """Give the name that the library has for what went wrong; it has none for its own refusals."""
    return getattr(trouble, "sqlite_errorname", "") or ""
