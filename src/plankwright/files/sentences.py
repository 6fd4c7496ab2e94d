"""What a document refuses, as sentences that say how to mend it."""

import difflib
from collections.abc import Iterable
from typing import Any, get_args

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from plankwright.files.document import Document
from plankwright.files.report import Report, Where

_EXAMPLES = {
    "units": '"inches", "feet", "mm", "cm" or "m"',
    "name": '"back bedroom"',
    "id": '"entry-wall"',
    "surface": "a table that begins with [[surface]]",
    "framing": "a table [surface.framing] with spacing and first_centre, or centres, or solid = true",
    "cuts": '"crosscut" or "rip"',
    **dict.fromkeys(("width", "height", "left", "bottom", "at", "capacity"), '"2 ft 6"'),
    "temperature": '"68 F"',
    "humidity": "35",
    **dict.fromkeys(("dry", "damp"), '{ temperature = "68 F", humidity = 35 }'),
    "minutes": "6",
    "cost": "4.50",
    "per": '"board foot"',
    "thickness": '"1/2"',
    "what": '"wallboard"',
    "format": '"plankwright layout"',
}
_PAIRS = {"moisture": ("readings", "[8, 12]")}
"""Lists of two that are no lengths: what they hold, and how they are written."""

_LONGEST_QUOTE = 40


def tell(error: ValidationError, document: type[Document], report: Report, *, toml: bool = False) -> None:
    """Note every error of a document as a problem.

    Parameters
    ----------
    error
        What pydantic found.
    document
        The definition that was not met, to suggest its keys.
    report
        Where the problems go.
    toml
        Whether the file is TOML, which writes lists of tables in its own way.
    """
    for detail in error.errors(include_url=False):
        report.refuse(*_told(detail, document, toml=toml))


def nearest(wanted: str, known: Iterable[str]) -> str:
    """Suggest the nearest known word: " (did you mean width?)", or nothing.

    Parameters
    ----------
    wanted
        The word that was met.
    known
        The words that there are.
    """
    by_lower = {word.lower(): word for word in known}
    close = difflib.get_close_matches(wanted.lower(), by_lower, n=1, cutoff=0.6)
    return f" (did you mean {by_lower[close[0]]}?)" if close else ""


def listed(words: Iterable[str]) -> str:
    """Join words as in a sentence: "a, b or c"."""
    *most, last = words
    return f"{', '.join(most)} or {last}" if most else last


def quoted(value: object) -> str:
    """Quote what somebody wrote, cut short where it is long."""
    text = "".join(mark if mark.isprintable() else "�" for mark in str(value)[: _LONGEST_QUOTE + 1])
    return f"“{text[:_LONGEST_QUOTE]}{'…' if len(text) > _LONGEST_QUOTE else ''}”"


def _told(detail: ErrorDetails, document: type[Document], *, toml: bool) -> tuple[Where, str]:  # noqa: PLR0911 - one for each sort
    where: Where = detail["loc"]
    given, told = detail["input"], detail.get("ctx", {})
    name = _name(where)
    match detail["type"]:
        case "refused":
            where = (*where, *told["field"])
            return where, f"{_name(where)} {told['sentence']}"
        case "missing" if isinstance(where[-1], int):
            things, like = _pair(where[:-1])
            return where[:-1], f"{_name(where[:-1])} needs two {things}, like {like}"
        case "missing":
            return where, f"{name} is missing: add {_example(name, toml=toml)}"
        case "extra_forbidden":
            keys = _keys_at(document, where[:-1])
            hint = nearest(name, keys) or f": the keys here are {', '.join(keys)}"
            return where, f"{name} is not a key that is known here{hint}"
        case "enum":
            words = str(told["expected"]).replace(" or ", ", ").replace("'", "").split(", ")
            return where, f"{name} is {quoted(given)} but must be {listed(words)}{nearest(str(given), words)}"
        case "too_long" if told.get("field_type") == "Tuple":
            things, like = _pair(where)
            return where, f"{name} has more than two {things}: write it like {like}"
        case "tuple_type" if toml and isinstance(given, dict):
            table = ".".join(part for part in where if isinstance(part, str))
            return (
                where,
                f"{name} must be written with double brackets, [[{table}]], since there can be several",
            )
        case sort:
            return where, f"{name} {_PLAIN.get(sort, 'cannot be used').format(**told)}"


_PLAIN = {
    "string_type": "must be text in quotes",
    "string_too_long": "is too long: at most {max_length} characters",
    "bool_type": "must be true or false, without quotes",
    "int_type": "must be a whole number, without quotes",
    "greater_than_equal": "must be {ge} or more",
    "less_than_equal": "must be {le} or less",
    "tuple_type": "must be a list in square brackets",
    "model_type": "must be a table of keys and values",
    "literal_error": "must be {expected}",
}


def _example(name: str, *, toml: bool) -> str:
    example = _EXAMPLES.get(name, "it")
    if name not in _EXAMPLES or name in {"surface", "framing"}:
        return example
    return f"{name} = {example}" if toml else f'"{name}": {example}'


def _name(where: Where) -> str:
    """Name the last part of a path that has a name, with its number where it is one of several."""
    names = [position for position, part in enumerate(where) if isinstance(part, str)]
    if not names:
        return "the file"
    name, *numbers = where[names[-1] :]
    return f"{name} {int(numbers[0]) + 1}" if numbers else str(name)


def _pair(where: Where) -> tuple[str, str]:
    """Say what the list of two at a path holds, and how it is written."""
    key = next((part for part in reversed(where) if isinstance(part, str)), "")
    return _PAIRS.get(key, ("lengths", "[x, y]"))


def _keys_at(document: type[Document], where: Where) -> list[str]:
    """List the keys that the table at a path may have."""
    table: type[BaseModel] = document
    for part in where:
        if isinstance(part, str):
            table = _table_in(_fields(table)[part]) or table
    return list(_fields(table))


def _fields(table: type[BaseModel]) -> dict[str, Any]:
    return {field.alias or name: field.annotation for name, field in table.model_fields.items()}


def _table_in(annotation: Any) -> type[BaseModel] | None:  # noqa: ANN401 - an annotation can be anything
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    return next((table for inner in get_args(annotation) if (table := _table_in(inner))), None)
