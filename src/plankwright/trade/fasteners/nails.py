"""The nails that there are: kinds, lengths and diameters."""

import csv
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from pathlib import Path

from plankwright.measure import INCH, Nm
from plankwright.trade.fasteners.facts import DIMENSIONS
from plankwright.trade.source import Source

_TABLE = Path(__file__).with_name("nails.csv")

USUAL_KIND = "16 gauge finish nail"
"""The kind that is used unless the user names another: it holds more than a brad, and its hole is small."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Nail:
    """A nail as it is bought.

    Parameters
    ----------
    kind
        Such as "common nail".
    size
        Its penny size, such as "6d"; empty for those that are bought by length.
    length_nm, diameter_nm
        [nm]
    per_pound
        How many a pound has, where it is known.
    sources
        Of its dimensions, and of the count.
    """

    kind: str
    size: str
    length_nm: Nm
    diameter_nm: Nm
    per_pound: int | None
    sources: tuple[Source, ...]

    @property
    def is_brad(self) -> bool:
        """Whether it is one of the thin ones that hold trim, and nothing overhead by themselves."""
        return self.kind.endswith("brad")


@cache
def every_nail() -> tuple[Nail, ...]:
    """Give every nail of the table, kind by kind and the shorter ones first."""
    with _TABLE.open(encoding="utf-8", newline="") as file:
        return tuple(_nail(row) for row in csv.DictReader(file))


def nail_kinds() -> tuple[str, ...]:
    """Give the kinds, in the order of the table."""
    return tuple(dict.fromkeys(nail.kind for nail in every_nail()))


def nails_of(kind: str) -> tuple[Nail, ...]:
    """Give the nails of a kind, the shorter ones first."""
    return tuple(nail for nail in every_nail() if nail.kind == kind)


def _nail(row: dict[str, str]) -> Nail:
    return Nail(
        kind=row["kind"],
        size=row["size"],
        length_nm=_inches(row["length_in"]),
        diameter_nm=_inches(row["diameter_in"]),
        per_pound=int(row["per_pound"]) if row["per_pound"] else None,
        sources=tuple(DIMENSIONS[key] for key in (row["dimensions_from"], row["count_from"]) if key),
    )


def _inches(cell: str) -> Nm:
    return round(Fraction(cell) * INCH)
