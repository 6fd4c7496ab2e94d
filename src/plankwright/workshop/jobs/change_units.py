"""What a job is called, in which units it is written, and how fine its tape is."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from plankwright.errors import BadInputError
from plankwright.measure import MILLIMETRE, TapeStyle
from plankwright.workshop.jobs.definition_types import typed
from plankwright.workshop.jobs.form_words import refusal_of, troubles_of
from plankwright.workshop.jobs.kept import Definition, KeptJob, StaleError
from plankwright.workshop.jobs.tally_boards import fingerprint
from plankwright.workshop.ports import Files

_KEYS = ("name", "units", "decimal_comma", "fraction", "millimetre_step")

HALF_MILLIMETRES = "1/2 mm"
"""The finer step of a metric tape, as it is read whatever the decimal mark is."""


def naming(definition: Definition) -> dict[str, Any]:
    """Give the part of a definition that is told here."""
    return {key: definition[key] for key in _KEYS if key in definition}


def as_form(definition: Definition, tape: TapeStyle) -> dict[str, Any]:
    """Give that part as a form shows it."""
    form = naming(definition)
    if "millimetre_step" in form:
        form["millimetre_step"] = HALF_MILLIMETRES if tape.millimetre_step < MILLIMETRE else ""
    return form


def change_units(kept: KeptJob, files: Files, given: Mapping[str, Any], seen: str) -> KeptJob:
    """Call a job otherwise, or write it in other units; every length in it stays what it is.

    Parameters
    ----------
    kept
        The job.
    files
        Who reads definitions.
    given
        Its name and the keys of its tape, as filled in; the tape key that does not go with the units is
        left out.
    seen
        The fingerprint of this part of the definition as it was shown.

    Raises
    ------
    BadInputError
        With everything that is wrong, in the words of the form and by its paths.
    StaleError
        If it was changed since it was shown.
    """
    if fingerprint(naming(kept.definition)) != seen:
        raise StaleError
    tape = typed({key: value for key, value in given.items() if key != "name"})
    try:
        written = files.rewritten(kept.definition, tape)
        definition = files.settled({**written, "name": given.get("name", "")})
    except BadInputError as trouble:
        raise refusal_of(troubles_of(trouble.problems, given)) from trouble
    return replace(kept, definition=definition)
