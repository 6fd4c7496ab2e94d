"""`plankwright left`: what is left, as a tally for the next surface."""

from pathlib import Path

import click

from plankwright.cli.as_json import left_over_as_json
from plankwright.cli.json_text import files_as_json, write_json
from plankwright.cli.options import folder_argument, layout_argument, out_folder, out_option, talking
from plankwright.cli.reading_layout import read_all
from plankwright.cli.tables import table
from plankwright.cli.talk import Talk, pass_talk
from plankwright.cli.written import show_written
from plankwright.measure import round_down, write_inches, write_length
from plankwright.workshop.keep_left_over import gather_left_over, hand_out_left_over


@click.command("left")
@folder_argument
@layout_argument
@out_option
@talking
@pass_talk
def command(talk: Talk, folder: Path, layout: Path | None, out: Path | None) -> None:
    """Write what is left as a tally for the next surface.

    Once all of LAYOUT hangs: whole boards, and offcuts that are long and wide enough for another course, with
    the flaws that lie in them. LAYOUT left out, it is FOLDER/out/layout.json.

    \b
      plankwright left porch
      plankwright left porch --out loft && mv loft/left-over.csv loft/tally.csv

    The file is a tally like any other; each offcut has an id of its own to be written on it. Its sawn ends
    and edges are tallied as they are; the next job trims and straightens them again by its own rules.
    """  # noqa: D301 - \b keeps the lines of the examples
    job, read, standing = read_all(talk, folder, layout)
    left = gather_left_over(job, read, standing)
    written = hand_out_left_over(left, job, folder=out_folder(folder, out), files=talk.bench.files)
    if talk.json:
        document = {**left_over_as_json(left), "files": files_as_json(file.path for file in written)}
        talk.answer(write_json(document))
        return
    talk.headline(left.headline)
    step = job.tape.step_nm
    rows = [
        (
            board.id,
            # Rounded down, as in the tally.
            write_length(round_down(board.length_nm, step), job.tape),
            write_inches(round_down(board.narrowest_width_nm, step), job.tape),
        )
        for board in left.boards
        if board.id not in left.whole
    ]
    if rows:
        talk.answer(table("Offcuts", ("id", "length", "width"), rows))
    if written:
        talk.answer("")
        show_written(talk, written)
