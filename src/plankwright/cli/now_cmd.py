"""`plankwright now`: lay out what is left of a job."""

from pathlib import Path

import click

from plankwright.cli.as_json import changes_as_json
from plankwright.cli.follow import follow
from plankwright.cli.json_text import files_as_json, write_json
from plankwright.cli.options import (
    folder_argument,
    layout_argument,
    out_folder,
    out_option,
    paper_option,
    paper_size,
    talking,
)
from plankwright.cli.reading_layout import read_work
from plankwright.cli.searching import effort_option, exit_code, found_as_json, seed_option, show_answer
from plankwright.cli.talk import Talk, pass_talk
from plankwright.cli.written import show_written
from plankwright.layout.result import Watch
from plankwright.workshop.ask_enough import ask_enough
from plankwright.workshop.caution import CAUTION
from plankwright.workshop.hand_out import LAYOUT_FILE, Since, hand_out
from plankwright.workshop.lay_out import read_effort
from plankwright.workshop.tell_changes import tell_changes
from plankwright.workshop.tell_work import tell_work
from plankwright.workshop.what_now import WhatNow, what_now


@click.command("now")
@folder_argument
@layout_argument
@out_option
@effort_option
@seed_option
@paper_option
@talking
@pass_talk
def command(
    talk: Talk,
    /,
    folder: Path,
    layout: Path | None,
    out: Path | None,
    *,
    effort: str,
    seed: int,
    paper: str | None,
) -> int:
    """Say what now: lay out what is left, with little change.

    After something happened that was marked with `plankwright mark`: what hangs stays where it hangs, what is
    cut is used where it can be, and of the rest as little is changed as can be. LAYOUT is the one that was
    worked by; left out, FOLDER/out/layout.json.

    \b
      plankwright now porch
      plankwright now porch --effort 2m

    It tells what becomes of each piece that does not stay as it was. All files that `plankwright lay` writes
    are written anew, with only what is still to be cut and hung. The layout before is kept beside them as
    layout-before.json: named as LAYOUT, it is what the job goes on by again. When it cannot be covered any
    more, it says which boards would close it.

    It ends as soon as all is covered. Ctrl-C ends the search earlier and writes the best so far; a second
    Ctrl-C ends with nothing written.
    """  # noqa: D301 - \b keeps the lines of the examples
    how_long = read_effort(effort)
    reading = talk.bench.files.read_job(folder)
    talk.remark(reading.remarks)
    target = out_folder(folder, out)
    job, work = reading.job, read_work(talk, folder, reading.job)
    before = talk.bench.files.read_layout(layout or out_folder(folder, None) / LAYOUT_FILE)
    talk.bench.files.demand_writable(target / LAYOUT_FILE)

    def run(watch: Watch) -> WhatNow:
        return what_now(job, before, work, again=talk.bench.again, effort=how_long, seed=seed, watch=watch)

    now = follow(run, talk, job.tape)
    standing = work.standing
    answer = ask_enough(job, now.result, standing)
    news = (*tell_work(job, before, work), *tell_changes(job, now.changes))
    written = hand_out(
        job,
        now.result.layout,
        folder=target,
        files=talk.bench.files,
        paper=paper_size(paper),
        answer=answer,
        standing=standing,
        since=Since(layout=before, news=news),
    )
    if talk.json:
        document = {
            **found_as_json(reading, now, answer),
            "changes": changes_as_json(now.changes),
            "found_boards": list(now.found),
            "files": files_as_json(file.path for file in written),
        }
        talk.answer(write_json(document))
        return exit_code(answer)
    show_answer(talk, answer, now, news)
    talk.answer("")
    show_written(talk, written)
    talk.answer(f"\n{CAUTION}")
    return exit_code(answer)
