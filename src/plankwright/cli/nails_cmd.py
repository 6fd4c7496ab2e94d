"""`plankwright nails`: say what each piece is nailed with, and how deep that goes."""

from pathlib import Path

import click

from plankwright.cli.advice import read_laid, show_leaf, sources_option
from plankwright.cli.options import folder_argument, layout_argument, talking
from plankwright.cli.talk import Talk, pass_talk
from plankwright.workshop.advice.plan_nails import plan_nails
from plankwright.workshop.advice.tell_nails import nails_leaf


@click.command("nails")
@folder_argument
@layout_argument
@sources_option
@talking
@pass_talk
def command(talk: Talk, folder: Path, layout: Path | None, *, sources: bool) -> None:
    """Say what each piece is nailed with, and how deep that goes.

    Which nail, how many and where, how far they reach into the framing, and what they hold. The longest nail
    is taken that stays short of where a cable or pipe may lie; what other rules ask for stands beside it.
    What is asked of nails is set under [nails] in job.toml. LAYOUT left out, FOLDER/out/layout.json.

    \b
      plankwright nails porch
      plankwright nails porch --sources
    """  # noqa: D301 - \b keeps the lines of the examples
    job, laid, standing, remarks = read_laid(talk, folder, layout)
    plan = plan_nails(job, laid, standing)
    show_leaf(talk, nails_leaf(job, plan), plan, remarks, sources=sources)
