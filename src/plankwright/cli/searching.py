"""What `enough`, `lay` and `now` share: a search followed to its end, and its answer shown."""

from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Protocol

import click

from plankwright.check import Finding
from plankwright.cli.as_json import answer_as_json, findings_as_json
from plankwright.cli.follow import follow
from plankwright.cli.json_text import Json, problems_as_json
from plankwright.cli.talk import Talk
from plankwright.errors import ExitCode
from plankwright.layout.result import Verdict, Watch
from plankwright.workshop.ask_enough import Answer, ask_enough
from plankwright.workshop.hand_out import LAYOUT_FILE
from plankwright.workshop.lay_out import LaidOut, lay_out, read_effort
from plankwright.workshop.ports import JobReading


class Found(Protocol):
    """What a search came to, and what the checker says of it."""

    @property
    def findings(self) -> tuple[Finding, ...]:
        """All that it found."""
        ...

    @property
    def warnings(self) -> Sequence[Finding]:
        """What is left to the user's judgement."""
        ...


effort_option = click.option(
    "--effort",
    default="steady",
    show_default=True,
    metavar="WORD|TIME",
    envvar="PLANKWRIGHT_EFFORT",
    show_envvar=True,
    help="How long to search: glance, steady or thorough, or about a time for each surface, such as 45, 90s "
    "or 2m. It is counted in steps of work, so that a slow or busy machine takes longer to the same layout.",
)

seed_option = click.option(
    "--seed",
    type=click.IntRange(min=0, max=2**31 - 1),
    default=0,
    show_default=True,
    metavar="NUMBER",
    envvar="PLANKWRIGHT_SEED",
    show_envvar=True,
    help="The same job, effort and seed give the same layout; another seed may give another one.",
)

on_option = click.option(
    "--on",
    metavar="ADDRESS",
    help="A Dask scheduler of your own, such as tcp://192.0.2.7:8786, whose workers do it; needs the extra "
    "“cluster”.  [default: all cores of this machine]",
)


def search(
    talk: Talk, folder: Path, *, effort: str, seed: int, on: str | None, out: Path | None = None
) -> tuple[JobReading, LaidOut, Answer]:
    """Read a job, search a layout for it and ask whether the pile is enough.

    Parameters
    ----------
    talk
        How this run speaks, and the rooms it calls.
    folder
        The job folder.
    effort, seed, on
        As given.
    out
        Folder that the layout will be written to, if it will: tried before the search, whose result would be
        lost otherwise.

    Returns
    -------
    tuple
        The job as read, its checked layout and the answer.
    """
    how_long = read_effort(effort)
    reading = talk.bench.files.read_job(folder)
    talk.remark(reading.remarks)
    if out is not None:
        talk.bench.files.demand_writable(out / LAYOUT_FILE)

    crew = talk.bench.crew_at(on)

    def run(watch: Watch) -> LaidOut:
        return lay_out(
            reading.job, effort=how_long, seed=seed, watch=watch, search=talk.bench.search, crew=crew
        )

    laid_out = follow(run, talk, reading.job.tape)
    return reading, laid_out, ask_enough(reading.job, laid_out.result)


def show_answer(talk: Talk, answer: Answer, found: Found, news: Iterable[str] = ()) -> None:
    """Show an answer, what is new, and what the checker warns of, for a person to read."""
    headline, *rest = str(answer).splitlines()
    talk.headline(headline)
    for line in (*news, *rest):
        talk.answer(line)
    for warning in found.warnings:
        talk.answer(f"Mind: {warning}")


def found_as_json(reading: JobReading, found: Found, answer: Answer) -> dict[str, Json]:
    """Give a search's answer, findings and remarks as JSON."""
    return {
        **answer_as_json(answer),
        "findings": findings_as_json(found.findings),
        "remarks": problems_as_json(reading.remarks),
    }


def exit_code(answer: Answer) -> ExitCode:
    """Give the code that an answer leaves behind."""
    return ExitCode.DONE if answer.verdict is Verdict.ENOUGH else ExitCode.NOT_ENOUGH
