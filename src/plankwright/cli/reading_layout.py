"""What commands share that work from a layout made earlier: it, its job, and how far that has come."""

from pathlib import Path

from plankwright.cli.options import out_folder
from plankwright.cli.talk import Talk
from plankwright.model import Job, Layout, Standing, Work
from plankwright.workshop.go_together import work_on
from plankwright.workshop.hand_out import LAYOUT_FILE


def read_all(talk: Talk, folder: Path, layout: Path | None) -> tuple[Job, Layout, Standing]:
    """Read a job, a layout of it, and how far it has come.

    Parameters
    ----------
    talk
        How this run speaks, and the rooms it calls.
    folder
        The job folder.
    layout
        The layout's file; where `plankwright lay` leaves it when left out.

    Returns
    -------
    tuple
        The job, the layout, not yet checked, and the standing.
    """
    reading = talk.bench.files.read_job(folder)
    talk.remark(reading.remarks)
    laid = talk.bench.files.read_layout(layout or out_folder(folder, None) / LAYOUT_FILE)
    return reading.job, laid, read_work(talk, folder, reading.job).standing


def read_work(talk: Talk, folder: Path, job: Job) -> Work:
    """Read what was marked while a job was worked on; nothing yet is work too."""
    return work_on(job, talk.bench.files.read_work(folder))
