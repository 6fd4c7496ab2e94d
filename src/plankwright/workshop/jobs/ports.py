"""What the workshop asks of whoever keeps jobs, in its own words: `store` answers, tests stand in for it."""

from collections.abc import Callable
from typing import Protocol

from plankwright.model import Layout
from plankwright.workshop.jobs.kept import (
    Change,
    JobCard,
    KeptJob,
    KeptLayout,
    KeptSearch,
)


class Store(Protocol):
    """Keeps jobs; every step is kept whole or not at all, and can be taken back."""

    def cards(self) -> tuple[JobCard, ...]:
        """Give what a list shows of each job, the one that was changed last first, put-away ones last."""
        ...

    def job(self, job_id: str) -> KeptJob:
        """Give a job.

        Raises
        ------
        NotThereError
            If there is none of that id, or it was put away.
        """
        ...

    def add(self, job: KeptJob) -> KeptJob:
        """Keep a job that is new; give it with its id."""
        ...

    def change(self, job_id: str, what: str, edit: Callable[[KeptJob], KeptJob], *, key: str = "") -> KeptJob:
        """Take a step with a job.

        Parameters
        ----------
        job_id
            The job.
        what
            The step in words.
        edit
            Gives the job after it, from the job before it.
        key
            Of whoever may ask for the same step twice, since the first answer was lost: the second time
            nothing is done. Empty when that cannot be.

        Returns
        -------
        KeptJob
            The job after it.
        """
        ...

    def changes(self, job_id: str, most: int = 20) -> tuple[Change, ...]:
        """Give the last steps that can be taken back, the last one first."""
        ...

    def undo(self, job_id: str, only: int | None = None) -> Change | None:
        """Take the last step back; nothing when there is none, or it is not the only one that is meant.

        Parameters
        ----------
        job_id
            The job.
        only
            The number of the step that is meant, as it was shown; whichever is the last when left out.
        """
        ...

    def redo(self, job_id: str, only: int | None = None) -> Change | None:
        """Take the step again that was taken back last; parameters and answer as of `undo`."""
        ...

    def taken_back(self, job_id: str) -> Change | None:
        """Give the step that would be taken again next; nothing when there is none."""
        ...

    def put_away(self, job_id: str) -> None:
        """Put a job away; it can be brought back."""
        ...

    def bring_back(self, job_id: str) -> None:
        """Bring back a job that was put away."""
        ...

    def forget(self, job_id: str) -> None:
        """Delete a job that was put away, for good."""
        ...

    def keep_layout(self, job_id: str, kept: KeptLayout) -> KeptLayout:
        """Keep a layout of a job; give it with its number and its time.

        Raises
        ------
        NotThereError
            If there is no such job; one that was put away is there.
        """
        ...

    def layouts(self, job_id: str) -> tuple[KeptLayout, ...]:
        """Give the layouts of a job, the newest first."""
        ...

    def layout(self, job_id: str, layout_id: int) -> KeptLayout:
        """Give a layout.

        Raises
        ------
        NotThereError
            If the job has none of that number.
        """
        ...

    def begin_search(self, search: KeptSearch) -> KeptSearch:
        """Keep that a search has begun; give it with its number and its time.

        Raises
        ------
        NotThereError
            If there is no such job; one that was put away is there.
        """
        ...

    def note_search(self, search_id: int, *, stage: str, done: float, told: str, best: Layout | None) -> None:
        """Keep how far a search has come; without a best layout, the one before stays."""
        ...

    def end_search(self, search: KeptSearch) -> None:
        """Keep how a search ended."""
        ...

    def search(self, search_id: int) -> KeptSearch:
        """Give a search.

        Raises
        ------
        NotThereError
            If there is none of that number.
        """
        ...

    def last_search(self, job_id: str) -> KeptSearch | None:
        """Give the search of a job that was begun last; nothing when there was none."""
        ...

    def cut_off_searches(self) -> int:
        """Note of every search that is kept as running that it was cut off; give how many there were."""
        ...

    def setting(self, name: str, otherwise: Callable[[], str]) -> str:
        """Give a setting that holds for all jobs; when there is none yet, what it is from now on."""
        ...

    def put_setting(self, name: str, value: str) -> None:
        """Set a setting."""
        ...
