"""Boards as they come out of a building, one after the other, with nothing planned for them.

Length: triangular from 2 ft 6 to 12 ft 6, most often 5 ft 6. Width: from 3-1/2 to 8 in, each eighth as
likely as the other. Lot and thickness: as in `real`. A third have a flaw: lost wood at an end or anywhere,
up to 10 in of it; paint on both faces from an end on, up to 26 in; or a stain on one face. All of it
invented.
"""

from collections.abc import Iterator
from random import Random

from benchmarks.lots import SORTS
from plankwright.measure import INCH, Nm
from plankwright.model import Board, Face, Flaw, Severity

FLAWED = 1 / 3
_SHORTEST, _LONGEST, _OFTENEST = 30, 150, 66
"""Lengths. [in]"""

_NARROWEST, _WIDEST = 28, 64
"""Widths, in eighths of an inch."""

_EIGHTH: Nm = INCH // 8


def arriving(chance: Random) -> Iterator[Board]:
    """Give boards without end, numbered as they arrive.

    Parameters
    ----------
    chance
        The same state gives the same boards.
    """
    number = 0
    while True:
        number += 1
        length = round(8 * chance.triangular(_SHORTEST, _LONGEST, _OFTENEST)) * _EIGHTH
        width = chance.randint(_NARROWEST, _WIDEST) * _EIGHTH
        (sort,) = chance.choices([sort for sort, _ in SORTS], [weight for _, weight in SORTS])
        yield Board(
            id=f"B{number:04d}",
            lot=sort.lot,
            length_nm=length,
            width_start_nm=width,
            width_end_nm=width,
            thickness_nm=sort.thickness,
            flaws=(_flaw(length, chance),) if chance.random() < FLAWED else (),
        )


def _flaw(length: Nm, chance: Random) -> Flaw:
    kind = chance.choice(("end", "end", "anywhere", "paint", "stain"))
    size = chance.randint(8, 80) * _EIGHTH
    start: Nm = chance.randint(0, length // _EIGHTH - size // _EIGHTH) * _EIGHTH
    if kind in {"end", "paint"}:
        size += 16 * INCH if kind == "paint" else 0
        start = chance.choice((0, length - size))
    if kind == "stain":
        face = chance.choice(tuple(Face))
        return Flaw(start_nm=start, end_nm=start + size, what="stain", severity=Severity.BLEMISH, face=face)
    if kind == "paint":
        return Flaw(start_nm=start, end_nm=start + size, what="paint", severity=Severity.BLEMISH)
    return Flaw(start_nm=start, end_nm=start + size, what="rot", severity=Severity.LOST)
