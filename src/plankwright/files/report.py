"""What is found while one file is read: its problems and its remarks, each with its place."""

from collections.abc import Callable
from typing import TypeAlias

from plankwright.errors import Problem

Where: TypeAlias = tuple[str | int, ...]
"""A path into a document, such as ("surface", 0, "opening", 1, "width"); in a tally, the line alone."""

Locate: TypeAlias = Callable[[Where], tuple[str, int | None]]
"""Gives the place in words, and the line where there is one."""


class Report:
    """Gathers everything that is to be told about one file.

    Parameters
    ----------
    file
        Name of the file as the user knows it.
    locate
        Turns a path into a place.
    original
        Turns a path into the one in what was given, where only a part of that is judged.
    """

    def __init__(
        self, file: str, locate: Locate, original: Callable[[Where], Where] = lambda where: where
    ) -> None:
        self.file = file
        self._locate = locate
        self._original = original
        self._problems: list[Problem] = []
        self._remarks: list[Problem] = []

    def refuse(self, where: Where, sentence: str) -> None:
        """Note a problem: the file cannot be used as it is."""
        self._problems.append(self._placed(where, sentence))

    def remark(self, where: Where, sentence: str) -> None:
        """Note something doubtful: the file can be used, but somebody should look."""
        self._remarks.append(self._placed(where, sentence))

    def place(self, where: Where) -> str:
        """Give a place in words."""
        return self._locate(where)[0]

    @property
    def problems(self) -> tuple[Problem, ...]:
        """The problems, in the order of the file, none told twice."""
        return _in_order(self._problems)

    @property
    def remarks(self) -> tuple[Problem, ...]:
        """The remarks, in the order of the file, none told twice."""
        return _in_order(self._remarks)

    def _placed(self, where: Where, sentence: str) -> Problem:
        place, line = self._locate(where)
        return Problem(file=self.file, place=place, what=sentence, line=line, path=self._original(where))


def whole_file(_where: Where) -> tuple[str, None]:
    """Place everything at the file as a whole."""
    return "", None


def _in_order(found: list[Problem]) -> tuple[Problem, ...]:
    return tuple(sorted(dict.fromkeys(found), key=lambda problem: problem.line or 0))
