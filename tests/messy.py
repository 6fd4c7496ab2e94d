"""A pile as a stranger writes it down: sixty boards of a village hall in a workbook that grew by itself.

Beside each length stands what was measured, so that nothing here rests on how lengths are read.
"""

from pathlib import Path
from random import Random
from typing import NamedTuple

import openpyxl

from plankwright.measure import INCH, MILLIMETRE, Nm

HEADINGS = (
    *("Board #", "From", "Length ", "WIDTH (in)", "Width, other end", "Thk", "Edge", "Defects", "Qty."),
    *("Looks", "Comments"),
)


class Measured(NamedTuple):
    """What is true of one board, whatever was written."""

    length_nm: Nm
    width_nm: Nm
    thickness_nm: Nm
    lot: str


def write_messy_tally(path: Path) -> dict[str, Measured]:
    """Write the workbook.

    Parameters
    ----------
    path
        Where to.

    Returns
    -------
    dict
        What is true of each board, by its id.
    """
    book = openpyxl.Workbook()
    words = book.active
    assert words is not None
    words.title = "words to choose from"
    words.append(("square",))
    words.sheet_state = "hidden"
    sheet = book.create_sheet("pulled")
    book.active = 1
    sheet.append(("Village hall, pulled in May",))
    sheet.merge_cells("A1:K1")
    sheet.append(())
    sheet.append(HEADINGS)
    truth: dict[str, Measured] = {}
    chance = Random(3)  # noqa: S311 - chance, not secrecy
    for number in range(1, 61):
        written, length_nm = _length(number, chance.randrange(52 * 16, 116 * 16))
        quarters = chance.choice((20, 21, 22, 22, 23, 25))
        width = f" {quarters // 4} {quarters % 4}/4″ " if number % 4 == 0 and quarters % 4 else quarters / 4
        lot = "stage" if number > 40 else "hall floor"
        flaws = _FLAWS.get(number % 9)
        sheet.append(
            (
                number,
                None,
                written,
                width,
                None,
                "3/4" if number % 3 else 0.75,
                None,
                flaws,
                None,
                "dark",
                None,
            )
        )
        truth[str(number)] = Measured(length_nm, INCH * quarters // 4, INCH * 3 // 4, lot)
        if number % 20 == 0:
            sheet.append(())
    # Rows 4 to 64 hold the boards, with an empty row behind each twenty.
    for first, last, lot in ((4, 45, "hall floor"), (46, 66, "stage")):
        sheet.cell(first, 2).value = lot
        sheet.merge_cells(start_row=first, start_column=2, end_row=last, end_column=2)
    sheet.append(("Total", None, 4963.5, None, None, None, None, None, 60))
    book.save(path)
    return truth


_FLAWS = {
    1: "first 4 split",
    3: "20 – 23” rot; 50-52 stain front",
    5: "none",
    7: "last 3-1/2 rot;",
    8: "30 nail hole back ; 40 to 44 paint both",
}


def _length(number: int, sixteenths: int) -> tuple[object, Nm]:
    """Write a length as the number of the board has it, and say what it is."""
    inches, fraction = divmod(sixteenths, 16)
    feet, rest = divmod(inches, 12)
    part = f" {fraction}/16" if fraction else ""
    mm = round(sixteenths * 25.4 / 16)
    exact = INCH * sixteenths // 16
    exact = INCH * sixteenths // 16
    ways: tuple[tuple[object, Nm], ...] = (
        (f"{feet}' {rest}{part.replace(' ', '-')}\"", exact),
        (f"{feet}ft {rest}{part}", exact),
        (sixteenths / 16, exact),
        (f"{sixteenths / 16}”", exact),
        (f" {inches}{part} ", exact),
        (f"{mm}mm", mm * MILLIMETRE),
        (f"{mm / 1000} m", mm * MILLIMETRE),
        (f"{feet}′ {rest}{part} in.", exact),
    )
    return ways[number % len(ways)]
