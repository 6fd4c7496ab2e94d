"""TOML as parsed, with the line of each of its parts, and the one thing that can be wrong with its syntax."""

import re
import tomllib
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

from plankwright.files.report import Where
from plankwright.files.sound_part import Raw
from plankwright.files.toml_lines import lines_of, nearest_line

_GIVEN_TWICE = re.compile("overwrite|twice|uplicate|mutate")
_SYNTAX_PLACE = re.compile(r" \(at (?:line (\d+), column \d+|end of document)\)$")


@dataclass(frozen=True, slots=True, kw_only=True)
class Given:
    """A description as it was given, before anything is known of it.

    Parameters
    ----------
    raw
        As parsed.
    place
        Turns a path in it into a place, with the line where there is one.
    troubles
        What kept it from being parsed: paths and sentences.
    """

    raw: Raw
    place: Callable[[Where], tuple[str, int | None]]
    troubles: tuple[tuple[Where, str], ...] = ()


def parse_toml(content: bytes) -> Given:
    """Parse a TOML file, or say why it is none."""
    try:
        text = content.decode("utf-8-sig").replace("\r\n", "\n")
    except UnicodeDecodeError:
        return _not_parsed("the file is not UTF-8 text: save it as plain text in UTF-8")
    try:
        raw = tomllib.loads(text)
    except RecursionError:
        return _not_parsed("brackets are nested too deeply to be read")
    except ValueError as trouble:
        return _misspelt(trouble, text.rstrip().count("\n") + 1)
    if not raw:
        return _not_parsed("the file is empty: fill it in as the template shows")
    return Given(raw=raw, place=partial(_at_line, lines_of(text)))


def _not_parsed(sentence: str, where: Where = (), line: int | None = None) -> Given:
    lines: dict[Where, int] = {} if line is None else {where: line}
    return Given(raw={}, place=partial(_at_line, lines), troubles=((where, sentence),))


def _misspelt(trouble: ValueError, last_line: int) -> Given:
    message = str(trouble)
    place = _SYNTAX_PLACE.search(message)
    line = int(place[1]) if place and place[1] else last_line
    reason = _SYNTAX_PLACE.sub("", message)
    if _GIVEN_TWICE.search(reason):
        return _not_parsed("the key or table here is given before: keep one of them", (0,), line)
    return _not_parsed(
        f"cannot be read from here on ({reason[:1].lower()}{reason[1:]}): write a key, an equals sign "
        'and a value, text in quotes, inches best in words, like width = "7 ft 3-5/8 in"',
        (0,),
        line,
    )


def _at_line(lines: dict[Where, int], where: Where) -> tuple[str, int | None]:
    line = nearest_line(lines, where)
    return (f"line {line}" if line else "", line)
