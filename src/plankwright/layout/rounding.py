"""From mixtures of patterns to whole sticks: best fit, and diving down the linear programme."""

import random
from collections.abc import Callable, Sequence

from plankwright.layout.columns import Columns, Cut, Effort
from plankwright.layout.patterns import Cutter, Pattern

_WHOLE = 1e-6
"""How far below a whole number the solver may leave one."""


def bare_area(cutter: Cutter, cuts: Sequence[Cut]) -> int:
    """Give the area of the needs that some cuts do not serve. [nm²]"""
    left = _left(cutter, cuts)
    return sum(need.area * count for need, count in zip(cutter.needs, left, strict=True))


def wood_area(cutter: Cutter, cuts: Sequence[Cut]) -> int:
    """Give the area of the sticks that are cut into. [nm²]"""
    return sum(cutter.sticks[cut.stick].area * cut.count for cut in cuts)


def filled(cutter: Cutter, cuts: Sequence[Cut], order: Callable[[int], tuple[int, ...]]) -> list[Cut]:
    """Serve what some cuts leave bare from what they leave of their sticks, then from sticks not yet cut.

    Parameters
    ----------
    cutter
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
    left = [need.count for need in cutter.needs]
    unused = [stick.count for stick in cutter.sticks]
    opened: list[tuple[int, dict[int, int]]] = []
    room: list[int] = []
    for cut in cuts:
        for _ in range(cut.count):
            pattern = dict(_within(cut.pattern, left))
            if pattern:
                unused[cut.stick] -= 1
                opened.append((cut.stick, pattern))
                room.append(_room_left(cutter, cut.stick, pattern))
                for need, count in pattern.items():
                    left[need] -= count
    for need in sorted(range(len(left)), key=order):
        size, height = cutter.sizes[need], cutter.needs[need].height
        for _ in range(left[need]):
            fit = [
                (cutter.sticks[stick].width - height, room[place] - size, place)
                for place, (stick, _) in enumerate(opened)
                if room[place] >= size and cutter.fits(need, stick)
            ]
            if fit:
                place = min(fit)[2]
                room[place] -= size
                opened[place][1][need] = opened[place][1].get(need, 0) + 1
                continue
            fresh = [
                (wood.width - height, wood.length, stick)
                for stick, wood in enumerate(cutter.sticks)
                if unused[stick] and cutter.fits(need, stick)
            ]
            if not fresh:
                break
            stick = min(fresh)[2]
            unused[stick] -= 1
            opened.append((stick, {need: 1}))
            room.append(cutter.rooms[stick] - size)
    return [Cut(stick, tuple(sorted(pattern.items())), 1) for stick, pattern in opened]


def dived(columns: Columns, effort: Effort, chance: random.Random | None, too_dear: int) -> list[Cut] | None:
    """Fix what the linear programme uses most, one step after another, and solve the rest anew.

    Parameters
    ----------
    columns
        Grows by the patterns that turn out to be useful on the way.
    effort
        May be used up.
    chance
        Picks by lot among patterns used in part; nothing to pick the most used.
    too_dear
        The dive is given up once it cannot cost less than this. [nm²]
    """
    left = [need.count for need in columns.cutter.needs]
    unused = [stick.count for stick in columns.cutter.sticks]
    cuts: list[Cut] = []
    spent = 0
    while any(left) and not effort.stopped():
        mixture = columns.generate(left, unused, effort)
        if spent + mixture.cost > too_dear - _WHOLE * columns.unit:
            return None
        picked = _picked(mixture.uses, chance)
        done = len(cuts)
        for place, count in picked:
            stick, pattern = columns.columns[place]
            for _ in range(min(count, unused[stick])):
                given = _within(pattern, left)
                if given:
                    cuts.append(Cut(stick, given, 1))
                    unused[stick] -= 1
                    spent += columns.stick_costs[stick]
                    for need, number in given:
                        left[need] -= number
        if len(cuts) == done:
            break
    return cuts


def _picked(uses: Sequence[float], chance: random.Random | None) -> list[tuple[int, int]]:
    """Pick (column, how often): all that are used whole times, else one."""
    whole = [(place, int(use + _WHOLE)) for place, use in enumerate(uses) if use >= 1 - _WHOLE]
    parts = [place for place, use in enumerate(uses) if use > _WHOLE]
    if whole or not parts:
        return whole
    if chance is None:
        return [(max(parts, key=lambda place: uses[place]), 1)]
    return [(chance.choices(parts, [uses[place] ** 2 for place in parts])[0], 1)]


def _left(cutter: Cutter, cuts: Sequence[Cut]) -> list[int]:
    left = [need.count for need in cutter.needs]
    for cut in cuts:
        for need, count in cut.pattern:
            left[need] = max(0, left[need] - count * cut.count)
    return left


def _within(pattern: Pattern, left: Sequence[int]) -> Pattern:
    return tuple((need, min(count, left[need])) for need, count in pattern if left[need])


def _room_left(cutter: Cutter, stick: int, pattern: dict[int, int]) -> int:
    return cutter.rooms[stick] - sum(cutter.sizes[need] * count for need, count in pattern.items())
