"""A book of jobs of a test's own."""

import sqlite3
from collections.abc import Iterator
from pathlib import Path

import pytest

from plankwright import files
from plankwright.store import Book, database, open_book


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """Say where the file of jobs is."""
    return tmp_path / "jobs.db"


@pytest.fixture
def book(path: Path) -> Book:
    """Give an empty book."""
    return open_book(path, files)


@pytest.fixture
def impatient(monkeypatch: pytest.MonkeyPatch) -> None:
    """Wait for nobody who has the file open."""
    monkeypatch.setattr(database, "_WAIT_S", 0.01)


@pytest.fixture
def locked(path: Path, book: Book, impatient: None) -> Iterator[Path]:  # noqa: ARG001 - both are wanted first
    """Give the file of the book while another program has it to itself."""
    other = sqlite3.connect(path, isolation_level=None)
    other.execute("PRAGMA locking_mode = EXCLUSIVE")
    other.execute("BEGIN EXCLUSIVE")
    yield path
    other.close()
