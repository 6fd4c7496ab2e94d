"""What no layout gets round: the worthiest way to cut a line of wood into items of some size and worth."""

from collections.abc import Sequence
from typing import TypeAlias

import numpy as np
import numpy.typing as npt

Pattern: TypeAlias = tuple[int, ...]
"""How a line of wood is cut: an item for each piece, in rising order."""

Numbers: TypeAlias = npt.NDArray[np.int64]


class Cutter:
    """The worthiest pattern for lines of every length up to a longest, each item as often as wanted.

    Parameters
    ----------
    sizes, worths
        Of each item, in whole numbers; what is worth nothing is left out, no other size may be zero.
    room
        The longest line.

    Attributes
    ----------
    worth
        What the best pattern of each length is worth.
    """

    def __init__(self, sizes: Sequence[int], worths: Sequence[int], room: int) -> None:
        self._items = _undominated(sizes, worths, room)
        self.worth: Numbers = np.zeros(room + 1, dtype=np.int64)
        self._last: Numbers = np.full(room + 1, -1, dtype=np.int64)
        self._full: Numbers = np.zeros(room + 1, dtype=np.int64)
        if self._items:
            block = self._items[0][0]
            for start in range(block, room + 1, block):
                self._fill(start, min(start + block, room + 1))

    def pattern(self, room: int) -> Pattern:
        """Give the best pattern of a length."""
        items = []
        full = int(self._full[room])
        while full:
            size, _, item = self._items[self._last[full]]
            items.append(item)
            full = int(self._full[full - size])
        return tuple(sorted(items))

    def _fill(self, start: int, stop: int) -> None:
        """Fill a stretch of the table no longer than the shortest item, which so needs earlier ones only."""
        value = self.worth[start:stop]
        for place, (size, worth, _) in enumerate(self._items):
            if size >= stop:
                break
            low = max(start, size)
            with_it = self.worth[low - size : stop - size] + worth
            better = with_it > value[low - start :]
            value[low - start :][better] = with_it[better]
            self._last[low:stop][better] = place
        before = self.worth[start - 1]
        top = np.maximum.accumulate(np.maximum(value, before))
        better = value > np.concatenate(([before], top[:-1]))
        lengths = np.where(better, np.arange(start, stop), self._full[start - 1])
        self._full[start:stop] = np.maximum.accumulate(lengths)
        self.worth[start:stop] = top


def _undominated(sizes: Sequence[int], worths: Sequence[int], room: int) -> list[tuple[int, int, int]]:
    """Give (size, worth, item) by rising size, without items that are no better than a shorter one."""
    items: list[tuple[int, int, int]] = []
    by_size = sorted(
        (size, -worth, item) for item, (size, worth) in enumerate(zip(sizes, worths, strict=True))
    )
    for size, loss, item in by_size:
        if size <= room and -loss > (items[-1][1] if items else 0):
            items.append((size, -loss, item))
    return items
