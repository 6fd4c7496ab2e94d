"""Bring a job along: the files of a job folder, one packed, or a tally alone."""

import io
import tempfile
import zipfile
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path, PurePosixPath
from typing import ClassVar

from plankwright.errors import ExitCode, FileTroubleError, PlankwrightError
from plankwright.model import Layout, Work
from plankwright.workshop.check_layout import demand_right
from plankwright.workshop.jobs.kept import KeptJob, KeptLayout, Made
from plankwright.workshop.jobs.ports import Store
from plankwright.workshop.jobs.start_job import start_job
from plankwright.workshop.ports import Files

Sent = tuple[str, bytes]
"""A file that somebody sent: its name and its content."""

_JOB, _LAYOUT, _WORK = "job.toml", "layout.json", "work.json"
_TALLIES = (".csv", ".xlsx")
_MOST_BYTES = 20_000_000
_MOST_FILES = 200


class NothingBroughtError(PlankwrightError, ValueError):
    """What was sent is no job."""

    exit_code: ClassVar[int] = ExitCode.BAD_INPUT
    default_message: ClassVar[str] = (
        "No job is among these files: choose job.toml and the tally beside it, a job folder packed as .zip, "
        "or a tally alone, as .csv or .xlsx."
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Brought:
    """A job that was brought along.

    Parameters
    ----------
    job
        The job, not kept yet.
    layout, work
        The layout that came with it, and what was marked, if anything was.
    """

    job: KeptJob
    layout: Layout | None = None
    work: Work | None = None

    def keep(self, store: Store) -> KeptJob:
        """Keep it, with its layout and its marks."""
        kept = store.add(self.job)
        if self.layout is None:
            return kept
        laid = store.keep_layout(kept.id, KeptLayout(layout=self.layout, made=Made.BROUGHT))
        return store.change(
            kept.id,
            "its layout brought along",
            lambda job: replace(job, layout_id=laid.id, work=self.work),
        )


def bring_job(files: Files, sent: Sequence[Sent], *, units: str = "inches") -> Brought:
    """Make a job of files that were sent.

    Parameters
    ----------
    files
        Who reads them.
    sent
        The files of a job folder, one packed, or a tally alone.
    units
        Unit of a number that has none, for a tally alone.

    Raises
    ------
    NothingBroughtError
        If no job is among them.
    BadInputError
        With every problem of the files.
    FaultyLayoutError
        If the layout that is among them breaks a rule.
    FileTroubleError
        If they cannot be read.
    """
    by_name = dict(_unpacked(sent))
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made)
        if _JOB in by_name:
            _put(folder, by_name)
            return _from_folder(files, folder)
        tallies = [name for name in by_name if name.endswith(_TALLIES)]
        if len(tallies) != 1:
            raise NothingBroughtError
        (name,) = tallies
        _put(folder, {name: by_name[name]})
        begun = start_job(files, Path(name).stem[:60] or "tally", units)
        reading = files.read_definition(begun.definition)
        tally = files.read_tally(folder / name, unit=reading.unit, rules=reading.rules)
        return Brought(job=replace(begun, boards=tally.boards))


def example_job(files: Files) -> KeptJob:
    """Give the example: boards of a village hall, on an entry wall. All of it is invented."""
    return _from_folder(files, files.example_folder()).job


def _from_folder(files: Files, folder: Path) -> Brought:
    job = files.read_job(folder).job
    kept = KeptJob(id="", definition=files.definition_of(folder), boards=job.boards)
    if not (folder / _LAYOUT).exists():
        return Brought(job=kept)
    layout, work = files.read_layout(folder / _LAYOUT), files.read_work(folder)
    if work is None:
        demand_right(job, layout)
    else:
        demand_right(job, layout, work.standing)
    return Brought(job=kept, layout=layout, work=work)


def _put(folder: Path, files: dict[str, bytes]) -> None:
    for name, content in files.items():
        (folder / name).write_bytes(content)


def _unpacked(sent: Iterable[Sent]) -> Iterable[Sent]:
    """Give the files, packed ones one by one, each by its name without folders."""
    for name, content in sent:
        plain = PurePosixPath(name.replace("\\", "/")).name.lower()
        if plain.endswith(".zip"):
            yield from _of_archive(name, content)
        elif plain:
            yield plain, content


def _of_archive(name: str, content: bytes) -> Iterable[Sent]:
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as archive:
            entries = [entry for entry in archive.infolist() if not entry.is_dir()]
            if len(entries) > _MOST_FILES or sum(entry.file_size for entry in entries) > _MOST_BYTES:
                raise FileTroubleError(f"{name} holds more than a job folder does.")
            # The shallowest of a name counts: results may lie in a folder below.
            for entry in sorted(entries, key=lambda one: -one.filename.count("/")):
                plain = PurePosixPath(entry.filename).name.lower()
                if plain in {_JOB, _LAYOUT, _WORK} or plain in {"tally.csv", "tally.xlsx"}:
                    yield plain, archive.read(entry)
    except (zipfile.BadZipFile, NotImplementedError, RuntimeError, OSError) as trouble:
        raise FileTroubleError(f"{name} cannot be unpacked: pack the job folder as .zip again.") from trouble
