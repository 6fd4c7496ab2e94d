"""`plankwright lumber`: measure the pile: board feet, weight, worth, hours, carbon."""

from pathlib import Path

import click

from plankwright.cli.advice import read_if_laid, show_leaf, sources_option
from plankwright.cli.options import folder_argument, layout_argument, talking
from plankwright.cli.talk import Talk, pass_talk
from plankwright.workshop.advice.measure_lumber import measure_lumber
from plankwright.workshop.advice.tell_lumber import lumber_leaf


@click.command("lumber")
@folder_argument
@layout_argument
@sources_option
@talking
@pass_talk
def command(talk: Talk, folder: Path, layout: Path | None, *, sources: bool) -> None:
    """Measure the pile: board feet, weight, worth, hours, carbon.

    Board by board to the hundredth and by surface measure, each by its own rule. Money and hours come from
    your own prices and times, under [[price]] and [[task]] in job.toml. With a layout what hangs is weighed
    as well; LAYOUT left out, FOLDER/out/layout.json if it is there.

    \b
      plankwright lumber porch
      plankwright lumber porch --sources
    """  # noqa: D301 - \b keeps the lines of the examples
    job, laid, _, remarks = read_if_laid(talk, folder, layout)
    lumber = measure_lumber(job, laid)
    show_leaf(talk, lumber_leaf(job, lumber), lumber, remarks, sources=sources)
