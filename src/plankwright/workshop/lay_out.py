"""Lay out a job: search, have the checker judge what was found, and hand out nothing that it refuses."""

import re
from dataclasses import dataclass, replace
from typing import ClassVar, Protocol

from plankwright.check import Finding, FindingSeverity, check_layout, faults
from plankwright.errors import ExitCode, LayoutRefusedError, PlankwrightError
from plankwright.layout.crew import ALONE, Crew
from plankwright.layout.result import EFFORTS, SIDE_BY_SIDE, Effort, Result, Watch
from plankwright.model import NOTHING_DONE, Job, Standing

_SECONDS = re.compile(r"(?P<number>[0-9]+(?:\.[0-9]+)?)\s*(?P<unit>s|m|min|)", re.ASCII)
_LONGEST_S = 24 * 60 * 60


class EffortError(PlankwrightError, ValueError):
    """An effort that is neither a name nor a time."""

    exit_code: ClassVar[int] = ExitCode.BAD_INPUT

    def __init__(self, text: str) -> None:
        self.text = text
        names = ", ".join(EFFORTS)
        super().__init__(f"“{text}” is no effort: use {names}, or a time up to a day such as 45, 90s or 2m")

    def __reduce__(self) -> tuple[type["EffortError"], tuple[str]]:
        """Rebuild from the text, not from the message, when the error comes from another process."""
        return type(self), (self.text,)


class StoppedError(PlankwrightError):
    """The search was stopped before it had laid a single piece."""

    exit_code: ClassVar[int] = ExitCode.STOPPED
    default_message: ClassVar[str] = "Stopped before any layout was found; nothing is written."


class Search(Protocol):
    """What looks for a layout: the room `layout`, or a stand-in."""

    def __call__(
        self, job: Job, *, effort: Effort, seed: int = 0, watch: Watch | None = None, crew: Crew = ALONE
    ) -> Result:
        """Give the best layout found."""
        ...


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidOut:
    """A layout that the checker let pass.

    Parameters
    ----------
    result
        What the search came to.
    findings
        Warnings and notes of the checker; no errors.
    """

    result: Result
    findings: tuple[Finding, ...]

    @property
    def warnings(self) -> tuple[Finding, ...]:
        """What is left to the user's judgement."""
        return tuple(found for found in self.findings if found.severity is FindingSeverity.WARNING)


def read_effort(text: str) -> Effort:
    """Read an effort as people give it.

    Parameters
    ----------
    text
        `glance`, `steady` or `thorough`, or a time: `45` and `90s` are seconds, `2m` and `2 min` are minutes.

    Returns
    -------
    Effort
        A time is its own name.

    Raises
    ------
    EffortError
        If it is neither, is nothing, or is longer than a day.
    """
    plain = text.strip().lower()
    if plain in EFFORTS:
        return EFFORTS[plain]
    match = _SECONDS.fullmatch(plain)
    if match is None:
        raise EffortError(text)
    seconds = float(match["number"]) * (60 if match["unit"].startswith("m") else 1)
    if not 0 < seconds <= _LONGEST_S:
        raise EffortError(text)
    return Effort(name=f"{seconds:g} s", seconds=seconds, searches=SIDE_BY_SIDE)


def lay_out(
    job: Job,
    *,
    search: Search,
    effort: Effort,
    seed: int = 0,
    watch: Watch | None = None,
    crew: Crew = ALONE,
) -> LaidOut:
    """Lay out a job and have the layout checked.

    Parameters
    ----------
    job
        The job.
    search
        Who looks for a layout.
    effort
        How long to search.
    seed
        The same job, effort and seed give the same layout.
    watch
        Who follows the search and may stop it.
    crew
        Who lays out surfaces side by side, where there is plenty of wood for several.

    Returns
    -------
    LaidOut
        The best layout found, whole or in part, and what the checker remarks about it.

    Raises
    ------
    LayoutRefusedError
        If the checker finds an error: our fault, and nothing is handed out.
    StoppedError
        If the search was stopped before any piece was laid.
    CrewError
        If the crew cannot do it.
    """
    result = search(job, effort=effort, seed=seed, watch=watch, crew=crew)
    if result.stopped and not result.layout.pieces:
        raise StoppedError
    findings = check_layout(job, result.layout)
    wrong = faults(findings)
    if wrong:
        raise LayoutRefusedError(str(finding) for finding in wrong)
    return LaidOut(result=only_true_promises(result), findings=findings)


def only_true_promises(result: Result, standing: Standing = NOTHING_DONE) -> Result:
    """Keep that further boards would close what is bare only when the layout made with them is right too.

    Parameters
    ----------
    result
        What a search came to.
    standing
        How far the job has come.
    """
    if result.closing is None:
        return result
    job, layout = result.closing
    return replace(result, closing=None) if faults(check_layout(job, layout, standing)) else result
