"""`plankwright sheets`: print the cut list and the hanging sheet."""

from pathlib import Path

import click

from plankwright.cli.from_layout import write_from_layout
from plankwright.cli.options import folder_argument, layout_argument, out_option, paper_option, talking
from plankwright.cli.talk import Talk, pass_talk
from plankwright.workshop.hand_out import hand_out_sheets


@click.command("sheets")
@folder_argument
@layout_argument
@out_option
@paper_option
@talking
@pass_talk
def command(talk: Talk, folder: Path, layout: Path | None, out: Path | None, paper: str | None) -> None:
    """Print the pack of papers from a layout made earlier.

    Answer, maps, what is done to each board, cut list, hanging sheets, what to buy, hazards, sources and
    labels, in one PDF file. LAYOUT is a file such as `plankwright lay` writes; left out,
    FOLDER/out/layout.json. A layout that breaks rules is refused.

    \b
      plankwright sheets porch
      plankwright sheets porch changed-by-hand.json --paper a4
    """  # noqa: D301 - \b keeps the lines of the examples
    write_from_layout(talk, hand_out_sheets, folder, layout=layout, out=out, paper=paper)
