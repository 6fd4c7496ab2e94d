"""The only place that touches the disk: whole files in, whole files out, and trouble told in one sentence."""

import contextlib
import os
import tempfile
from collections.abc import Iterator, Mapping
from pathlib import Path

from plankwright.errors import FileTroubleError

_LARGEST = 20_000_000
"""No tally and no layout is that large; a film picked by mistake is. [bytes]"""


def read_bytes(path: Path) -> bytes:
    """Read a whole file.

    Parameters
    ----------
    path
        The file.

    Raises
    ------
    FileTroubleError
        If it is missing, too large or cannot be read.
    """
    try:
        if path.stat().st_size > _LARGEST:
            raise FileTroubleError(
                f"{path} is larger than {_LARGEST // 1_000_000} MB: it cannot be what it is named for."
            )
        return path.read_bytes()
    except FileNotFoundError as trouble:
        raise FileTroubleError(f"{path} is not there: check the name.") from trouble
    except IsADirectoryError as trouble:
        raise FileTroubleError(f"{path} is a folder, where a file is needed.") from trouble
    except OSError as trouble:
        raise FileTroubleError(
            f"{path} cannot be read ({_reason(trouble)}): check that it may be opened."
        ) from trouble


def write_files(files: Mapping[Path, str | bytes]) -> None:
    """Write files that belong together, all of them or none, in place of older ones.

    Text is written in UTF-8, its line ends as they are; a spreadsheet file gets the mark by which
    spreadsheets know UTF-8. All are written beside their places first, so that a full disk spoils nothing.

    Parameters
    ----------
    files
        What each file is to hold; folders on the way to it are made.

    Raises
    ------
    FileTroubleError
        If one cannot be written; older files are then left as they were.
    """
    written: dict[Path, Path] = {}
    try:
        for path, content in files.items():
            with _told(path):
                written[path] = _write_beside(path, _encoded(path, content))
        for path, beside in written.items():
            with _told(path):
                beside.replace(path)
    except BaseException:
        for beside in written.values():
            beside.unlink(missing_ok=True)
        raise


def demand_writable(path: Path) -> None:
    """Find out whether a file can be written, and leave everything as it is.

    Parameters
    ----------
    path
        The file.

    Raises
    ------
    FileTroubleError
        If it cannot.
    """
    missing = [folder for folder in path.parents if not folder.exists()]
    try:
        with _told(path):
            _write_beside(path, b"").unlink()
    finally:
        for folder in missing:
            with contextlib.suppress(OSError):
                folder.rmdir()


def _encoded(path: Path, content: str | bytes) -> bytes:
    if isinstance(content, bytes):
        return content
    return content.encode("utf-8-sig" if path.suffix.lower() == ".csv" else "utf-8")


def _write_beside(path: Path, content: bytes) -> Path:
    """Write to a new file beside an older one, so that putting it in place is one step on one disk."""
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
    except (FileExistsError, NotADirectoryError) as trouble:
        raise FileTroubleError(
            f"{path.parent} cannot be a folder, since a file is in its place or on the way: name another."
        ) from trouble
    if path.is_dir():
        raise FileTroubleError(f"{path} is a folder, where a file is to be written: name another folder.")
    handle, name = tempfile.mkstemp(prefix=f".{path.name}.", dir=path.parent)
    beside = Path(name)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
        beside.chmod(0o666 & ~_umask())
    except BaseException:
        beside.unlink(missing_ok=True)
        raise
    return beside


@contextlib.contextmanager
def _told(path: Path) -> Iterator[None]:
    """Tell the system's trouble with a file in one sentence."""
    try:
        yield
    except OSError as trouble:
        raise FileTroubleError(
            f"{path} cannot be written ({_reason(trouble)}): "
            "check the folder, and that no other program has the file open."
        ) from trouble


def _umask() -> int:
    """Give the permissions that new files are not given; asking means setting, so it is set back at once."""
    mask = os.umask(0o022)
    os.umask(mask)
    return mask


def _reason(trouble: OSError) -> str:
    return (trouble.strerror or "unknown reason").lower()
