"""Files come whole and go whole, and trouble is told in one sentence."""

import os
from pathlib import Path

import pytest

from plankwright.errors import FileTroubleError
from plankwright.files.disk import demand_writable, read_bytes, write_files


def test_text_is_written_as_it_is(tmp_path: Path) -> None:
    """Folders on the way are made, line ends stay, and nothing else is left behind."""
    path = tmp_path / "new" / "out" / "layout.json"
    write_files({path: "ä\r\nb\n"})
    assert path.read_bytes() == b"\xc3\xa4\r\nb\n"
    assert list(path.parent.iterdir()) == [path]


def test_spreadsheet_files_get_the_mark_of_utf_8(tmp_path: Path) -> None:
    """Without it, spreadsheets show other letters."""
    write_files({tmp_path / "cuts.CSV": "ä"})
    assert (tmp_path / "cuts.CSV").read_bytes() == b"\xef\xbb\xbf\xc3\xa4"


def test_an_older_file_is_replaced(tmp_path: Path) -> None:
    """With the rights of any new file."""
    path = tmp_path / "a.txt"
    write_files({path: b"old"})
    write_files({path: b"new"})
    assert path.read_bytes() == b"new"
    plain = tmp_path / "plain.txt"
    plain.touch()
    assert path.stat().st_mode == plain.stat().st_mode


def test_what_cannot_be_written_leaves_the_older_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """And no rest of the new one."""
    path = tmp_path / "a.txt"
    write_files({path: b"old"})

    def full(_self: Path, _target: Path) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Path, "replace", full)
    with pytest.raises(
        FileTroubleError, match=r"a\.txt cannot be written \(no space left on device\): check"
    ):
        write_files({path: b"new"})
    assert [(left.name, left.read_bytes()) for left in tmp_path.iterdir()] == [("a.txt", b"old")]


def test_files_that_belong_together_are_written_together_or_not_at_all(tmp_path: Path) -> None:
    """The cut list of one layout beside the map of another would waste wood."""
    first, second = tmp_path / "a.txt", tmp_path / "b.txt"
    write_files({first: "old"})
    second.mkdir()
    with pytest.raises(FileTroubleError, match=r"b\.txt is a folder, where a file is to be written"):
        write_files({first: "new", second: "new"})
    assert first.read_text(encoding="utf-8") == "old"
    assert sorted(tmp_path.iterdir()) == [first, second]


def test_trying_whether_a_file_can_be_written_leaves_nothing(tmp_path: Path) -> None:
    """Neither a file nor a folder on the way; an older file stays as it is."""
    demand_writable(tmp_path / "new" / "out" / "a.txt")
    assert list(tmp_path.iterdir()) == []
    write_files({tmp_path / "a.txt": "old"})
    demand_writable(tmp_path / "a.txt")
    assert [(left.name, left.read_bytes()) for left in tmp_path.iterdir()] == [("a.txt", b"old")]
    with pytest.raises(FileTroubleError, match="cannot be a folder, since a file is in its place"):
        demand_writable(tmp_path / "a.txt" / "b.txt")


@pytest.mark.parametrize("below", ["", "deeper"])
def test_a_file_in_the_way_of_a_folder_is_told(tmp_path: Path, below: str) -> None:
    """It cannot be written below a file."""
    (tmp_path / "out").touch()
    with pytest.raises(
        FileTroubleError, match="cannot be a folder, since a file is in its place or on the way"
    ):
        write_files({tmp_path / "out" / below / "a.txt": "x"})


def test_missing_files_and_folders_are_told(tmp_path: Path) -> None:
    """Each in its own words."""
    with pytest.raises(FileTroubleError, match="is not there: check the name"):
        read_bytes(tmp_path / "nothing")
    with pytest.raises(FileTroubleError, match="is a folder, where a file is needed"):
        read_bytes(tmp_path)


def test_a_huge_file_is_not_read(tmp_path: Path) -> None:
    """A film is no tally."""
    path = tmp_path / "tally.csv"
    with path.open("wb") as file:
        file.truncate(20_000_001)
    with pytest.raises(FileTroubleError, match="is larger than 20 MB: it cannot be what it is named for"):
        read_bytes(path)


def test_a_file_that_may_not_be_read_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """With the reason that the system gives."""

    def refuse(_self: Path) -> bytes:
        raise PermissionError(13, os.strerror(13))

    path = tmp_path / "tally.csv"
    path.touch()
    monkeypatch.setattr(Path, "read_bytes", refuse)
    with pytest.raises(
        FileTroubleError, match=r"cannot be read \(permission denied\): check that it may be opened"
    ):
        read_bytes(path)
