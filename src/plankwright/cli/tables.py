"""Tables as plain text, as wide as they come, so that nothing is cut off when they are piped."""

from collections.abc import Iterable, Sequence

_GAP = "   "


def table(title: str, headings: Sequence[str], rows: Iterable[Sequence[str]], *, words: bool = False) -> str:
    """Set rows out in columns.

    Parameters
    ----------
    title
        What the table shows.
    headings
        One for each column; the first column is aligned left, the others right.
    rows
        As many cells as headings.
    words
        Whether cells hold words more than numbers, so that all columns are aligned left.

    Returns
    -------
    str
        Title, headings, a rule and the rows, a line each; empty when there are no rows.
    """
    cells = [headings, *rows]
    if len(cells) == 1:
        return ""
    widths = [max(map(len, column)) for column in zip(*cells, strict=True)]
    first, *rest = (
        _GAP.join(
            cell.ljust(width) if words or not place else cell.rjust(width)
            for place, (cell, width) in enumerate(zip(row, widths, strict=True))
        ).rstrip()
        for row in cells
    )
    return "\n".join((title, first, "-" * (sum(widths) + len(_GAP) * (len(widths) - 1)), *rest))
