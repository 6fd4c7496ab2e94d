"""`plankwright lay`: lay out the boards and write everything that is built from."""

from pathlib import Path

import click

from plankwright.cli.json_text import files_as_json, write_json
from plankwright.cli.options import folder_argument, out_folder, out_option, paper_option, paper_size, talking
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
from plankwright.cli.written import show_written
from plankwright.workshop.caution import CAUTION
from plankwright.workshop.hand_out import hand_out
from plankwright.workshop.mark_work import demand_not_begun


@click.command("lay")
@folder_argument
@out_option
@effort_option
@seed_option
@on_option
@paper_option
@talking
@pass_talk
def command(
    talk: Talk,
    /,
    folder: Path,
    *,
    out: Path | None,
    effort: str,
    seed: int,
    on: str | None,
    paper: str | None,
) -> int:
    """Lay out the boards; write map, papers, cut list and layout.

    \b
      plankwright lay porch
      plankwright lay porch --effort 2m --out porch/second-try
      plankwright lay porch --paper a4 --quiet

    \b
    Written are:
      layout.json        the layout itself, for map, sheets and check
      cut-list.csv       every cut, for a spreadsheet
      map-SURFACE.svg    the map of each surface, to scale
      sheets.pdf         cut list and hanging sheet, for the saw and the wall

    Nothing is written that our own checker refuses. When the pile is not enough, what can be covered is
    laid out all the same.

    Several surfaces that there is plenty of wood for are laid out side by side, on all cores.

    Ctrl-C stops the search and writes the best layout so far; a second Ctrl-C ends with nothing written.
    """  # noqa: D301 - \b keeps the lines of the examples
    target = out_folder(folder, out)
    if target == out_folder(folder, None):
        demand_not_begun(talk.bench.files.read_work(folder))
    reading, laid_out, answer = search(talk, folder, effort=effort, seed=seed, on=on, out=target)
    written = hand_out(
        reading.job,
        laid_out.result.layout,
        folder=target,
        paper=paper_size(paper),
        files=talk.bench.files,
        answer=answer,
    )
    if talk.json:
        document = found_as_json(reading, laid_out, answer)
        talk.answer(write_json({**document, "files": files_as_json(file.path for file in written)}))
        return exit_code(answer)
    show_answer(talk, answer, laid_out)
    talk.answer("")
    show_written(talk, written)
    talk.answer(f"\n{CAUTION}")
    return exit_code(answer)
