"""`plankwright cuts`: the cut list on the screen."""

from collections.abc import Iterator
from pathlib import Path

import click

from plankwright.cli.advice import fields_as_json, read_laid
from plankwright.cli.json_text import Json, write_json
from plankwright.cli.options import folder_argument, layout_argument, talking
from plankwright.cli.talk import Talk, pass_talk
from plankwright.paper.cut_list import BoardBlock, Step
from plankwright.workshop.caution import CAUTION
from plankwright.workshop.list_work import list_cuts


@click.command("cuts")
@folder_argument
@layout_argument
@talking
@pass_talk
def command(talk: Talk, folder: Path, layout: Path | None) -> None:
    """List what is done at the saw, board by board.

    As on the printed cut list: every cut with its mark, what comes free, what is kept. LAYOUT left out,
    FOLDER/out/layout.json. What was sawn already is left out.

    \b
      plankwright cuts porch
      plankwright cuts porch --json
    """  # noqa: D301 - \b keeps the lines of the examples
    job, laid, standing, _ = read_laid(talk, folder, layout)
    boards = list_cuts(job, laid, standing)
    if talk.json:
        talk.answer(write_json({"boards": [_without_drawing(board) for board in boards]}))
        return
    talk.headline(f"{len(boards)} boards to cut or hang whole." if boards else "Nothing is left to be sawn.")
    for board in boards:
        talk.answer("\n" + "\n".join(_told(board)))
    talk.answer(f"\n{CAUTION}")


def _without_drawing(board: BoardBlock) -> Json:
    return {name: value for name, value in fields_as_json(board).items() if name != "drawing"}


def _told(board: BoardBlock) -> Iterator[str]:
    yield f"{board.id}: {board.size}, {board.about}"
    if board.paint:
        yield f"  paint: {board.paint}"
    if board.flaws:
        yield f"  flaws: {board.flaws}"
    for step in board.steps:
        yield f"  {_step(step)}"
    for piece in board.bench:
        yield f"  then on {piece.label} as it hangs, {piece.how}:"
        for step in piece.steps:
            yield f"    {_step(step)}"
    for note in board.notes:
        yield f"  mind: {note}"
    for offcut in board.offcuts:
        yield f"  keep {offcut}"


def _step(step: Step) -> str:
    mark = " ".join(step.mark.split())
    frees = ", ".join(f"{freed.label} ({freed.size})" for freed in step.frees)
    told = [f"{step.kind} {mark}".strip(), step.text, f"frees {frees}" if frees else ""]
    return "; ".join(part for part in told if part)
