"""`plankwright hanging`: the hanging sheet on the screen."""

from collections.abc import Iterator
from pathlib import Path

import click

from plankwright.cli.advice import read_laid, values_as_json
from plankwright.cli.json_text import write_json
from plankwright.cli.options import folder_argument, layout_argument, talking
from plankwright.cli.talk import Talk, pass_talk
from plankwright.paper.hanging_sheet import CourseBlock, SurfaceSheet
from plankwright.workshop.caution import CAUTION
from plankwright.workshop.list_work import list_hanging


@click.command("hanging")
@folder_argument
@layout_argument
@talking
@pass_talk
def command(talk: Talk, folder: Path, layout: Path | None) -> None:
    """List what hangs where and how, course by course.

    As on the printed hanging sheet: marks, places, notches, joints, nails, what to mind. LAYOUT left out,
    FOLDER/out/layout.json. What hangs already is left out.

    \b
      plankwright hanging porch
      plankwright hanging porch --json
    """  # noqa: D301 - \b keeps the lines of the examples
    job, laid, standing, _ = read_laid(talk, folder, layout)
    surfaces = list_hanging(job, laid, standing)
    if talk.json:
        talk.answer(write_json({"surfaces": values_as_json(surfaces)}))
        return
    courses = sum(len(surface.courses) for surface in surfaces)
    talk.headline(f"{courses} courses to hang." if courses else "Nothing is left to be hung.")
    for surface in surfaces:
        talk.answer("\n" + "\n".join(_told(surface)))
    talk.answer(f"\n{CAUTION}")


def _told(surface: SurfaceSheet) -> Iterator[str]:
    yield surface.id
    for sentence in (*surface.intro, *surface.bare):
        yield f"  {sentence}"
    for course in surface.courses:
        yield from _course(course, surface.far_edge)


def _course(course: CourseBlock, far_edge: str) -> Iterator[str]:
    yield f"\n  Course {course.number}: {far_edge} edge at {course.mark}, {course.width} wide"
    for sentence in course.watch:
        yield f"    mind: {sentence}"
    for piece in course.pieces:
        yield f"    {piece.label}   {piece.board}   {piece.size}"
        for todo in piece.todo:
            yield f"      {todo.what} {todo.how}"
