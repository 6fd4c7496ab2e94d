"""Cutting patterns: which pieces a stick can give, counted by kind, and the worthiest pattern of each stick.

A kerf stands between two pieces and none after the last, so pieces of sizes `length + kerf` fit a stick just
when they add up to at most `stick length + kerf`.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
import numpy.typing as npt

from plankwright.measure import Nm

Pattern: TypeAlias = tuple[tuple[int, int], ...]
"""Pieces of a stick: (kind of need, how many), each kind once, in rising order."""

_CELLS = 16_384
"""The worthiest pattern is found exactly where the longest stick is at most so many units of the sizes."""


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
    """

    length: Nm
    width: Nm
    hidden_only: bool
    count: int

    @property
    def area(self) -> int:
        """Of one. [nm²]"""
        return self.length * self.width


@dataclass(frozen=True, slots=True)
class Worthiest:
    """The best that each kind of stick can give, for one set of prices.

    Parameters
    ----------
    worths
        For each kind of stick, the sum of the prices of its pieces; no pattern is worth more.
    patterns
        For each kind of stick, a pattern; worth as much where pricing is exact, nearly so elsewhere.
    """

    worths: tuple[int, ...]
    patterns: tuple[Pattern, ...]


class Assortment:
    """Everything that can be cut: the needs, the sticks and which of them go together.

    Parameters
    ----------
    needs, sticks
        The kinds.
    kerf
        Width of the crosscut. [nm]
    tolerance
        How much narrower than its course a piece may be. [nm]
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
        self.exact = longest <= _CELLS * unit
        self._unit = unit if self.exact else -(-longest // _CELLS)

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

    def worthiest(self, prices: Sequence[int], limits: Sequence[int]) -> Worthiest:
        """Find the worthiest pattern of each kind of stick.

        Parameters
        ----------
        prices
            Of each kind of need; what a pattern adds up to must stay below 2**63.
        limits
            How many of each kind a pattern may hold.
        """
        worths, patterns = self._fill(prices, limits, rounded_up=False)
        if not self.exact:
            _, tighter = self._fill(prices, limits, rounded_up=True)
            patterns = [
                pattern if self.room_left(stick, pattern) >= 0 else tighter[stick]
                for stick, pattern in enumerate(patterns)
            ]
        return Worthiest(tuple(worths), tuple(patterns))

    def _fill(
        self, prices: Sequence[int], limits: Sequence[int], *, rounded_up: bool
    ) -> tuple[list[int], list[Pattern]]:
        """Fill every stick; rounded up, each pattern fits, and rounded down, no worth is too low."""
        worths = [0] * len(self.sticks)
        patterns: list[Pattern] = [()] * len(self.sticks)
        sizes = [-(-size // self._unit) if rounded_up else size // self._unit for size in self.sizes]
        for hidden_only in (False, True):
            sticks = [place for place, stick in enumerate(self.sticks) if stick.hidden_only is hidden_only]
            if not sticks:
                continue
            needs = [
                place
                for place, need in enumerate(self.needs)
                if (need.hidden or not hidden_only) and prices[place] > 0 and limits[place] > 0
            ]
            knapsack = _Knapsack(max(self.rooms[stick] for stick in sticks) // self._unit)
            needs.sort(key=lambda place: self.needs[place].height, reverse=True)
            for stick in sorted(sticks, key=lambda place: self.sticks[place].width):
                widest = self.sticks[stick].width + self.tolerance
                while needs and self.needs[needs[-1]].height <= widest:
                    need = needs.pop()
                    knapsack.offer(need, sizes[need], prices[need], limits[need])
                worths[stick], patterns[stick] = knapsack.best(self.rooms[stick] // self._unit)
        return worths, patterns


class _Knapsack:
    """Dynamic programming over room, to which items are offered one kind after another.

    At any time it knows the best filling of every room up to its own, with what was offered so far.
    """

    def __init__(self, room: int) -> None:
        self._worth: npt.NDArray[np.int64] = np.zeros(room + 1, dtype=np.int64)
        self._stages: list[tuple[int, int, int, npt.NDArray[np.bool_]]] = []

    def offer(self, item: int, size: int, price: int, limit: int) -> None:
        """Take in up to so many of an item, by powers of two so that few steps serve many copies."""
        room = len(self._worth) - 1
        left, copies = (min(limit, room // size) if size else limit), 1
        while left > 0:
            copies = min(copies, left)
            weight, worth = size * copies, price * copies
            with_item = self._worth[: room + 1 - weight] + worth
            without = self._worth[weight:]
            self._stages.append((item, copies, weight, with_item > without))
            np.maximum(without, with_item, out=without)
            left -= copies
            copies *= 2

    def best(self, room: int) -> tuple[int, Pattern]:
        """Give the worth of the best filling of a room, and the filling."""
        counts: dict[int, int] = {}
        worth = int(self._worth[room])
        for item, copies, weight, taken in reversed(self._stages):
            if room >= weight and taken[room - weight]:
                counts[item] = counts.get(item, 0) + copies
                room -= weight
        return worth, tuple(sorted(counts.items()))
