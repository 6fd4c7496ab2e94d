"""The file of jobs: made, known for ours, brought up to today, or refused in one sentence."""

import sqlite3
from pathlib import Path

import pytest

from plankwright.store import StoreError
from plankwright.store.database import connected, make_ready, writing
from plankwright.store.schema import APPLICATION_ID, FIRST, MIGRATIONS, VERSION


def asked(path: Path, question: str) -> object:
    """Ask a file one thing."""
    with connected(path) as database:
        (answer,) = database.execute(question).fetchone()
        return answer


def dumped(path: Path) -> list[str]:
    """Give all that a file holds."""
    with connected(path) as database:
        return list(database.iterdump())


def refused(path: Path) -> str:
    """Give the sentence with which a file is refused."""
    with pytest.raises(StoreError) as told:
        make_ready(path)
    sentence = str(told.value)
    assert len(sentence.splitlines()) == 1
    assert path.name in sentence
    return sentence


def test_a_file_is_made_where_there_is_none(tmp_path: Path) -> None:
    """Folders on the way too; it is known for ours, of today, and readers do not wait for writers."""
    path = tmp_path / "new" / "folder" / "jobs.db"
    make_ready(path)
    assert asked(path, "PRAGMA application_id") == APPLICATION_ID
    assert asked(path, "PRAGMA user_version") == VERSION
    assert asked(path, "PRAGMA journal_mode") == "wal"
    assert asked(path, "SELECT count(*) FROM job") == 0


def test_an_empty_file_becomes_ours(tmp_path: Path) -> None:
    """As a file is that somebody only touched."""
    path = tmp_path / "jobs.db"
    path.touch()
    make_ready(path)
    assert asked(path, "PRAGMA application_id") == APPLICATION_ID


def test_a_file_of_today_stays_as_it_is(tmp_path: Path) -> None:
    """However often it is opened."""
    path = tmp_path / "jobs.db"
    make_ready(path)
    before = dumped(path)
    make_ready(path)
    assert dumped(path) == before


def test_a_file_of_another_program_is_refused_and_not_touched(tmp_path: Path) -> None:
    """Not a byte of it, nor anything beside it."""
    path = tmp_path / "songs.db"
    with sqlite3.connect(path) as other:
        other.execute("CREATE TABLE song (name TEXT)")
    other.close()
    before = path.read_bytes()
    assert "is a file of another program: name another one" in refused(path)
    assert path.read_bytes() == before
    assert list(tmp_path.iterdir()) == [path]


@pytest.mark.parametrize("mark", ["application_id", "user_version"])
def test_an_empty_file_that_another_program_marked_is_refused(tmp_path: Path, mark: str) -> None:
    """Its tables may be yet to come."""
    path = tmp_path / "songs.db"
    other = sqlite3.connect(path)
    other.execute(f"PRAGMA {mark} = 7")
    other.execute("VACUUM")
    other.close()
    assert "is a file of another program" in refused(path)


@pytest.mark.parametrize("content", [b"x", b"id,length\nA,97\n" * 9, bytes(range(256)) * 40])
def test_what_is_no_database_is_refused_and_not_touched(tmp_path: Path, content: bytes) -> None:
    """Such as a tally that was named by mistake."""
    path = tmp_path / "tally.csv"
    path.write_bytes(content)
    assert "is no file of jobs: name another one, or restore a backup" in refused(path)
    assert path.read_bytes() == content


def test_a_file_of_a_later_program_is_refused_and_not_touched(tmp_path: Path) -> None:
    """What it holds could mean something else."""
    path = tmp_path / "jobs.db"
    make_ready(path, (*MIGRATIONS, "CREATE TABLE saw (name TEXT) STRICT;"))
    before = dumped(path)
    assert "was written by a later Plankwright" in refused(path)
    assert dumped(path) == before


def test_a_folder_is_refused(tmp_path: Path) -> None:
    """It was named instead of a file in it."""
    assert "cannot be opened" in refused(tmp_path)


def test_a_file_in_the_way_of_its_folder_is_told(tmp_path: Path) -> None:
    """Nothing can be made below it."""
    (tmp_path / "notes").touch()
    with pytest.raises(StoreError, match="notes cannot be made a folder: name another file"):
        make_ready(tmp_path / "notes" / "jobs.db")


def test_a_folder_that_cannot_be_written_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Whoever runs the tests may be allowed everything, so the folder refuses by itself."""

    def refuse(_self: Path, **_how: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "mkdir", refuse)
    with pytest.raises(StoreError, match="cannot be made a folder"):
        make_ready(tmp_path / "new" / "jobs.db")


def test_a_file_that_may_only_be_read_is_told(tmp_path: Path) -> None:
    """In the words of the system it is a read-only database."""
    path = tmp_path / "jobs.db"
    make_ready(path, MIGRATIONS[:0])
    with pytest.raises(StoreError, match=r"jobs\.db may not be written: check the permissions"):
        _make_ready_read_only(path)


def _make_ready_read_only(path: Path) -> None:
    with pytest.MonkeyPatch.context() as patch:
        really = sqlite3.connect
        patch.setattr(
            sqlite3, "connect", lambda _path, **how: really(f"file:{path}?mode=ro", uri=True, **how)
        )
        make_ready(path)


@pytest.mark.usefixtures("locked")
def test_a_file_that_another_program_has_to_itself_is_told(path: Path) -> None:
    """It waits for a while, and says so then."""
    assert "is in use by another program for too long: close that one, or try again" in refused(path)


def test_a_full_disk_is_told_and_nothing_is_lost(tmp_path: Path) -> None:
    """The step that found no room is not there; all before it is."""
    path = tmp_path / "jobs.db"
    make_ready(path)
    before = dumped(path)

    def fill(room: int) -> None:
        with connected(path) as database:
            database.execute(f"PRAGMA max_page_count = {room}")
            with writing(database):
                for number in range(10_000):
                    database.execute("INSERT INTO setting VALUES (?, ?)", (str(number), "x" * 1_000))

    with pytest.raises(sqlite3.OperationalError, match="full"):
        fill(60)
    assert dumped(path) == before


def test_what_fails_half_way_leaves_the_file_as_it_was(tmp_path: Path) -> None:
    """Neither its tables nor its version are of tomorrow."""
    path = tmp_path / "jobs.db"
    make_ready(path, (FIRST,))
    before = dumped(path)
    broken = "ALTER TABLE job ADD COLUMN colour TEXT;\nINSERT INTO nothing_of_the_kind VALUES (1);"
    with pytest.raises(sqlite3.OperationalError, match="nothing_of_the_kind"):
        make_ready(path, (FIRST, broken))
    assert dumped(path) == before
    assert asked(path, "PRAGMA user_version") == 1


def test_an_older_file_gets_each_step_that_it_lacks_once(tmp_path: Path) -> None:
    """In order; statements with semicolons in them and without one at the end are whole."""
    path = tmp_path / "jobs.db"
    second = "CREATE TABLE saw (name TEXT) STRICT;\nINSERT INTO saw VALUES ('mitre; the old one')"
    third = "ALTER TABLE saw ADD COLUMN teeth INTEGER;\nUPDATE saw SET teeth = 60;"
    make_ready(path, (FIRST,))
    make_ready(path, (FIRST, second))
    make_ready(path, (FIRST, second, third))
    make_ready(path, (FIRST, second, third))
    with connected(path) as database:
        assert [tuple(row) for row in database.execute("SELECT * FROM saw")] == [("mitre; the old one", 60)]
    assert asked(path, "PRAGMA user_version") == 3


def test_a_step_that_leaves_rows_that_lead_nowhere_is_our_fault_and_undone(tmp_path: Path) -> None:
    """It must never reach a user, so it is no sentence; but the file is as it was."""
    path = tmp_path / "jobs.db"
    make_ready(path, (FIRST,))
    before = dumped(path)
    astray = (
        "CREATE TABLE saw (job_id TEXT REFERENCES job (id) DEFERRABLE INITIALLY DEFERRED) STRICT;\n"
        "INSERT INTO saw VALUES ('nobody');"
    )
    with pytest.raises(AssertionError, match="version 2 of the tables leaves 1 rows"):
        make_ready(path, (FIRST, astray))
    assert dumped(path) == before


def test_all_within_is_written_or_nothing(tmp_path: Path) -> None:
    """Also when what stops it is no error of the database."""
    path = tmp_path / "jobs.db"
    make_ready(path)

    def stopped_half_way() -> None:
        with connected(path) as database, writing(database):
            database.execute("INSERT INTO setting VALUES ('word', 'x')")
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        stopped_half_way()
    assert asked(path, "SELECT count(*) FROM setting") == 0
