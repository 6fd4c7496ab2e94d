"""The sound part of a document that has problems, so that the rest of it can be judged in the same go."""

from typing import Any, TypeAlias

from plankwright.files.report import Where

Raw: TypeAlias = dict[str, Any]
"""A document as parsed, before anything is known of it."""


class SoundPart:
    """A document without the parts that were refused.

    Parameters
    ----------
    raw
        The document as parsed; it is left as it is.
    """

    def __init__(self, raw: Raw) -> None:
        self._raw = raw
        self._refused: set[Where] = set()
        self._kept: dict[Where, list[int]] = {}

    def leave_out(self, where: Where) -> None:
        """Leave out the part at a path, which is one in the whole document."""
        self._refused.add(where)

    def build(self) -> Raw:
        """Give the document without the parts left out."""
        self._kept = {}
        return {
            key: self._built(value, (key,)) for key, value in self._raw.items() if (key,) not in self._refused
        }

    def original(self, where: Where) -> Where:
        """Turn a path in what `build` gave into the one in the whole document."""
        path: Where = ()
        for part in where:
            kept = self._kept.get(path)
            path = (*path, kept[part] if kept and isinstance(part, int) and part < len(kept) else part)
        return path

    def _built(self, value: Any, where: Where) -> Any:  # noqa: ANN401 - whatever the parser gave
        if isinstance(value, dict):
            return {
                key: self._built(inner, (*where, key))
                for key, inner in value.items()
                if (*where, key) not in self._refused
            }
        if isinstance(value, list):
            self._kept[where] = [
                number for number in range(len(value)) if (*where, number) not in self._refused
            ]
            return [self._built(value[number], (*where, number)) for number in self._kept[where]]
        return value
