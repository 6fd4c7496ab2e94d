"""JSON of our own: read whole or refused with every problem, and always written as the same text."""

import json
from pathlib import Path
from typing import Any, NoReturn, TypeVar

from pydantic import ValidationError

from plankwright.errors import BadInputError
from plankwright.files.disk import read_bytes
from plankwright.files.document import Document
from plankwright.files.job_document import Units
from plankwright.files.notation import Notation
from plankwright.files.report import Report, Where
from plankwright.files.sentences import tell

_WIDTH = 110

Definition = TypeVar("Definition", bound=Document)


def document_in(file: Path, definition: type[Definition]) -> Definition:
    """Read a file that holds a document.

    Parameters
    ----------
    file
        The file.
    definition
        What the document is to be.

    Returns
    -------
    Definition
        The document.

    Raises
    ------
    BadInputError
        With every problem of the file.
    FileTroubleError
        If it is missing or cannot be read.
    """
    try:
        text = read_bytes(file).decode("utf-8-sig")
    except UnicodeDecodeError:
        report = Report(file.name, _place)
        report.refuse((), "the file is not UTF-8 text: save it as JSON in UTF-8")
        raise BadInputError(report.problems) from None
    return document_from(text, file.name, definition)


def document_from(text: str, file: str, definition: type[Definition]) -> Definition:
    """Read a document from text.

    Parameters
    ----------
    text
        The JSON.
    file
        Name of the file as the user knows it.
    definition
        What the document is to be.

    Returns
    -------
    Definition
        The document.

    Raises
    ------
    BadInputError
        With every problem of the text.
    """
    report = Report(file, _place)
    try:
        raw = json.loads(text, object_pairs_hook=_each_key_once, parse_constant=_no_number)
        return definition.model_validate(raw, context=_notation(raw))
    except ValidationError as trouble:
        tell(trouble, definition, report)
    except json.JSONDecodeError as trouble:
        report.refuse((trouble.lineno,), f"cannot be read as JSON from here on: {trouble.msg.lower()}")
    except RecursionError:
        report.refuse((), "brackets are nested too deeply to be read")
    except ValueError as trouble:
        report.refuse((), f"cannot be read as JSON: {trouble}")
    raise BadInputError(report.problems)


def laid_out(value: object) -> str:
    """Write a value as text that ends with a line end, an entry a line where it does not fit on one."""
    return _laid_out(value) + "\n"


def _place(where: Where) -> tuple[str, int | None]:
    """Write a path as JSON tools do; a number alone is a line."""
    if where and isinstance(where[0], int):
        return f"line {where[0]}", where[0]
    return "".join(f"[{part}]" if isinstance(part, int) else f".{part}" for part in where).removeprefix(
        "."
    ), None


def _each_key_once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    given = dict(pairs)
    if len(given) < len(pairs):
        keys = [key for key, _ in pairs]
        twice = next(key for key in keys if keys.count(key) > 1)
        raise ValueError(f"the key {twice} stands twice in one object")
    return given


def _no_number(text: str) -> NoReturn:
    raise ValueError(f"{text} is not a number")


def _notation(raw: object) -> Notation:
    written = raw.get("units") if isinstance(raw, dict) else None
    return Notation(unit=next((units.unit for units in Units if units.value == written), None))


def _laid_out(value: object, indent: int = 0) -> str:
    """Write a value on one line where it fits, else an entry a line."""
    line = json.dumps(value, ensure_ascii=False)
    if not isinstance(value, dict | list) or len(line) + indent <= _WIDTH:
        return line
    step = indent + 2
    if isinstance(value, dict):
        entries = [f"{json.dumps(key)}: {_laid_out(inner, step)}" for key, inner in value.items()]
    else:
        entries = [_laid_out(inner, step) for inner in value]
    begin, end = "{}" if isinstance(value, dict) else "[]"
    lines = ",\n".join(" " * step + entry for entry in entries)
    return f"{begin}\n{lines}\n{' ' * indent}{end}"
