"""`plankwright mark`: mark what happened while a job is worked on."""

from collections.abc import Mapping
from pathlib import Path

import click

from plankwright.cli.as_json import work_as_json
from plankwright.cli.json_text import write_json
from plankwright.cli.options import folder_argument, out_folder, talking
from plankwright.cli.reading_layout import read_work
from plankwright.cli.talk import Talk, pass_talk
from plankwright.errors import ExitCode
from plankwright.model import MarkKind, Work
from plankwright.workshop.hand_out import LAYOUT_FILE
from plankwright.workshop.mark_work import Happened, Measured, mark_work
from plankwright.workshop.ports import JobReading
from plankwright.workshop.tell_work import tell_mark, tell_work

_MEASURES = ("edge", "higher", "lower")
_SIZES = ("length", "width")
_WORDS = [kind.value for kind in MarkKind]


@click.command("mark")
@folder_argument
@click.argument("word", metavar="[WORD]", type=click.Choice(_WORDS, case_sensitive=False), required=False)
@click.argument("names", metavar="[NAME]...", nargs=-1)
@click.option(
    "--edge",
    metavar="LENGTH",
    help="With hung: where the far edge of the course was measured, from the start side.",
)
@click.option(
    "--higher",
    metavar="LENGTH",
    help="With hung: how much farther from the start side than planned the course ends.",
)
@click.option(
    "--lower",
    metavar="LENGTH",
    help="With hung: how much nearer to the start side than planned the course ends.",
)
@click.option("--length", metavar="LENGTH", help="With miscut: how long the piece is now.")
@click.option("--width", metavar="LENGTH", help="With miscut: how wide it is now.")
@click.option(
    "--surface", metavar="ID", help="The surface, where a label or a number alone could be of several."
)
@click.option(
    "--layout",
    type=click.Path(path_type=Path),
    help="The layout that is worked by.  [default: FOLDER/out/layout.json]",
)
@click.option("--undo", is_flag=True, help="Take the last mark back.")
@talking
@pass_talk
def command(
    talk: Talk,
    /,
    folder: Path,
    word: str | None,
    names: tuple[str, ...],
    *,
    layout: Path | None,
    undo: bool,
    **more: str | None,
) -> int:
    """Mark what was cut, hung, broke or is lost; take marks back.

    WORD says what happened, NAME to what: labels of pieces such as 4b, numbers of courses for all pieces of
    one, or ids of boards.

    \b
      cut      cut free as the layout has it
      hung     hung, and cut before if it was not marked so
      broke    a piece is no more
      miscut   cut to another size, which --length and --width tell
      down     taken down again, whole
      lost     a board is no more, as far as nothing was cut from it

    \b
      plankwright mark porch cut 4a 4b
      plankwright mark porch hung 1 2 3
      plankwright mark porch hung 4 --edge "24-1/8"
      plankwright mark porch miscut 5b --length "3 ft 2"
      plankwright mark porch lost F7
      plankwright mark porch --undo
      plankwright mark porch            how far the job has come

    A course hangs on the one below and is as high as laid out, unless you say otherwise. Boards that you
    found are just added to the tally; where a part of a board broke, write it into the board's flaws there.
    The marks are kept in work.json of FOLDER. Then ask “plankwright now”.
    """  # noqa: D301 - \b keeps the lines of the examples
    reading = talk.bench.files.read_job(folder)
    talk.remark(reading.remarks)
    job, before = reading.job, read_work(talk, folder, reading.job)
    laid = talk.bench.files.read_layout(layout or out_folder(folder, None) / LAYOUT_FILE)
    said: tuple[str, ...] = ()
    after = before
    if undo:
        if word or names:
            raise click.UsageError("--undo takes the last mark back, and goes with no other word")
        after = before.undone()
        said = _tell_undone(before)
    elif word:
        after = mark_work(job, laid, before, _happened(reading, MarkKind(word), names, more))
        said = tell_mark(after.marks[-1], job.tape)
    if after is not before:
        talk.bench.files.write_work(folder, after)
    if talk.json:
        talk.answer(write_json(work_as_json(job, laid, after)))
        return ExitCode.DONE
    for line in (*said, *tell_work(job, laid, after)):
        talk.answer(line)
    return ExitCode.DONE


def _tell_undone(before: Work) -> tuple[str, ...]:
    if not before.marks:
        return ("There is no mark to take back.",)
    last = before.marks[-1]
    return (f"Taken back: {last.kind} {last.what}.",)


def _happened(
    reading: JobReading, kind: MarkKind, names: tuple[str, ...], more: Mapping[str, str | None]
) -> Happened:
    measures = {word: reading.read_length(text) for word in _MEASURES if (text := more.get(word)) is not None}
    sizes = {word: reading.read_length(text) for word in _SIZES if (text := more.get(word)) is not None}
    if measures and kind is not MarkKind.HUNG:
        raise click.UsageError("--edge, --higher and --lower tell where a course hangs: they go with hung")
    if len(measures) > 1:
        raise click.UsageError("--edge, --higher and --lower say the same: give one of them")
    if sizes and kind is not MarkKind.MISCUT:
        raise click.UsageError("--length and --width tell the size of a piece cut wrong: they go with miscut")
    measured = None
    if measures:
        off = measures.get("higher", 0) - measures.get("lower", 0)
        measured = Measured(edge_nm=measures.get("edge"), off_nm=off)
    return Happened(
        kind=kind,
        names=names,
        surface_id=more.get("surface"),
        measured=measured,
        length_nm=sizes.get("length"),
        width_nm=sizes.get("width"),
    )
