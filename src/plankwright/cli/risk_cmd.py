"""`plankwright risk`: what a layout survives when boards are lost."""

from collections.abc import Callable
from pathlib import Path

import click

from plankwright.cli.as_json import risk_as_json
from plankwright.cli.follow import Seen, follow_errand
from plankwright.cli.json_text import problems_as_json, write_json
from plankwright.cli.options import folder_argument, layout_argument, out_folder, talking
from plankwright.cli.reading_layout import read_work
from plankwright.cli.searching import on_option, seed_option
from plankwright.cli.tables import table
from plankwright.cli.talk import Talk, pass_talk
from plankwright.errors import ExitCode
from plankwright.measure import TapeStyle, write_length
from plankwright.workshop.caution import CAUTION
from plankwright.workshop.hand_out import LAYOUT_FILE
from plankwright.workshop.lay_out import read_effort
from plankwright.workshop.tell_risk import headline, tell_risk, tell_without
from plankwright.workshop.weigh_risk import DRAWS, HowMuch, Risk, RiskWatch, Tried, weigh_risk

_STOPPING = "Stopping: what was found so far is told. Press Ctrl-C again to give it up."


@click.command("risk")
@folder_argument
@layout_argument
@click.option(
    "--draws",
    type=click.IntRange(min=0, max=10_000),
    default=DRAWS,
    show_default=True,
    metavar="NUMBER",
    help="How often boards are lost one after another by lot.",
)
@click.option(
    "--effort",
    default="glance",
    show_default=True,
    metavar="WORD|TIME",
    help="How long to look for another layout after each loss, as for “plankwright now”.",
)
@seed_option
@on_option
@talking
@pass_talk
def command(
    talk: Talk,
    /,
    folder: Path,
    layout: Path | None,
    *,
    draws: int,
    effort: str,
    seed: int,
    on: str | None,
) -> int:
    """Say what it survives when boards break, and what to cut first.

    Before the first cut, and again whenever a board is gone. LAYOUT is the one that is worked by; left out,
    FOLDER/out/layout.json. What was marked is heeded.

    \b
      plankwright risk porch
      plankwright risk porch --draws 100 --effort 20
      plankwright risk porch --on tcp://192.0.2.7:8786

    Each board that is still to be cut is lost by itself, and all boards are lost one after another by lot;
    after each loss the rest is laid out anew. It tells which boards the layout cannot do without, as far as
    was found, how many losses it survives, and in which order to cut, so that what could go wrong does so
    while there is still choice. Nothing is written.

    It takes a layout anew for every board and several for every draw, on all cores. Ctrl-C tells what was
    found so far; a second Ctrl-C ends.
    """  # noqa: D301 - \b keeps the lines of the examples
    how_much = HowMuch(effort=read_effort(effort), seed=seed, draws=draws)
    reading = talk.bench.files.read_job(folder)
    talk.remark(reading.remarks)
    job, work = reading.job, read_work(talk, folder, reading.job)
    laid = talk.bench.files.read_layout(layout or out_folder(folder, None) / LAYOUT_FILE)
    crew, again = talk.bench.crew_at(on), talk.bench.again

    def errand(show: Callable[[Seen], None], stopped: Callable[[], bool]) -> Risk:
        def report(tried: Tried) -> None:
            show(_seen("each board alone", tried.boards, tried.of_boards))
            if tried.of_draws:
                show(_seen("losses by lot", tried.draws, tried.of_draws))

        watch = RiskWatch(report=report, stopped=stopped)
        return weigh_risk(job, laid, work, crew=crew, again=again, how_much=how_much, watch=watch)

    risk = follow_errand(errand, talk, _STOPPING)
    if talk.json:
        talk.answer(write_json({**risk_as_json(risk), "remarks": problems_as_json(reading.remarks)}))
    else:
        _show(talk, risk, job.tape)
    return ExitCode.DONE if risk.whole else ExitCode.NOT_ENOUGH


def _seen(row: str, done: int, of: int) -> Seen:
    return Seen(row=row, stage=f"{done} of {of}", done=done / of)


def _show(talk: Talk, risk: Risk, tape: TapeStyle) -> None:
    talk.headline(headline(risk))
    for sentence in tell_risk(risk):
        talk.answer(sentence)
    rows = [
        (
            one.board_id,
            tell_without(risk, one.board_id),
            write_length(one.longest_nm, tape),
            str(one.stand_ins),
            str(one.spare_stand_ins),
        )
        for one in risk.order
    ]
    if rows:
        headings = ("board", "a layout without it", "longest piece", "could stand in", "to spare")
        talk.answer("")
        talk.answer(table("Cut in this order", headings, rows))
        talk.answer(f"\n{CAUTION}")
