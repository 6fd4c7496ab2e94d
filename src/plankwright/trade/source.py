"""Where a figure comes from, and how far it was followed there."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum
from typing import Generic, TypeVar

_Figure = TypeVar("_Figure")


class Trust(StrEnum):
    """How far a source was followed."""

    READ = "read"
    SECONDARY = "read on a page that repeats it"
    EARLIER = "read earlier and not opened again"
    MEMORY = "from memory, not verified"
    PRACTICE = "common practice, no source"
    COMPUTED = "computed"


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """A place that a figure comes from.

    Parameters
    ----------
    key
        Short and its own among all sources, such as "emc"; what is printed refers to it.
    title
        The book, standard or page, with table or section.
    address
        Where the copy that was read stands; empty for what has none.
    trust
        How far it was followed.
    note
        What a reader should know besides, such as that places differ.
    """

    key: str
    title: str
    address: str = ""
    trust: Trust
    note: str = ""

    def __str__(self) -> str:
        """Tell it in a sentence."""
        address = f", {self.address}" if self.address else ""
        note = f" {self.note}" if self.note else ""
        return f"{self.title}{address} ({self.trust}).{note}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact(Generic[_Figure]):
    """A figure beside its source.

    Parameters
    ----------
    value
        The figure, in the unit that its name says.
    source
        Where it comes from.
    """

    value: _Figure
    source: Source


@dataclass(frozen=True, slots=True)
class Said:
    """A sentence of an answer, with the sources of the figures in it.

    Parameters
    ----------
    text
        The sentence.
    sources
        In the order in which they are used; none where everything is the user's own or counted.
    """

    text: str
    sources: tuple[Source, ...] = ()


def sources_of(said: Iterable[Said]) -> tuple[Source, ...]:
    """Gather the sources of several sentences, each once, in the order in which they are met."""
    return tuple(dict.fromkeys(source for one in said for source in one.sources))
