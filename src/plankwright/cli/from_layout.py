"""What `map` and `sheets` share: from a layout made earlier to files."""

from collections.abc import Callable
from pathlib import Path

from plankwright.cli.options import out_folder, paper_size
from plankwright.cli.reading_layout import read_all
from plankwright.cli.talk import Talk
from plankwright.cli.written import show_written
from plankwright.workshop.hand_out import Written


def write_from_layout(
    talk: Talk,
    write: Callable[..., tuple[Written, ...]],
    folder: Path,
    *,
    layout: Path | None,
    out: Path | None,
    paper: str | None,
) -> None:
    """Read a layout of a job, write files made from it, and name them.

    Parameters
    ----------
    talk
        How this run speaks, and the rooms it calls.
    write
        Who writes, such as `hand_out_maps`.
    folder
        The job folder.
    layout, out, paper
        As given.
    """
    job, read, standing = read_all(talk, folder, layout)
    written = write(
        job,
        read,
        folder=out_folder(folder, out),
        files=talk.bench.files,
        paper=paper_size(paper),
        standing=standing,
    )
    show_written(talk, written)
