"""Say round which corners courses run: groups of walls, from left to right as seen from inside the room."""

from collections.abc import Mapping, Sequence
from typing import Any

from plankwright.errors import BadInputError
from plankwright.model import Direction, Surface, SurfaceKind
from plankwright.model.corners import runs_all_round, walls_of
from plankwright.workshop.jobs.form_words import refusal_of, troubles_of
from plankwright.workshop.jobs.kept import Definition, KeptJob, StaleError
from plankwright.workshop.jobs.measure_surfaces import put_tables
from plankwright.workshop.jobs.tally_boards import fingerprint
from plankwright.workshop.ports import Files

_LINKED = "linked"


def may_be_linked(surfaces: Sequence[Surface]) -> tuple[str, ...]:
    """Give the names of the surfaces whose courses can run round a corner: walls with level courses."""
    return tuple(
        surface.id
        for surface in surfaces
        if surface.kind is SurfaceKind.WALL and surface.courses_run is Direction.HORIZONTAL
    )


def links_of(definition: Definition) -> list[list[str]]:
    """Give the groups of a definition."""
    return [list(group) for group in definition.get(_LINKED, ())]


def as_groups(links: Sequence[Sequence[str]]) -> list[dict[str, Any]]:
    """Give groups as a form shows them: each wall once, and whether courses run all round the room."""
    return [
        {"wall": list(walls_of(tuple(group))), "round": "true" if runs_all_round(tuple(group)) else ""}
        for group in links
    ]


def groups_filled_in(given: Mapping[str, Any]) -> list[list[str]]:
    """Give the groups that were filled in, as a definition has them; one without walls is none."""
    entries = given.get(_LINKED)
    groups: list[list[str]] = []
    for entry in entries if isinstance(entries, list) else ():
        walls = entry.get("wall") if isinstance(entry, dict) else None
        if isinstance(walls, list) and walls:
            groups.append([*walls, *(walls[:1] if entry.get("round") == "true" else ())])
    return groups


def link_surfaces(kept: KeptJob, files: Files, groups: Sequence[Sequence[str]], seen: str) -> KeptJob:
    """Put groups of walls in place of those that there were.

    Parameters
    ----------
    kept
        The job.
    files
        Who reads definitions.
    groups
        As a definition has them.
    seen
        The fingerprint of the groups as they were shown.

    Raises
    ------
    BadInputError
        If courses cannot run so.
    StaleError
        If there are other groups than were shown.
    """
    if fingerprint(links_of(kept.definition)) != seen:
        raise StaleError
    try:
        return put_tables(kept, files, {_LINKED: [list(group) for group in groups]})
    except BadInputError as trouble:
        raise refusal_of(troubles_of(trouble.problems, kept.definition)) from trouble
