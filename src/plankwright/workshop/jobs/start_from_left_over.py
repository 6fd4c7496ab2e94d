"""Begin a job with what is left of another: its boards, under the same rules."""

from plankwright.workshop.jobs.kept import KeptJob, RefusedError
from plankwright.workshop.keep_left_over import LeftOver
from plankwright.workshop.ports import Files

_OF_SURFACES = frozenset({"surface", "linked", "name"})
_LONGEST_NAME = 48


def start_from_left_over(kept: KeptJob, files: Files, left: LeftOver) -> KeptJob:
    """Begin a job with what is left of another.

    Parameters
    ----------
    kept
        The other one.
    files
        Who reads definitions.
    left
        What is left of it.

    Returns
    -------
    KeptJob
        With the same rules, tools and lots, and without surfaces; not kept yet.

    Raises
    ------
    RefusedError
        If nothing is left.
    """
    if not left.boards:
        raise RefusedError("Nothing worth keeping is left, so there is nothing to begin a job with.")
    same = {name: table for name, table in kept.definition.items() if name not in _OF_SURFACES}
    definition = {**same, "name": f"{kept.name[:_LONGEST_NAME]} (left)", "surface": []}
    return KeptJob(id="", definition=files.settled(definition), boards=left.boards)
