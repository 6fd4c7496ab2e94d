"""What a form says: fields with dotted names become tables and lists, and empty ones are left out."""

from collections.abc import Iterable, Mapping
from typing import Any

_LONGEST = 10_000
"""No field of ours holds more. [characters]"""

_LONGEST_NAME = 200
"""No name of a field of ours is longer; names of others are passed over. [characters]"""

_MOST_ENTRIES = 2_000


def nested(fields: Iterable[tuple[str, str]]) -> dict[str, Any]:
    """Give fields as tables and lists.

    Parameters
    ----------
    fields
        Such as ("opening.0.left", "2 ft"). A part that is a number counts entries of a list; entries of
        which nothing is filled in are left out.

    Returns
    -------
    dict
        Such as {"opening": [{"left": "2 ft"}]}.
    """
    tree: dict[str, Any] = {}
    for name, text in list(fields)[:_MOST_ENTRIES]:
        plain = text.strip()[:_LONGEST]
        if not plain or len(name) > _LONGEST_NAME:
            continue
        at = tree
        *path, last = name.split(".")
        for part in path:
            inner = at.setdefault(part, {})
            if not isinstance(inner, dict):
                break
            at = inner
        else:
            if not isinstance(at.get(last), dict):
                at[last] = plain
    return {key: _lists(value) for key, value in tree.items()}


def flat(tables: Mapping[str, Any], prefix: str = "") -> dict[str, str]:
    """Give tables and lists as the fields of a form, the other way round."""
    fields: dict[str, str] = {}
    for key, value in tables.items():
        name = f"{prefix}{key}"
        if isinstance(value, Mapping):
            fields |= flat(value, f"{name}.")
        elif isinstance(value, list | tuple):
            fields |= flat({str(place): entry for place, entry in enumerate(value)}, f"{name}.")
        elif value is not None:
            fields[name] = ("true" if value else "") if isinstance(value, bool) else str(value)
    return fields


def _lists(value: Any) -> Any:  # noqa: ANN401 - text or a table
    """Turn tables whose keys are all numbers into lists, in order of the numbers."""
    if not isinstance(value, dict):
        return value
    inner = {key: _lists(entry) for key, entry in value.items()}
    if inner and all(key.isascii() and key.isdigit() for key in inner):
        return [inner[key] for key in sorted(inner, key=int)]
    return inner
