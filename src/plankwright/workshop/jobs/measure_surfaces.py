"""Say what is to be covered, under which rules and with what: each a part of the job's definition."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from plankwright.workshop.jobs.kept import Definition, KeptJob, NotThereError, RefusedError, StaleError
from plankwright.workshop.jobs.tally_boards import fingerprint
from plankwright.workshop.ports import Files

Table = Mapping[str, Any]
"""A table of the definition, such as a surface, as it was filled in."""

ANOTHER_JOB = "copy this one on the list of jobs, or begin one with what is left over"
"""Where a surface goes that a job cannot take any more."""

_SURFACES, _LINKED = "surface", "linked"


def surfaces_of(definition: Definition) -> tuple[Table, ...]:
    """Give the surfaces of a definition, as they were filled in."""
    return tuple(definition.get(_SURFACES, ()))


def _links_of(definition: Definition) -> Sequence[Sequence[str]]:
    return tuple(definition.get(_LINKED, ()))


def surface_at(kept: KeptJob, place: int) -> Table:
    """Give the surface at a place, counted from 0.

    Raises
    ------
    NotThereError
        If there are not so many.
    """
    surfaces = surfaces_of(kept.definition)
    if not 0 <= place < len(surfaces):
        raise NotThereError("There is no such surface in this job, or no longer.")
    return surfaces[place]


def put_surface(kept: KeptJob, files: Files, surface: Table, place: int | None, seen: str = "") -> KeptJob:
    """Add a surface, or put it in place of what was there.

    Parameters
    ----------
    kept
        The job.
    files
        Who reads definitions.
    surface
        As filled in.
    place
        Where it stands; at the end when it is new.
    seen
        The fingerprint of the one at that place as it was shown.

    Raises
    ------
    BadInputError
        With every problem of it.
    NotThereError, StaleError
        If there is none at that place, or another than was shown.
    RefusedError
        If pieces hang on it or are cut for it, and it would be called otherwise; or if it is new and work on
        the job has begun.
    """
    surfaces = list(surfaces_of(kept.definition))
    if place is None:
        _demand_not_begun(kept, "for a further surface")
        return put_tables(kept, files, {_SURFACES: [*surfaces, surface]})
    before = surface_at(kept, place)
    _demand_as_seen(before, seen)
    old, new = before.get("id"), surface.get("id")
    if old != new:
        _demand_untouched(kept, str(old), "must be called as before")
    surfaces[place] = surface
    linked = [[new if name == old else name for name in group] for group in _links_of(kept.definition)]
    return put_tables(kept, files, {_SURFACES: surfaces, _LINKED: linked})


def take_out_surface(kept: KeptJob, files: Files, place: int, seen: str) -> KeptJob:
    """Take a surface out of the job, and out of every link; parameters and errors as in `put_surface`."""
    surface = surface_at(kept, place)
    _demand_as_seen(surface, seen)
    name = str(surface.get("id"))
    _demand_untouched(kept, name, "stays in the job")
    _demand_not_begun(kept, f"for the surfaces without {name}")
    others = [other for at, other in enumerate(surfaces_of(kept.definition)) if at != place]
    linked = [group for group in _links_of(kept.definition) if name not in group]
    return put_tables(kept, files, {_SURFACES: others, _LINKED: linked})


def raise_surface(kept: KeptJob, files: Files, place: int, seen: str | None = None) -> KeptJob:
    """Make a surface one place more important; `seen` is its fingerprint as it was shown, if it was."""
    surface = surface_at(kept, place)
    if seen is not None:
        _demand_as_seen(surface, seen)
    surfaces = list(surfaces_of(kept.definition))
    if place:
        surfaces[place - 1], surfaces[place] = surfaces[place], surfaces[place - 1]
    return put_tables(kept, files, {_SURFACES: surfaces})


def put_tables(kept: KeptJob, files: Files, tables: Table) -> KeptJob:
    """Put tables of the definition in place of what they were; an empty one is left out.

    Raises
    ------
    BadInputError
        With every problem of the whole definition as it would be.
    """
    given = {**kept.definition, **tables}
    definition = {key: value for key, value in given.items() if value not in ("", None, [], {}, ())}
    return replace(kept, definition=files.settled(definition))


def _demand_as_seen(surface: Table, seen: str) -> None:
    if fingerprint(surface) != seen:
        raise StaleError


def _demand_untouched(kept: KeptJob, surface_id: str, otherwise: str) -> None:
    if kept.work is None:
        return
    standing = kept.work.standing
    if surface_id in {row.surface_id for row in standing.hung} | {cut.surface_id for cut in standing.cut}:
        raise RefusedError(f"Pieces hang on {surface_id} or are cut for it: it {otherwise}.")


def _demand_not_begun(kept: KeptJob, what: str) -> None:
    """Refuse what no layout of what is left could follow."""
    if kept.begun:
        raise RefusedError(f"Work on this job has begun. Begin another job {what}: {ANOTHER_JOB}.")
