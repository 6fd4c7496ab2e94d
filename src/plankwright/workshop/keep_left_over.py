"""What is left once all hangs comes out as a tally for the next surface."""

from dataclasses import dataclass, replace
from pathlib import Path

from plankwright.layout.left_over import left_over
from plankwright.measure import Nm, write_length
from plankwright.model import NOTHING_DONE, Board, Job, Layout, Standing
from plankwright.workshop.check_layout import demand_right
from plankwright.workshop.hand_out import Written
from plankwright.workshop.ports import Files
from plankwright.workshop.wording import capital, counted, listed

LEFT_OVER_FILE = "left-over.csv"


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOver:
    """What is left of the pile.

    Parameters
    ----------
    boards
        Whole boards and offcuts, each as one would tally it now.
    whole
        Ids of those that nothing was cut from.
    headline
        The same in a sentence.
    """

    boards: tuple[Board, ...]
    whole: tuple[str, ...]
    headline: str

    @property
    def length_nm(self) -> Nm:
        """End to end. [nm]"""
        return sum(board.length_nm for board in self.boards)


def gather_left_over(job: Job, layout: Layout, standing: Standing = NOTHING_DONE) -> LeftOver:
    """Gather what will be left once all of a layout hangs.

    Parameters
    ----------
    job, layout, standing
        The job, its layout, and how far it has come.

    Returns
    -------
    LeftOver
        Whole boards and the offcuts worth keeping.

    Raises
    ------
    FaultyLayoutError
        If the layout breaks a rule.
    """
    demand_right(job, layout, standing)
    left = left_over(job, layout, standing)
    boards = tuple(_noted(job, board, was) for board, was in left)
    whole = tuple(board.id for board, was in left if board == was)
    offcuts = len(boards) - len(whole)
    parts = [
        *((counted(len(whole), "whole board"),) if whole else ()),
        *((counted(offcuts, "offcut"),) if offcuts else ()),
    ]
    length = write_length(sum(board.length_nm for board in boards), job.tape)
    headline = "Nothing worth keeping is left."
    if parts:
        headline = f"{capital(listed(parts))} left, {length} end to end."
    return LeftOver(boards=boards, whole=whole, headline=headline)


def hand_out_left_over(left: LeftOver, job: Job, *, folder: Path, files: Files) -> tuple[Written, ...]:
    """Write what is left as a tally.

    Parameters
    ----------
    left
        What is left.
    job
        The job that it is left of.
    folder
        Where to write.
    files
        Who writes.

    Returns
    -------
    tuple of Written
        The tally; nothing when nothing is left.

    Raises
    ------
    FileTroubleError
        If it cannot be written.
    """
    if not left.boards:
        return ()
    path = folder / LEFT_OVER_FILE
    files.write_files({path: files.tally_csv(left.boards, job.tape)})
    return (Written(path=path, what="a tally of what is left, for the next surface"),)


def _noted(job: Job, board: Board, was: Board) -> Board:
    """Note on an offcut which board of which job it was."""
    if board == was:
        return board
    note = f"left of {was.id}, {job.name}"
    return replace(board, note=f"{was.note}; {note}" if was.note else note)
