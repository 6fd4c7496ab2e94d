"""What was marked while a job was worked on, mark by mark, so that the last can be taken back."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import StrEnum

from plankwright.model.standing import NOTHING_DONE, CutPiece, HungCourse, Part, Standing
from plankwright.model.validity import demand


class MarkKind(StrEnum):
    """What happened."""

    CUT = "cut"
    HUNG = "hung"
    BROKE = "broke"
    MISCUT = "miscut"
    DOWN = "down"
    LOST = "lost"


@dataclass(frozen=True, slots=True, kw_only=True)
class SawnBoard:
    """What is left of a board, besides pieces, once it was sawn.

    Parameters
    ----------
    board_id
        The board.
    left
        The parts that are worth keeping.
    """

    board_id: str
    left: tuple[Part, ...] = ()

    def __post_init__(self) -> None:
        demand(
            all(part.board_id == self.board_id for part in self.left),
            "what is left is of another board",
            field="left",
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """One thing that happened, told by what is different since.

    Parameters
    ----------
    kind
        What happened.
    what
        The pieces, courses or boards that were named, for people to read.
    hung
        Courses as they hang since, with all of their pieces that hang.
    cut
        Pieces that are cut since and do not hang.
    gone
        Surface and label of pieces that there are no more.
    boards
        Boards that were sawn or broke, with what is left of them since.
    lost
        Boards that are lost.
    """

    kind: MarkKind
    what: str
    hung: tuple[HungCourse, ...] = ()
    cut: tuple[CutPiece, ...] = ()
    gone: tuple[tuple[str, str], ...] = ()
    boards: tuple[SawnBoard, ...] = ()
    lost: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Work:
    """The marks made on a job, in order.

    Parameters
    ----------
    job_name
        The job.
    boards
        The boards that the tally held when work began; any others were found since.
    marks
        What happened.
    """

    job_name: str
    boards: tuple[str, ...] = ()
    marks: tuple[Mark, ...] = ()

    @property
    def standing(self) -> Standing:
        """How far the job has come.

        Raises
        ------
        InvalidValueError
            If the marks contradict each other.
        """
        standing = NOTHING_DONE
        for mark in self.marks:
            standing = _after(standing, mark)
        return standing

    def marked(self, mark: Mark) -> "Work":
        """Give the same with one mark more."""
        return replace(self, marks=(*self.marks, mark))

    def undone(self) -> "Work":
        """Give the same without the last mark."""
        return replace(self, marks=self.marks[:-1])


def _after(standing: Standing, mark: Mark) -> Standing:
    hanging = {(row.surface_id, piece.label) for row in mark.hung for piece in row.course.pieces}
    elsewhere = hanging | {cut.key for cut in mark.cut} | set(mark.gone)
    kept = (row for course in standing.hung for row in _without(course, elsewhere))
    parted = {board.board_id for board in mark.boards}
    return Standing(
        hung=(*kept, *mark.hung),
        cut=(*(cut for cut in standing.cut if cut.key not in elsewhere), *mark.cut),
        left=(
            *(part for part in standing.left if part.board_id not in parted),
            *(part for board in mark.boards for part in board.left),
        ),
        sawn=_each_once((*standing.sawn, *(board.board_id for board in mark.boards))),
        lost=_each_once((*standing.lost, *mark.lost)),
    )


def _without(row: HungCourse, elsewhere: set[tuple[str, str]]) -> Iterable[HungCourse]:
    """Give a course without pieces that are told of anew; nothing of it when none is left."""
    pieces = tuple(piece for piece in row.course.pieces if (row.surface_id, piece.label) not in elsewhere)
    if len(pieces) == len(row.course.pieces):
        return (row,)
    return (replace(row, course=replace(row.course, pieces=pieces)),) if pieces else ()


def _each_once(names: Iterable[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(names))
