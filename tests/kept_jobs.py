"""Jobs as they are kept: the small job of the village hall, in whatever state a test needs."""

import tomllib
from dataclasses import replace
from typing import Any

from builders import board
from plankwright import files
from plankwright.model import Board, MarkKind, Work
from plankwright.workshop.jobs.kept import KeptJob
from plankwright.workshop.mark_work import Happened, begin_work, mark_work
from village import JOB_TOML, small_job, small_layout

DEFINITION: dict[str, Any] = files.settled(tomllib.loads(JOB_TOML))
"""What the job.toml of the small job says, with a unit at every length."""


def bare_job(name: str = "porch", *boards: Board) -> KeptJob:
    """Give a job without surfaces."""
    return KeptJob(id="", definition={"name": name, "units": "inches", "surface": []}, boards=boards)


def whole_job(*boards: Board) -> KeptJob:
    """Give the small job, with its own boards when none are named."""
    return KeptJob(id="", definition=DEFINITION, boards=boards or small_job().boards)


def with_boards(job: KeptJob, *boards: Board) -> KeptJob:
    """Give a job with other boards."""
    return replace(job, boards=boards)


def plain(name: str) -> Board:
    """Give a plain board of some name."""
    return board(name, 97, 5.25)


def work_after(*events: tuple[MarkKind, str]) -> Work:
    """Give what is marked once things happened to pieces, courses or boards of the small layout."""
    work = begin_work(small_job())
    for kind, name in events:
        work = mark_work(small_job(), small_layout(), work, Happened(kind=kind, names=(name,)))
    return work
