"""How wide a text is at most, whichever sans-serif font the reader's machine has.

Drawings name no font, so the widths are upper ones: for each character the wider of what two common families
give it, Helvetica by its published metrics and the much wider DejaVu Sans. A text that fits by them fits in
any common one.
"""

from collections.abc import Iterable

from plankwright.draw.scene import Span

LINE = 1.2
"""Height of a line, its share of the gap to the next one included. [font sizes]"""

_UNKNOWN = 1.2
"""Width of a character that stands in no table: wider than any of the Latin script. [em]"""


def _table(widths: dict[int, str]) -> dict[str, float]:
    return {character: hundredths / 100 for hundredths, those in widths.items() for character in those}


_REGULAR = _table({
    28: "'ijl", 30: "I", 32: " ,.·’", 34: "/:;\\|", 36: "f", 37: "-", 40: "()[]t", 41: "!²",
    42: "r", 46: '"', 50: "*J`°", 53: "sz", 55: "cç", 56: "?L_–", 58: "k", 60: "vxy",
    62: "FTaeoäöéèàåø", 63: "ß", 64: "$0123456789bdghnpqu{}üñ", 67: "EKPSY", 69: "ABVXZÄÅ",
    73: "CR", 74: "UÜ", 75: "N", 76: "H", 78: "&DG", 79: "OQÖØ", 82: "w", 84: "#+<=>^~×−", 87: "M",
    96: "%", 97: "½¼¾", 98: "m", 99: "Wæ", 102: "@…",
})  # fmt: skip
_BOLD = _table({
    31: "'", 35: " ijl", 37: "/\\|", 38: ",.I·’", 40: ":;", 42: "-", 44: "f²", 46: "!()[]", 48: "t",
    50: "`r°", 53: '"*', 56: "J_–", 59: "z", 60: "csç", 62: "?", 64: "L", 65: "x", 66: "vy",
    67: "k", 68: "aeäéèàå", 69: "EFToöø", 70: "$0123456789", 72: "bdghnpqu{}üßñ", 73: "SYZ",
    74: "CP", 77: "B", 78: "AKRVXÄÅ", 82: "UÜ", 83: "G", 84: "#+<=>DHN^~×−", 86: "OQÖØ", 88: "&",
    93: "w", 100: "@M…", 101: "%", 104: "½¼¾", 105: "mæ", 111: "W",
})  # fmt: skip


def text_width(spans: Iterable[Span], size: float) -> float:
    """Give the width that a line of text needs at most. [mm]

    Parameters
    ----------
    spans
        The text.
    size
        Font size. [mm]
    """
    return size * sum(
        (_BOLD if span.bold else _REGULAR).get(character, _UNKNOWN)
        for span in spans
        for character in span.text
    )


def shortened(text: str, width: float, size: float, *, bold: bool = False) -> str:
    """Give a text, cut off with an ellipsis where it would be too wide."""
    if text_width([Span(text=text, bold=bold)], size) <= width:
        return text
    for end in range(len(text) - 1, 0, -1):
        cut = f"{text[:end].rstrip()}…"
        if text_width([Span(text=cut, bold=bold)], size) <= width:
            return cut
    return ""


def wrapped(text: str, width: float, size: float, *, bold: bool = False) -> list[str]:
    """Break a text into lines no wider than they may be; a word that is wider itself is cut off."""
    lines: list[str] = []
    for word in text.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width([Span(text=longer, bold=bold)], size) <= width:
            lines[-1] = longer
        else:
            lines.append(shortened(word, width, size, bold=bold))
    return lines
