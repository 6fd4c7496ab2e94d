"""What `map`, `sheets` and `check` share: a job and a layout made earlier."""

from pathlib import Path

from plankwright.cli.options import out_folder
from plankwright.cli.talk import Talk
from plankwright.model import Job, Layout
from plankwright.workshop.hand_out import LAYOUT_FILE


def read_both(talk: Talk, folder: Path, layout: Path | None) -> tuple[Job, Layout]:
    """Read a job and a layout of it.

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
        The job and the layout, not yet checked.
    """
    reading = talk.bench.files.read_job(folder)
    talk.remark(reading.remarks)
    return reading.job, talk.bench.files.read_layout(layout or out_folder(folder, None) / LAYOUT_FILE)
