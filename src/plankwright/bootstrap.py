"""The one place that wires rooms together, for the faces as a `Bench` and for Python as plain functions."""

import os
from dataclasses import dataclass
from pathlib import Path

from plankwright import files
from plankwright.layout import lay_out as search_layout
from plankwright.layout.result import Effort, Watch
from plankwright.model import Job, Layout
from plankwright.workshop import ask_enough as asking
from plankwright.workshop import hand_out as handing
from plankwright.workshop import judge_tally as judging
from plankwright.workshop import lay_out as laying
from plankwright.workshop.paper_size import PaperSize
from plankwright.workshop.ports import Files, JobReading


@dataclass(frozen=True, slots=True, kw_only=True)
class Bench:
    """What a face needs to have the workshop do anything.

    Parameters
    ----------
    files
        Who reads and writes.
    search
        Who looks for a layout.
    """

    files: Files
    search: laying.Search


def set_up_bench() -> Bench:
    """Give the bench with the real rooms at it."""
    return Bench(files=files, search=search_layout)


def read_job(folder: str | os.PathLike[str]) -> JobReading:
    """Read a job folder.

    Parameters
    ----------
    folder
        With job.toml and a tally in it.

    Returns
    -------
    JobReading
        The job as `job`, and as `remarks` what somebody should look at.

    Raises
    ------
    BadInputError
        With every problem of its files.
    FileTroubleError
        If a file is missing or cannot be read.
    """
    return files.read_job(Path(folder))


def judge_tally(job: Job) -> judging.TallyJudgement:
    """Judge the tally of a job: totals, what can be hung, the longest clear runs.

    Parameters
    ----------
    job
        The job.

    Returns
    -------
    TallyJudgement
        Sums by lot, by width and overall.
    """
    return judging.judge_tally(job.boards, job.rules, job.tape, job.surfaces)


def lay_out(
    job: Job, *, effort: str | Effort = "steady", seed: int = 0, watch: Watch | None = None
) -> laying.LaidOut:
    """Lay out a job; the layout has passed the checker.

    Parameters
    ----------
    job
        The job.
    effort
        How long to search: "glance", "steady", "thorough", or a time such as "45", "90s" or "2m".
    seed
        The same job, effort and seed give the same layout.
    watch
        Who follows the search and may stop it.

    Returns
    -------
    LaidOut
        What the search came to, and what the checker remarks about it.

    Raises
    ------
    EffortError
        If the effort is none.
    LayoutRefusedError
        If the checker finds a fault in our own layout.
    StoppedError
        If the search was stopped before any piece was laid.
    """
    how_long = laying.read_effort(effort) if isinstance(effort, str) else effort
    return laying.lay_out(job, search=search_layout, effort=how_long, seed=seed, watch=watch)


def ask_enough(job: Job, laid_out: laying.LaidOut) -> asking.Answer:
    """Answer whether the pile is enough.

    Parameters
    ----------
    job, laid_out
        The job, and what `lay_out` gave for it.

    Returns
    -------
    Answer
        In values; printed, it reads as a person would say it.
    """
    return asking.ask_enough(job, laid_out.result)


def read_layout(file: str | os.PathLike[str]) -> Layout:
    """Read a layout made earlier, by anybody.

    Parameters
    ----------
    file
        Such as the layout.json that `hand_out` writes.

    Returns
    -------
    Layout
        Not yet checked.

    Raises
    ------
    BadInputError
        With every problem of the file.
    FileTroubleError
        If it is missing or cannot be read.
    """
    return files.read_layout(Path(file))


def hand_out(
    job: Job, layout: Layout, folder: str | os.PathLike[str], *, paper: str | None = None
) -> tuple[Path, ...]:
    """Write layout, cut list, maps and printed sheets into a folder.

    Parameters
    ----------
    job, layout
        The job and a layout of it.
    folder
        Where to write; it is made when it is not there.
    paper
        "letter" or "a4"; the size that goes with the job's tape when left out.

    Returns
    -------
    tuple of Path
        The files.

    Raises
    ------
    FaultyLayoutError
        If the layout breaks a rule; nothing is written then.
    FileTroubleError
        If a file cannot be written.
    """
    size = None if paper is None else PaperSize(paper)
    written = handing.hand_out(job, layout, folder=Path(folder), files=files, paper=size)
    return tuple(file.path for file in written)
