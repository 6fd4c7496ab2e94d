"""Which stick gives which piece, once the pieces are fixed: as much area as possible, then as little wood."""

from collections import defaultdict
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import TypeAlias, TypeVar

from plankwright.layout.packing.columns import Cut
from plankwright.layout.packing.effort import Work
from plankwright.layout.packing.kinds import Assortment, NeedKind, StickKind
from plankwright.layout.packing.rounding import bare_area, wood_spent
from plankwright.layout.packing.search import Search
from plankwright.layout.plan import Stick
from plankwright.layout.sticks import cut_from
from plankwright.measure import Nm
from plankwright.model import Rules

LengthPrices: TypeAlias = tuple[tuple[Nm, Fraction], ...]
"""What lengths of pieces are worth: (length [nm], price [nm²]), in rising order."""

_Key = TypeVar("_Key", bound=tuple[int, ...])


@dataclass(frozen=True, slots=True)
class Need:
    """A piece to be cut.

    Parameters
    ----------
    length
        Along the board. [nm]
    height
        Face width; a stick may be narrower by the width tolerance. [nm]
    hidden
        Whether a fixture hides all of it, so that a stick with a blemish will do.
    """

    length: Nm
    height: Nm
    hidden: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Packing:
    """Which piece is cut where, and how much better it could be.

    Parameters
    ----------
    chosen
        (place of a need, the rectangle of wood that it is cut from), in order of the needs.
    unplaced
        Places of the needs that found no wood.
    placed_nm2
        Area of the needs that are placed. [nm²]
    most_area_nm2
        No choice of sticks places more. [nm²]
    wood_nm2
        What is spent of the sticks that are cut into, less what is worth keeping of them. [nm²]
    least_wood_nm2
        No choice of sticks places every need with less; nothing when not all are placed. [nm²]
    spent
        Work that it took. [s]
    prices
        What the bounds rest on.
    """

    chosen: tuple[tuple[int, Stick], ...]
    unplaced: tuple[int, ...]
    placed_nm2: int
    most_area_nm2: int
    wood_nm2: int
    least_wood_nm2: int | None
    spent: float = field(compare=False)
    prices: tuple[LengthPrices, ...] = ()

    @property
    def proven(self) -> bool:
        """Whether no choice places more area, nor everything with less wood."""
        return self.placed_nm2 == self.most_area_nm2 and self.least_wood_nm2 in {None, self.wood_nm2}


def pack(
    needs: Sequence[Need],
    sticks: Sequence[Stick],
    rules: Rules,
    *,
    work: float,
    seed: int,
    lost: Sequence[int] = (),
    stopped: Callable[[], bool] = lambda: False,
) -> Packing:
    """Cut pieces of given sizes from sticks, one after another along each stick.

    Parameters
    ----------
    needs
        The pieces.
    sticks
        The wood; no two of them overlap.
    rules
        For the crosscut kerf, the width tolerance, and what is worth keeping.
    work
        How much to do at most. The same work and seed give the same packing. [s]
    seed
        For all chance.
    lost
        For each stick, what is lost of its board besides once it is cut into; nothing when left out. [nm²]
    stopped
        Asked now and then; true once the user wants no more. The best so far is given.

    Returns
    -------
    Packing
        Always valid, with bounds that hold whatever the work.
    """
    blemished = any(stick.hidden_only for stick in sticks)
    need_members = _alike([(need.length, need.height, need.hidden and blemished) for need in needs])
    stick_members = _alike(
        [
            (stick.length, stick.width, stick.hidden_only, spoilt)
            for stick, spoilt in zip(sticks, lost or (0,) * len(sticks), strict=True)
        ]
    )
    assortment = Assortment(
        [NeedKind(*key, len(members)) for key, members in need_members.items()],
        [
            StickKind(
                length,
                width,
                hidden_only,
                len(members),
                spoilt,
                rules.shortest_piece_nm if width >= rules.narrowest_course_nm else None,
            )
            for (length, width, hidden_only, spoilt), members in stick_members.items()
        ],
        kerf=rules.crosscut_kerf_nm,
        tolerance=rules.width_tolerance_nm,
    )
    search = Search(assortment, Work(work, stopped), seed)
    if needs and sticks:
        search.run()
    members = list(need_members.values()), list(stick_members.values())
    cut_out = _cut_out(search.best, needs, sticks, rules, members)
    total = sum(need.length * need.height for need in needs)
    bare = bare_area(assortment, search.best)
    return Packing(
        chosen=cut_out,
        unplaced=tuple(sorted(set(range(len(needs))) - {place for place, _ in cut_out})),
        placed_nm2=total - bare,
        most_area_nm2=total - search.least_bare,
        wood_nm2=wood_spent(assortment, search.best),
        least_wood_nm2=None if bare else search.least_wood,
        spent=work - search.work.left,
        prices=tuple(_by_length(assortment, proof) for proof in search.proofs),
    )


def lost_besides(sticks: Sequence[Stick], faces: Sequence[int]) -> list[int]:
    """Share out among the sticks of each board what of its face is in none of them.

    Parameters
    ----------
    sticks
        As they are before anything is cut.
    faces
        Face area of each board of the tally. [nm²]

    Returns
    -------
    list of int
        For each stick; together no more than is lost of the board. [nm²]
    """
    areas: dict[int, int] = defaultdict(int)
    for stick in sticks:
        areas[stick.board] += stick.length * stick.width
    return [
        max(0, faces[stick.board] - areas[stick.board]) * stick.length * stick.width // areas[stick.board]
        for stick in sticks
    ]


def _by_length(assortment: Assortment, prices: Sequence[Fraction]) -> LengthPrices:
    dearest: dict[Nm, Fraction] = {}
    for need, price in zip(assortment.needs, prices, strict=True):
        dearest[need.length] = max(price, dearest.get(need.length, price))
    return tuple(sorted(dearest.items()))


def _alike(keys: Sequence[_Key]) -> dict[_Key, list[int]]:
    """Give the places of each key, in order of the keys, so that the order of the input hardly matters."""
    members: dict[_Key, list[int]] = defaultdict(list)
    for place, key in enumerate(keys):
        members[key].append(place)
    return {key: members[key] for key in sorted(members)}


def _cut_out(
    cuts: Sequence[Cut],
    needs: Sequence[Need],
    sticks: Sequence[Stick],
    rules: Rules,
    members: tuple[Sequence[Sequence[int]], Sequence[Sequence[int]]],
) -> tuple[tuple[int, Stick], ...]:
    """Lay the pieces of each stick one after another, the longest first, a kerf between two."""
    wanted, wood = ([iter(places) for places in kinds] for kinds in members)
    chosen = []
    for cut in cuts:
        stick = sticks[next(wood[cut.stick])]
        places = [next(wanted[kind]) for kind, count in cut.pattern for _ in range(count)]
        along = stick.along_from
        for place in sorted(places, key=lambda place: (-needs[place].length, place)):
            need = needs[place]
            width = min(need.height, stick.width)
            chosen.append((place, cut_from(stick, along, need.length, stick.across_from, width)))
            along += need.length + rules.crosscut_kerf_nm
    return tuple(sorted(chosen, key=lambda choice: choice[0]))
