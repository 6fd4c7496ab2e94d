"""`plankwright backup`: copy the file of jobs."""

from pathlib import Path

import click

from plankwright.cli.json_text import files_as_json, write_json
from plankwright.cli.options import store_option, store_path, talking
from plankwright.cli.talk import Talk, pass_talk
from plankwright.store import back_up


@click.command("backup")
@click.argument("copy", type=click.Path(path_type=Path))
@store_option
@talking
@pass_talk
def command(talk: Talk, /, copy: Path, *, store: Path | None) -> None:
    """Copy the app's file of jobs.

    COPY is the file to write; nothing is written over. The app may be open meanwhile.

    \b
      plankwright backup jobs-in-may.db
    """  # noqa: D301 - \b keeps the lines of the examples
    back_up(store_path(store), copy)
    talk.answer(write_json({"files": files_as_json([copy])}) if talk.json else str(copy))
