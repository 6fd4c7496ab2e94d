"""What can go wrong with the file, in one sentence each."""

import sqlite3
from pathlib import Path

import pytest

from plankwright.errors import ExitCode
from plankwright.store.trouble import StoreError, told

PATH = Path("jobs.db")


def trouble(name: str) -> sqlite3.OperationalError:
    """Give an error of the library with its name."""
    error = sqlite3.OperationalError("in the words of the library")
    error.sqlite_errorname = name
    return error


@pytest.mark.parametrize(
    ("name", "sentence"),
    [
        ("SQLITE_BUSY", "jobs.db is in use by another program for too long: close that one, or try again."),
        ("SQLITE_BUSY_SNAPSHOT", "jobs.db is in use by another program for too long"),
        ("SQLITE_LOCKED", "jobs.db is in use by another program"),
        ("SQLITE_READONLY_DIRECTORY", "jobs.db may not be written: check the permissions"),
        ("SQLITE_PERM", "jobs.db may not be opened"),
        ("SQLITE_FULL", "jobs.db cannot grow: the disk is full."),
        ("SQLITE_IOERR_WRITE", "jobs.db cannot be read or written: check the disk"),
        ("SQLITE_CANTOPEN", "jobs.db cannot be opened"),
        ("SQLITE_NOTADB", "jobs.db is no file of jobs"),
        ("SQLITE_CORRUPT_VTAB", "jobs.db is damaged: restore a backup."),
    ],
)
def test_what_a_user_can_mend_is_one_sentence(name: str, sentence: str) -> None:
    """With the file in it, and what to do; the error of the library stays behind it."""
    with pytest.raises(StoreError) as raised, told(PATH):
        raise trouble(name)
    assert str(raised.value).startswith(sentence)
    assert len(str(raised.value).splitlines()) == 1
    assert isinstance(raised.value.__cause__, sqlite3.OperationalError)
    assert raised.value.exit_code == ExitCode.FILE_TROUBLE


@pytest.mark.parametrize("name", ["SQLITE_ERROR", "SQLITE_CONSTRAINT_UNIQUE"])
def test_our_own_faults_are_let_through(name: str) -> None:
    """A slip in a statement is nothing that a user could mend."""
    with pytest.raises(sqlite3.OperationalError), told(PATH):
        raise trouble(name)
