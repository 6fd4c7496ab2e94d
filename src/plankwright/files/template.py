"""Starting a job: a folder with a commented job.toml and tally.csv, never over anything that is there."""

from importlib.resources import files
from pathlib import Path

from plankwright.errors import FileTroubleError
from plankwright.files.disk import write_files
from plankwright.files.job import JOB_FILE, TALLY_FILES

_TEMPLATES = files("plankwright.files") / "templates"


def example_folder() -> Path:
    """Give the folder of the example job, in the package or, where that is run from its source, beside it."""
    packed = Path(str(files("plankwright.files") / "example"))
    return packed if packed.is_dir() else Path(__file__).parents[3] / "examples" / "village-hall"


def write_template(folder: Path) -> tuple[Path, ...]:
    """Make a job folder with a commented job.toml and tally.csv.

    Parameters
    ----------
    folder
        The folder; it is made when it is missing.

    Returns
    -------
    tuple of Path
        The files written.

    Raises
    ------
    FileTroubleError
        If there is a job or a tally already, or the files cannot be written.
    """
    there = [name for name in (JOB_FILE, *TALLY_FILES) if (folder / name).exists()]
    if there:
        raise FileTroubleError(
            f"{folder} holds {' and '.join(there)} already, and nothing is written over: name another folder."
        )
    written = (folder / JOB_FILE, folder / TALLY_FILES[0])
    write_files({path: (_TEMPLATES / path.name).read_bytes() for path in written})
    return written
