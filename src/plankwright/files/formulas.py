"""Cells that a spreadsheet would take for a formula begin with an apostrophe where we write them."""

_STARTS = ("=", "+", "-", "@", "\t", "\r", "\n")


def harmless(cell: str) -> str:
    """Keep a spreadsheet from running what somebody wrote as a formula."""
    return f"'{cell}" if cell.startswith(_STARTS) else cell


def as_meant(cell: str) -> str:
    """Give back what was made harmless."""
    return cell[1:] if cell.startswith("'") and cell[1:].startswith(_STARTS) else cell
