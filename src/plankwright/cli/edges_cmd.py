"""`plankwright edges`: say what boxes, openings and trim ask for."""

from pathlib import Path

import click

from plankwright.cli.advice import read_laid, show_leaf, sources_option
from plankwright.cli.options import folder_argument, layout_argument, talking
from plankwright.cli.talk import Talk, pass_talk
from plankwright.workshop.advice.fit_edges import edges_leaf, fit_edges


@click.command("edges")
@folder_argument
@layout_argument
@sources_option
@talking
@pass_talk
def command(talk: Talk, folder: Path, layout: Path | None, *, sources: bool) -> None:
    """Say what boxes, openings and trim ask for.

    Notches piece by piece, how deep box extenders have to be, how far jambs come forward, and whether the
    trim covers the gap in the driest season. LAYOUT left out, FOLDER/out/layout.json.

    \b
      plankwright edges porch
      plankwright edges porch --sources
    """  # noqa: D301 - \b keeps the lines of the examples
    job, laid, _, remarks = read_laid(talk, folder, layout)
    edges = fit_edges(job, laid)
    show_leaf(talk, edges_leaf(job, edges), edges, remarks, sources=sources)
