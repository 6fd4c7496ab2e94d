"""One tree of errors, each with the exit code that the command leaves behind.

Exit codes, for every command:

==== ==============================================================================
code meaning
==== ==============================================================================
0    done, and there is enough
1    not enough wood, or findings were reported: a result, not an error
2    bad input: every problem of it is told, each with place and mend
3    file trouble: a file is missing, cannot be read or cannot be written
70   our fault: the program contradicts itself
130  stopped by the user
==== ==============================================================================

What can be wrong with a job or a tally is a `Problem`, and all problems of an input travel together in one
`BadInputError`. Too little wood and too little time are results of a search and never errors.
"""

from collections.abc import Iterable
from dataclasses import dataclass, field
from enum import IntEnum
from typing import ClassVar


class ExitCode(IntEnum):
    """What a command leaves behind for the shell; the module's table says what each code means."""

    DONE = 0
    NOT_ENOUGH = 1
    BAD_INPUT = 2
    FILE_TROUBLE = 3
    OUR_FAULT = 70
    STOPPED = 130


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """One thing that is wrong with an input, where it is, and how to mend it.

    Parameters
    ----------
    file
        Name of the file as the user knows it.
    place
        Where in the file: "line 14", or "surface entry-wall, opening door"; empty for the file as a whole.
    what
        One clear sentence that says what is wrong and how to mend it.
    line
        Line number where there is one, counted from 1.
    path
        The same place as keys and numbers of entries, such as ("surface", 0, "opening", 1, "width"), for a
        face that shows the problem where it was filled in.
    """

    file: str
    place: str
    what: str
    line: int | None = None
    path: tuple[str | int, ...] = field(default=(), compare=False, repr=False)

    def __str__(self) -> str:
        """Give the problem on one line: "tally.csv, line 14: the width is missing"."""
        where = f"{self.file}, {self.place}" if self.place else self.file
        return f"{where}: {self.what}"


class PlankwrightError(Exception):
    """Base of every error that the program raises on purpose.

    Parameters
    ----------
    message
        One sentence for the user; without it, the class's own default.
    """

    exit_code: ClassVar[int] = ExitCode.OUR_FAULT
    default_message: ClassVar[str] = "Something went wrong inside the program; this is our fault, not yours."

    def __init__(self, message: str | None = None) -> None:
        super().__init__(self.default_message if message is None else message)


class BadInputError(PlankwrightError, ValueError):
    """An input cannot be used; it carries every problem found in it, and reads as one line a problem.

    Parameters
    ----------
    problems
        Everything that is wrong, in the order of the file; at least one.

    Raises
    ------
    ValueError
        If there is no problem to tell.
    """

    exit_code: ClassVar[int] = ExitCode.BAD_INPUT
    default_message: ClassVar[str] = "The input cannot be used."

    def __init__(self, problems: Iterable[Problem]) -> None:
        self.problems: tuple[Problem, ...] = tuple(problems)
        if not self.problems:
            msg = "a BadInputError needs at least one problem"
            raise ValueError(msg)
        super().__init__("\n".join(map(str, self.problems)))

    def __reduce__(self) -> tuple[type["BadInputError"], tuple[tuple[Problem, ...]]]:
        """Rebuild from the problems, not from the message, when the error comes from another process."""
        return type(self), (self.problems,)


class LayoutRefusedError(PlankwrightError):
    """Our own checker refused a layout of our own; nothing of it is handed out.

    Parameters
    ----------
    findings
        What the checker found, a sentence each.
    """

    exit_code: ClassVar[int] = ExitCode.OUR_FAULT
    default_message: ClassVar[str] = (
        "The layout that was found breaks a rule, so it is not handed out; this is our fault, not yours."
    )

    def __init__(self, findings: Iterable[str]) -> None:
        self.findings: tuple[str, ...] = tuple(findings)
        super().__init__("\n".join((self.default_message, *self.findings)))

    def __reduce__(self) -> tuple[type["LayoutRefusedError"], tuple[tuple[str, ...]]]:
        """Rebuild from the findings, not from the message, when the error comes from another process."""
        return type(self), (self.findings,)


class FileTroubleError(PlankwrightError):
    """A file is missing, cannot be read or cannot be written.

    It is no `OSError` on purpose: the system's own error stays chained behind it, and the message is one
    sentence that names the file and says what to do.
    """

    exit_code: ClassVar[int] = ExitCode.FILE_TROUBLE
    default_message: ClassVar[str] = "A file is missing, cannot be read or cannot be written."
