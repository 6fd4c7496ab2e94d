"""The rows of a CSV tally, typed by hand or saved by a spreadsheet.

People type inch marks. In CSV a quotation mark also holds a cell together, so a reader that knows only the
standard (RFC 4180) swallows half a file at the first stray `"`. Here a line is read by the standard first;
when that leaves a cell open or gives another number of cells than there are headings, it is read again, and
every mark that does not wrap a whole cell is taken for an inch mark.
"""

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple

DELIMITERS = ",;\t"
_DELIMITER_LINE = re.compile(r'"?sep=([,;\t])"?', re.IGNORECASE)
"""What some spreadsheet programs write above the headings."""

_FEWEST_HEADINGS = 3
_MOST_ROWS_ABOVE = 20
_FEWEST_CELLS_OF_A_BOARD = 3
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
    shared
        Positions of cells that are merged with those of other rows.
    """

    number: int
    cells: tuple[str, ...]
    troubles: dict[int, str]
    shared: frozenset[int] = frozenset()


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
        The text; its cells are parted by commas, semicolons or tabs: by what gives its row of headings most
        of them. That row may stand below a few others, such as a title.
    recognise
        Whether a cell is a heading that is known.

    Yields
    ------
    Row
        The rows above the headings, the headings, and the boards.
    """
    lines = re.split(r"\r\n|\r|\n", text)
    chosen = _DELIMITER_LINE.fullmatch(lines[0])
    headings = _headings(lines, chosen[1] if chosen else DELIMITERS, recognise)
    at = 1 if chosen else 0
    while at < len(lines):
        if at == headings.at:
            cells, taken = headings.cells, headings.lines
        elif at < headings.at or _is_comment_line(lines[at], headings.delimiter):
            cells, taken = _lenient(lines[at], headings.delimiter), 1
        else:
            ahead = lines[at : at + _MOST_LINES_IN_A_CELL]
            cells, taken = _cells(ahead, headings.delimiter, len(headings.cells))
        if any(cells) and (at == headings.at or not is_comment(cells)):
            yield Row(number=at + 1, cells=tuple(cells), troubles={})
        at += taken


def is_comment(cells: Sequence[str]) -> bool:
    """Tell whether a row is a comment: whether its first cell begins with #.

    A lone # is the heading of a column of numbers, and a board may be called #12: that one is no comment, and
    is asked about when it is read.

    Parameters
    ----------
    cells
        Of the row.
    """
    first = cells[0]
    if not first.startswith("#") or first == "#":
        return False
    return not (first[1].isalnum() and sum(map(bool, cells[1:])) >= _FEWEST_CELLS_OF_A_BOARD)


def _is_comment_line(line: str, delimiter: str) -> bool:
    """Tell whether a line is a comment, whatever marks it holds that would hold cells together."""
    return line.lstrip().startswith("#") and is_comment(_lenient(line, delimiter))


class _Headings(NamedTuple):
    """Where the headings stand, how many lines they take, what parts them, and what they are."""

    at: int
    lines: int
    delimiter: str
    cells: list[str]


def _headings(lines: list[str], delimiters: str, recognise: Callable[[str], bool]) -> _Headings:
    """Find the headings: the first row near the top that has enough of them, or else the first row."""
    first: _Headings | None = None
    looked_at = 0
    for at, line in enumerate(lines):
        if not line.strip() or _DELIMITER_LINE.fullmatch(line):
            continue
        candidates = [
            _Headings(at, taken, delimiter, cells)
            for delimiter in delimiters
            for cells, taken in [_heading_cells(lines[at : at + _MOST_LINES_IN_A_CELL], delimiter)]
        ]
        best = max(candidates, key=lambda found: (sum(map(recognise, found.cells)), len(found.cells)))
        if is_comment(best.cells):
            continue
        if sum(map(recognise, best.cells)) >= _FEWEST_HEADINGS:
            return best
        first = first or best
        looked_at += 1
        if looked_at == _MOST_ROWS_ABOVE:
            break
    return first or _Headings(len(lines), 1, delimiters[0], [])


def _heading_cells(lines: list[str], delimiter: str) -> tuple[list[str], int]:
    """Read a row of headings, which may go on over several lines; say how many it takes."""
    by_standard, lenient = _by_standard(lines[0], delimiter), _lenient(lines[0], delimiter)
    if by_standard is not None or not any(map(_OPEN.match, lenient)):
        return by_standard or lenient, 1
    for count in range(2, len(lines) + 1):
        cells = _by_standard("\n".join(lines[:count]), delimiter)
        if cells is not None:
            return cells, count
    return lenient, 1


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
