"""Judge a layout that somebody made: what is wrong with it, in order of weight."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial
from typing import ClassVar

from plankwright.check import Finding, FindingCode, FindingSeverity
from plankwright.check import check_layout as find_faults
from plankwright.errors import ExitCode, PlankwrightError
from plankwright.model import NOTHING_DONE, Job, Layout, Standing
from plankwright.workshop.wording import counted, listed

_OF_WHAT_IS_DONE = frozenset(
    {
        FindingCode.HUNG_MISSING,
        FindingCode.HUNG_CHANGED,
        FindingCode.WOOD_GONE,
        FindingCode.SHAPE_GONE,
    }
)

_OUTDATED = (
    "This layout does not heed what was marked since, so nothing is made from it: have what is left laid out "
    "anew, with “plankwright now”."
)


class FaultyLayoutError(PlankwrightError):
    """A layout that breaks rules is not to be worked from.

    Parameters
    ----------
    faults
        What is wrong with it, a sentence each.
    outdated
        Whether it was right until something happened that was marked since.
    """

    exit_code: ClassVar[int] = ExitCode.NOT_ENOUGH

    def __init__(self, faults: Sequence[str], *, outdated: bool = False) -> None:
        self.faults, self.outdated = tuple(faults), outdated
        why = (
            _OUTDATED if outdated else "This layout breaks rules, so nothing is made from it. Mend it first:"
        )
        super().__init__("\n".join((why, *self.faults)))

    def __reduce__(self) -> tuple[Callable[..., "FaultyLayoutError"], tuple[tuple[str, ...]]]:
        """Rebuild from the faults, not from the message, when the error comes from another process."""
        return partial(type(self), outdated=self.outdated), (self.faults,)


@dataclass(frozen=True, slots=True, kw_only=True)
class LayoutJudgement:
    """What is wrong with a layout.

    Parameters
    ----------
    faults
        What breaks a rule.
    warnings
        What is left to the user's judgement.
    notes
        What only tells.
    """

    faults: tuple[Finding, ...]
    warnings: tuple[Finding, ...]
    notes: tuple[Finding, ...]

    @property
    def headline(self) -> str:
        """The judgement in one sentence."""
        if not self.faults:
            besides = f"; {counted(len(self.warnings), 'warning')}" if self.warnings else ""
            return f"The layout breaks no rule{besides}."
        told = [counted(len(self.faults), "fault")]
        if self.warnings:
            told.append(counted(len(self.warnings), "warning"))
        return f"The layout is not right: {listed(told)}."


def check_layout(job: Job, layout: Layout, standing: Standing = NOTHING_DONE) -> LayoutJudgement:
    """Judge a layout by the rules of its job.

    Parameters
    ----------
    job
        The job.
    layout
        The layout, whoever made it.
    standing
        How far the job has come.

    Returns
    -------
    LayoutJudgement
        Everything found, by weight.
    """
    findings = find_faults(job, layout, standing)
    faults, warnings, notes = (
        tuple(finding for finding in findings if finding.severity is severity)
        for severity in (FindingSeverity.ERROR, FindingSeverity.WARNING, FindingSeverity.NOTE)
    )
    return LayoutJudgement(faults=faults, warnings=warnings, notes=notes)


def demand_right(job: Job, layout: Layout, standing: Standing = NOTHING_DONE) -> None:
    """Let a layout pass that may be worked from, and refuse any other.

    Parameters
    ----------
    job, layout
        The job and its layout.
    standing
        How far the job has come.

    Raises
    ------
    FaultyLayoutError
        If the layout breaks a rule.
    """
    faults = check_layout(job, layout, standing).faults
    if faults:
        outdated = all(finding.code in _OF_WHAT_IS_DONE for finding in faults)
        raise FaultyLayoutError([str(finding) for finding in faults], outdated=outdated)
