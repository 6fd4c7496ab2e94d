"""`plankwright map`: draw the map of each surface."""

from pathlib import Path

import click

from plankwright.cli.from_layout import write_from_layout
from plankwright.cli.options import folder_argument, layout_argument, out_option, paper_option, talking
from plankwright.cli.talk import Talk, pass_talk
from plankwright.workshop.hand_out import hand_out_maps


@click.command("map")
@folder_argument
@layout_argument
@out_option
@paper_option
@talking
@pass_talk
def command(talk: Talk, folder: Path, layout: Path | None, out: Path | None, paper: str | None) -> None:
    """Draw the map of each surface from a layout made earlier.

    On a sheet as SVG, and at full size as DXF for a drawing program. LAYOUT is a file such as `plankwright
    lay` writes; left out, FOLDER/out/layout.json. A layout that breaks rules is refused.

    \b
      plankwright map porch
      plankwright map porch changed-by-hand.json --out porch/maps
      plankwright map porch --paper a4
    """  # noqa: D301 - \b keeps the lines of the examples
    write_from_layout(talk, hand_out_maps, folder, layout=layout, out=out, paper=paper)
