"""What can be drawn of a surface while it is being filled in, and what is still missing or wrong."""

import contextlib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any

from plankwright.draw.bare_wall import bare_wall
from plankwright.draw.svg import write_svg
from plankwright.errors import BadInputError
from plankwright.measure import INCH, MILLIMETRE, LengthError, Nm, System, TapeStyle
from plankwright.model import Surface
from plankwright.workshop.jobs.fill_in_surface import FilledIn
from plankwright.workshop.jobs.form_words import Trouble, refusal_of, troubles_of
from plankwright.workshop.jobs.hint_surface import hint_surface
from plankwright.workshop.jobs.kept import KeptJob
from plankwright.workshop.jobs.measure_surfaces import put_surface, surfaces_of
from plankwright.workshop.ports import DefinitionReading, Files
from plankwright.workshop.tell_surface import tell_places, tell_surface

_AROUND = ("name", "units", "decimal_comma", "fraction", "millimetre_step", "rules")
"""What of a definition says how a surface is to be read."""

_OWN = ("surface", 0)
"""Where the surface stands when it is read by itself."""

_PARTS = {"opening": "opening", "cut_out": "cut-out", "concealed": "concealed", "keep_out": "keep-out"}
"""Lists of parts, and what one without a name is called after."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sight:
    """What is seen of a surface.

    Parameters
    ----------
    drawing
        As SVG; empty where nothing can be drawn yet.
    told
        What was read, in sentences.
    troubles
        What is missing or wrong.
    hints
        What is probably missing, although it can be read.
    width, height
        Of the box around it, in the unit that places on it are told in; empty where nothing is drawn.
    unit
        That unit: "in" or "mm".
    """

    drawing: str = ""
    told: tuple[str, ...] = ()
    troubles: tuple[Trouble, ...] = ()
    hints: tuple[str, ...] = ()
    width: str = ""
    height: str = ""
    unit: str = "in"


def preview_surface(kept: KeptJob, files: Files, filled: FilledIn, place: int | None) -> Sight:
    """Draw what can be drawn of a surface, and say what is missing or wrong; it never refuses.

    Parameters
    ----------
    kept
        The job.
    files
        Who reads definitions.
    filled
        The surface as far as it is filled in.
    place
        Where it stands among the surfaces; nothing for a new one.
    """
    reading = _read(kept, files, filled.table)
    troubles = (*filled.lacks, *_wrong(reading, filled), *_taken_name(kept, filled.table, place))
    surface = next(iter(reading.surfaces), None) or _sketch(kept, files, filled.table, troubles)
    sight = Sight(troubles=troubles)
    return sight if surface is None else replace(see_surface(surface, reading.tape), troubles=troubles)


def see_surface(surface: Surface, tape: TapeStyle) -> Sight:
    """Draw a surface, and say how it was read."""
    unit, size_nm = ("mm", MILLIMETRE) if tape.system is System.METRIC else ("in", INCH)
    width, height = (f"{nm / size_nm:.6f}" for nm in (surface.width_nm, surface.height_nm))
    return Sight(
        drawing=write_svg(bare_wall(surface, tape)),
        told=(*tell_surface(surface, tape), *tell_places(surface, tape)),
        hints=hint_surface(surface, tape),
        width=width,
        height=height,
        unit=unit,
    )


def draw_surface(surface: Surface, tape: TapeStyle) -> str:
    """Draw a surface small, without measures, as SVG."""
    return write_svg(bare_wall(surface, tape, measures=False))


def put_filled_surface(
    kept: KeptJob, files: Files, filled: FilledIn, place: int | None, seen: str = ""
) -> KeptJob:
    """Add a surface as it was filled in, or put it in place of what was there.

    Parameters
    ----------
    kept, files, place, seen
        As for `put_surface`.
    filled
        The surface.

    Raises
    ------
    BadInputError
        With everything that is missing or wrong, in the words of the form and by its paths.
    NotThereError, StaleError, RefusedError
        As `put_surface` does.
    """
    reading = _read(kept, files, filled.table)
    troubles = (*filled.lacks, *_wrong(reading, filled), *_taken_name(kept, filled.table, place))
    if troubles:
        raise refusal_of(troubles)
    try:
        return put_surface(kept, files, filled.table, place, seen)
    except BadInputError as trouble:
        at = len(surfaces_of(kept.definition)) if place is None else place
        raise refusal_of(troubles_of(trouble.problems, filled.table, ("surface", at))) from trouble


def _read(kept: KeptJob, files: Files, table: Mapping[str, Any]) -> DefinitionReading:
    """Read a surface by itself, in a job that is written as this one is."""
    around = {key: kept.definition[key] for key in _AROUND if key in kept.definition}
    return files.read_definition({**around, "surface": [_numbered(table)]})


def _numbered(table: Mapping[str, Any]) -> dict[str, Any]:
    """Name parts without a name by their place in the form, whatever else of it can be read."""
    named = dict(table)
    for key, word in _PARTS.items():
        entries = table.get(key)
        if isinstance(entries, list):
            named[key] = [
                {"id": f"{word}-{number}", **entry} if isinstance(entry, dict) else entry
                for number, entry in enumerate(entries, start=1)
            ]
    return named


def _wrong(reading: DefinitionReading, filled: FilledIn) -> Iterator[Trouble]:
    """Give what is wrong, but for what was found to be lacking already."""
    own = [
        replace(problem, path=(*_OWN, *filled.moved.get(problem.path[2:], problem.path[2:])))
        for problem in reading.problems
        if problem.path[:2] == _OWN
    ]
    for trouble in dict.fromkeys(troubles_of(own, filled.table, _OWN)):
        # That something lacks a part is told of the whole and of the part.
        if not any(lack.path[: len(trouble.path)] == trouble.path for lack in filled.lacks):
            yield trouble
    yield from _no_gable(reading, filled.gable)


def _no_gable(reading: DefinitionReading, gable: Mapping[str, str]) -> Iterator[Trouble]:
    """Tell of a ridge that is none, which its corners alone would not give away."""
    nm: dict[str, Nm] = {}
    for key, text in gable.items():
        # Whatever is no length was told of already.
        with contextlib.suppress(LengthError):
            nm[key] = reading.read_length(text)
    if not gable or len(nm) < len(gable):
        return
    if not 0 < nm["ridge_at"] < nm["width"]:
        sentence = (
            "The ridge does not lie between the sides: measure it from the left, or choose “Out of level”."
        )
        yield Trouble(path=("gable", "ridge_at"), sentence=sentence)
    if nm["ridge"] <= nm["sides"]:
        sentence = "The ridge is no higher than the sides: measure all from the floor."
        yield Trouble(path=("gable", "ridge"), sentence=sentence)


def _taken_name(kept: KeptJob, table: Mapping[str, Any], place: int | None) -> Iterator[Trouble]:
    names = [other.get("id") for at, other in enumerate(surfaces_of(kept.definition)) if at != place]
    if (name := table.get("id")) in names:
        yield Trouble(
            path=("id",), sentence=f"There is a surface called {name} already: give this another name."
        )


def _sketch(
    kept: KeptJob, files: Files, table: Mapping[str, Any], troubles: tuple[Trouble, ...]
) -> Surface | None:
    """Make what can be drawn: without the parts that cannot be read, at last of the outline alone."""
    spoilt = {trouble.path[0] for trouble in troubles if trouble.path}
    outline = {key: table[key] for key in ("width", "height", "heights", "level", "corners") if key in table}
    rest = {
        key: value
        for key, value in table.items()
        if key not in outline and (key in _PARTS or key not in spoilt)
    }
    bare = {"id": "surface", "framing": {"solid": True}}
    backing = {"framing": bare["framing"]} if "framing" in spoilt else {}
    for tried in ({**rest, **outline, **backing}, {**bare, **outline}):
        surfaces = _read(kept, files, {**bare, **tried}).surfaces
        if surfaces:
            return surfaces[0]
    return None


def surfaces_seen(kept: KeptJob, files: Files) -> tuple[tuple[Surface, TapeStyle], ...]:
    """Give the surfaces of a job in their order, each with the tape that it is told by."""
    reading = files.read_definition(kept.definition)
    return tuple((surface, reading.tape) for surface in reading.surfaces)
