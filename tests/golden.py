"""Texts that a person read and found right, kept beside the tests in `golden/`.

A changed text fails its test; run with GOLDEN_UPDATE=1 to keep the new one, and read it before you commit it.
"""

import os
from pathlib import Path

FOLDER = Path(__file__).parent / "golden"


def as_kept(name: str, text: str) -> str:
    """Give the kept text of that name, after keeping the given one if that is asked for."""
    file = FOLDER / name
    if os.environ.get("GOLDEN_UPDATE"):
        file.parent.mkdir(exist_ok=True)
        file.write_text(text, encoding="utf-8", newline="\n")
    return file.read_text(encoding="utf-8")
