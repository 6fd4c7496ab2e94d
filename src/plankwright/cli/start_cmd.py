"""`plankwright start`: make a job folder."""

import shlex
from pathlib import Path

import click

from plankwright.cli.json_text import files_as_json, write_json
from plankwright.cli.options import folder_argument, talking
from plankwright.cli.talk import Talk, pass_talk


@click.command("start")
@folder_argument
@talking
@pass_talk
def command(talk: Talk, folder: Path) -> None:
    """Make a job folder with commented templates.

    FOLDER is made when it is not there. Files that are there already are left alone, and the command
    refuses to go on.

    \b
      plankwright start porch
      plankwright start jobs/kitchen-ceiling

    Then measure: the boards into tally.csv (or a spreadsheet tally.xlsx in its place), the surfaces and
    the rules into job.toml. Each template says in its comments how.
    """  # noqa: D301 - \b keeps the lines of the examples
    written = talk.bench.files.write_template(folder)
    if talk.json:
        talk.answer(write_json({"files": files_as_json(written)}))
        return
    for file in written:
        talk.answer(str(file))
    talk.say(f"Fill these in; then: plankwright tally {shlex.quote(str(folder))}")
