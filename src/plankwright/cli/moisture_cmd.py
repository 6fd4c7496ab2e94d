"""`plankwright moisture`: say whether the boards are dry enough, and how far they move."""

from pathlib import Path

import click

from plankwright.cli.advice import read_if_laid, show_leaf, sources_option
from plankwright.cli.options import folder_argument, layout_argument, talking
from plankwright.cli.talk import Talk, pass_talk
from plankwright.workshop.advice.judge_moisture import judge_moisture
from plankwright.workshop.advice.tell_moisture import moisture_leaf


@click.command("moisture")
@folder_argument
@layout_argument
@sources_option
@talking
@pass_talk
def command(talk: Talk, folder: Path, layout: Path | None, *, sources: bool) -> None:
    """Say whether the boards are dry enough, and how far they move.

    Go, wait or measure: from the readings in the tally and the air of the room under [room] in job.toml. It
    tells how far boards move between the seasons, and whether gaps and tongues have room for that. With a
    layout, for its courses; LAYOUT left out, FOLDER/out/layout.json if it is there.

    \b
      plankwright moisture porch
      plankwright moisture porch --sources
    """  # noqa: D301 - \b keeps the lines of the examples
    job, laid, standing, remarks = read_if_laid(talk, folder, layout)
    moisture = judge_moisture(job, laid, standing)
    show_leaf(talk, moisture_leaf(job, moisture), moisture, remarks, sources=sources)
