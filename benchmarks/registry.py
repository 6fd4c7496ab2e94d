"""Every family that is measured, in the order of the report; a new one is a line here."""

from collections.abc import Mapping
from typing import Any

from benchmarks.family import Family
from benchmarks.questions.again import AGAIN
from benchmarks.questions.app import APP
from benchmarks.questions.cutting import CUTTING, PUBLISHED
from benchmarks.questions.pile import PILE
from benchmarks.questions.planted_walls import EXACT, REAL
from benchmarks.questions.short import SHORT
from benchmarks.questions.yard import YARDS

FAMILIES: Mapping[str, Family[Any]] = {
    family.name: family
    for family in (
        EXACT,
        REAL,
        PILE,
        SHORT,
        *YARDS,
        AGAIN,
        CUTTING,
        PUBLISHED,
        APP,
    )
}
