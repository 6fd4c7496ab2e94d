"""JSON as text, and what every command may have to say in it; light, because the way in needs it too."""

import json
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import TypeAlias

from plankwright.errors import Problem

Json: TypeAlias = "Mapping[str, Json] | Sequence[Json] | str | int | float | bool | None"


def write_json(document: Json) -> str:
    """Write a document for the eye as well as for a script."""
    return json.dumps(document, indent=2, ensure_ascii=False)


def problems_as_json(problems: Iterable[Problem]) -> list[Json]:
    """Give problems or remarks of input files."""
    return [
        {"file": found.file, "line": found.line, "place": found.place, "what": found.what}
        for found in problems
    ]


def files_as_json(files: Iterable[Path]) -> list[Json]:
    """Give the files that were written."""
    return [str(file) for file in files]
