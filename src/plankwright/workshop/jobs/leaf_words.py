"""An answer of the trade for somebody at a screen, who knows neither files nor their keys nor commands."""

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from plankwright.paper.leaf import Grid, Leaf, Part
from plankwright.trade.source import Said

_INSTEAD: Mapping[str, str] = MappingProxyType(
    {
        "What is known of a lot of the tally can be told under [[lot]] in job.toml.": (
            "What is known of a lot can be told under Rules."
        ),
        "Say under [room] in job.toml what it is.": "Say under Rules what it is.",
        "set expansion_gap in job.toml to": "set the expansion gap under Rules to",
        "as trim under [[surface.opening]].": "as trim, with the opening.",
        "give some under [[price]] in job.toml to": "give some under Rules to",
        "give them under [[task]].": "give them under Rules.",
        "“plankwright enough” says which close it": "the layout says which boards close it",
    }
)
"""What a sentence says of files and commands, and what it says on a screen."""


def for_screen(leaf: Leaf) -> Leaf:
    """Give an answer with the names of screens in place of those of files and commands."""
    return replace(leaf, headline=_said(leaf.headline), parts=tuple(map(_part, leaf.parts)))


def _part(part: Part) -> Part:
    grid = part.grid
    return replace(
        part,
        said=tuple(map(_said, part.said)),
        grid=None if grid is None else replace(grid, rows=_rows(grid)),
    )


def _rows(grid: Grid) -> tuple[tuple[str, ...], ...]:
    return tuple(tuple(map(_text, row)) for row in grid.rows)


def _said(said: Said) -> Said:
    return replace(said, text=_text(said.text))


def _text(text: str) -> str:
    for before, after in _INSTEAD.items():
        text = text.replace(before, after)
    return text
