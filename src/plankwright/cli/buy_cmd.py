"""`plankwright buy`: list what has to be bought for a layout."""

from pathlib import Path

import click

from plankwright.cli.advice import read_laid, show_leaf, sources_option
from plankwright.cli.options import folder_argument, layout_argument, talking
from plankwright.cli.talk import Talk, pass_talk
from plankwright.workshop.advice.go_shopping import go_shopping, shopping_leaf


@click.command("buy")
@folder_argument
@layout_argument
@sources_option
@talking
@pass_talk
def command(talk: Talk, folder: Path, layout: Path | None, *, sources: bool) -> None:
    """List what has to be bought for a layout.

    Nails by length, drill bits, adhesive, box extenders, jamb extensions, trim, blades, tools, tests. LAYOUT
    left out, FOLDER/out/layout.json. Which boards are missing is what “plankwright enough” says.

    \b
      plankwright buy porch
      plankwright buy porch --sources
    """  # noqa: D301 - \b keeps the lines of the examples
    job, laid, standing, remarks = read_laid(talk, folder, layout)
    items = go_shopping(job, laid, standing=standing)
    show_leaf(talk, shopping_leaf(items), items, remarks, sources=sources)
