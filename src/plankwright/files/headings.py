"""Which column of a tally is which, whatever case, order, spacing and usual names its headings have."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from types import MappingProxyType

from plankwright.files.sentences import listed, nearest, quoted
from plankwright.measure import Unit

COLUMNS = MappingProxyType(
    {
        "id": (
            "board",
            "board id",
            "board no",
            "board number",
            "board #",
            "board nr",
            "no",
            "nr",
            "number",
            "#",
            "id no",
            "item",
            "name",
            "label",
            "tag",
            "mark",
        ),
        "lot": ("source", "batch", "from", "origin", "room", "location"),
        "species": ("wood", "timber", "wood species"),
        "length": ("len", "l", "long", "board length"),
        "width": (
            "w",
            "wide",
            "face",
            "face width",
            "width face",
            "width marked end",
            "width start",
            "width 1",
            "width a",
        ),
        "width other end": (
            "other width",
            "other end",
            "width end",
            "width far end",
            "width 2",
            "width b",
            "second width",
        ),
        "thickness": ("t", "thick", "thk", "depth"),
        "edge": ("edges", "profile", "edge profile", "edge type", "milling"),
        "tongue": ("lap", "tongue or lap", "tongue lap", "tongue size", "lap size", "rabbet", "reach"),
        "flaws": ("flaw", "defects", "defect", "damage", "faults"),
        "tone": ("colour", "color", "shade"),
        "note": ("notes", "remark", "remarks", "comment", "comments"),
        "moisture": (
            "mc",
            "moisture content",
            "moisture %",
            "mc %",
            "moisture pct",
            "meter",
            "meter reading",
        ),
        "nails": ("nail", "nails left", "denailed", "de nailed"),
        "treatment": ("treated", "preservative", "treated with"),
        "quantity": ("qty", "count", "how many", "pieces", "pcs"),
    }
)
"""Every column, and what else people call it."""

REQUIRED = ("length", "width", "thickness")
MEASURED = frozenset({"length", "width", "width other end", "thickness", "tongue", "flaws"})
"""Columns that hold lengths, whose heading may name a unit."""

_BY_NAME = MappingProxyType(
    {name: column for column, others in COLUMNS.items() for name in (column, *others)}
)
_UNITS = MappingProxyType(
    {
        **dict.fromkeys(("in", "inch", "inches", '"'), Unit.INCH),
        **dict.fromkeys(("ft", "feet", "foot", "'"), Unit.FOOT),
        **dict.fromkeys(("mm", "millimetres", "millimeters"), Unit.MILLIMETRE),
        **dict.fromkeys(("cm", "centimetres", "centimeters"), Unit.CENTIMETRE),
        **dict.fromkeys(("m", "metres", "meters"), Unit.METRE),
    }
)
_PLAIN_MARKS = str.maketrans({**dict.fromkeys("″”“", '"'), **dict.fromkeys("′’", "'")})
_BETWEEN = re.compile(r"[\s_\-/.:()\[\],]+")
_MARK = re.compile(r"(?<=\w)(?=['\"])")
"""Where an inch or foot mark follows a word at once: Length"."""

_MOST_ROWS_ABOVE = 20


@dataclass(frozen=True, slots=True, kw_only=True)
class Headings:
    """What the columns of a tally hold.

    Parameters
    ----------
    at
        Position of each column that is there.
    count
        How many columns there are.
    units
        Unit that a heading names, by column.
    left_out
        Headings that are not known; their columns are not read.
    problems
        A sentence for each thing that is wrong.
    """

    at: dict[str, int]
    count: int
    units: dict[str, Unit]
    left_out: tuple[str, ...]
    problems: tuple[str, ...]


def is_heading(cell: str) -> bool:
    """Tell whether a cell is a heading that is known."""
    return _column(cell)[0] is not None


def heading_row(rows: Sequence[Sequence[str]]) -> int | None:
    """Find the row of headings, which may stand below a title.

    Parameters
    ----------
    rows
        The cells of the rows of a tally, from the top.

    Returns
    -------
    int or None
        Position of the first row near the top that has every heading that is needed; nothing when none has.
    """
    for position, cells in enumerate(rows[:_MOST_ROWS_ABOVE]):
        columns = {_column(cell)[0] for cell in cells}
        if columns.issuperset(REQUIRED):
            return position
    return None


def read_headings(cells: tuple[str, ...]) -> Headings:
    """Find out which column is which.

    Parameters
    ----------
    cells
        The first row of the tally.

    Returns
    -------
    Headings
        The columns, with everything that is wrong about them.
    """
    at: dict[str, int] = {}
    units: dict[str, Unit] = {}
    left_out, problems = [], []
    for position, cell in enumerate(cells):
        column, unit = _column(cell)
        if column is None:
            left_out += [cell] if cell else []
        elif column in at:
            problems.append(
                f"headings {quoted(cells[at[column]])} and {quoted(cell)} both mean {column}: "
                "keep one of these columns"
            )
        else:
            at[column] = position
            if unit is not None:
                units[column] = unit
    missing = [column for column in REQUIRED if column not in at]
    if len(missing) == len(REQUIRED) and not any(nearest(column, left_out) for column in missing):
        problems.append(
            f"the first row has no heading for {listed(REQUIRED)}: begin the tally with a row of headings, "
            "like id, length, width, thickness, flaws"
        )
    else:
        problems += [
            f"there is no column {column}: add it{_mistyped(column, left_out)}" for column in missing
        ]
    return Headings(at=at, count=len(cells), units=units, left_out=tuple(left_out), problems=tuple(problems))


def _column(cell: str) -> tuple[str | None, Unit | None]:
    plain = _MARK.sub(" ", cell.lower().translate(_PLAIN_MARKS))
    words = [word for word in _BETWEEN.split(plain) if word]
    if not words:
        return None, None
    whole = _BY_NAME.get(" ".join(words))
    if whole is not None:
        return whole, None
    unit = _UNITS.get(words.pop())
    if words[-1:] == ["in"]:  # "length in feet"
        words.pop()
    column = _BY_NAME.get(" ".join(words))
    return (column, unit) if column in MEASURED and unit is not None else (None, None)


def _mistyped(column: str, left_out: list[str]) -> str:
    hint = nearest(column, [" ".join(heading.split()) for heading in left_out])
    return hint.replace("did you mean", "or is it")
