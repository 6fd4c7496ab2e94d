"""Ask for a layout: from scratch, of what is left, or around wishes; how long to look, with which seed."""

import re
from dataclasses import dataclass

from plankwright.model import Job, Layout
from plankwright.workshop.go_together import demand_boards
from plankwright.workshop.jobs.kept import KeptJob, Made, RefusedError
from plankwright.workshop.jobs.search_layout import Errand
from plankwright.workshop.jobs.see_layout import standing_of
from plankwright.workshop.lay_out import read_effort

_SEED = re.compile(r"[0-9]{1,6}")


@dataclass(frozen=True, slots=True, kw_only=True)
class HowLong:
    """How long to look, in plain words.

    Parameters
    ----------
    effort
        The word that a search takes.
    word
        The same, to be chosen by.
    what
        What one has to wait, and for what.
    """

    effort: str
    word: str
    what: str


HOW_LONG = (
    HowLong(
        effort="glance",
        word="A glance",
        what="up to half a minute for each surface: about how far the pile reaches",
    ),
    HowLong(
        effort="steady",
        word="Steady",
        what="a minute or so for each surface: a layout to work by",
    ),
    HowLong(
        effort="thorough",
        word="Thorough",
        what="five minutes or more for each surface: fewer joints and less wood",
    ),
)
"""The efforts to choose among, with how long they take on a common machine; a slow one may need longer."""

USUAL = "steady"
"""The effort that is chosen unless somebody chooses another."""


def errand_for(
    kept: KeptJob, job: Job, layout: Layout | None, made: Made, effort: str, seed: int = 0
) -> Errand:
    """Say what a search is to find.

    Parameters
    ----------
    kept, job
        The job as it is kept, and as it is read.
    layout
        The layout that it is worked by, if there is one.
    made
        From scratch, what is left of it, or around what is wished.
    effort, seed
        How long to look, in the user's word, and the seed.

    Raises
    ------
    RefusedError
        If a search from scratch would not heed what is done, or there is nothing to go on from.
    BoardsMissingError
        If the tally lacks a board that pieces hang of or are cut from.
    EffortError
        If the effort is none.
    """
    read_effort(effort)
    if made is Made.SEARCHED:
        if kept.begun:
            raise RefusedError(
                "Work on this job has begun, and a layout from scratch would not heed what is cut and hung: "
                "have what is left laid out anew instead."
            )
        return Errand(job=job, made=made, effort=effort, seed=seed)
    if layout is None:
        raise RefusedError("There is no layout to go on from yet: have the whole job laid out first.")
    _demand_same_surfaces(kept, job, layout)
    demand_boards(job, standing_of(kept))
    # What was asked for still holds when something happens.
    return Errand(
        job=job,
        made=made if kept.wishes.none else Made.AROUND,
        effort=effort,
        seed=seed,
        before=layout,
        work=kept.work,
        wishes=kept.wishes,
    )


def _demand_same_surfaces(kept: KeptJob, job: Job, layout: Layout) -> None:
    if {surface.id for surface in job.surfaces} == {laid.surface_id for laid in layout.surfaces}:
        return
    mend = (
        "what was added since is a job of its own."
        if kept.begun
        else "have all of the job laid out from scratch."
    )
    raise RefusedError(f"The job has other surfaces than the layout that it is worked by: {mend}")


def read_seed(text: str) -> int:
    """Read a seed as it was filled in; nothing filled in is 0.

    Raises
    ------
    RefusedError
        If it is no number that a seed can be.
    """
    plain = text.strip() or "0"
    if not _SEED.fullmatch(plain):
        raise RefusedError(f"“{plain[:20]}” is no seed: write a whole number from 0 to 999,999.")
    return int(plain)
