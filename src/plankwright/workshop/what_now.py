"""What now? Lay out what is left of a job, have it checked, and say what is different."""

from dataclasses import dataclass, replace
from typing import ClassVar, Protocol

from plankwright.check import Finding, FindingSeverity, check_layout, faults
from plankwright.errors import ExitCode, LayoutRefusedError, PlankwrightError
from plankwright.layout.again import Change, changes_between
from plankwright.layout.result import Effort, Result, Watch
from plankwright.model import Job, Layout, Standing, Work
from plankwright.workshop.tell_work import found_since
from plankwright.workshop.wording import listed


class BoardsMissingError(PlankwrightError, ValueError):
    """Boards that pieces hang of, or are cut from, are no longer in the tally.

    Parameters
    ----------
    boards
        Their ids.
    """

    exit_code: ClassVar[int] = ExitCode.BAD_INPUT

    def __init__(self, boards: tuple[str, ...]) -> None:
        self.boards = boards
        which, it = f"boards {listed(boards)}", "them"
        if len(boards) == 1:
            which, it = f"board {boards[0]}", "it"
        super().__init__(
            f"Pieces of {which} hang or are cut, but the tally no longer has {it}: put the row back. "
            "A board that is lost is marked as lost, not taken out."
        )

    def __reduce__(self) -> tuple[type["BoardsMissingError"], tuple[tuple[str, ...]]]:
        """Rebuild from the boards, not from the message, when the error comes from another process."""
        return type(self), (self.boards,)


class Again(Protocol):
    """What lays out the rest of a job: the room `layout`, or a stand-in."""

    def __call__(
        self,
        job: Job,
        layout: Layout,
        standing: Standing,
        *,
        effort: Effort,
        seed: int = 0,
        watch: Watch | None = None,
    ) -> Result:
        """Give the best layout found of what is left."""
        ...


@dataclass(frozen=True, slots=True, kw_only=True)
class WhatNow:
    """How a job goes on.

    Parameters
    ----------
    result
        What the search came to; its layout has passed the checker, against what is done.
    findings
        Warnings and notes of the checker; no errors.
    changes
        What becomes of each piece that does not hang yet.
    found
        Boards that were not in the tally when work began.
    """

    result: Result
    findings: tuple[Finding, ...]
    changes: tuple[Change, ...]
    found: tuple[str, ...]

    @property
    def warnings(self) -> tuple[Finding, ...]:
        """What is left to the user's judgement."""
        return tuple(found for found in self.findings if found.severity is FindingSeverity.WARNING)


def what_now(
    job: Job,
    layout: Layout,
    work: Work,
    *,
    again: Again,
    effort: Effort,
    seed: int = 0,
    watch: Watch | None = None,
) -> WhatNow:
    """Lay out what is left of a job and have it checked.

    Parameters
    ----------
    job
        The job, with the boards that were found since.
    layout
        The layout that it was worked by.
    work
        What was marked.
    again
        Who lays out what is left.
    effort
        How long to look at most.
    seed
        The same job, layout, work, effort and seed give the same answer.
    watch
        Who follows the search and may stop it.

    Returns
    -------
    WhatNow
        The layout that it goes on by, and what is different.

    Raises
    ------
    BoardsMissingError
        If the tally lacks a board that pieces hang of.
    LayoutRefusedError
        If the checker finds an error: our fault, and nothing is handed out.
    """
    standing = work.standing
    _demand_boards(job, standing)
    result = again(job, layout, standing, effort=effort, seed=seed, watch=watch)
    findings = check_layout(job, result.layout, standing)
    wrong = faults(findings)
    if wrong:
        raise LayoutRefusedError(str(finding) for finding in wrong)
    if result.closing is not None and faults(check_layout(*result.closing, standing)):
        result = replace(result, closing=None)
    return WhatNow(
        result=result,
        findings=findings,
        changes=changes_between(job, layout, result.layout, standing),
        found=found_since(job, work),
    )


def _demand_boards(job: Job, standing: Standing) -> None:
    known = {board.id for board in job.boards}
    hung = [piece.board_id for row in standing.hung for piece in row.course.pieces]
    asked = dict.fromkeys((*hung, *(cut.piece.board_id for cut in standing.cut)))
    missing = tuple(board_id for board_id in asked if board_id not in known)
    if missing:
        raise BoardsMissingError(missing)
