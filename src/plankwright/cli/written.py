"""Show which files were written."""

from collections.abc import Iterable

from plankwright.cli.json_text import files_as_json, write_json
from plankwright.cli.talk import Talk
from plankwright.workshop.hand_out import Written


def show_written(talk: Talk, written: Iterable[Written]) -> None:
    """Name each file, and for a person say what is in it."""
    if talk.json:
        talk.answer(write_json({"files": files_as_json(file.path for file in written)}))
        return
    for file in written:
        talk.answer(f"{file.path}: {file.what}")
