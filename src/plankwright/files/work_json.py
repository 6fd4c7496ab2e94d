"""How far a job has come, kept as JSON in its folder: written by `plankwright mark`, not by hand."""

import json
from pathlib import Path

from plankwright.errors import BadInputError, Problem
from plankwright.files.disk import write_files
from plankwright.files.json_text import document_from, document_in, laid_out
from plankwright.files.layout_json import course_of, course_written, exact_mm, piece_of, piece_written
from plankwright.files.sound_part import Raw
from plankwright.files.work_document import (
    FORMAT,
    VERSION,
    CutDocument,
    HungDocument,
    MarkDocument,
    PartDocument,
    SawnDocument,
    WorkDocument,
)
from plankwright.model import (
    CutPiece,
    HungCourse,
    InvalidValueError,
    Mark,
    Part,
    SawnBoard,
    Work,
)

WORK_FILE = "work.json"


def read_work(folder: Path) -> Work | None:
    """Read how far the job of a folder has come.

    Parameters
    ----------
    folder
        The job folder.

    Returns
    -------
    Work or None
        The marks; nothing when nothing was marked.

    Raises
    ------
    BadInputError
        With every problem of the file.
    FileTroubleError
        If it cannot be read.
    """
    file = folder / WORK_FILE
    if not file.exists():
        return None
    document = document_in(file, WorkDocument)
    try:
        work = Work(job_name=document.job, boards=document.boards, marks=tuple(map(_mark, document.marks)))
        _ = work.standing
    except InvalidValueError as trouble:
        what = f"the marks contradict each other ({trouble}): take the last ones out, or start it anew"
        raise BadInputError([Problem(file=file.name, place="marks", what=what)]) from None
    return work


def write_work(folder: Path, work: Work) -> None:
    """Keep in its folder how far a job has come.

    Parameters
    ----------
    folder
        The job folder.
    work
        The marks.

    Raises
    ------
    FileTroubleError
        If the file cannot be written.
    """
    write_files({folder / WORK_FILE: work_to_json(work)})


def work_to_json(work: Work) -> str:
    """Write how far a job has come as JSON.

    Parameters
    ----------
    work
        The marks.

    Returns
    -------
    str
        The same text for the same marks; every length in millimetres, exact to the nanometre.
    """
    return laid_out(
        {
            "format": FORMAT,
            "version": VERSION,
            "job": work.job_name,
            "boards": list(work.boards),
            "marks": list(map(_mark_written, work.marks)),
        }
    )


def mark_to_json(mark: Mark) -> str:
    """Write one mark as JSON, as it stands in the file."""
    return json.dumps(_mark_written(mark), ensure_ascii=False)


def mark_from_json(text: str) -> Mark:
    """Read one mark.

    Raises
    ------
    BadInputError
        If the text is none.
    """
    return _mark(document_from(text, WORK_FILE, MarkDocument))


def _mark_written(mark: Mark) -> Raw:
    lists = {
        "hung": [{"surface": row.surface_id, "course": course_written(row.course)} for row in mark.hung],
        "cut": [
            {"surface": cut.surface_id, "piece": piece_written(cut.piece), "plain": cut.plain}
            for cut in mark.cut
        ],
        "gone": [{"surface": surface, "label": label} for surface, label in mark.gone],
        "boards": [
            {"board": sawn.board_id, "left": list(map(_part_written, sawn.left))} for sawn in mark.boards
        ],
        "lost": list(mark.lost),
    }
    return {"mark": mark.kind.value, "what": mark.what} | {
        key: value for key, value in lists.items() if value
    }


def _part_written(part: Part) -> Raw:
    return {
        "along": [exact_mm(part.along_from_nm), exact_mm(part.along_to_nm)],
        "across": [exact_mm(part.across_from_nm), exact_mm(part.across_to_nm)],
    }


def _mark(document: MarkDocument) -> Mark:
    return Mark(
        kind=document.mark,
        what=document.what,
        hung=tuple(map(_hung, document.hung)),
        cut=tuple(map(_cut, document.cut)),
        gone=tuple((gone.surface, gone.label) for gone in document.gone),
        boards=tuple(map(_sawn, document.boards)),
        lost=document.lost,
    )


def _hung(document: HungDocument) -> HungCourse:
    return HungCourse(surface_id=document.surface, course=course_of(document.course))


def _cut(document: CutDocument) -> CutPiece:
    return CutPiece(surface_id=document.surface, piece=piece_of(document.piece), plain=document.plain)


def _sawn(document: SawnDocument) -> SawnBoard:
    return SawnBoard(
        board_id=document.board, left=tuple(_part(document.board, part) for part in document.left)
    )


def _part(board_id: str, document: PartDocument) -> Part:
    return Part(
        board_id=board_id,
        along_from_nm=document.along[0],
        along_to_nm=document.along[1],
        across_from_nm=document.across[0],
        across_to_nm=document.across[1],
    )
