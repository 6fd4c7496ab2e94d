"""Bring a job along: the files of a job folder, one packed, or a tally alone."""

import io
import lzma
import struct
import tempfile
import zipfile
import zlib
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path, PurePosixPath
from typing import ClassVar

from plankwright.errors import ExitCode, FileTroubleError, PlankwrightError
from plankwright.model import Layout, Work
from plankwright.workshop.check_layout import demand_right
from plankwright.workshop.go_together import demand_boards, demand_same_surfaces, work_on
from plankwright.workshop.jobs.kept import KeptJob, KeptLayout, Made
from plankwright.workshop.jobs.ports import Store
from plankwright.workshop.jobs.start_job import start_job
from plankwright.workshop.ports import Files

Sent = tuple[str, bytes]
"""A file that somebody sent: its name and its content."""

_JOB, _LAYOUT, _WORK = "job.toml", "layout.json", "work.json"
_TALLY, _TALLIES = "tally", (".csv", ".xlsx")
_OF_A_FOLDER = frozenset({_JOB, _LAYOUT, _WORK, *(f"{_TALLY}{ending}" for ending in _TALLIES)})
_MOST_BYTES = 20_000_000
_MOST_FILES = 200
_LONGEST_NAME = 60
_SPOILT = (
    *(zipfile.BadZipFile, zlib.error, lzma.LZMAError, struct.error),
    *(NotImplementedError, RuntimeError, OSError, EOFError, ValueError, OverflowError),
)
"""What unpacking ends with where the file is damaged, or packed in a way that is not known."""


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
    FaultyLayoutError, OtherLayoutError, BoardsMissingError, SurfacesMissingError
        If the layout that is among them breaks a rule although nothing was done by it yet, or it or what was
        marked is of another job.
    FileTroubleError
        If they cannot be read.
    """
    by_name = dict(_unpacked(sent))
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made)
        if _JOB in by_name:
            _put(folder, _as_folder(by_name))
            return _from_folder(files, folder)
        return _from_tally(files, folder, by_name, units)


def example_job(files: Files) -> KeptJob:
    """Give the example: boards of a village hall, on an entry wall. All of it is invented."""
    return _from_folder(files, files.example_folder()).job


def _from_folder(files: Files, folder: Path) -> Brought:
    job = files.read_job(folder).job
    kept = KeptJob(id="", definition=files.definition_of(folder), boards=job.boards)
    if not (folder / _LAYOUT).exists():
        return Brought(job=kept)
    layout, work = files.read_layout(folder / _LAYOUT), files.read_work(folder)
    standing = work_on(job, work).standing
    if standing.begun:
        # It may have been taken along just after something happened: what is left is laid out anew then.
        demand_same_surfaces(job, layout)
        demand_boards(job, standing)
    else:
        demand_right(job, layout)
    return Brought(job=kept, layout=layout, work=work)


def _from_tally(files: Files, folder: Path, by_name: Mapping[str, bytes], units: str) -> Brought:
    tallies = [name for name in by_name if name.endswith(_TALLIES)]
    if len(tallies) != 1:
        raise NothingBroughtError
    (name,) = tallies
    usual = f"{_TALLY}{PurePosixPath(name).suffix}"
    _put(folder, {usual: by_name[name]})
    begun = start_job(files, _called_after(name), units)
    reading = files.read_definition(begun.definition)
    tally = files.read_tally(folder / usual, unit=reading.unit, rules=reading.rules)
    return Brought(job=replace(begun, boards=tally.boards))


def _called_after(name: str) -> str:
    """Give the name of a job whose tally is called so."""
    stem = "".join(mark for mark in PurePosixPath(name).stem if mark.isprintable())
    return stem.strip(" .")[:_LONGEST_NAME].strip() or _TALLY


def _as_folder(by_name: Mapping[str, bytes]) -> dict[str, bytes]:
    """Give the files that a job folder has, with the tally called as it is there."""
    folder = {name: content for name, content in by_name.items() if name in _OF_A_FOLDER}
    if any(name.endswith(_TALLIES) for name in folder):
        return folder
    tallies = [name for name in by_name if name.endswith(_TALLIES)]
    if len(tallies) != 1:
        raise NothingBroughtError(
            "job.toml came without its tally: choose tally.csv or tally.xlsx as well, which lies beside it."
        )
    return {**folder, f"{_TALLY}{PurePosixPath(tallies[0]).suffix}": by_name[tallies[0]]}


def _put(folder: Path, files: Mapping[str, bytes]) -> None:
    for name, content in files.items():
        (folder / name).write_bytes(content)


def _unpacked(sent: Iterable[Sent]) -> Iterator[Sent]:
    """Give the files, packed ones one by one, each by its name without folders."""
    for name, content in sent:
        plain = _path(name).name
        if plain.endswith(".zip"):
            yield from _of_archive(name, content)
        elif plain:
            yield plain, content


def _path(name: str) -> PurePosixPath:
    """Give where a file lay, in small letters, whatever system it comes from."""
    return PurePosixPath(name.replace("\\", "/").lower())


def _of_archive(name: str, content: bytes) -> Iterator[Sent]:
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as archive:
            entries = [(_path(entry.filename), entry) for entry in archive.infolist() if not entry.is_dir()]
            wanted = _of_one_job(name, [one for one in entries if one[0].name in _OF_A_FOLDER])
            if len(wanted) > _MOST_FILES or sum(entry.file_size for _, entry in wanted) > _MOST_BYTES:
                raise FileTroubleError(f"{name} holds more than a job folder does.")
            for path, entry in wanted:
                yield path.name, archive.read(entry)
    except _SPOILT as trouble:
        raise FileTroubleError(f"{name} cannot be unpacked: pack the job folder as .zip again.") from trouble


Packed = tuple[PurePosixPath, zipfile.ZipInfo]


def _of_one_job(name: str, packed: Iterable[Packed]) -> list[Packed]:
    """Give the files of one job: of the folder that lies least deep, and below it what it lacks itself."""
    least_deep_last = sorted(packed, key=lambda one: -len(one[0].parents))
    jobs = [path for path, _ in least_deep_last if path.name == _JOB]
    if not jobs:
        return least_deep_last
    job = jobs[-1]
    if sum(len(other.parents) == len(job.parents) for other in jobs) > 1:
        raise FileTroubleError(f"{name} holds several jobs: pack one of their folders.")
    return [
        (path, entry)
        for path, entry in least_deep_last
        if path.parent == job.parent or (path.name == _LAYOUT and job.parent in path.parents)
    ]
