"""A copy of the whole file, taken while it is in use, and put back."""

import os
import sqlite3
import tempfile
from pathlib import Path

from plankwright.store.database import connected, make_ready
from plankwright.store.trouble import StoreError, told


def back_up(path: Path, copy: Path) -> None:
    """Write a copy of the file as it is at this moment; whoever uses it is not disturbed.

    Parameters
    ----------
    path
        The file of jobs.
    copy
        Where to write; nothing is written over.

    Raises
    ------
    StoreError
        If there is no file, or something is at the place of the copy, or either cannot be used.
    """
    if not path.is_file():
        raise StoreError(f"{path} is not there: no job has been kept in it yet.")
    if copy.exists():
        raise StoreError(f"{copy} is there already, and nothing is written over: name another file.")
    try:
        copy.parent.mkdir(parents=True, exist_ok=True)
    except OSError as trouble:
        raise StoreError(f"{copy.parent} cannot be made a folder: name another place.") from trouble
    with told(path), connected(path) as database:
        database.execute("VACUUM INTO ?", (str(copy),))


def restore(path: Path, copy: Path) -> Path | None:
    """Put a copy in place of the file, and keep what was there beside it.

    Parameters
    ----------
    path
        The file of jobs; no program may have it open.
    copy
        A backup; it is left as it is.

    Returns
    -------
    Path or None
        Where the file of before is kept; nothing when there was none.

    Raises
    ------
    StoreError
        If the copy is none of ours or damaged, or the file is in use or cannot be replaced.
    """
    if not copy.is_file():
        raise StoreError(f"{copy} is not there: name the backup.")
    path.parent.mkdir(parents=True, exist_ok=True)
    handle, name = tempfile.mkstemp(prefix=f".{path.name}.", dir=path.parent)
    os.close(handle)
    fresh = Path(name)
    fresh.unlink()
    try:
        with told(copy), connected(copy) as database:
            _demand_sound(database, copy)
            database.execute("VACUUM INTO ?", (name,))
        make_ready(fresh)
        kept = _set_aside(path)
        fresh.replace(path)
    finally:
        for left in (fresh, Path(f"{name}-wal"), Path(f"{name}-shm")):
            left.unlink(missing_ok=True)
    return kept


def _demand_sound(database: sqlite3.Connection, copy: Path) -> None:
    (said,) = database.execute("PRAGMA quick_check(1)").fetchone()
    if said != "ok":
        raise StoreError(f"{copy} is damaged: name another backup.")


def _set_aside(path: Path) -> Path | None:
    """Keep the file of before under another name, with all that was written to it."""
    if not path.exists():
        return None
    with told(path), connected(path) as database:
        # Fails where another program has the file open, and brings in what the log still holds.
        database.execute("PRAGMA locking_mode = EXCLUSIVE")
        database.execute("BEGIN EXCLUSIVE")
        database.execute("COMMIT")
        database.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    number = 1
    while (kept := path.with_name(f"{path.stem}-before-{number}{path.suffix}")).exists():
        number += 1
    path.replace(kept)
    for left in (Path(f"{path}-wal"), Path(f"{path}-shm")):
        left.unlink(missing_ok=True)
    return kept
