"""Which sticks are laid end to end along which run: as much as possible covered, then with as little wood."""

import math
import random
from collections import Counter, defaultdict
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from plankwright.layout.butting import mate_groups
from plankwright.layout.end_to_end.programme import Asked, Pool, Row, Wood
from plankwright.layout.end_to_end.search import Chosen, best_rows
from plankwright.layout.plan import Stick
from plankwright.measure import Nm
from plankwright.model import Rules


@dataclass(frozen=True, slots=True)
class Stretch:
    """A run to cover.

    Parameters
    ----------
    length
        [nm].
    height
        Of its course. [nm]
    hidden
        Whether a fixture hides all of it, so that a stick with a blemish will do, and any two may butt.
    """

    length: Nm
    height: Nm
    hidden: bool


@dataclass(frozen=True, slots=True)
class Joining:
    """What was found.

    Parameters
    ----------
    chosen
        For each stretch its sticks and how long the piece of each is [nm], in order; none where it is bare.
    spent
        Work that it took. [s]
    """

    chosen: tuple[tuple[tuple[Stick, Nm], ...], ...]
    spent: float


def join(
    stretches: Sequence[Stretch],
    sticks: Sequence[Stick],
    rules: Rules,
    grid: Nm,
    *,
    work: float,
    chance: random.Random,
    stopped: Callable[[], bool],
) -> Joining:
    """Choose the sticks of each stretch.

    Parameters
    ----------
    stretches
        To be covered. Pieces may butt anywhere along them.
    sticks
        The wood at hand; each serves one stretch.
    rules
        For the shortest piece and what may butt in sight.
    grid
        Lengths count in whole steps of it. [nm]
    work
        How long to search. [s]
    chance
        Gives the seed of the solver.
    stopped
        Whether to stop.
    """
    rows = sorted(Counter(stretches), key=lambda row: (-row.length, -row.height, row.hidden))
    lengths = [row.length for row in rows] + [stick.length for stick in sticks]
    step = max(grid, math.gcd(*lengths))
    long_enough = [stick for stick in sticks if stick.length >= rules.shortest_piece_nm]
    groups = [frozenset(some) for some in mate_groups(long_enough, rules)]
    kinds: dict[tuple[int, int, tuple[Asked, ...]], list[Stick]] = defaultdict(list)
    for stick in long_enough:
        serves = tuple(_serves(stick, rows, rules, groups))
        if serves:
            kinds[stick.length // step, stick.width // grid, serves].append(stick)
    wood = [
        Wood(length=length, width=width, count=len(some), serves=frozenset(serves))
        for (length, width, serves), some in kinds.items()
    ]
    counts = Counter(stretches)
    pool = Pool(
        rows=tuple(
            Row(
                length=-(-row.length // step),
                height=-(-row.height // grid),
                count=counts[row],
                most=row.length // max(1, rules.shortest_piece_nm),
                sets=1 if row.hidden else len(groups),
            )
            for row in rows
        ),
        wood=tuple(wood),
    )
    found = best_rows(pool, work=work, seed=chance.randrange(2**31), stopped=stopped)
    return Joining(_dealt(stretches, rows, list(kinds.values()), found, rules), found.spent)


def _serves(
    stick: Stick, rows: Sequence[Stretch], rules: Rules, groups: Sequence[frozenset[Stick]]
) -> Iterator[Asked]:
    """Give the stretches that a stick can be used in, each with the number of the set that it is of.

    Where a fixture hides all of a stretch any two may butt, so there is one set; else there are these groups.
    """
    mine = [place for place, some in enumerate(groups) if stick in some]
    for number, row in enumerate(rows):
        if stick.makes(row.height, rules.width_tolerance_nm) and (row.hidden or not stick.hidden_only):
            for place in [0] if row.hidden else mine:
                yield number, place


def _dealt(
    stretches: Sequence[Stretch],
    rows: Sequence[Stretch],
    kinds: Sequence[list[Stick]],
    found: Chosen,
    rules: Rules,
) -> tuple[tuple[tuple[Stick, Nm], ...], ...]:
    """Give each stretch sticks of the kinds that were chosen for one like it."""
    left = [list(some) for some in kinds]
    waiting = {number: list(chosen) for number, chosen in found.rows.items()}
    dealt = []
    for stretch in stretches:
        chosen = waiting.get(rows.index(stretch))
        some = [left[kind].pop() for kind in chosen.pop()] if chosen else []
        dealt.append(_trimmed(some, stretch.length, rules.shortest_piece_nm))
    return tuple(dealt)


def _trimmed(sticks: Sequence[Stick], length: Nm, shortest: Nm) -> tuple[tuple[Stick, Nm], ...]:
    """Take what is too much off the last sticks, none of which gets shorter than a piece may be."""
    lengths = [stick.length for stick in sticks]
    excess = sum(lengths) - length
    for place in reversed(range(len(lengths))):
        off = min(max(0, excess), max(0, lengths[place] - shortest))
        lengths[place] -= off
        excess -= off
    return tuple(zip(sticks, lengths, strict=True))
