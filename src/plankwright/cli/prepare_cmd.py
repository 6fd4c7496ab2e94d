"""`plankwright prepare`: list what is done to each board before it is cut."""

from pathlib import Path

import click

from plankwright.cli.advice import read_if_laid, show_leaf, sources_option
from plankwright.cli.options import folder_argument, layout_argument, talking
from plankwright.cli.talk import Talk, pass_talk
from plankwright.workshop.advice.ready_boards import ready_boards, readying_leaf


@click.command("prepare")
@folder_argument
@layout_argument
@sources_option
@talking
@pass_talk
def command(talk: Talk, folder: Path, layout: Path | None, *, sources: bool) -> None:
    """List what is done to each board before it is cut.

    In the order of work, tool by tool: look, nails, detector, heat or drying, chalk, edges, thickness. With a
    layout only the boards that it needs, and what the saw does to each later; boards that were sawn are left
    out. LAYOUT left out, FOLDER/out/layout.json if it is there.

    \b
      plankwright prepare porch
      plankwright prepare porch --sources
    """  # noqa: D301 - \b keeps the lines of the examples
    job, laid, standing, remarks = read_if_laid(talk, folder, layout)
    readying = ready_boards(job, laid, standing)
    show_leaf(talk, readying_leaf(job, readying), readying, remarks, sources=sources)
