"""What is said to somebody at a screen, who knows neither files nor their keys nor commands."""

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from plankwright.paper.leaf import Grid, Leaf, Part
from plankwright.paper.pack import Pack, Section
from plankwright.trade.source import Said
from plankwright.workshop.ask_enough import Answer

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
        "Give its width under [surface.trim].": "Give the trim a width under Surfaces.",
        "Give its width as trim under [[surface.opening]].": "Give it a width as trim, with the opening.",
        "Give its thickness under [surface.framing] before": "Give its thickness under Surfaces before",
        "say so under [surface.framing].": "say so with the surface.",
        "or a smaller expansion_gap.": "or set a smaller expansion gap under Rules.",
        "a wider narrowest_course in the rules shares": "a wider narrowest course under Rules shares",
        "too narrow for any course: narrowest_course is more than it gives": (
            "too narrow for any course: the narrowest course of the rules is wider than what it gives"
        ),
        "as long as shortest_piece: it": "as long as the shortest piece of the rules: it",
        "of which job.toml says something: write": "of which something is said under Rules: write",
        "call it in job.toml as before.": "call it as before under Surfaces.",
        "call them in job.toml as before.": "call them as before under Surfaces.",
        "“plankwright enough” says which close it": "the layout says which boards close it",
    }
)
"""What a sentence says of files and commands, and what it says on a screen."""


def for_screen(leaf: Leaf) -> Leaf:
    """Give an answer with the names of screens in place of those of files and commands."""
    return replace(leaf, headline=_said(leaf.headline), parts=tuple(map(_part, leaf.parts)))


def answer_for_screen(answer: Answer) -> Answer:
    """Give an answer with the names of screens in place of those of keys."""
    return replace(
        answer,
        headline=on_screen(answer.headline),
        surfaces=tuple(
            replace(surface, sentences=tuple(map(on_screen, surface.sentences)))
            for surface in answer.surfaces
        ),
    )


def pack_for_screen(pack: Pack) -> Pack:
    """Give what is printed besides the lists, for somebody who has it printed from a screen."""

    def sections(those: tuple[Section, ...]) -> tuple[Section, ...]:
        return tuple(replace(one, leaves=tuple(map(for_screen, one.leaves))) for one in those)

    return replace(
        pack,
        before=sections(pack.before),
        at_the_wall=sections(pack.at_the_wall),
        after=sections(pack.after),
        mind=tuple(map(on_screen, pack.mind)),
    )


def _part(part: Part) -> Part:
    grid = part.grid
    return replace(
        part,
        said=tuple(map(_said, part.said)),
        grid=None if grid is None else replace(grid, rows=_rows(grid)),
    )


def _rows(grid: Grid) -> tuple[tuple[str, ...], ...]:
    return tuple(tuple(map(on_screen, row)) for row in grid.rows)


def _said(said: Said) -> Said:
    return replace(said, text=on_screen(said.text))


def on_screen(text: str) -> str:
    """Give a sentence with the names of screens in place of those of files, of their keys and of commands."""
    for before, after in _INSTEAD.items():
        text = text.replace(before, after)
    return text
