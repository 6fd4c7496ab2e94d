"""`plankwright restore`: put a backup in place of the file of jobs."""

from pathlib import Path

import click

from plankwright.cli.json_text import files_as_json, write_json
from plankwright.cli.options import store_option, store_path, talking
from plankwright.cli.talk import Talk, pass_talk
from plankwright.store import restore


@click.command("restore")
@click.argument("copy", type=click.Path(path_type=Path))
@store_option
@talking
@pass_talk
def command(talk: Talk, /, copy: Path, *, store: Path | None) -> None:
    """Put a backup in place of the app's file of jobs.

    COPY is what “plankwright backup” wrote. Close the app first. The file of before is kept beside it.

    \b
      plankwright restore jobs-in-may.db
    """  # noqa: D301 - \b keeps the lines of the examples
    target = store_path(store)
    kept = restore(target, copy)
    if talk.json:
        talk.answer(write_json({"files": files_as_json([target, *([kept] if kept else [])])}))
        return
    talk.answer(f"Restored: {target}")
    if kept is not None:
        talk.answer(f"The jobs of before are kept in {kept}")
