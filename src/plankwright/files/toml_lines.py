"""On which line of a TOML text each key and each entry of an array stands.

The TOML parser of the standard library gives values without their places, and a problem without its line is
no help in a file of two hundred lines. So the text is gone through a second time, for places alone: it has
been parsed before, so it is known to be TOML, and nothing is judged here.
"""

import re
import tomllib
from collections.abc import Iterator

from plankwright.files.report import Where

_STRING = (
    r'"""(?:\\.|[^\\])*?"""(?:"{0,2})'  # over several lines; up to two more quotes belong to the text
    r"|'''.*?'''(?:'{0,2})"
    r'|"(?:\\.|[^"\\\n])*"'
    r"|'[^'\n]*'"
)
_QUIET = re.compile(r"(?:[\s]|\#[^\n]*)*")
_TEXT = re.compile(_STRING, re.DOTALL)
_KEY_PART = re.compile(r"""[A-Za-z0-9_-]+|"(?:\\.|[^"\\\n])*"|'[^'\n]*'""")
_BARE_VALUE = re.compile(r"[^,\]}#\n]*")
_GAP = re.compile(r"[ \t]*")


def lines_of(text: str) -> dict[Where, int]:
    """Tell on which line each part of a TOML text begins.

    Parameters
    ----------
    text
        Text that is known to be TOML.

    Returns
    -------
    dict
        Line number, from 1, by path. Entries of arrays are numbered from 0.
    """
    scan = _Scan(text.replace("\r\n", "\n"))
    scan.document()
    return scan.lines


def nearest_line(lines: dict[Where, int], where: Where) -> int | None:
    """Give the line of a path, or that of the nearest thing around it that has one."""
    while where:
        if where in lines:
            return lines[where]
        where = where[:-1]
    return None


class _Scan:
    """One walk through the text; `at` is how far it has come."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 0
        self.counted_to = 0
        self.line = 1
        self.lines: dict[Where, int] = {}
        self.entries: dict[Where, int] = {}  # how many entries each array of tables has so far

    def document(self) -> None:
        table: Where = ()
        self.skip(_QUIET)
        while self.at < len(self.text):
            if self.text.startswith("[", self.at):
                table = self.header()
            else:
                self.pair(table)
            self.skip(_QUIET)

    def skip(self, pattern: re.Pattern[str]) -> str:
        match = pattern.match(self.text, self.at)
        if match is None:
            return ""
        self.at = match.end()
        return match[0]

    def mark(self, where: Where) -> None:
        self.line += self.text.count("\n", self.counted_to, self.at)
        self.counted_to = self.at
        self.lines.setdefault(where, self.line)

    def header(self) -> Where:
        double = self.text.startswith("[[", self.at)
        brackets = 2 if double else 1
        begin = self.at
        self.at += brackets
        parts = list(self.key())
        after = self.at
        self.at = begin
        table: Where = ()
        for part in parts[:-1]:
            table = self.latest((*table, part))
        table = (*table, parts[-1])
        if double:
            self.mark(table)
            number = self.entries.get(table, 0)
            self.entries[table] = number + 1
            table = (*table, number)
        else:
            table = self.latest(table)
        self.mark(table)
        self.at = after
        self.skip(_GAP)
        self.at += brackets
        return table

    def latest(self, table: Where) -> Where:
        """Step into the last entry, when the path names an array of tables."""
        return (*table, self.entries[table] - 1) if table in self.entries else table

    def key(self) -> Iterator[str]:
        while True:
            self.skip(_GAP)
            part = self.skip(_KEY_PART)
            yield tomllib.loads(f"key = {part}")["key"] if part[:1] in {'"', "'"} else part
            self.skip(_GAP)
            if not self.text.startswith(".", self.at):
                return
            self.at += 1

    def pair(self, table: Where) -> None:
        begin = self.at
        where = table
        keys = list(self.key())
        after, self.at = self.at, begin
        for key in keys:
            where = (*where, key)
            self.mark(where)
        self.at = after + 1  # the equals sign
        self.value(where)

    def value(self, where: Where) -> None:
        self.skip(_GAP)
        if self.text.startswith("[", self.at):
            self.array(where)
        elif self.text.startswith("{", self.at):
            self.inline_table(where)
        elif not self.skip(_TEXT):
            self.skip(_BARE_VALUE)

    def array(self, where: Where) -> None:
        self.at += 1
        number = 0
        while self.more("]"):
            self.mark((*where, number))
            self.value((*where, number))
            number += 1

    def inline_table(self, where: Where) -> None:
        self.at += 1
        while self.more("}"):
            self.pair(where)

    def more(self, closing: str) -> bool:
        """Step over what parts two entries, and over the closing bracket when it comes."""
        self.skip(_QUIET)
        if self.text.startswith(",", self.at):
            self.at += 1
            self.skip(_QUIET)
        if self.text.startswith(closing, self.at):
            self.at += 1
            return False
        return True
