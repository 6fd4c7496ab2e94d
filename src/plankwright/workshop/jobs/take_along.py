"""Take a job along: as the files of a job folder, which every command understands."""

import io
import zipfile
from collections.abc import Mapping

from plankwright.workshop.hand_out import LAYOUT_FILE
from plankwright.workshop.jobs.kept import KeptJob
from plankwright.workshop.jobs.ports import Store
from plankwright.workshop.ports import Files

_THEN = (1980, 1, 1, 0, 0, 0)
"""The date of every packed file, so that the same job gives the same bytes."""


def folder_of(kept: KeptJob, files: Files, store: Store) -> dict[str, str]:
    """Give a job as the files of a job folder.

    Parameters
    ----------
    kept
        The job.
    files
        Who writes them.
    store
        Who has its layout.

    Returns
    -------
    dict
        Text by name: job.toml, tally.csv, and as far as there are any out/layout.json and work.json.
    """
    folder = {
        "job.toml": files.definition_toml(kept.definition),
        "tally.csv": files.read_definition(kept.definition, kept.boards).tally_csv(),
    }
    if kept.layout_id is not None:
        layout = store.layout(kept.id, kept.layout_id).layout
        folder[f"out/{LAYOUT_FILE}"] = files.layout_to_json(layout)
    if kept.work is not None:
        folder["work.json"] = files.work_to_json(kept.work)
    return folder


def zipped(folder: Mapping[str, str | bytes]) -> bytes:
    """Pack files into one."""
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in folder.items():
            entry = zipfile.ZipInfo(name, _THEN)
            entry.compress_type = zipfile.ZIP_DEFLATED
            archive.writestr(entry, encoded(name, content))
    return packed.getvalue()


def encoded(name: str, content: str | bytes) -> bytes:
    """Give what a file holds as bytes; spreadsheets know UTF-8 in a CSV file by a mark."""
    if isinstance(content, bytes):
        return content
    return content.encode("utf-8-sig" if name.endswith(".csv") else "utf-8")
