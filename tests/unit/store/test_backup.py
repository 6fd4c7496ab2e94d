"""A backup is whole, is never written over anything, and puts back what was; what is no backup is refused."""

import sqlite3
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import cast

import pytest

from kept_jobs import bare_job, plain, whole_job, with_boards
from plankwright import files
from plankwright.store import Book, StoreError, back_up, backup, open_book, restore
from plankwright.store.database import make_ready
from plankwright.store.schema import MIGRATIONS
from plankwright.workshop.jobs.kept import KeptJob, KeptLayout, Made
from village import small_layout


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    """Say where the backup goes."""
    return tmp_path / "kept" / "jobs-in-may.db"


def names_in(path: Path) -> list[str]:
    """Give what the jobs in a file are called."""
    return sorted(card.name for card in open_book(path, files).cards())


def refused(act: Callable[[], object], path: Path) -> str:
    """Give the sentence with which something is refused; it names the file at fault."""
    with pytest.raises(StoreError) as told:
        act()
    sentence = str(told.value)
    assert len(sentence.splitlines()) == 1
    assert str(path) in sentence
    return sentence


def left_in(folder: Path) -> list[str]:
    """Give what lies in a folder, hidden files too."""
    return sorted(path.name for path in folder.iterdir())


def test_a_backup_holds_all_that_was_kept(path: Path, book: Book, copy: Path) -> None:
    """Every job with its layouts and its steps; folders on the way to it are made."""
    job = book.add(whole_job())
    laid = book.keep_layout(job.id, KeptLayout(layout=small_layout(), made=Made.SEARCHED))
    after = book.change(job.id, "laid out", lambda kept: replace(kept, layout_id=laid.id))
    back_up(path, copy)
    again = open_book(copy, files)
    assert again.job(job.id) == after
    assert again.layouts(job.id) == (laid,)
    again.undo(job.id)
    assert again.job(job.id) == job


def test_a_backup_is_one_file(path: Path, book: Book, copy: Path) -> None:
    """So that it can be carried off; what was written last is in it, and not beside it."""
    book.add(bare_job("written last"))
    back_up(path, copy)
    assert left_in(copy.parent) == [copy.name]
    assert names_in(copy) == ["written last"]


def test_a_backup_is_taken_while_somebody_writes(path: Path, book: Book, copy: Path) -> None:
    """It holds what was whole at that moment, and whoever writes is not disturbed."""
    job = book.add(whole_job())

    def meanwhile(kept: KeptJob) -> KeptJob:
        back_up(path, copy)
        return with_boards(kept, plain("D"))

    after = book.change(job.id, "another tally", meanwhile)
    assert book.job(job.id) == after
    assert open_book(copy, files).job(job.id) == job


def test_nothing_is_written_over_by_a_backup(path: Path, book: Book, copy: Path) -> None:
    """Neither an older backup nor anything else."""
    book.add(bare_job())
    copy.parent.mkdir()
    copy.write_text("a letter", encoding="utf-8")
    assert "is there already, and nothing is written over" in refused(lambda: back_up(path, copy), copy)
    assert copy.read_text(encoding="utf-8") == "a letter"


def test_there_is_no_backup_of_nothing(path: Path, copy: Path) -> None:
    """No file is made by asking for one."""
    assert "is not there: no job has been kept in it yet" in refused(lambda: back_up(path, copy), path)
    assert left_in(path.parent) == []


def test_a_backup_below_a_file_is_told(path: Path, book: Book, tmp_path: Path) -> None:
    """Nothing can be made there."""
    book.add(bare_job())
    (tmp_path / "letter").touch()
    sentence = refused(lambda: back_up(path, tmp_path / "letter" / "copy.db"), tmp_path / "letter")
    assert "cannot be made a folder" in sentence


def test_a_backup_that_cannot_be_written_is_told_of_the_copy(
    path: Path, book: Book, copy: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It is the other disk that is to be looked at."""
    book.add(bare_job())

    def refuse(_self: Path, *_mode: object, **_how: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "touch", refuse)
    assert "cannot be written (permission denied)" in refused(lambda: back_up(path, copy), copy)


def test_what_was_begun_of_a_backup_that_failed_is_taken_away(path: Path, book: Book, copy: Path) -> None:
    """Half a backup would be taken for a whole one."""
    book.add(bare_job())
    path.write_bytes(path.read_bytes()[:4096] + b"spoilt" * 4_000)
    Path(f"{path}-wal").unlink(missing_ok=True)
    refused(lambda: back_up(path, copy), path)
    assert left_in(copy.parent) == []


def test_a_backup_is_put_back_and_what_was_before_is_kept(path: Path, book: Book, copy: Path) -> None:
    """Beside it; the backup stays as it is."""
    book.add(bare_job("in may"))
    back_up(path, copy)
    book.add(bare_job("in june"))
    before = copy.read_bytes()
    kept = restore(path, copy)
    assert kept == path.with_name("jobs-before-1.db")
    assert kept is not None
    assert names_in(path) == ["in may"]
    assert names_in(kept) == ["in june", "in may"]
    assert copy.read_bytes() == before
    assert left_in(copy.parent) == [copy.name]
    assert left_in(path.parent) == ["jobs-before-1.db", "jobs.db", "kept"]


def test_what_was_before_is_never_written_over(path: Path, book: Book, copy: Path) -> None:
    """However often a backup is put back."""
    book.add(bare_job("in may"))
    back_up(path, copy)
    kept = [restore(path, copy) for _ in range(3)]
    assert kept == [path.with_name(f"jobs-before-{number}.db") for number in (1, 2, 3)]


def test_a_backup_is_put_where_nothing_was(path: Path, book: Book, copy: Path, tmp_path: Path) -> None:
    """As on a new machine; folders on the way are made."""
    book.add(bare_job("in may"))
    back_up(path, copy)
    there = tmp_path / "new" / "machine" / "jobs.db"
    assert restore(there, copy) is None
    assert names_in(there) == ["in may"]
    assert left_in(there.parent) == ["jobs.db"]


@pytest.mark.parametrize("damage", [b"spoilt " * 2_000, b"x", b""])
def test_a_backup_takes_the_place_of_a_damaged_file(
    path: Path, book: Book, copy: Path, damage: bytes
) -> None:
    """That is what it is for; what is left of the damaged one is kept all the same."""
    book.add(bare_job("in may"))
    back_up(path, copy)
    path.write_bytes(damage)
    kept = restore(path, copy)
    assert names_in(path) == ["in may"]
    assert kept is not None
    assert kept.read_bytes() == damage


def test_what_the_log_still_holds_is_kept_with_what_was_before(path: Path, book: Book, copy: Path) -> None:
    """A program that was killed leaves its last steps there."""
    book.add(bare_job("in may"))
    back_up(path, copy)
    reader = sqlite3.connect(path)  # As long as it is open, the log is not brought in.
    reader.execute("SELECT count(*) FROM job").fetchone()
    book.add(bare_job("in june"))
    crashed = path.parent / "crashed" / "jobs.db"
    crashed.parent.mkdir()
    for end in ("", "-wal"):
        Path(f"{crashed}{end}").write_bytes(Path(f"{path}{end}").read_bytes())
    reader.close()
    kept = restore(crashed, copy)
    assert kept is not None
    assert names_in(kept) == ["in june", "in may"]
    assert names_in(crashed) == ["in may"]


def test_a_file_of_another_program_is_not_put_aside(path: Path, book: Book, copy: Path) -> None:
    """It was named by mistake."""
    book.add(bare_job("in may"))
    back_up(path, copy)
    songs = path.with_name("songs.db")
    songs.touch()
    of_songs(songs)
    assert "is a file of another program" in refused(lambda: restore(songs, copy), songs)
    assert left_in(path.parent) == ["jobs.db", "kept", "songs.db"]


def test_what_was_before_comes_back_when_the_last_step_fails(
    path: Path, book: Book, copy: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """There is a file of jobs at its place, whatever happens."""
    book.add(bare_job("in may"))
    back_up(path, copy)
    really = Path.replace

    def refuse(self: Path, target: Path) -> Path:
        if self.name.startswith("."):
            raise PermissionError(13, "Permission denied")
        return really(self, target)

    monkeypatch.setattr(Path, "replace", refuse)
    assert "cannot be written (permission denied)" in refused(lambda: restore(path, copy), path)
    assert left_in(path.parent) == ["jobs.db", "kept"]
    assert names_in(path) == ["in may"]


def test_a_file_can_be_put_back_into_its_own_place(path: Path, book: Book) -> None:
    """Nothing is lost by naming the wrong one."""
    book.add(bare_job("in may"))
    kept = restore(path, path)
    assert names_in(path) == ["in may"]
    assert kept is not None
    assert names_in(kept) == ["in may"]


def test_a_copy_that_is_not_there_is_told(path: Path, book: Book, copy: Path) -> None:
    """And nothing happens."""
    book.add(bare_job("in june"))
    assert "is not there: name the backup" in refused(lambda: restore(path, copy), copy)
    assert names_in(path) == ["in june"]


def spoilt(copy: Path) -> None:
    """Spoil a backup in the middle."""
    content = copy.read_bytes()
    copy.write_bytes(content[:6_000] + b"spoilt" * 500 + content[9_000:])


def of_songs(copy: Path) -> None:
    """Put a file of another program there."""
    copy.unlink()
    other = sqlite3.connect(copy)
    other.execute("CREATE TABLE song (name TEXT)")
    other.close()


def of_tomorrow(copy: Path) -> None:
    """Put a file of a later program there."""
    copy.unlink()
    make_ready(copy, (*MIGRATIONS, "CREATE TABLE saw (name TEXT) STRICT;"))


@pytest.mark.parametrize(
    ("spoil", "sentence"),
    [
        (spoilt, "is damaged"),
        (lambda copy: copy.write_bytes(copy.read_bytes()[:9_000]), "is damaged"),
        (lambda copy: copy.write_bytes(b"id,length\n" * 99), "is no file of jobs"),
        (lambda copy: copy.write_bytes(b"x"), "is no file of jobs"),
        (lambda copy: copy.write_bytes(b""), "is no file of jobs"),
        (of_songs, "is a file of another program"),
        (of_tomorrow, "was written by a later Plankwright"),
    ],
)
def test_what_is_no_sound_backup_is_refused_and_nothing_happens(
    path: Path, book: Book, copy: Path, spoil: Callable[[Path], object], sentence: str
) -> None:
    """The file of jobs is as it was, and nothing lies about beside it."""
    book.add(bare_job("in may"))
    back_up(path, copy)
    spoil(copy)
    content = copy.read_bytes()
    assert sentence in refused(lambda: restore(path, copy), copy)
    assert copy.read_bytes() == content
    assert names_in(path) == ["in may"]
    assert left_in(path.parent) == ["jobs.db", "kept"]


def test_a_file_that_is_in_use_is_not_replaced(path: Path, book: Book, copy: Path, locked: Path) -> None:
    """Whatever its program writes would be lost."""
    assert book.path == path == locked
    other = path.parent / "other.db"
    open_book(other, files).add(bare_job("in may"))
    back_up(other, copy)
    assert "is in use by another program" in refused(lambda: restore(path, copy), path)
    assert "jobs-before-1.db" not in left_in(path.parent)


@pytest.mark.parametrize("where", ["letter", "letter/below"])
def test_a_place_that_cannot_be_is_told(tmp_path: Path, book: Book, copy: Path, where: str) -> None:
    """A file stands where a folder is needed."""
    book.add(bare_job("in may"))
    back_up(book.path, copy)
    (tmp_path / "letter").touch()
    sentence = refused(lambda: restore(tmp_path / where / "jobs.db", copy), tmp_path / where)
    assert "cannot be made a folder" in sentence


def test_a_place_that_cannot_be_written_is_told(
    tmp_path: Path, book: Book, copy: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As on a disk that may only be read."""
    book.add(bare_job("in may"))
    back_up(book.path, copy)

    def refuse(**_how: object) -> None:
        raise OSError(30, "Read-only file system")

    monkeypatch.setattr("tempfile.mkstemp", refuse)
    sentence = refused(lambda: restore(tmp_path / "new.db", copy), tmp_path / "new.db")
    assert "cannot be written (read-only file system)" in sentence


def test_an_older_backup_is_brought_up_to_today(
    path: Path, book: Book, copy: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The backup itself stays of its time."""
    book.add(bare_job("in may"))
    back_up(path, copy)
    longer = (*MIGRATIONS, "CREATE TABLE saw (name TEXT) STRICT;")
    monkeypatch.setattr(backup, "make_ready", lambda fresh: make_ready(fresh, longer))
    restore(path, copy)
    for file, tables in ((path, 1), (copy, 0)):
        database = sqlite3.connect(file)
        (found,) = database.execute("SELECT count(*) FROM sqlite_schema WHERE name = 'saw'").fetchone()
        database.close()
        assert found == tables


class Refusing:
    """A database that cannot be copied.

    Parameters
    ----------
    name
        What the library calls the reason.
    """

    def __init__(self, name: str) -> None:
        self.name = name

    def execute(self, *_what: object) -> None:
        """Refuse."""
        error = sqlite3.OperationalError("in the words of the library")
        error.sqlite_errorname = self.name
        raise error


@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("SQLITE_FULL", "copy.db cannot grow: the disk is full"),
        ("SQLITE_CANTOPEN", "copy.db cannot be opened"),
        ("SQLITE_IOERR_WRITE", "copy.db cannot be read or written"),
        ("SQLITE_CORRUPT", "jobs.db is damaged"),
    ],
)
def test_trouble_is_told_of_the_file_that_has_it(name: str, told: str) -> None:
    """A full disk is that of the copy; damage is that of what is copied."""
    database = cast(sqlite3.Connection, Refusing(name))
    with pytest.raises(StoreError, match=told):
        backup._copy_whole(database, Path("jobs.db"), Path("copy.db"))


def test_what_lies_beside_a_damaged_file_is_kept_with_it(path: Path, book: Book, copy: Path) -> None:
    """It may be mended with it, and must not be taken for that of the file put in its place."""
    book.add(bare_job("in may"))
    back_up(path, copy)
    path.write_bytes(b"spoilt " * 2_000)
    log = Path(f"{path}-wal")
    log.write_bytes(b"what was written last")
    kept = restore(path, copy)
    assert kept is not None
    assert Path(f"{kept}-wal").read_bytes() == b"what was written last"
    assert not log.exists()
    assert names_in(path) == ["in may"]
