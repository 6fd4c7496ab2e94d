"""Which rows of a tally are boards, and which part of them is the table."""

import re
from collections.abc import Iterable
from dataclasses import replace

from plankwright.files.headings import heading_row
from plankwright.files.report import Report
from plankwright.files.sentences import quoted
from plankwright.files.tally_text import Row

_MOST_NAMED = 8
_SUMMING = re.compile(
    r"(?:(?:grand|sub)[ -]?)?totals?\b.*|sums?|averages?|avg\.?|mean|count|minimum|maximum", re.IGNORECASE
)
"""How a row begins that sums up those above it."""


def below_titles(rows: list[Row], report: Report) -> tuple[Row, list[Row]]:
    """Give the row of headings and the rows below it."""
    at = heading_row([row.cells for row in rows]) or 0
    if at:
        above = row_numbers(row.number for row in rows[:at])
        report.remark((rows[at].number,), f"the headings stand here; what is above them is not read: {above}")
    return rows[at], rows[at + 1 :]


def boards_only(rows: list[Row], headings: Row, report: Report) -> list[Row]:
    """Leave out headings that are repeated, and rows that sum up what is above them."""
    repeated = [cell.lower() for cell in headings.cells]
    kept: list[Row] = []
    for row in rows:
        first = next(filter(None, row.cells), "")
        if _SUMMING.fullmatch(first):
            report.remark((row.number,), f"this row begins with {quoted(first)} and is not read as a board")
        elif [cell.lower() for cell in row.cells] != repeated:
            kept.append(row)
    return kept


def within_table(rows: list[Row], count: int, report: Report) -> list[Row]:
    """Leave out what stands in a sheet beside the table, under no heading."""
    for row in rows:
        if any(row.cells[count:]):
            report.remark((row.number,), "what stands beside the table, under no heading, is not read")
    return [replace(row, cells=row.cells[:count]) for row in rows]


def row_numbers(rows: Iterable[int]) -> str:
    """Name a few rows, and say how many more there are."""
    named = [str(row) for row in rows]
    more = f" and {len(named) - _MOST_NAMED} more" if len(named) > _MOST_NAMED else ""
    return ", ".join(named[:_MOST_NAMED]) + more
