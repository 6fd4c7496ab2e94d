"""What is printed besides maps, cut list and hanging sheets, and how its sources are numbered."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from plankwright.paper.hanging_sheet import Planned
from plankwright.paper.leaf import Leaf, Part
from plankwright.trade.source import Said, Source


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """Leaves that are read together.

    Parameters
    ----------
    title
        Stands at the head of its pages.
    leaves
        One below the other.
    """

    title: str
    leaves: tuple[Leaf, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Pack:
    """What the trade's knowledge adds to the sheets of a job.

    Parameters
    ----------
    before
        What is read before the first cut, such as what is done to the boards.
    at_the_wall
        What is read before the first piece hangs.
    after
        What stands behind all lists: what to buy, what can hurt.
    planned
        What was planned for each surface, by its id.
    mind
        What nobody checked and whoever hangs the boards must know, in sentences for the first sheet.
    """

    before: tuple[Section, ...] = ()
    at_the_wall: tuple[Section, ...] = ()
    after: tuple[Section, ...] = ()
    planned: Mapping[str, Planned] = field(default_factory=dict)
    mind: tuple[str, ...] = ()

    @property
    def sources(self) -> tuple[Source, ...]:
        """Where the figures of all leaves come from, each once, in the order in which they are met."""
        sections = (*self.before, *self.at_the_wall, *self.after)
        leaves = (leaf for section in sections for leaf in section.leaves)
        return tuple(dict.fromkeys(source for leaf in leaves for source in leaf.sources))


NOTHING_BESIDES = Pack()
"""Only maps, cut list and hanging sheets."""


def printed(section: Section, sources: Sequence[Source]) -> dict[str, object]:
    """Give a section as its template reads it.

    Parameters
    ----------
    section
        The section.
    sources
        Those of the whole pack; a sentence refers to them by their number.
    """
    return {"title": section.title, "leaves": [_leaf(leaf, sources) for leaf in section.leaves]}


def _leaf(leaf: Leaf, sources: Sequence[Source]) -> dict[str, object]:
    return {
        "title": leaf.title,
        "headline": _said(leaf.headline, sources),
        "parts": [_part(part, sources) for part in leaf.told_parts],
    }


def printed_sources(sources: Sequence[Source]) -> list[str]:
    """Give the sources of a pack as sentences, in the order of their numbers."""
    return [str(source) for source in sources]


def _part(part: Part, sources: Sequence[Source]) -> dict[str, object]:
    return {
        "title": part.title,
        "said": [_said(said, sources) for said in part.said],
        "grid": None
        if part.grid is None
        else {
            "columns": part.grid.columns,
            "rows": part.grid.rows,
            "ticks": part.grid.ticks,
        },
    }


def _said(said: Said, sources: Sequence[Source]) -> dict[str, object]:
    numbers = [sources.index(source) + 1 for source in said.sources if source in sources]
    return {"text": said.text, "refs": ", ".join(map(str, numbers))}
