"""Begin a job from nothing, or with the measurements of another."""

from dataclasses import replace

from plankwright.workshop.jobs.kept import KeptJob
from plankwright.workshop.jobs.wishes import NO_WISHES
from plankwright.workshop.ports import Files


def start_job(files: Files, name: str, units: str) -> KeptJob:
    """Begin a job from nothing.

    Parameters
    ----------
    files
        Who reads definitions.
    name
        What the user calls it.
    units
        Unit of a number that has none, as job.toml names it.

    Returns
    -------
    KeptJob
        Without boards and surfaces, not kept yet.

    Raises
    ------
    BadInputError
        If the name or the units will not do.
    """
    return KeptJob(id="", definition=files.settled({"name": name, "units": units, "surface": []}))


def copy_of(kept: KeptJob) -> KeptJob:
    """Begin a job with the surfaces, rules and boards of another, and nothing laid out or done."""
    definition = {**kept.definition, "name": f"{kept.name[:50]} (copy)"}
    return replace(kept, id="", definition=definition, layout_id=None, work=None, wishes=NO_WISHES)
