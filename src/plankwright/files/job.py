"""Reading a job folder: job.toml and the tally beside it, whole or not at all."""

from dataclasses import dataclass, field
from pathlib import Path

from plankwright.errors import BadInputError, FileTroubleError, Problem
from plankwright.files.disk import read_bytes
from plankwright.files.job_text import JobText
from plankwright.files.notation import Notation
from plankwright.files.tally import gather_boards
from plankwright.files.toml_text import parse_toml
from plankwright.measure import Nm
from plankwright.model import Job

JOB_FILE = "job.toml"
TALLY_FILES = ("tally.csv", "tally.xlsx")


@dataclass(frozen=True, slots=True, kw_only=True)
class JobReading:
    """What a job folder holds.

    Parameters
    ----------
    job
        The job.
    remarks
        What is doubtful: nothing that stops the work, but somebody should look.
    notation
        How its lengths are written.
    """

    job: Job
    remarks: tuple[Problem, ...]
    notation: Notation = field(default_factory=lambda: Notation(unit=None))

    def read_length(self, text: str) -> Nm:
        """Read a length as the files of this job are written. [nm]

        Raises
        ------
        LengthError
            If it is no length.
        """
        return self.notation.read(text)


def read_job(folder: Path) -> JobReading:
    """Read a job folder: job.toml, and tally.csv or tally.xlsx.

    Parameters
    ----------
    folder
        The folder.

    Returns
    -------
    JobReading
        The job, and what is doubtful about it.

    Raises
    ------
    BadInputError
        With every problem of both files.
    FileTroubleError
        If the folder or one of its files is missing or cannot be read.
    """
    job_path, tally_paths = _files_of(folder)
    text = JobText(parse_toml(read_bytes(job_path)), job_path.name)
    boards, tally = gather_boards(tally_paths[0], text.notation, text.rules, text.lots)
    if len(tally_paths) > 1:
        names = " and ".join(path.name for path in tally_paths)
        text.report.refuse(
            (), f"there are both {names} beside it, and they may differ: keep one, rename the other"
        )
    text.demand_some_left(boards)
    if problems := (*text.report.problems, *tally.problems):
        raise BadInputError(problems)
    remarks = (*text.report.remarks, *tally.remarks)
    return JobReading(job=text.job(boards), remarks=remarks, notation=text.notation)


def _files_of(folder: Path) -> tuple[Path, list[Path]]:
    try:
        by_name = {path.name.lower(): path for path in sorted(folder.iterdir())}
    except FileNotFoundError as trouble:
        raise FileTroubleError(
            f"{folder} is not there: name the folder that holds {JOB_FILE} and the tally."
        ) from trouble
    except NotADirectoryError as trouble:
        raise FileTroubleError(f"{folder} is a file: name the folder that it lies in.") from trouble
    except OSError as trouble:
        reason = (trouble.strerror or "unknown reason").lower()
        raise FileTroubleError(
            f"{folder} cannot be looked into ({reason}): check that it may be."
        ) from trouble
    if JOB_FILE not in by_name:
        raise FileTroubleError(
            f"{folder} holds no {JOB_FILE}: name a job folder, or start one from the templates."
        )
    tallies = [by_name[name] for name in TALLY_FILES if name in by_name]
    if not tallies:
        others = [path.name for name, path in by_name.items() if name.startswith("tally")]
        hint = f" ({', '.join(others)} cannot be read: save it as one of these)" if others else ""
        raise FileTroubleError(
            f"{folder} holds no tally: put the boards into {' or '.join(TALLY_FILES)} there{hint}."
        )
    return by_name[JOB_FILE], tallies
