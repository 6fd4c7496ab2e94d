"""The one place that wires rooms together, for the faces as a `Bench` and for Python as plain functions."""

import os
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from plankwright import files
from plankwright.crews import crew_at
from plankwright.crews.apart import Apart
from plankwright.layout import lay_out as search_for
from plankwright.layout.again import lay_again
from plankwright.layout.crew import Crew
from plankwright.layout.result import Effort, Watch
from plankwright.measure import Nm
from plankwright.model import NOTHING_DONE, Job, Layout, MarkKind, Work
from plankwright.workshop import ask_enough as asking
from plankwright.workshop import go_together as together
from plankwright.workshop import hand_out as handing
from plankwright.workshop import judge_tally as judging
from plankwright.workshop import keep_left_over as keeping
from plankwright.workshop import lay_out as laying
from plankwright.workshop import mark_work as marking
from plankwright.workshop import weigh_risk as weighing
from plankwright.workshop import what_now as nowing
from plankwright.workshop.jobs.kept import KeptLayout
from plankwright.workshop.jobs.search_layout import Errand, Sight, search_layout
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
    again
        Who lays out what is left of a job.
    crew_at
        Who does much work at an address, or on this machine when there is none.
    """

    files: Files
    search: laying.Search
    again: nowing.Again = lay_again
    crew_at: Callable[[str | None], Crew] = crew_at


def set_up_bench() -> Bench:
    """Give the bench with the real rooms at it."""
    return Bench(files=files, search=search_for)


def do_search(errand: Errand, tell: Callable[[Sight], None], stopped: Callable[[], bool]) -> KeptLayout:
    """Search a layout, with the real rooms and all cores; parameters are those of `search_layout`."""
    return search_layout(errand, tell, stopped, search=search_for, again=lay_again, crew=crew_at(None))


def begin_search(errand: Errand) -> Apart[Errand, Sight, KeptLayout]:
    """Begin a search in a process of its own."""
    return Apart(do_search, errand)


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
    job: Job,
    *,
    effort: str | Effort = "steady",
    seed: int = 0,
    on: str | None = None,
    watch: Watch | None = None,
) -> laying.LaidOut:
    """Lay out a job; the layout has passed the checker.

    Several surfaces that there is plenty of wood for are laid out side by side in processes of their own, so
    a script calls it below `if __name__ == "__main__":`.

    Parameters
    ----------
    job
        The job.
    effort
        How long to search: "glance", "steady", "thorough", or a time such as "45", "90s" or "2m".
    seed
        The same job, effort and seed give the same layout, wherever it is laid out.
    on
        Address of a Dask scheduler whose workers do it; all cores of this machine when left out.
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
    CrewError
        If nobody is there to do it.
    """
    how_long = laying.read_effort(effort) if isinstance(effort, str) else effort
    return laying.lay_out(job, search=search_for, effort=how_long, seed=seed, watch=watch, crew=crew_at(on))


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


def read_work(folder: str | os.PathLike[str], job: Job) -> Work:
    """Read what was marked while a job was worked on.

    Parameters
    ----------
    folder
        The job folder.
    job
        Its job.

    Returns
    -------
    Work
        The marks, and as `standing` how far the job has come; without marks when nothing was marked.

    Raises
    ------
    BadInputError
        With every problem of the file.
    SurfacesMissingError
        If pieces hang on surfaces that the job no longer has.
    FileTroubleError
        If it cannot be read.
    """
    return together.work_on(job, files.read_work(Path(folder)))


def mark_work(  # noqa: PLR0913 - what can be told of a mark
    job: Job,
    layout: Layout,
    work: Work,
    word: str,
    *names: str,
    surface: str | None = None,
    edge_nm: Nm | None = None,
    off_nm: Nm | None = None,
    length_nm: Nm | None = None,
    width_nm: Nm | None = None,
) -> Work:
    """Mark what happened: "cut", "hung", "broke", "miscut", "down" or "lost".

    Parameters
    ----------
    job, layout, work
        The job, the layout that it is worked by, and what was marked before.
    word, names
        What happened, and to which pieces, courses or boards.
    surface
        The surface, where a name alone could be of several.
    edge_nm, off_nm
        With "hung": where the far edge of the course was measured from the start side, or how much farther
        than planned it is. [nm]
    length_nm, width_nm
        With "miscut": the size that the piece has. [nm]

    Returns
    -------
    Work
        The same with one mark more; its `undone()` is without it. Nothing is written.

    Raises
    ------
    MarkError
        If the word is none of these, or it cannot have happened, or is marked already.
    """
    if word not in {kind.value for kind in MarkKind}:
        words = ", ".join(kind.value for kind in MarkKind)
        raise marking.MarkError(f"A mark is one of {words}, but not “{word}”.")
    measured = None
    if edge_nm is not None or off_nm is not None:
        measured = marking.Measured(edge_nm=edge_nm, off_nm=off_nm or 0)
    happened = marking.Happened(
        kind=MarkKind(word),
        names=names,
        surface_id=surface,
        measured=measured,
        length_nm=length_nm,
        width_nm=width_nm,
    )
    return marking.mark_work(job, layout, work, happened)


def what_now(
    job: Job,
    layout: Layout,
    work: Work,
    *,
    effort: str | Effort = "steady",
    seed: int = 0,
    watch: Watch | None = None,
) -> nowing.WhatNow:
    """Lay out what is left of a job, with as little change as can be; the layout has passed the checker.

    Parameters
    ----------
    job
        The job, with the boards that were found since.
    layout
        The layout that it was worked by.
    work
        What was marked.
    effort, seed, watch
        As for `lay_out`; it ends as soon as all is covered.

    Returns
    -------
    WhatNow
        What the search came to, and what becomes of each piece that does not hang yet.

    Raises
    ------
    BoardsMissingError
        If the tally lacks a board that pieces hang of.
    OtherLayoutError
        If the layout is not of the surfaces of the job.
    EffortError
        If the effort is none.
    LayoutRefusedError
        If the checker finds a fault in our own layout.
    """
    how_long = laying.read_effort(effort) if isinstance(effort, str) else effort
    return nowing.what_now(job, layout, work, again=lay_again, effort=how_long, seed=seed, watch=watch)


def weigh_risk(
    job: Job,
    layout: Layout,
    work: Work | None = None,
    *,
    effort: str | Effort = "glance",
    seed: int = 0,
    draws: int = weighing.DRAWS,
    on: str | None = None,
    watch: weighing.RiskWatch | None = None,
) -> weighing.Risk:
    """Weigh the risk: which boards a layout cannot do without, how many losses it survives, and more.

    It works in processes of its own, so a script calls it below `if __name__ == "__main__":`.

    Parameters
    ----------
    job, layout
        The job and the layout that it is worked by.
    work
        What was marked, if anything was.
    effort
        How long to look after each loss at most, as for `lay_out`.
    seed
        The same job, layout, work, effort, seed and draws give the same answer.
    draws
        How often boards are lost one after another by lot.
    on
        Address of a Dask scheduler whose workers do it; all cores of this machine when left out.
    watch
        Who follows the trials and may stop them.

    Returns
    -------
    Risk
        What was found; that no layout was found without a board is no proof, unless it says so.

    Raises
    ------
    FaultyLayoutError
        If the layout breaks a rule, or does not heed what was marked.
    BoardsMissingError
        If the tally lacks a board that pieces hang of.
    OtherLayoutError
        If the layout is not of the surfaces of the job.
    EffortError
        If the effort is none.
    CrewError
        If nobody is there to do it.
    """
    how_long = laying.read_effort(effort) if isinstance(effort, str) else effort
    return weighing.weigh_risk(
        job,
        layout,
        marking.begin_work(job) if work is None else work,
        crew=crew_at(on),
        again=lay_again,
        how_much=weighing.HowMuch(effort=how_long, seed=seed, draws=draws),
        watch=watch,
    )


def left_over(job: Job, layout: Layout, work: Work | None = None) -> keeping.LeftOver:
    """Give what is left of the pile once all of a layout hangs, as a tally for the next surface.

    Parameters
    ----------
    job, layout
        The job and its layout.
    work
        What was marked, if anything was.

    Returns
    -------
    LeftOver
        Its `boards` are those of another job.

    Raises
    ------
    FaultyLayoutError
        If the layout breaks a rule.
    """
    return keeping.gather_left_over(job, layout, NOTHING_DONE if work is None else work.standing)


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
    job: Job,
    layout: Layout,
    folder: str | os.PathLike[str],
    *,
    paper: str | None = None,
    work: Work | None = None,
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
    work
        What was marked: papers tell only what is still to be done.

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
    standing = NOTHING_DONE if work is None else work.standing
    written = handing.hand_out(job, layout, folder=Path(folder), files=files, paper=size, standing=standing)
    return tuple(file.path for file in written)
