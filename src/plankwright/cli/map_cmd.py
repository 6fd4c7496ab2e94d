"""`plankwright map`: draw the map of each surface."""

from pathlib import Path

import click

from plankwright.cli.options import (
    folder_argument,
    layout_argument,
    out_folder,
    out_option,
    paper_option,
    paper_size,
    talking,
)
from plankwright.cli.reading_layout import read_all
from plankwright.cli.talk import Talk, pass_talk
from plankwright.cli.written import show_written
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

    LAYOUT is a file such as `plankwright lay` writes; left out, FOLDER/out/layout.json. A layout that
    breaks rules is refused.

    \b
      plankwright map porch
      plankwright map porch changed-by-hand.json --out porch/maps
      plankwright map porch --paper a4
    """  # noqa: D301 - \b keeps the lines of the examples
    job, read, standing = read_all(talk, folder, layout)
    written = hand_out_maps(
        job,
        read,
        folder=out_folder(folder, out),
        files=talk.bench.files,
        paper=paper_size(paper),
        standing=standing,
    )
    show_written(talk, written)
