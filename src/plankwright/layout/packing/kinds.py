"""Everything that can be cut: kinds of needs, kinds of sticks, which go together, and what a stick costs.

A kerf stands between two pieces and none after the last, so pieces of sizes `length + kerf` fit a stick just
when they add up to at most `stick length + kerf`.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TypeAlias

from plankwright.measure import Nm

Pattern: TypeAlias = tuple[tuple[int, int], ...]
"""Pieces of a stick: (kind of need, how many), each kind once, in rising order."""

_FINEST = 131_072
"""Lengths are counted exactly where the longest stick is at most so many units of the sizes."""

_COARSE = 16_384
"""Elsewhere, and where haste is more than care, they are rounded to so many parts of the longest stick."""

_MOST_CELLS = 2**25
"""So many cells a table over room and kinds of needs may have."""


@dataclass(frozen=True, slots=True)
class NeedKind:
    """Needs that are alike.

    Parameters
    ----------
    length, height
        [nm]
    hidden
        Whether a stick with a blemish will do.
    count
        How many.
    """

    length: Nm
    height: Nm
    hidden: bool
    count: int

    @property
    def area(self) -> int:
        """Of one. [nm²]"""
        return self.length * self.height


@dataclass(frozen=True, slots=True)
class StickKind:
    """Sticks that are alike.

    Parameters
    ----------
    length, width
        [nm]
    hidden_only
        Whether it has a blemish.
    count
        How many.
    lost
        What is lost of the board besides, once the stick is cut into. [nm²]
    kept_from
        What is left past the last kerf is kept when it is as long as this; nothing when it never is. [nm]
    """

    length: Nm
    width: Nm
    hidden_only: bool
    count: int
    lost: int = 0
    kept_from: Nm | None = None

    @property
    def area(self) -> int:
        """Of one. [nm²]"""
        return self.length * self.width

    @property
    def cost(self) -> int:
        """What is spent of one when nothing of it is kept. [nm²]"""
        return self.area + self.lost


class Assortment:
    """Everything that can be cut.

    Parameters
    ----------
    needs, sticks
        The kinds.
    kerf
        Width of the crosscut. [nm]
    tolerance
        How much narrower than its course a piece may be. [nm]

    Attributes
    ----------
    sizes, rooms
        Of each kind of need and of stick, with a kerf. [nm]
    unit
        Tables over room have a cell for each. [nm]
    coarse_unit
        Tables that are made in haste have a cell for each. [nm]
    exact
        Whether every size is a whole number of units.
    """

    def __init__(
        self, needs: Sequence[NeedKind], sticks: Sequence[StickKind], *, kerf: Nm, tolerance: Nm
    ) -> None:
        self.needs, self.sticks = tuple(needs), tuple(sticks)
        self.kerf, self.tolerance = kerf, tolerance
        self.sizes = [need.length + kerf for need in needs]
        self.rooms = [stick.length + kerf for stick in sticks]
        longest = max(self.rooms, default=0)
        unit = math.gcd(*self.sizes) or 1
        self.exact = longest <= min(_FINEST, _MOST_CELLS // max(1, len(self.needs))) * unit
        self.coarse_unit = max(unit, -(-longest // _COARSE))
        self.unit = unit if self.exact else self.coarse_unit

    def fits(self, need: int, stick: int) -> bool:
        """Whether a piece of this kind can be cut from a stick of that kind."""
        wanted, wood = self.needs[need], self.sticks[stick]
        return (
            wanted.length <= wood.length
            and wanted.height <= wood.width + self.tolerance
            and (wanted.hidden or not wood.hidden_only)
        )

    def room_left(self, stick: int, pattern: Pattern) -> int:
        """Give the room for further sizes once a pattern is cut; negative where it does not fit. [nm]"""
        return self.rooms[stick] - sum(self.sizes[need] * count for need, count in pattern)

    def cost(self, stick: int, pattern: Pattern) -> int:
        """Give what is spent of a stick that is cut by a pattern. [nm²]"""
        wood = self.sticks[stick]
        left = self.room_left(stick, pattern) - self.kerf
        kept = wood.kept_from is not None and left >= max(1, wood.kept_from)
        return wood.cost - (left * wood.width if kept else 0)

    def keeps_nothing(self) -> bool:
        """Whether whatever is cut into is spent whole."""
        shortest = min(self.sizes, default=0)
        return all(
            wood.kept_from is None or room - shortest - self.kerf < max(1, wood.kept_from)
            for wood, room in zip(self.sticks, self.rooms, strict=True)
        )
