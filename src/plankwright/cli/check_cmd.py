"""`plankwright check`: is a layout right?"""

from pathlib import Path

import click

from plankwright.cli.as_json import findings_as_json
from plankwright.cli.json_text import write_json
from plankwright.cli.options import folder_argument, layout_argument, talking
from plankwright.cli.reading_layout import read_all
from plankwright.cli.talk import Talk, pass_talk
from plankwright.errors import ExitCode
from plankwright.workshop.check_layout import check_layout


@click.command("check")
@folder_argument
@layout_argument
@talking
@pass_talk
def command(talk: Talk, folder: Path, layout: Path | None) -> int:
    """List what is wrong with a layout, whoever made it.

    Everything is measured again from the job and the layout alone: cover, boards, joints, cuts, nails.
    LAYOUT is a file such as `plankwright lay` writes; left out, FOLDER/out/layout.json.

    \b
      plankwright check porch
      plankwright check porch changed-by-hand.json
      plankwright check porch --json

    The number behind a finding is explained in docs/checker.md. Warnings and notes alone are no fault.
    """  # noqa: D301 - \b keeps the lines of the examples
    judged = check_layout(*read_all(talk, folder, layout))
    every = (*judged.faults, *judged.warnings, *judged.notes)
    if talk.json:
        talk.answer(write_json({"right": not judged.faults, "findings": findings_as_json(every)}))
    else:
        talk.headline(judged.headline)
        for finding in every:
            talk.answer(f"{finding.severity}: {finding}")
    return ExitCode.NOT_ENOUGH if judged.faults else ExitCode.DONE
