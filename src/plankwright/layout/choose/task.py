"""What the solver is asked: a stretch of courses, the wood at hand, and what counts how much."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeAlias

from plankwright.layout.plan import Plan, Stick
from plankwright.layout.rows import Row, Stack
from plankwright.layout.strips import Strips
from plankwright.measure import Nm
from plankwright.model import Rules


@dataclass(frozen=True, slots=True, kw_only=True)
class Prices:
    """What one of each costs, in whole numbers; only their proportions matter.

    Parameters
    ----------
    bare, wood
        A square step of the grid that stays bare, or of wood that is used up.
    joint
        A joint in sight.
    piece
        A piece.
    new, new_wood
        A piece of an endless stick, and a square step of it.
    """

    bare: int
    joint: int
    wood: int
    piece: int
    new: int = 0
    new_wood: int = 0


Terms: TypeAlias = Callable[[Row, Nm, Nm, Stick], int | None]
"""What a piece of a stick costs besides in a kind of course, from a place along it to another; nothing when
there must be no such piece."""


def free_of_terms(_row: Row, _start: Nm, _end: Nm, _stick: Stick) -> int:
    """Let every piece cost nothing besides."""
    return 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """A stretch of courses to be chosen, and how much may be considered for it.

    Parameters
    ----------
    strips
        The surface.
    sticks
        The wood that may be used.
    stack
        What to cover.
    prices
        What to minimise.
    grid
        Step of lengths. [nm]
    bare_allowed
        Whether anything may stay bare.
    rip_at_most
        A stick wider than its course by more than this is not considered for it, unless it has room for
        another lane; nothing to consider every stick. [nm]
    lanes
        Into how many lanes a wide stick may be ripped, one or two.
    now
        The courses there already, to start from.
    terms
        What single pieces cost besides.
    """

    strips: Strips
    sticks: tuple[Stick, ...]
    stack: Stack
    prices: Prices
    grid: Nm
    bare_allowed: bool
    rip_at_most: Nm | None
    lanes: int
    now: Plan
    terms: Terms = free_of_terms

    @property
    def pinned(self) -> frozenset[Stick]:
        """The sticks of pieces that stay, of which nothing else is cut."""
        return frozenset(each.piece.stick for row in self.stack.rows for each in row.pinned)

    @property
    def rules(self) -> Rules:
        """What a layout must respect."""
        return self.strips.rules

    def up(self, length: Nm) -> int:
        """Round what is asked for up to the grid. [steps]"""
        return -(-length // self.grid)

    def down(self, length: Nm) -> int:
        """Round what is given down to the grid. [steps]"""
        return length // self.grid
