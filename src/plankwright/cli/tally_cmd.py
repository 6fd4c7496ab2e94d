"""`plankwright tally`: read a tally and judge it."""

from pathlib import Path

import click

from plankwright.cli.as_json import tally_as_json
from plankwright.cli.json_text import write_json
from plankwright.cli.options import talking
from plankwright.cli.talk import Talk, pass_talk
from plankwright.cli.tally_text import show_tally
from plankwright.errors import BadInputError
from plankwright.measure import Unit
from plankwright.model import Rules
from plankwright.workshop.judge_tally import judge_tally, tape_of


@click.command("tally")
@click.argument("source", metavar="FOLDER|FILE", type=click.Path(path_type=Path))
@click.option(
    "--unit",
    type=click.Choice([unit.value for unit in Unit], case_sensitive=False),
    help="Unit of bare numbers in a FILE; else each length must name its own. A folder's job.toml says it.",
)
@click.option(
    "--decimal-comma",
    is_flag=True,
    help="In a FILE, the comma is the decimal mark. A folder's job.toml says it.",
)
@talking
@pass_talk
def command(talk: Talk, source: Path, unit: str | None, *, decimal_comma: bool) -> None:
    """Read a tally and judge it: totals, recovery, doubtful rows.

    From a job folder, by the rules of its job.toml and beside what is to be covered; from a tally file
    alone, by the rules that hold when a job says nothing.

    \b
      plankwright tally porch
      plankwright tally pulled-on-saturday.xlsx --unit in
      plankwright tally porch --json

    It tells the totals, the share that can be hung by lot and overall, the widths, the longest clear runs
    and the rows to look at again. Rows that cannot be read are told all at once, each with its line.
    """  # noqa: D301 - \b keeps the lines of the examples
    files = talk.bench.files
    if source.is_dir():
        if unit is not None or decimal_comma:
            raise click.UsageError(
                "--unit and --decimal-comma are for a tally FILE: in a FOLDER, job.toml says both"
            )
        reading = files.read_job(source)
        job, tape, remarks = reading.job, reading.job.tape, reading.remarks
        judged = judge_tally(job.boards, job.rules, tape, job.surfaces)
    else:
        try:
            tally = files.read_tally(
                source, unit=None if unit is None else Unit(unit), decimal_comma=decimal_comma
            )
        except BadInputError as error:
            if unit is None and "has no unit" in str(error):
                error.add_note("If all bare numbers are of one unit, name it: --unit in, ft, mm, cm or m.")
            raise
        tape, remarks = tape_of(tally.boards), tally.remarks
        judged = judge_tally(tally.boards, Rules(), tape)
    if talk.json:
        talk.answer(write_json(tally_as_json(judged, remarks)))
    else:
        show_tally(judged, remarks, tape, talk)
