"""Leave a full report of a fault of ours in a file, so that the terminal can stay with one sentence."""

import platform
import sys
import tempfile
import traceback
from collections.abc import Sequence
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path

LIBRARIES = ("plankwright", "ortools", "highspy", "shapely", "pydantic", "typst", "click", "rich")


def write_report(error: BaseException, arguments: Sequence[str]) -> Path | None:
    """Write what somebody who mends the program needs to know.

    Parameters
    ----------
    error
        What went wrong.
    arguments
        The command as it was given, without the program's name.

    Returns
    -------
    Path or None
        The file, in the machine's folder for temporary files; nothing when not even that can be written.
    """
    text = "\n".join(
        (
            f"plankwright {' '.join(arguments)}",
            f"Python {sys.version}",
            platform.platform(),
            *(f"{name} {_version(name)}" for name in LIBRARIES),
            "",
            "".join(traceback.format_exception(error)),
        )
    )
    try:
        with tempfile.NamedTemporaryFile(
            mode="w", encoding="utf-8", prefix="plankwright-fault-", suffix=".txt", delete=False
        ) as file:
            file.write(text)
    except OSError:
        return None
    return Path(file.name)


def _version(name: str) -> str:
    try:
        return version(name)
    except PackageNotFoundError:
        return "(not installed)"
