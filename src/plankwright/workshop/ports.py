"""What the workshop asks of others, in its own words: `files` answers, tests stand in for it."""

from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Protocol

from plankwright.errors import Problem
from plankwright.measure import Nm, TapeStyle, Unit
from plankwright.model import Board, Job, Layout, Rules, Standing, Work


class JobReading(Protocol):
    """A job as it was read."""

    @property
    def job(self) -> Job:
        """The job."""
        ...

    @property
    def remarks(self) -> tuple[Problem, ...]:
        """Doubtful places: the files can be used, but somebody should look."""
        ...

    def read_length(self, text: str) -> Nm:
        """Read a length as the files of this job are written. [nm]"""
        ...


class TallyReading(Protocol):
    """A tally as it was read, without a job beside it."""

    @property
    def boards(self) -> tuple[Board, ...]:
        """The boards, in the order of the file."""
        ...

    @property
    def remarks(self) -> tuple[Problem, ...]:
        """Doubtful places: the file can be used, but somebody should look."""
        ...


class Files(Protocol):
    """Reading and writing, each file whole or not at all."""

    def read_job(self, folder: Path) -> JobReading:
        """Read a job folder."""
        ...

    def read_tally(
        self, path: Path, *, unit: Unit | None, decimal_comma: bool = False, rules: Rules = ...
    ) -> TallyReading:
        """Read a tally by itself, CSV or a spreadsheet."""
        ...

    def read_layout(self, file: Path) -> Layout:
        """Read a layout, whoever made it."""
        ...

    def read_work(self, folder: Path) -> Work | None:
        """Read how far the job of a folder has come; nothing when nothing was marked."""
        ...

    def write_work(self, folder: Path, work: Work) -> None:
        """Keep in its folder how far a job has come."""
        ...

    def write_template(self, folder: Path) -> tuple[Path, ...]:
        """Make a job folder with commented templates."""
        ...

    def layout_to_json(self, layout: Layout) -> str:
        """Write a layout as text."""
        ...

    def cut_list_csv(self, job: Job, layout: Layout, standing: Standing = ...) -> str:
        """Write the cut list as text for a spreadsheet, as far as it is still to be sawn."""
        ...

    def tally_csv(self, boards: Iterable[Board], tape: TapeStyle) -> str:
        """Write boards as a tally that can be read."""
        ...

    def demand_writable(self, path: Path) -> None:
        """Find out whether a file can be written, before work is done that would be lost."""
        ...

    def write_files(self, files: Mapping[Path, str | bytes]) -> None:
        """Write all of these files or none, over earlier ones; folders on the way are made."""
        ...
