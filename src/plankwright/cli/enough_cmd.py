"""`plankwright enough`: is the pile enough?"""

from pathlib import Path

import click

from plankwright.cli.json_text import write_json
from plankwright.cli.options import folder_argument, talking
from plankwright.cli.searching import (
    effort_option,
    exit_code,
    found_as_json,
    on_option,
    search,
    seed_option,
    show_answer,
)
from plankwright.cli.talk import Talk, pass_talk
from plankwright.workshop.mark_work import demand_not_begun


@click.command("enough")
@folder_argument
@effort_option
@seed_option
@on_option
@talking
@pass_talk
def command(talk: Talk, folder: Path, effort: str, seed: int, on: str | None) -> int:
    """Say whether the pile is enough, and what would close it.

    It looks for a layout, as no sum of areas can tell, and writes nothing.

    \b
      plankwright enough porch
      plankwright enough porch --effort thorough
      plankwright enough porch --json --quiet | jq .wanted

    Enough: what is spare. Not enough: how much can be covered, what no layout can beat, and the shortest
    list of further boards that would close it. Not settled: neither was proven; search longer.

    Ctrl-C stops the search and answers from the best layout so far; a second Ctrl-C ends.
    """  # noqa: D301 - \b keeps the lines of the examples
    demand_not_begun(talk.bench.files.read_work(folder))
    reading, laid_out, answer = search(talk, folder, effort=effort, seed=seed, on=on)
    if talk.json:
        talk.answer(write_json(found_as_json(reading, laid_out, answer)))
    else:
        show_answer(talk, answer, laid_out)
    return exit_code(answer)
