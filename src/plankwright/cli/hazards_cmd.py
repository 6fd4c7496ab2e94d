"""`plankwright hazards`: say what can hurt on this job, and where that is from."""

from pathlib import Path

import click

from plankwright.cli.advice import read_if_laid, show_leaf, sources_option
from plankwright.cli.options import folder_argument, layout_argument, talking
from plankwright.cli.talk import Talk, pass_talk
from plankwright.workshop.advice.watch_out import hazards_leaf, watch_out


@click.command("hazards")
@folder_argument
@layout_argument
@sources_option
@talking
@pass_talk
def command(talk: Talk, folder: Path, layout: Path | None, *, sources: bool) -> None:
    """Say what can hurt on this job, and where that is from.

    From the age and paint of the lots, what boards were soaked with, what lies below them, and what is to be
    done: lead, asbestos, dust, nails, treated wood, wires, boards overhead. It is a reminder, and it says of
    nothing that it is permitted or cannot hurt.

    \b
      plankwright hazards porch
      plankwright hazards porch --sources
    """  # noqa: D301 - \b keeps the lines of the examples
    job, _, _, remarks = read_if_laid(talk, folder, layout)
    hazards = watch_out(job)
    show_leaf(talk, hazards_leaf(hazards), hazards, remarks, sources=sources)
