"""An answer as it is told: a headline, and parts of sentences and tables, each with its sources.

The terminal, JSON and paper show the same leaf, so that they never say different things.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from plankwright.trade.source import Said, Source, sources_of

DONE = " (done)"
"""Ends a cell of which the box is ticked already."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Grid:
    """A table of an answer.

    Parameters
    ----------
    columns
        Its headings.
    rows
        As many cells as headings in each.
    ticks
        Columns in whose cells a box to tick stands on paper, where they hold anything.
    """

    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    ticks: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A part of an answer.

    Parameters
    ----------
    title
        What it is about.
    said
        Sentences.
    grid
        A table below them; nothing where there is none.
    """

    title: str
    said: tuple[Said, ...] = ()
    grid: Grid | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Leaf:
    """An answer.

    Parameters
    ----------
    title
        What was asked.
    headline
        The answer in a sentence.
    parts
        What stands behind it.
    """

    title: str
    headline: Said
    parts: tuple[Part, ...]

    @property
    def told_parts(self) -> tuple[Part, ...]:
        """Give the parts in which anything is told."""
        return tuple(part for part in self.parts if part.said or part.grid is not None)

    @property
    def sources(self) -> tuple[Source, ...]:
        """Where its figures come from, each once, in the order in which they are met."""
        return sources_of(self._every())

    def _every(self) -> Iterator[Said]:
        yield self.headline
        for part in self.parts:
            yield from part.said
