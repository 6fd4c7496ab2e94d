"""The rows of a CSV tally, typed by hand or saved by a spreadsheet.

People type inch marks. In CSV a quotation mark also holds a cell together, so a reader that knows only the
standard (RFC 4180) swallows half a file at the first stray `"`. Here a line is read by the standard first;
when that leaves a cell open or gives another number of cells than there are headings, it is read again, and
every mark that does not wrap a whole cell is taken for an inch mark.
"""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass

DELIMITERS = ",;\t"
_MOST_LINES_IN_A_CELL = 12
_OPEN = re.compile('".')


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One row of a tally.

    Parameters
    ----------
    number
        Line of the file, or row of the sheet, from 1.
    cells
        As text, without blanks around; a cell that cannot be text holds its trouble in `troubles`.
    troubles
        What is wrong with a cell before it is even read, by its position.
    """

    number: int
    cells: tuple[str, ...]
    troubles: dict[int, str]


def decoded(content: bytes) -> tuple[str, bool]:
    """Turn the bytes of a text file into text.

    Parameters
    ----------
    content
        UTF-8 with or without its mark, UTF-16 with its mark, or else what Windows programs write (code
        page 1252).

    Returns
    -------
    tuple
        The text, and whether its encoding had to be guessed.

    Raises
    ------
    ValueError
        If it is no text.
    """
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        return content.decode("utf-16"), False
    if b"\x00" in content:
        raise ValueError("it holds bytes that are no text")
    try:
        return content.decode("utf-8-sig"), False
    except UnicodeDecodeError:
        return content.decode("cp1252"), True


def rows_of(text: str, recognise: Callable[[str], bool]) -> Iterator[Row]:
    """Give the rows of a CSV text that are neither empty nor a comment.

    Parameters
    ----------
    text
        The text; its cells are parted by commas, semicolons or tabs: by what gives the first row most
        headings.
    recognise
        Whether a cell is a heading that is known.

    Yields
    ------
    Row
        The first one holds the headings.
    """
    lines = re.split(r"\r\n|\r|\n", text)
    delimiter, width = "", 0
    at = 0
    while at < len(lines):
        number, line = at + 1, lines[at]
        at += 1
        if not line.strip():
            continue
        if not delimiter:
            delimiter = _delimiter(line, recognise)
        if _is_comment(line, delimiter):
            delimiter = delimiter if width else ""
            continue
        cells, taken = _cells(lines[at - 1 : at - 1 + _MOST_LINES_IN_A_CELL], delimiter, width)
        at += taken - 1
        if any(cells):
            width = width or len(cells)
            yield Row(number=number, cells=tuple(cells), troubles={})


def _is_comment(line: str, delimiter: str) -> bool:
    first = line.split(delimiter, maxsplit=1)[0].strip()
    return first.startswith("#") and first != "#"  # a lone # is the heading of a column of numbers


def _delimiter(line: str, recognise: Callable[[str], bool]) -> str:
    def known(delimiter: str) -> tuple[int, int]:
        cells = _lenient(line, delimiter)
        return sum(map(recognise, cells)), len(cells)

    return max(DELIMITERS, key=known)


def _cells(lines: list[str], delimiter: str, width: int) -> tuple[list[str], int]:
    """Read the row that begins on the first of the lines; say how many lines it takes.

    The first reading that gives as many cells as there are headings is right; failing that, one by the
    standard that leaves out cells at the end; failing that, whatever the lenient one gives.
    """
    by_standard, lenient = _by_standard(lines[0], delimiter), _lenient(lines[0], delimiter)
    if by_standard is not None and (not width or len(by_standard) == width):
        return by_standard, 1
    if len(lenient) != width or any(_OPEN.match(cell) for cell in lenient):
        longer = _over_lines(lines, delimiter, width)
        if longer is not None:
            return longer
    if len(lenient) == width or by_standard is None or len(by_standard) > width:
        return lenient, 1
    return by_standard, 1


def _over_lines(lines: list[str], delimiter: str, width: int) -> tuple[list[str], int] | None:
    """Read a row with a cell that goes on over several lines, none of which could be a row of its own."""
    for count in range(2, len(lines) + 1):
        if len(_lenient(lines[count - 1], delimiter)) == width:
            return None
        cells = _by_standard("\n".join(lines[:count]), delimiter)
        if cells is not None:
            return (cells, count) if len(cells) == width else None
    return None


def _by_standard(line: str, delimiter: str) -> list[str] | None:
    """Read a row by RFC 4180, or give nothing where it does not follow it."""
    blank = rf"[^\S\n{delimiter}]*"
    cell = re.compile(
        rf'{blank}"((?:[^"]|"")*)"{blank}(?={delimiter}|\Z)|{blank}(?!")([^{delimiter}\n]*)(?={delimiter}|\Z)'
    )
    return _split(line, cell)


def _lenient(line: str, delimiter: str) -> list[str]:
    """Read a row in which a mark may mean inches: two hold a cell together only where they wrap it."""
    blank = rf"[^\S{delimiter}]*"
    cell = re.compile(rf'{blank}"(.*?)"{blank}(?={delimiter}|\Z)|([^{delimiter}]*)')
    return _split(line, cell) or []


def _split(line: str, cell: re.Pattern[str]) -> list[str] | None:
    cells: list[str] = []
    at = 0
    while match := cell.match(line, at):
        wrapped, plain = match.groups()
        cells.append((wrapped.replace('""', '"') if plain is None else plain).strip())
        at = match.end()
        if at >= len(line):
            return cells
        at += 1
    return None
