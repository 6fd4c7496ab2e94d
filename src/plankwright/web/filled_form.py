"""A form as it is shown: what was filled in, how many rows it has, and what is wrong with which field."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace

Path = tuple[str | int, ...]
"""Keys and numbers of entries in what `forms.nested` gives."""

_MOST_DIGITS = 6


@dataclass(frozen=True, slots=True)
class FilledForm:
    """What a form shows.

    Parameters
    ----------
    given
        What is filled in, by the names of the fields.
    wrong
        What is wrong with fields, by their names.
    problems
        Everything that is wrong, each with the field to mend, which is empty where there is none.
    focus
        The field to go on with.
    """

    given: Mapping[str, str] = field(default_factory=dict)
    wrong: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    problems: tuple[tuple[str, str], ...] = ()
    focus: str = ""

    def value(self, name: str, otherwise: str = "") -> str:
        """Give what is filled in."""
        return self.given.get(name, otherwise)

    def has(self, name: str) -> bool:
        """Whether there is such a field, filled in or not."""
        return name in self.given

    def any(self, *beginnings: str) -> bool:
        """Whether anything in fields whose names begin so is filled in or wrong, or comes next."""
        names = [name for name, text in self.given.items() if text.strip()]
        return any(name.startswith(beginnings) for name in (*names, *self.wrong, self.focus))

    def rows(self, key: str, least: int = 0) -> list[str]:
        """Give the beginnings of the names of each row, such as "opening.0"."""
        numbers = _numbers(self.given, key)
        while len(numbers) < least:
            numbers.append(max(numbers, default=-1) + 1)
        return [f"{key}.{number}" for number in numbers]

    def with_row(self, key: str, first: str) -> "FilledForm":
        """Give the form with one row more.

        Parameters
        ----------
        key
            Of the list that the row is one of.
        first
            The first field of the row, without the number.
        """
        name = f"{key}.{max(_numbers(self.given, key), default=-1) + 1}.{first}"
        return replace(self, given={**self.given, name: ""}, focus=name)

    def filled(self, name: str, text: str) -> "FilledForm":
        """Give the form with a field filled in."""
        return replace(self, given={**self.given, name: text})

    def without_row(self, row: str) -> "FilledForm":
        """Give the form without a row, whose names begin so."""
        kept = {name: text for name, text in self.given.items() if not name.startswith(f"{row}.")}
        return replace(self, given=kept)

    def troubled(self, problems: Iterable[tuple[Path, str]]) -> "FilledForm":
        """Give the form with what is wrong, where and in a sentence, in the order of its fields."""
        order = {name: place for place, name in enumerate(self.given)}
        told = [(sentence, name_at(self.given, path)) for path, sentence in problems]
        told.sort(key=lambda one: order.get(one[1], -1))
        wrong: dict[str, tuple[str, ...]] = {}
        for sentence, name in told:
            if name:
                wrong[name] = (*wrong.get(name, ()), sentence)
        return replace(self, wrong=wrong, problems=tuple(told))


def name_at(given: Mapping[str, str], path: Path) -> str:
    """Give the name of the field that a path of what `forms.nested` gave leads to.

    Parameters
    ----------
    given
        What was filled in, by the names of the fields.
    path
        Its numbers count entries of which something is filled in.

    Returns
    -------
    str
        The field itself, or the first one below it or below what it stands in; empty when there is none.
    """
    filled = {name: text for name, text in given.items() if text.strip()}
    names = [""]
    for part in path:
        before = names[-1]
        if isinstance(part, int):
            numbers = _numbers(filled, before)
            if part >= len(numbers):
                break
            part = str(numbers[part])  # noqa: PLW2901 - the number that the form has for it
        names.append(f"{before}.{part}" if before else part)
    for name in reversed(names[1:]):
        if name in given:
            return name
        for below in given:
            if below.startswith(f"{name}."):
                return below
    return ""


def _numbers(given: Mapping[str, str], key: str) -> list[int]:
    """Give the numbers of the rows of a list."""
    begins = f"{key}."
    parts = (name.removeprefix(begins).partition(".")[0] for name in given if name.startswith(begins))
    known = {int(part) for part in parts if part.isascii() and part.isdigit() and len(part) <= _MOST_DIGITS}
    return sorted(known)
