"""What the workshop asks of others, in its own words: `files` answers, tests stand in for it."""

from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import Any, Protocol

from plankwright.errors import Problem
from plankwright.measure import Nm, TapeStyle, Unit
from plankwright.model import Board, Job, Layout, Lot, Mark, Rules, Standing, Surface, Task, Work


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


class Known(Protocol):
    """What is known of a job, also of one that is still being measured, that decides which hazards it has."""

    @property
    def tape(self) -> TapeStyle:
        """How lengths are written for this user."""
        ...

    @property
    def boards(self) -> tuple[Board, ...]:
        """The tally, as far as it has come."""
        ...

    @property
    def surfaces(self) -> tuple[Surface, ...]:
        """What is to be covered, as far as it is measured."""
        ...

    @property
    def lots(self) -> tuple[Lot, ...]:
        """What is known of lots."""
        ...

    @property
    def house_built(self) -> int | None:
        """Year of the house they go into, if it is known."""
        ...

    @property
    def tasks(self) -> tuple[Task, ...]:
        """What is to be done."""
        ...


class DefinitionReading(Known, Protocol):
    """What a job's definition says, as far as it can be read."""

    @property
    def name(self) -> str:
        """What the user calls the job."""
        ...

    @property
    def rules(self) -> Rules:
        """What a layout must respect."""
        ...

    @property
    def unit(self) -> Unit | None:
        """Unit of a number that has none."""
        ...

    @property
    def decimal_comma(self) -> bool:
        """Whether the comma is the decimal mark."""
        ...

    def read_length(self, text: str) -> Nm:
        """Read a length as it is written for this job. [nm]"""
        ...

    def write_length(self, nm: Nm) -> str:
        """Write a length so that it is read as the same one."""
        ...

    def tally_csv(self) -> str:
        """Write the tally as CSV, each board just as it is."""
        ...

    def tally_xlsx(self) -> bytes:
        """Write the tally as a workbook that is read as the same, with sizes as numbers besides."""
        ...

    def read_boards(self, cells: Mapping[str, str]) -> tuple[Board, ...]:
        """Read a board, or several that are alike, from the cells of a row of a tally."""
        ...

    def cells_of(self, board: Board) -> dict[str, str]:
        """Give a board as the cells of a row that is read as just that board."""
        ...

    @property
    def problems(self) -> tuple[Problem, ...]:
        """All that keeps it from being a job."""
        ...

    @property
    def remarks(self) -> tuple[Problem, ...]:
        """What is doubtful about it and about its boards."""
        ...

    @property
    def job(self) -> Job:
        """The job; an error with every problem where it is none yet."""
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


class PaperFiles(Protocol):
    """What is asked of files where a layout is handed out."""

    def layout_to_json(self, layout: Layout) -> str:
        """Write a layout as text."""
        ...

    def cut_list_csv(self, job: Job, layout: Layout, standing: Standing = ...) -> str:
        """Write the cut list as text for a spreadsheet, as far as it is still to be sawn."""
        ...

    def write_files(self, files: Mapping[Path, str | bytes]) -> None:
        """Write all of these files or none, over earlier ones; folders on the way are made."""
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

    def read_definition(
        self, definition: Mapping[str, Any], boards: Sequence[Board] = ...
    ) -> DefinitionReading:
        """Read what a definition says, with or without boards."""
        ...

    def example_folder(self) -> Path:
        """Give the folder of the example job."""
        ...

    def settled(self, definition: Mapping[str, Any]) -> dict[str, Any]:
        """Give a definition with a unit at every length, or every problem of it."""
        ...

    def rewritten(self, definition: Mapping[str, Any], tape: Mapping[str, Any]) -> dict[str, Any]:
        """Give a definition with other units, tape or decimal mark; every length stays what it is."""
        ...

    def rule_meanings(self) -> dict[str, str]:
        """Say of each key of the rules what it means."""
        ...

    def definition_of(self, folder: Path) -> dict[str, Any]:
        """Give the definition that stands in the job.toml of a folder."""
        ...

    def definition_toml(self, definition: Mapping[str, Any]) -> str:
        """Write a definition as the text of a job.toml."""
        ...

    def layout_from_json(self, text: str, file: str = ...) -> Layout:
        """Read a layout from text."""
        ...

    def mark_to_json(self, mark: Mark) -> str:
        """Write a mark as text."""
        ...

    def mark_from_json(self, text: str) -> Mark:
        """Read a mark from text."""
        ...

    def work_to_json(self, work: Work) -> str:
        """Write how far a job has come as text."""
        ...

    def layout_to_json(self, layout: Layout) -> str:
        """Write a layout as text."""
        ...

    def cut_list_csv(self, job: Job, layout: Layout, standing: Standing = ...) -> str:
        """Write the cut list as text for a spreadsheet, as far as it is still to be sawn."""
        ...

    def cut_list_xlsx(self, job: Job, layout: Layout, standing: Standing = ...) -> bytes:
        """Write the same as a workbook."""
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
