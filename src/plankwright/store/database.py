"""The file itself: opened, known for ours, brought up to today's tables. Knows nothing of jobs."""

import contextlib
import sqlite3
from collections.abc import Iterator, Sequence
from pathlib import Path

from plankwright.store.schema import APPLICATION_ID, MIGRATIONS, VERSION
from plankwright.store.trouble import StoreError, told

_WAIT_S = 10.0
"""How long to wait for somebody else who writes. [s]"""

HEADER_BYTES = 100
"""Of every database that holds anything (SQLite file format, 1.3)."""


def make_ready(path: Path, migrations: Sequence[str] = MIGRATIONS) -> None:
    """Make the file where there is none, and bring an older one up to today, all of it or nothing.

    Parameters
    ----------
    path
        The file; folders on the way to it are made.
    migrations
        What makes each version out of the one before.

    Raises
    ------
    StoreError
        If it is no file of ours, is one of a later program, or cannot be opened or written.
    """
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
    except OSError as trouble:
        raise StoreError(f"{path.parent} cannot be made a folder: name another file.") from trouble
    with told(path), connected(path) as database:
        # A file of another program is not touched.
        known_version(database, path, newest=len(migrations))
        # Readers then do not wait for a writer; the file keeps this setting.
        database.execute("PRAGMA journal_mode = WAL")
        with writing(database):
            version = known_version(database, path, newest=len(migrations))
            for number, migration in enumerate(migrations[version:], start=version + 1):
                for statement in _statements(migration):
                    database.execute(statement)
                broken = database.execute("PRAGMA foreign_key_check").fetchall()
                if broken:
                    msg = f"version {number} of the tables leaves {len(broken)} rows that lead nowhere"
                    raise AssertionError(msg)
            database.execute(f"PRAGMA application_id = {APPLICATION_ID}")
            database.execute(f"PRAGMA user_version = {len(migrations)}")


@contextlib.contextmanager
def connected(path: Path) -> Iterator[sqlite3.Connection]:
    """Open the file for a moment."""
    database = sqlite3.connect(path, timeout=_WAIT_S, isolation_level=None, check_same_thread=False)
    try:
        database.row_factory = sqlite3.Row
        database.execute("PRAGMA foreign_keys = ON")
        # A power cut may lose the last step, but never spoils the file (with WAL).
        database.execute("PRAGMA synchronous = NORMAL")
        yield database
    finally:
        database.close()


@contextlib.contextmanager
def writing(database: sqlite3.Connection) -> Iterator[None]:
    """Write all that is done within, or nothing of it."""
    database.execute("BEGIN IMMEDIATE")
    try:
        yield
    except BaseException:
        # A full disk has it taken back already.
        if database.in_transaction:
            database.execute("ROLLBACK")
        raise
    database.execute("COMMIT")


def known_version(database: sqlite3.Connection, path: Path, newest: int = VERSION) -> int:
    """Give the version of a file of ours; 0 of an empty one.

    Parameters
    ----------
    database
        The file, opened.
    path
        How it is called.
    newest
        The latest version that is understood.

    Raises
    ------
    StoreError
        If it is no file of ours, or one of a later program.
    """
    # The library takes what is too short to be a database for an empty one.
    if 0 < path.stat().st_size < HEADER_BYTES:
        raise StoreError(f"{path} is no file of jobs: name another one, or restore a backup.")
    (found,) = database.execute("PRAGMA application_id").fetchone()
    (version,) = database.execute("PRAGMA user_version").fetchone()
    if found == APPLICATION_ID:
        if version > newest:
            raise StoreError(
                f"{path} was written by a later Plankwright: use that one, or name another file."
            )
        return int(version)
    (tables,) = database.execute("SELECT count(*) FROM sqlite_schema").fetchone()
    if found or version or tables:
        raise StoreError(f"{path} is a file of another program: name another one.")
    return 0


def _statements(script: str) -> Iterator[str]:
    """Part a script into statements, since running it as one would end the transaction first."""
    begun = ""
    for line in script.splitlines(keepends=True):
        begun += line
        if sqlite3.complete_statement(begun):
            yield begun
            begun = ""
    if begun.strip():
        yield begun
