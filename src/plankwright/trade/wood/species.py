"""Which wood a person means by a name: a figure where it is one species, a range where it is a family."""

import csv
import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from plankwright.trade.moisture.facts import FIBRE_SATURATION_PCT, UNKNOWN_SPECIES, WATER_FULL_PCT
from plankwright.trade.source import Source
from plankwright.trade.wood.facts import SOURCES

_TABLE = Path(__file__).with_name("species.csv")
_TRADE_NAME = "(trade name)"
_WORD = re.compile(r"[a-z]+")
_SAME_WORD = {"firs": "fir", "oaks": "oak", "pines": "pine", "cypress": "baldcypress"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Species:
    """A row of the table.

    Parameters
    ----------
    name
        As the handbook has it: family first.
    tangential, radial
        Change across the grain; radial is not known of trade names. [per point of moisture]
    tangential_total_pct, radial_total_pct
        Shrinkage from green to ovendry, where it is known. [% of the green size]
    gravity
        The least and the greatest specific gravity, ovendry mass over volume at 12 % moisture, where it is
        known; alike but for rows that stand for several species.
    coefficient_source, total_source, gravity_source
        Where each comes from; nothing for what is not known.
    """

    name: str
    tangential: float
    radial: float | None
    tangential_total_pct: float | None
    radial_total_pct: float | None
    gravity: tuple[float, float] | None
    coefficient_source: Source
    total_source: Source | None
    gravity_source: Source | None

    @property
    def words(self) -> frozenset[str]:
        """The words of its name."""
        return _words(self.name)

    @property
    def family(self) -> frozenset[str]:
        """The words before the comma or colon of its name."""
        return _words(_head(self.name))

    @property
    def trade_name(self) -> bool:
        """Whether it is another name for species that have rows of their own."""
        return self.name.endswith(_TRADE_NAME)

    @property
    def saturation_pct(self) -> float:
        """Fibre saturation. [% of dry mass]"""
        return FIBRE_SATURATION_PCT.get(self.name, WATER_FULL_PCT.value)


@dataclass(frozen=True, slots=True, kw_only=True)
class Wood:
    """What a name stands for.

    Parameters
    ----------
    name
        What is written about it: the species, the words that were understood, or that it is not known.
    species
        All that the name may mean: one, a family, or every one in the table.
    """

    name: str
    species: tuple[Species, ...]

    @property
    def known(self) -> bool:
        """Whether it is one species."""
        return len(self.species) == 1

    @property
    def understood(self) -> bool:
        """Whether any word of its name was."""
        return len(self.species) < len(every_species())

    @property
    def tangential(self) -> tuple[float, float]:
        """The least and the greatest coefficient of those that it may be. [per point of moisture]"""
        every = [one.tangential for one in self.species]
        return min(every), max(every)

    @property
    def gravity(self) -> tuple[float, float] | None:
        """The least and the greatest specific gravity of those that it may be.

        Nothing where one of them has none, since the range of the rest would promise too much. Trade names
        count only by themselves.
        """
        members = [one for one in self.species if not one.trade_name] or self.species
        every = [one.gravity for one in members if one.gravity is not None]
        if len(every) < len(members):
            return None
        return min(least for least, _ in every), max(most for _, most in every)

    @property
    def coefficient_sources(self) -> tuple[Source, ...]:
        """Where its coefficients come from."""
        if self.known:
            return (self.species[0].coefficient_source,)
        return (UNKNOWN_SPECIES, *_distinct(one.coefficient_source for one in self.species))

    @property
    def total_sources(self) -> tuple[Source, ...]:
        """Where their total shrinkages come from."""
        return _distinct(one.total_source for one in self.species)

    @property
    def gravity_sources(self) -> tuple[Source, ...]:
        """Where its specific gravities come from."""
        return _distinct(one.gravity_source for one in self.species)


@cache
def wood_named(written: str) -> Wood:
    """Find out which wood a name means.

    Parameters
    ----------
    written
        As in the tally, such as "longleaf pine", "Pine, longleaf", "oak", or nothing.

    Returns
    -------
    Wood
        One species where the name is its whole name or fits no other; all of a family where it fits several;
        every species in the table where no word of it is known.

    Examples
    --------
    >>> wood_named("heart pine").name
    'Pine, heart (trade name)'
    >>> len(wood_named("mystery").species) == len(every_species())
    True
    """
    known, families = _vocabulary(), family_words()
    words = _words(written) & known
    if not words & families:
        return Wood(name="wood of unknown species", species=every_species())
    if not _fitting(words):
        # Such as "old pine": the table knows the word from another wood, and of pine it says nothing.
        words &= families
    fitting = _fitting(words)
    found = tuple(one for one in fitting if one.words == words) or fitting
    if not found:
        # Families that no species is of together, such as "oak pine".
        return Wood(name="wood of unknown species", species=every_species())
    if len(found) == 1:
        return Wood(name=found[0].name, species=found)
    told = " ".join(word for word in _WORD.findall(written.lower()) if _same(word) in words)
    return Wood(name=f"{told} of unknown kind", species=found)


def not_understood(written: Iterable[str]) -> dict[str, int]:
    """Count the names that are written and mean nothing here, each as it is written first.

    Parameters
    ----------
    written
        As in the tally, board by board.
    """
    counts: dict[str, int] = {}
    first: dict[str, str] = {}
    for name in written:
        if name.strip() and not wood_named(name).understood:
            told = first.setdefault(name.strip().casefold(), name.strip())
            counts[told] = counts.get(told, 0) + 1
    return counts


@cache
def every_species() -> tuple[Species, ...]:
    """Give every species of the table."""
    with _TABLE.open(encoding="utf-8", newline="") as file:
        return tuple(_species(row) for row in csv.DictReader(file))


def _species(row: dict[str, str]) -> Species:
    return Species(
        name=row["species"],
        tangential=float(row["tangential"]),
        radial=_number(row["radial"]),
        tangential_total_pct=_number(row["tangential_total_pct"]),
        radial_total_pct=_number(row["radial_total_pct"]),
        gravity=_range(row["gravity_12"]),
        coefficient_source=SOURCES[row["coefficients_from"]],
        total_source=SOURCES.get(row["totals_from"]),
        gravity_source=SOURCES.get(row["gravity_from"]),
    )


def _number(cell: str) -> float | None:
    return float(cell) if cell else None


def _range(cell: str) -> tuple[float, float] | None:
    """Read a figure, or two with a hyphen between them."""
    least, _, most = cell.partition("-")
    return (float(least), float(most or least)) if cell else None


def _fitting(words: frozenset[str]) -> tuple[Species, ...]:
    """Give the species whose names have all the words.

    Where these only name families, as "cedar" does, a species of that family comes before one that has the
    word from elsewhere, as the cedar elm has.
    """
    of_family = tuple(one for one in every_species() if words <= family_words() and words <= one.family)
    return of_family or tuple(one for one in every_species() if words <= one.words)


@cache
def family_words() -> frozenset[str]:
    """Give the words that name a family: the last one before the comma or colon of each name."""
    heads = (_head(one.name) for one in every_species())
    return frozenset(_same(_WORD.findall(head.lower())[-1]) for head in heads) | {"redcedar"}


def _head(name: str) -> str:
    return re.split("[,:]", name)[0]


@cache
def _vocabulary() -> frozenset[str]:
    return frozenset(word for one in every_species() for word in one.words)


def _words(name: str) -> frozenset[str]:
    return frozenset(_same(word) for word in _WORD.findall(name.lower().replace(_TRADE_NAME, "")))


def _same(word: str) -> str:
    return _SAME_WORD.get(word, word)


def _distinct(sources: Iterable[Source | None]) -> tuple[Source, ...]:
    return tuple(dict.fromkeys(source for source in sources if source is not None))
