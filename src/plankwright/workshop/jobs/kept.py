"""A job as it is kept: what was measured so far, the layout that is worked by, and what was marked."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Any, ClassVar, TypeAlias

from plankwright.errors import ExitCode, PlankwrightError
from plankwright.model import Board, Layout, Work
from plankwright.workshop.ask_enough import Answer
from plankwright.workshop.jobs.wishes import NO_WISHES, Wishes

Definition: TypeAlias = Mapping[str, Any]
"""What job.toml says of a job, as parsed, with a unit at every length."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptJob:
    """A job as far as somebody has come with it.

    Parameters
    ----------
    id
        What it goes by in addresses; it never changes.
    definition
        What job.toml would say; it may lack surfaces.
    boards
        The tally, in the order in which it was taken.
    layout_id
        The layout that is worked by, if there is one.
    work
        What was marked while it was worked on; nothing before anything was.
    wishes
        What is wished of a layout.
    """

    id: str
    definition: Definition
    boards: tuple[Board, ...] = ()
    layout_id: int | None = None
    work: Work | None = None
    wishes: Wishes = NO_WISHES

    @property
    def name(self) -> str:
        """What the user calls it."""
        return str(self.definition.get("name", ""))

    @property
    def begun(self) -> bool:
        """Whether anything was cut, hung or lost."""
        return self.work is not None and self.work.standing.begun


@dataclass(frozen=True, slots=True, kw_only=True)
class JobCard:
    """What a list of jobs shows of one.

    Parameters
    ----------
    id, name
        What it goes by, and what the user calls it.
    boards, surfaces, pieces, hung
        How many there are of each; of the pieces of the layout that is worked by, how many hang.
    changed_at
        When it was changed last. [ISO 8601, UTC]
    removed_at
        When it was put away; nothing for one that is there. [ISO 8601, UTC]
    """

    id: str
    name: str
    boards: int
    surfaces: int
    pieces: int
    hung: int
    changed_at: str
    removed_at: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """A step that was taken with a job, to be shown and taken back.

    Parameters
    ----------
    id
        Its number.
    what
        In words, such as "board F12 added".
    at
        When. [ISO 8601, UTC]
    """

    id: int
    what: str
    at: str


class Made(StrEnum):
    """How a layout came about."""

    SEARCHED = "searched"
    AGAIN = "again"
    AROUND = "around"
    SWAPPED = "swapped"
    BROUGHT = "brought"


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptLayout:
    """A layout that is kept, with the answer that came with it.

    Parameters
    ----------
    id
        Its number; 0 before it is kept.
    layout
        The layout; it had passed the checker when it was made.
    made
        How it came about.
    at
        When. [ISO 8601, UTC]
    answer
        Whether the pile is enough, as was found with it; nothing for one that was brought along.
    news
        What is different from the one before, in sentences.
    minds
        What the checker left to the user's judgement, in sentences.
    """

    id: int = 0
    layout: Layout
    made: Made
    at: str = ""
    answer: Answer | None = None
    news: tuple[str, ...] = ()
    minds: tuple[str, ...] = ()


class SearchState(StrEnum):
    """How it stands with a search."""

    RUNNING = "running"
    DONE = "done"
    STOPPED = "stopped"
    FAILED = "failed"
    CUT_OFF = "cut off"


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptSearch:
    """A search for a layout, under way or over.

    Parameters
    ----------
    id, job_id
        Its number, and the job that it is for.
    made
        What sort of layout it looks for.
    effort, seed
        How long it looks, in the user's word, and its seed.
    state
        How it stands.
    stage, done, told
        What it does, how far it is from 0 to 1, and what it has found, in words.
    best
        The best layout that it found so far, if any.
    layout_id
        The layout that came of it.
    trouble
        What went wrong, in one sentence.
    begun_at, ended_at
        When. [ISO 8601, UTC]
    wishes
        What it had to go round, as `Wishes.to_json` writes it; empty for none.
    """

    id: int = 0
    job_id: str
    made: Made
    effort: str
    seed: int = 0
    state: SearchState = SearchState.RUNNING
    stage: str = ""
    done: float = 0.0
    told: str = ""
    best: Layout | None = None
    layout_id: int | None = None
    trouble: str = ""
    begun_at: str = ""
    ended_at: str = ""
    wishes: str = ""


class NotThereError(PlankwrightError, LookupError):
    """Something that was asked for by its id is not there, or no longer."""

    exit_code: ClassVar[int] = ExitCode.BAD_INPUT
    default_message: ClassVar[str] = "That is not there, or no longer: go back to the list and look again."


class StaleError(PlankwrightError, ValueError):
    """Something was changed by somebody else since it was shown; nothing is written over."""

    exit_code: ClassVar[int] = ExitCode.BAD_INPUT
    default_message: ClassVar[str] = (
        "This was changed since it was shown to you, perhaps on another phone; nothing was written over. "
        "Look at it as it is now, and change it again if need be."
    )


class RefusedError(PlankwrightError, ValueError):
    """A step that cannot be taken; the message says why, and what to do."""

    exit_code: ClassVar[int] = ExitCode.BAD_INPUT
