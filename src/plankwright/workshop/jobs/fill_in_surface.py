"""From what somebody filled in about a surface to its definition, and back.

A form asks how the outline is given and what the boards are nailed to, and shows more than one way; the
definition holds what was meant and nothing else.
"""

import re
from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Any

from plankwright.measure import Nm
from plankwright.workshop.jobs.definition_types import typed
from plankwright.workshop.jobs.form_words import GABLE, Path, Trouble, lacking
from plankwright.workshop.jobs.measure_surfaces import Table

_USUAL_KIND = "wall"


class OutlineWay(StrEnum):
    """How the outline of a surface is given."""

    PLAIN = "plain"
    HEIGHTS = "heights"
    GABLE = "gable"
    CORNERS = "corners"


class Backing(StrEnum):
    """What the boards are nailed to."""

    STUDS = "studs"
    SOLID = "solid"


_OF_OUTLINE = ("width", "height", "heights", "level", "corners")
_KEPT = {
    OutlineWay.PLAIN: ("width", "height"),
    OutlineWay.HEIGHTS: ("heights", "level"),
    OutlineWay.GABLE: ("corners",),
    OutlineWay.CORNERS: ("corners",),
}
_OF_STUDS = ("spacing", "first_centre", "centres", "width", "runs")
_OF_SOLID = ("thickness",)
_WIDTH, _SIDES, _RIDGE_AT, _RIDGE = (("gable", key) for key in GABLE)
_OF_CORNERS: Mapping[bool, Mapping[Path, Path]] = {
    True: {
        (1, 0): _WIDTH,
        (2, 0): _WIDTH,
        (2, 1): _SIDES,
        (3, 0): _RIDGE_AT,
        (3, 1): _RIDGE,
        (4, 1): _SIDES,
        (): _RIDGE,
    },
    False: {(1, 0): _WIDTH, (2, 0): _RIDGE_AT, (2, 1): _RIDGE, (): _RIDGE},
}
"""Which measure of a gable a number of its corners is, where it has upright sides and where it has none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FilledIn:
    """A surface as far as it is filled in.

    Parameters
    ----------
    table
        As the definition would have it.
    lacks
        What is not filled in yet of what can be given in several ways, so that no single key is missing.
    moved
        For paths in the table, where a form has what stands there.
    gable
        The measures of the gable, where the outline is given as one.
    """

    table: dict[str, Any]
    lacks: tuple[Trouble, ...]
    moved: Mapping[Path, Path] = field(default_factory=dict)
    gable: Mapping[str, str] = field(default_factory=dict)


def filled_in(given: Mapping[str, Any], *, decimal_comma: bool, taken: Collection[str]) -> FilledIn:
    """Give a surface as its definition would have it.

    Parameters
    ----------
    given
        What was filled in: the keys of the definition, and besides them `outline` (an `OutlineWay`), `gable`
        (a table of width, sides, ridge_at and ridge) and `backing` (a `Backing`).
    decimal_comma
        Whether a comma may stand within a number.
    taken
        What the other surfaces are called, so that one without a name gets one of its own.
    """
    table = {key: value for key, value in given.items() if key not in {"outline", "gable", "backing"}}
    table.setdefault("id", free_name(str(table.get("kind") or _USUAL_KIND), taken))
    way = _way(given)
    table = {key: value for key, value in table.items() if key not in _OF_OUTLINE or key in _KEPT[way]}
    moved: Mapping[Path, Path] = {}
    gable: Mapping[str, str] = {}
    if way is OutlineWay.GABLE:
        gable = {key: _text(_table(given, "gable"), key) for key in GABLE}
        table["corners"] = _gable_corners(gable)
        upright = not _nothing(gable["sides"])
        moved = {("corners", *path): to for path, to in _OF_CORNERS[upright].items()}
    framing = _framing(_table(given, "framing"), str(given.get("backing", "")), decimal_comma=decimal_comma)
    if framing or not isinstance(given.get("framing"), str):
        table["framing"] = framing
    lacks = (*_outline_lacks(way, given), *_framing_lacks(framing), *_part_lacks(table))
    return FilledIn(table=typed(table), lacks=lacks, moved=moved, gable=gable)


def as_form(surface: Table, read: Callable[[str], Nm]) -> dict[str, Any]:
    """Give a surface as a form shows it; `filled_in` makes the same surface of it again.

    Parameters
    ----------
    surface
        As it is kept.
    read
        Reads a length of the job. [nm]
    """
    form = dict(surface)
    way = OutlineWay.PLAIN
    if "heights" in surface:
        way = OutlineWay.HEIGHTS
    elif "corners" in surface:
        gable = _as_gable(surface["corners"], read)
        way = OutlineWay.CORNERS if gable is None else OutlineWay.GABLE
        if gable is not None:
            form["gable"] = gable
            del form["corners"]
    framing = dict(surface.get("framing", {}))
    form["outline"] = way.value
    form["backing"] = (Backing.SOLID if framing.pop("solid", False) else Backing.STUDS).value
    if "centres" in framing:
        framing["centres"] = "\n".join(map(str, framing["centres"]))
    form["framing"] = framing
    return form


def free_name(kind: str, taken: Collection[str]) -> str:
    """Name a surface after its kind, with a number where there are several: wall, wall 2."""
    number = 1
    while (name := kind if number == 1 else f"{kind} {number}") in taken:
        number += 1
    return name


def parts_of(text: str, *, decimal_comma: bool) -> list[str]:
    """Part a list of lengths that was written into one field.

    Parameters
    ----------
    text
        Lines, or parted by semicolons; also by commas with a gap behind them, since a comma without one may
        stand within a number.
    decimal_comma
        Whether a comma may be the decimal mark, so that it parts nothing.
    """
    mark = r"[;\n]" if decimal_comma else r"[;\n]|,(?=\s|$)"
    return [part.strip() for part in re.split(mark, text) if part.strip()]


def _way(given: Mapping[str, Any]) -> OutlineWay:
    asked = _text(given, "outline")
    return OutlineWay(asked) if asked in set(OutlineWay) else OutlineWay.PLAIN


def _gable_corners(gable: Mapping[str, str]) -> list[list[str]]:
    """Give the corners of a gable, as far as it is measured: without its ridge it is a rectangle."""
    width, sides, ridge_at, ridge = (gable[key] for key in GABLE)
    if not width or not sides:
        return []
    upright = not _nothing(sides)
    corners = [["0", "0"], [width, "0"], *([[width, sides]] if upright else [])]
    if ridge_at and ridge:
        corners.append([ridge_at, ridge])
    elif not upright:
        return []
    return [*corners, *([["0", sides]] if upright else [])]


def _as_gable(corners: Sequence[Sequence[str]], read: Callable[[str], Nm]) -> dict[str, str] | None:
    """Give the measures of a gable, where corners are those of one."""
    match [(read(x), read(y)) for x, y in corners]:
        case [(0, 0), (width, 0), (right, sides), (at, ridge), (0, other)] if (right, sides) == (
            width,
            other,
        ):
            texts = (corners[1][0], corners[2][1], *corners[3])
        case [(0, 0), (width, 0), (at, ridge)]:
            sides, texts = 0, (corners[1][0], "0", *corners[2])
        case _:
            return None
    if not (0 < at < width and sides < ridge):
        return None
    return dict(zip(GABLE, texts, strict=True))


def _nothing(length: str) -> bool:
    """Whether a length, as written, is zero."""
    return bool(length) and not set(length) & set("123456789")


def _framing(given: Mapping[str, Any], backing: str, *, decimal_comma: bool) -> dict[str, Any]:
    solid = backing == Backing.SOLID
    hidden = _OF_STUDS if solid else _OF_SOLID
    framing = {key: value for key, value in given.items() if key not in {*hidden, "solid"}}
    if solid:
        framing["solid"] = "true"
    elif isinstance(framing.get("centres"), str):
        framing["centres"] = parts_of(framing["centres"], decimal_comma=decimal_comma)
    return framing


def _outline_lacks(way: OutlineWay, given: Mapping[str, Any]) -> Iterator[Trouble]:
    match way:
        case OutlineWay.PLAIN:
            for key in ("width", "height"):
                if not given.get(key):
                    yield lacking((key,), given, f"the {key}")
        case OutlineWay.GABLE:
            gable = _table(given, "gable")
            for key, what in GABLE.items():
                if not gable.get(key):
                    yield lacking(("gable", key), given, f"the {what}")
        case OutlineWay.HEIGHTS if not given.get("heights"):
            yield lacking(("heights", 0, "height"), {}, "the height at both ends")
        case OutlineWay.CORNERS if not given.get("corners"):
            yield Trouble(path=("corners", 0, 0), sentence="The corners are not filled in yet.", lacking=True)


def _framing_lacks(framing: Mapping[str, Any]) -> Iterator[Trouble]:
    if framing.get("solid"):
        return
    first, spacing = framing.get("first_centre"), framing.get("spacing")
    if not first and not spacing and not framing.get("centres"):
        yield Trouble(
            path=("framing", "first_centre"),
            sentence="What the nails go into is not filled in yet: where the studs are, or solid backing.",
            lacking=True,
        )
    elif spacing and not first:
        yield lacking(("framing", "first_centre"), {}, "“First centre”")
    elif first and not spacing:
        yield lacking(("framing", "spacing"), {}, "“Then every”")


def _part_lacks(table: Mapping[str, Any]) -> Iterator[Trouble]:
    for number, cut_out in _entries(table, "cut_out"):
        if "centre" not in cut_out:
            yield from _place_lacks(("cut_out", number), table, cut_out, ("left", "bottom"))
    for number, keep_out in _entries(table, "keep_out"):
        if not keep_out.get("vertical") and not keep_out.get("horizontal"):
            yield from _place_lacks(("keep_out", number), table, keep_out, ("left", "bottom", "height"))
        if not keep_out.get("width"):
            yield lacking(("keep_out", number, "width"), table, "its width")


def _place_lacks(
    path: Path, table: Mapping[str, Any], entry: Mapping[str, Any], keys: Sequence[str]
) -> Iterator[Trouble]:
    missing = [key for key in keys if not entry.get(key)]
    if len(missing) == len(keys):
        yield lacking(path, table, "its place")
    else:
        yield from (lacking((*path, key), table, f"its {key}") for key in missing)


def _entries(table: Mapping[str, Any], key: str) -> Iterator[tuple[int, Mapping[str, Any]]]:
    entries = table.get(key)
    for number, entry in enumerate(entries if isinstance(entries, list) else ()):
        if isinstance(entry, dict):
            yield number, entry


def _table(given: Mapping[str, Any], key: str) -> Mapping[str, Any]:
    value = given.get(key)
    return value if isinstance(value, dict) else {}


def _text(table: Mapping[str, Any], key: str) -> str:
    value = table.get(key)
    return value if isinstance(value, str) else ""
