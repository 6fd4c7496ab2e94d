"""What now? Lay out what is left of a job, have it checked, and say what is different."""

from dataclasses import dataclass
from typing import Protocol

from plankwright.check import Finding, FindingSeverity, check_layout, faults
from plankwright.errors import LayoutRefusedError
from plankwright.layout.again import Change, changes_between
from plankwright.layout.result import Effort, Result, Watch
from plankwright.model import Job, Layout, Standing, Work
from plankwright.workshop.go_together import demand_boards, demand_same_surfaces
from plankwright.workshop.lay_out import only_true_promises
from plankwright.workshop.tell_work import found_since


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
        close: bool = True,
    ) -> Result:
        """Give the best layout found of what is left, and ask for boards that would close the rest."""
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
    OtherLayoutError
        If the layout is not of the surfaces of the job.
    LayoutRefusedError
        If the checker finds an error: our fault, and nothing is handed out.
    """
    standing = work.standing
    demand_boards(job, standing)
    demand_same_surfaces(job, layout)
    result = again(job, layout, standing, effort=effort, seed=seed, watch=watch)
    findings = check_layout(job, result.layout, standing)
    wrong = faults(findings)
    if wrong:
        raise LayoutRefusedError(str(finding) for finding in wrong)
    return WhatNow(
        result=only_true_promises(result, standing),
        findings=findings,
        changes=changes_between(job, layout, result.layout, standing),
        found=found_since(job, work),
    )
