"""The only place that touches the disk: whole files in, whole files out, and trouble told in one sentence."""

import os
import tempfile
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


def write_text(path: Path, text: str) -> None:
    """Write a text file whole or not at all, in place of an older one.

    A spreadsheet file gets the mark by which spreadsheets know UTF-8.

    Parameters
    ----------
    path
        The file; folders on the way to it are made.
    text
        Its content; line ends are written as they are.

    Raises
    ------
    FileTroubleError
        If it cannot be written; an older file is then left as it was.
    """
    write_bytes(path, text.encode("utf-8-sig" if path.suffix.lower() == ".csv" else "utf-8"))


def write_bytes(path: Path, content: bytes) -> None:
    """Write a file whole or not at all, in place of an older one.

    Parameters
    ----------
    path
        The file; folders on the way to it are made.
    content
        Its content.

    Raises
    ------
    FileTroubleError
        If it cannot be written; an older file is then left as it was.
    """
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        # Beside the file, so that putting it in place is one step on one disk.
        handle, name = tempfile.mkstemp(prefix=f".{path.name}.", dir=path.parent)
        beside = Path(name)
        try:
            with os.fdopen(handle, "wb") as file:
                file.write(content)
            beside.chmod(0o666 & ~_umask())
            beside.replace(path)
        except BaseException:
            beside.unlink(missing_ok=True)
            raise
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
