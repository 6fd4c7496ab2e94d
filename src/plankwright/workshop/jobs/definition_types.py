"""From the text of a form to the types of a definition: what is true or false, and what is counted."""

from typing import Any

_FLAGS = frozenset({"solid", "opened", "decimal_comma"})
_COUNTS = frozenset({"built", "hold_back", "nailing_points"})
_MOST_DIGITS = 9


def typed(table: Any) -> Any:  # noqa: ANN401 - tables, lists and text
    """Give what was filled in with the types that a definition wants.

    Parameters
    ----------
    table
        Tables and lists of text, with the keys of the definition.

    Returns
    -------
    Any
        The same; text that is of no such type is left as it is, for whoever reads definitions to refuse.
    """
    if isinstance(table, dict):
        return {key: _value(key, value) for key, value in table.items()}
    if isinstance(table, list):
        return [typed(entry) for entry in table]
    return table


def _value(key: str, value: Any) -> Any:  # noqa: ANN401 - tables, lists and text
    if not isinstance(value, str):
        return typed(value)
    if key in _FLAGS and value in {"true", "false"}:
        return value == "true"
    if key in _COUNTS and value.isascii() and value.isdigit() and len(value) <= _MOST_DIGITS:
        return int(value)
    return value
