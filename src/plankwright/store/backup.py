"""A copy of the whole file, taken while it is in use, and put back."""

import contextlib
import os
import sqlite3
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

from plankwright.store.database import HEADER_BYTES, connected, known_version, make_ready
from plankwright.store.trouble import StoreError, is_damage, told

_FIRST_WORDS = b"SQLite format 3\x00"
"""Of every database (SQLite file format, 1.3)."""

_LOG_ENDS = ("-wal", "-shm")
"""What is put behind the name of a file for those beside it, which hold what is not brought into it yet."""


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
    _make_folder(copy.parent)
    with _writable(copy):
        copy.touch(exist_ok=False)
    try:
        with told(path), connected(path) as database:
            known_version(database, path)
            _copy_whole(database, path, copy)
    except BaseException:
        copy.unlink(missing_ok=True)
        raise


def restore(path: Path, copy: Path) -> Path | None:
    """Put a copy in place of the file, and keep what was there beside it.

    Parameters
    ----------
    path
        The file of jobs; no program may be at work with it. It may be damaged.
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
    _make_folder(path.parent)
    with _writable(path):
        handle, name = tempfile.mkstemp(prefix=f".{path.name}.", dir=path.parent)
    os.close(handle)
    fresh = Path(name)
    try:
        with told(copy), connected(copy) as database:
            _demand_backup(database, copy)
            _copy_whole(database, copy, fresh)
        make_ready(fresh)
        with _writable(path):
            return _put_in_place(fresh, path)
    finally:
        for end in ("", *_LOG_ENDS):
            Path(f"{fresh}{end}").unlink(missing_ok=True)


def _demand_backup(database: sqlite3.Connection, copy: Path) -> None:
    """Refuse what is none of ours, or damaged."""
    if known_version(database, copy) == 0:
        raise StoreError(f"{copy} is no file of jobs: name another backup.")
    (said,) = database.execute("PRAGMA quick_check(1)").fetchone()
    if said != "ok":
        raise StoreError(f"{copy} is damaged: name another backup.")


def _copy_whole(database: sqlite3.Connection, path: Path, to: Path) -> None:
    """Write all that a file holds into another, which is empty, and tell which of the two has trouble."""
    try:
        database.execute("VACUUM INTO ?", (str(to),))
    except sqlite3.DatabaseError as trouble:
        with told(path if is_damage(trouble) else to):
            raise


def _put_in_place(fresh: Path, path: Path) -> Path | None:
    kept = _set_aside(path) if path.exists() else None
    try:
        fresh.replace(path)
    except BaseException:
        if kept is not None:
            kept.replace(path)
        raise
    return kept


def _set_aside(path: Path) -> Path:
    """Keep the file of before under another name, with all that was written to it."""
    # The library would throw the log of a file away that it takes for none.
    if path.stat().st_size >= HEADER_BYTES and _first_bytes(path) == _FIRST_WORDS:
        _bring_in_log(path)
    number = 1
    while (kept := path.with_name(f"{path.stem}-before-{number}{path.suffix}")).exists():
        number += 1
    path.replace(kept)
    for end in _LOG_ENDS:  # There is one only beside a damaged file, which may be mended with it.
        if (left := Path(f"{path}{end}")).exists():
            left.replace(f"{kept}{end}")
    return kept


def _first_bytes(path: Path) -> bytes:
    with path.open("rb") as file:
        return file.read(len(_FIRST_WORDS))


def _bring_in_log(path: Path) -> None:
    """Bring in what the log of a sound file still holds; refuse a file that is in use, or none of ours."""
    try:
        with connected(path) as database:
            if known_version(database, path, newest=sys.maxsize) == 0:
                return
            # Fails where another program is at work with it.
            database.execute("PRAGMA locking_mode = EXCLUSIVE")
            database.execute("BEGIN EXCLUSIVE")
            database.execute("COMMIT")
            database.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    except sqlite3.DatabaseError as trouble:
        if not is_damage(trouble):
            with told(path):
                raise


def _make_folder(folder: Path) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as trouble:
        raise StoreError(f"{folder} cannot be made a folder: name another place.") from trouble


@contextlib.contextmanager
def _writable(path: Path) -> Iterator[None]:
    """Tell the system's trouble with a file in one sentence."""
    try:
        yield
    except OSError as trouble:
        reason = (trouble.strerror or "unknown reason").lower()
        raise StoreError(
            f"{path} cannot be written ({reason}): check its folder, and that no other program has it open."
        ) from trouble
