"""What is wrong with what was filled in, in words for whoever did: no keys of a file, no brackets."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any, TypeAlias

from plankwright.errors import BadInputError, Problem
from plankwright.workshop.wording import capital

Path: TypeAlias = tuple[str | int, ...]
"""Keys and numbers of entries, from the table that was filled in on."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Trouble:
    """Something that is wrong with what was filled in, or not there yet.

    Parameters
    ----------
    path
        Where.
    sentence
        What is wrong and how to mend it.
    lacking
        Whether something is only not filled in yet.
    """

    path: Path
    sentence: str
    lacking: bool = False


def troubles_of(
    problems: Iterable[Problem], table: Mapping[str, Any], below: Path = ()
) -> tuple[Trouble, ...]:
    """Turn problems of a definition into words for whoever filled in a form.

    Parameters
    ----------
    problems
        Of the whole definition.
    table
        What was filled in.
    below
        Where it stands in the definition; problems of other parts are told as they are, without a path.
    """
    return tuple(_trouble(problem, table, below) for problem in problems)


def lacking(path: Path, table: Mapping[str, Any], what: str) -> Trouble:
    """Give what is told of something that is not filled in yet.

    Parameters
    ----------
    path
        Where.
    table
        What was filled in, for the name of what it belongs to.
    what
        What is missing, such as "the width".
    """
    sentence = _placed(path, table, f"{what} is not filled in yet")
    return Trouble(path=path, sentence=sentence, lacking=True)


def refusal_of(troubles: Iterable[Trouble]) -> BadInputError:
    """Give the error that carries what is wrong with a form, each with its path within the form."""
    return BadInputError(
        Problem(file="", place="", what=trouble.sentence, path=trouble.path) for trouble in troubles
    )


def label_of(path: Path) -> str:
    """Name the last key of a path, as a form labels it."""
    key = next((part for part in reversed(path) if isinstance(part, str)), "")
    return _LABELS.get(key, key.replace("_", " "))


def _trouble(problem: Problem, table: Mapping[str, Any], below: Path) -> Trouble:
    if problem.path[: len(below)] != below:
        return Trouble(path=(), sentence=_sentence(f"{problem.place}: {problem.what}".removeprefix(": ")))
    path = problem.path[len(below) :]
    if _MISSING.match(problem.what):
        return lacking(path, table, f"the {label_of(path)}")
    said = problem.what
    for pattern, better in _BETTER:
        said = pattern.sub(better, said)
    return Trouble(path=path, sentence=_placed(path, table, said))


_MISSING = re.compile(r"\w+(?: \d+)? is missing: add ")

_LABELS = {
    "id": "name",
    "at": "place along the surface",
    "what": "word for what it is",
    "cuts": "way that it cuts",
    "per": "word for what it is counted by",
    "depth_unknown": "depth where nobody looked inside",
    "depth_opened": "depth where it was opened",
    "opened": "mark whether it was opened",
    "built": "year",
    **dict.fromkeys(("dry", "damp"), "temperature"),
    "capacity": "widest that it cuts",
    "crosscut_kerf": "kerf across",
    "rip_kerf": "kerf along",
}

_RULES = {"crosscut_kerf": "kerf across", "rip_kerf": "kerf along"}
"""Rules that a form calls otherwise than a file does."""

_KEYS = (
    *("first_centre", "cut_out", "keep_out", "crosscut_kerf", "rip_kerf", "straight_edge_loss", "end_trim"),
    *("width_tolerance", "thickness_tolerance", "gap_tolerance", "shortest_piece", "narrowest_course"),
    *(
        "expansion_gap",
        "shim_up_to",
        "hold_back",
        "nailing_points",
        "nail_edge",
        "nail_end",
        "nail_clearance",
    ),
    *("millimetre_step", "decimal_comma", "depth_unknown", "depth_opened"),
)

_BETTER = (
    # What a file would have to say, and a form does not.
    (re.compile(r", without quotes| in quotes$"), ""),
    (re.compile(r" and write solid = true"), ""),
    (re.compile(r": begin with at = 0 and end"), ": begin with 0 and end"),
    (re.compile(r"each `at` lies"), "each place lies"),
    (re.compile(r"^\w+(?: \d+)? needs two (\w+), like .*"), r"both \1 are needed"),
    (re.compile(r"write it like \[8, 12\]"), "write 8 and 12"),
    (re.compile(r"leave it out, or say solid = true"), "leave it out"),
    (re.compile(r"^linked does not fit: "), ""),
    # Names that something without a name goes by.
    (re.compile(r"\b(opening|cut-out|keep-out|concealed)-(\d+)\b"), r"\1 \2"),
    (re.compile(r"\bcut-out (?=.)"), "socket or pipe "),
    (re.compile(r"\bkeep-out (?=.)"), "no-nail place "),
    (re.compile(r"^first_centre\b"), "“First centre”"),
    (re.compile(r"^spacing (?=“)"), "“Then every”: "),
    (re.compile(r"^framing runs horizontal like"), "what the nails go into runs level like"),
    (re.compile(r"^framing runs vertical like"), "what the nails go into runs upright like"),
    (re.compile(r"^centres has "), "“Centres as measured” has "),
    (re.compile(r"\bconcealed zone (?=concealed )"), ""),
    (re.compile(r"\bconcealed(?: zone)? "), "fixture "),
    (re.compile(r"^(?:corners|heights|between|moisture) \d+ "), ""),
    (re.compile(r"^centres (\d+)"), r"centre \1"),
    (re.compile(r"^id (?=.* is used)"), "the name "),
    (re.compile(r"give each its own id\b"), "give each a name of its own"),
    (re.compile(rf"\b({'|'.join(_KEYS)})\b"), lambda found: _RULES.get(found[0], found[0].replace("_", " "))),
)

_ENTRIES = {
    "opening": "opening",
    "cut_out": "socket or pipe",
    "concealed": "fixture",
    "keep_out": "no-nail place",
    "heights": "height",
    "corners": "corner",
    "between": "layer",
    "saw": "saw",
    "lot": "lot",
    "task": "task",
    "price": "price",
}
_GROUPS = {"framing": "what the nails go into", "trim": "trim", "nails": "nails", "house": "house"}
GABLE = {
    "width": "width",
    "sides": "height of the sides",
    "ridge_at": "place of the ridge",
    "ridge": "height of the ridge",
}
"""What the measures of a gable are called."""

_LABELLED = ("“First centre”", "“Then every”", "“Centres as measured”")
"""Labels that no two fields of a form have."""

_SEASONS = {"dry": "air in the dry season", "damp": "air in the damp season", "now": "air as it is now"}


def part_of(path: Path, table: Mapping[str, Any]) -> str:
    """Say in words which part of a form a path leads to, such as "opening 2"; empty for the form itself."""
    match path:
        case (str(key), int(number), *_) if key in _ENTRIES:
            return f"{_ENTRIES[key]} {_called(table.get(key), number)}"
        case ("room", str(season), *_):
            return _SEASONS.get(season, "air")
        case ("gable", str(measure)):
            return GABLE[measure]
        case (str(group), *_) if group in _GROUPS:
            return _GROUPS[group]
    return ""


def _called(entries: object, number: int) -> str:
    entry = entries[number] if isinstance(entries, list) and number < len(entries) else None
    name = (entry.get("id") or entry.get("name") or entry.get("what")) if isinstance(entry, dict) else None
    return name if isinstance(name, str) else str(number + 1)


def _placed(path: Path, table: Mapping[str, Any], said: str) -> str:
    part = part_of(path, table)
    names_it = not part or said.removeprefix("the ").startswith((part.split()[0], *_LABELLED))
    return _sentence(said if names_it else f"{part}: {said}")


def _sentence(said: str) -> str:
    """Begin with a capital letter and end with a full stop."""
    said = capital(said.strip())
    return said if said.endswith((".", "!", "?", "”")) else f"{said}."
