"""From mixtures of patterns to whole sticks: best fit, and diving down the linear programme."""

import random
from collections.abc import Callable, Sequence

from plankwright.layout.packing.columns import Columns, Cut
from plankwright.layout.packing.effort import Work
from plankwright.layout.packing.kinds import Assortment, Pattern

_WHOLE = 1e-6
"""How far below a whole number the solver may leave one."""


def bare_area(assortment: Assortment, cuts: Sequence[Cut]) -> int:
    """Give the area of the needs that some cuts do not serve. [nm²]"""
    left = _left(assortment, cuts)
    return sum(need.area * count for need, count in zip(assortment.needs, left, strict=True))


def wood_spent(assortment: Assortment, cuts: Sequence[Cut]) -> int:
    """Give what is spent of the sticks that are cut into. [nm²]"""
    return sum(assortment.cost(cut.stick, cut.pattern) * cut.count for cut in cuts)


def filled(assortment: Assortment, cuts: Sequence[Cut], order: Callable[[int], tuple[int, ...]]) -> list[Cut]:
    """Serve what some cuts leave bare from what they leave of their sticks, then from sticks not yet cut.

    Parameters
    ----------
    assortment
        What can be cut.
    cuts
        May give more of a need than there is; the surplus is not cut.
    order
        Sorts the kinds of needs; the first is served first, each from the stick that it fits best.

    Returns
    -------
    list of Cut
        One a stick, none giving more than is needed.
    """
    filling = Filling(assortment)
    for cut in cuts:
        for _ in range(cut.count):
            filling.cut(cut.stick, cut.pattern)
    for need in sorted(range(len(assortment.needs)), key=order):
        while filling.left[need] and filling.serve(need):
            pass
    return filling.cuts()


class Filling:
    """Sticks that are being cut, one by one.

    Parameters
    ----------
    assortment
        What can be cut.

    Attributes
    ----------
    left
        How many needs of each kind are still to be served.
    unused
        How many sticks of each kind are not cut into.
    opened
        The sticks that are, and what they are cut into.
    """

    def __init__(self, assortment: Assortment) -> None:
        self._assortment = assortment
        self.left = [need.count for need in assortment.needs]
        self.opened: list[tuple[int, dict[int, int]]] = []
        self.unused = [stick.count for stick in assortment.sticks]
        self._room: list[int] = []

    def cuts(self) -> list[Cut]:
        """Give what each stick is cut into."""
        return [Cut(stick, tuple(sorted(pattern.items())), 1) for stick, pattern in self.opened]

    def cut(self, stick: int, pattern: Pattern) -> None:
        """Cut into a stick for what of a pattern is needed, if anything is."""
        given = _within(pattern, self.left)
        if not given:
            return
        self.unused[stick] -= 1
        self.opened.append((stick, dict(given)))
        self._room.append(self._assortment.room_left(stick, given))
        for need, count in given:
            self.left[need] -= count

    def serve(self, need: int) -> bool:
        """Cut one more piece where it fits best; say whether it fits anywhere."""
        size, height = self._assortment.sizes[need], self._assortment.needs[need].height
        opened = [
            (self._assortment.sticks[stick].width - height, self._room[place] - size, place)
            for place, (stick, _) in enumerate(self.opened)
            if self._room[place] >= size and self._assortment.fits(need, stick)
        ]
        if opened:
            place = min(opened)[2]
            pattern = self.opened[place][1]
            pattern[need] = pattern.get(need, 0) + 1
            self._room[place] -= size
            self.left[need] -= 1
            return True
        fresh = [
            (wood.width - height, wood.length, stick)
            for stick, wood in enumerate(self._assortment.sticks)
            if self.unused[stick] and self._assortment.fits(need, stick)
        ]
        if fresh:
            self.cut(min(fresh)[2], ((need, 1),))
        return bool(fresh)


def dived(
    columns: Columns, work: Work, chance: random.Random | None, too_dear: int, enough: int
) -> list[Cut] | None:
    """Fix what the linear programme uses most, one step after another, and solve the rest anew.

    Parameters
    ----------
    columns
        Grows by the patterns that turn out to be useful on the way.
    work
        May be used up.
    chance
        Picks by lot among patterns used in part; nothing to pick the most used.
    too_dear
        The dive is given up once it cannot cost less than this. [nm²]
    enough
        Patterns are asked for until a mixture costs no more than this; nothing can cost less. [nm²]
    """
    filling = Filling(columns.assortment)
    while any(filling.left) and not work.over:
        spent = wood_spent(columns.assortment, filling.cuts())
        mixture = columns.generate(filling.left, filling.unused, work, enough=enough - spent)
        if spent + mixture.cost > too_dear - _WHOLE * columns.unit:
            return None
        done = len(filling.opened)
        for place, count in _picked(mixture.uses, chance):
            stick, pattern = columns.columns[place]
            for _ in range(min(count, filling.unused[stick])):
                filling.cut(stick, pattern)
        if len(filling.opened) == done:
            break
    return filling.cuts()


def _picked(uses: Sequence[float], chance: random.Random | None) -> list[tuple[int, int]]:
    """Pick (column, how often): all that are used whole times, else one."""
    whole = [(place, int(use + _WHOLE)) for place, use in enumerate(uses) if use >= 1 - _WHOLE]
    parts = [place for place, use in enumerate(uses) if use > _WHOLE]
    if whole or not parts:
        return whole
    if chance is None:
        return [(max(parts, key=lambda place: uses[place]), 1)]
    return [(chance.choices(parts, [uses[place] ** 2 for place in parts])[0], 1)]


def _left(assortment: Assortment, cuts: Sequence[Cut]) -> list[int]:
    left = [need.count for need in assortment.needs]
    for cut in cuts:
        for need, count in cut.pattern:
            left[need] = max(0, left[need] - count * cut.count)
    return left


def _within(pattern: Pattern, left: Sequence[int]) -> Pattern:
    return tuple((need, min(count, left[need])) for need, count in pattern if left[need])
