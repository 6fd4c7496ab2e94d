"""What a spreadsheet or a hurry made of the measurement of a board, where that is plain to see."""

import re
from types import MappingProxyType

from plankwright.files.notation import Notation
from plankwright.files.sentences import quoted
from plankwright.measure import FOOT, LengthError

LARGEST_NM = MappingProxyType(
    {"length": 100 * FOOT, "width": 6 * FOOT, "width other end": 6 * FOOT, "thickness": FOOT}
)
"""No board of any pile is larger (practice): such a cell holds a slip, a wrong unit or a sum. [nm]"""

_MONTH = "(?:jan|feb|mar|mrz|apr|may|mai|jun|jul|aug|sep|oct|okt|nov|dec|dez)[a-z]*"
_DATE = re.compile(
    rf"[0-9]{{1,4}}[-./ ]+{_MONTH}(?:[-./ ]+[0-9]{{2,4}})?|{_MONTH}[-./ ]+[0-9]{{1,4}}"
    r"|[0-9]{1,2}[-./][0-9]{1,2}[-./][0-9]{4}|[0-9]{4}-[0-9]{1,2}-[0-9]{1,2}.*",
    re.IGNORECASE,
)
_BETWEEN_TWO = re.compile(r"\s+to\s+|\s*(?:→|->)\s*|\s+[-–—/]\s+")


def likely_slip(column: str, text: str, notation: Notation) -> str:
    """Say what a cell that holds no length looks like.

    Parameters
    ----------
    column
        Its column.
    text
        What it holds.
    notation
        How lengths are written.

    Returns
    -------
    str
        A sentence that follows the name of the column; empty when it looks like nothing in particular.
    """
    if _DATE.fullmatch(text):
        return (
            f"{quoted(text)} looks like a date, which a spreadsheet makes of fractions such as 3/4: "
            "format the cells as text and type it again"
        )
    if column == "width" and _holds_two(text, notation):
        return (
            f"{quoted(text)} looks like two widths: keep the one at the marked end, "
            "and write the other into a column width other end"
        )
    return ""


def _holds_two(text: str, notation: Notation) -> bool:
    """Tell whether a text is lengths with a word, an arrow, or a slash or dash between blanks in between."""
    parts = _BETWEEN_TWO.split(text)
    try:
        return len([notation.read(part) for part in parts]) > 1
    except LengthError:
        return False
