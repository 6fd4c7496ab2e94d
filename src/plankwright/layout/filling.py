"""One run of a course filled as well as the wood at hand allows, within a millisecond.

A shortest path over the places where joints may fall (dynamic programming): each step is bare or one piece,
priced by what it wastes on the stick that wastes least.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import numpy.typing as npt

from plankwright.layout.butting import can_butt, mate_groups, reaches_barred
from plankwright.layout.plan import PlannedPiece, Stick
from plankwright.layout.runs import JointPlace, Run
from plankwright.layout.sticks import cut_from, remainders
from plankwright.measure import Nm
from plankwright.model import JointPolicy, Rules

_Floats = npt.NDArray[np.float64]

_BARE_PRICE = 1e3
"""Price of bare area against wasted wood of equal area: far above any waste that covers it."""

_JOINT_PRICE = 0.5
"""A joint in sight costs as much as wasting a course over this many times the shortest piece."""

_END_KEPT, _BESIDE_KEPT = 0.05, 0.3
"""What is left of a stick and can be used again counts as wasted by this share: more beside a piece than
beyond it, since it is only as long as the piece."""

_BLEMISHED = 0.5
"""Waste of a blemished stick counts by this share: there are few places for it."""


@dataclass(frozen=True, slots=True)
class Filled:
    """A run filled.

    Parameters
    ----------
    price
        Area wasted, and what joints in sight and bare stretches count for. [nm²]
    pieces
        In order along the run.
    bare
        Stretches (start, end) that no stick was found for. [nm]
    """

    price: float
    pieces: tuple[PlannedPiece, ...]
    bare: tuple[tuple[Nm, Nm], ...]


@dataclass(frozen=True, slots=True)
class _Move:
    """From one place of a run to another, by a piece or bare."""

    first: int
    last: int
    bare: bool


@dataclass(frozen=True, slots=True)
class _Path:
    """The cheapest way along a run: stretches (start, end, bare) in order."""

    price: float
    moves: tuple[tuple[Nm, Nm, bool], ...]


@dataclass(frozen=True, slots=True)
class _Steps:
    """Every piece that a run could have, by its first place; `ends` and `lengths` are parallel."""

    ends: tuple[int, ...]
    lengths: _Floats
    starting_at: tuple[tuple[int, ...], ...]


def fill_run(run: Run, height: Nm, sticks: Sequence[Stick], near: Sequence[Nm], rules: Rules) -> Filled:
    """Fill a run with the best of each group of mates, or of all wood together when its joints are concealed.

    Parameters
    ----------
    run, height
        What to cover, and the height of the course. [nm]
    sticks
        The wood at hand.
    near
        Joints in sight of a touching course, to keep the stagger from. [nm]
    rules
        What a piece and a joint must respect.

    Returns
    -------
    Filled
        Each piece cut from its own part of the wood.
    """
    fit = [
        stick
        for stick in sticks
        if stick.makes(height, rules.width_tolerance_nm) and (run.concealed or not stick.hidden_only)
    ]
    in_sight = rules.joints is not JointPolicy.NEVER
    joints = [
        joint
        for joint in run.joints
        if joint.hidden or (in_sight and all(abs(joint.at - at) >= rules.stagger_nm for at in near))
    ]
    groups = mate_groups(fit, rules)
    trials = [(mates, joints) for mates in groups]
    if len(groups) != 1:
        trials.append((fit, [joint for joint in joints if joint.hidden]))
    paths = [_shortest_path(run, places, height, wood, rules) for wood, places in trials]
    best = min(range(len(trials)), key=lambda index: paths[index].price)
    return _cut(run, paths[best], height, trials[best][0], rules)


def _shortest_path(
    run: Run, joints: Sequence[JointPlace], height: Nm, sticks: Sequence[Stick], rules: Rules
) -> _Path:
    places = (run.start, *(joint.at for joint in joints), run.end)
    steps = _steps(places, run.nails, run.barred, rules)
    prices = _prices(run, places, steps, sticks, height, rules)
    in_sight = [0.0, *(0.0 if joint.hidden else 1.0 for joint in joints), 0.0]
    joint_price = _JOINT_PRICE * float(rules.shortest_piece_nm) * height
    last = len(places) - 1
    reached = [0.0] + [_BARE_PRICE * height * (place - run.start) for place in places[1:]]
    came = [_Move(index - 1, index, bare=True) for index in range(last + 1)]
    for place in range(last):
        bare = reached[place] + _BARE_PRICE * height * (places[place + 1] - places[place])
        if bare < reached[place + 1]:
            reached[place + 1], came[place + 1] = bare, _Move(place, place + 1, bare=True)
        for index in steps.starting_at[place]:
            step = steps.ends[index]
            price = reached[place] + prices[index] + joint_price * in_sight[step]
            if price < reached[step]:
                reached[step], came[step] = price, _Move(place, step, bare=False)
    path, place = [], last
    while place:
        path.append(came[place])
        place = came[place].first
    return _Path(
        reached[last], tuple((places[move.first], places[move.last], move.bare) for move in reversed(path))
    )


@lru_cache(maxsize=20_000)
def _steps(
    places: tuple[Nm, ...], nails: tuple[Nm, ...], barred: tuple[tuple[Nm, Nm], ...], rules: Rules
) -> _Steps:
    ends: list[int] = []
    lengths: list[Nm] = []
    starting_at = []
    last = len(places) - 1
    for i in range(last):
        first = len(ends)
        for j in range(i + 1, last + 1):
            alone = i == 0 and j == last
            if reaches_barred(places[i], places[j], barred):
                continue
            if alone or can_butt(places[i], places[j], nails, rules):
                ends.append(j)
                lengths.append(places[j] - places[i])
        starting_at.append(tuple(range(first, len(ends))))
    return _Steps(tuple(ends), np.array(lengths, dtype=np.float64), tuple(starting_at))


def _prices(
    run: Run, places: Sequence[Nm], steps: _Steps, sticks: Sequence[Stick], height: Nm, rules: Rules
) -> list[float]:
    """Price each step by its waste on the stick that wastes least; infinite where none is long enough."""
    if not steps.ends or not sticks:
        return [float("inf")] * len(steps.ends)
    waste = _waste(steps.lengths, sticks, height, rules)
    blemished = [number for number, stick in enumerate(sticks) if stick.hidden_only]
    if blemished:
        for first, numbers in enumerate(steps.starting_at):
            for number in numbers:
                if not run.hides(places[first], places[steps.ends[number]]):
                    waste[number, blemished] = np.inf
    prices: list[float] = waste.min(axis=1).tolist()
    return prices


def _waste(lengths: _Floats, sticks: Sequence[Stick], height: Nm, rules: Rules) -> _Floats:
    """Give the area that a piece of each length would waste on each stick, all of them wide enough. [nm²]

    Shape (n_lengths, n_sticks); infinite where the stick is too short.
    """
    need = lengths[:, None]
    have = np.array([stick.length for stick in sticks], dtype=np.float64)[None, :]
    width = np.array([stick.width for stick in sticks], dtype=np.float64)[None, :]
    hidden = np.array([stick.hidden_only for stick in sticks])[None, :]
    rest = have - need
    kept = rest >= rules.shortest_piece_nm + rules.crosscut_kerf_nm
    ends = np.where(kept, rules.crosscut_kerf_nm + _END_KEPT * rest, rest) * width
    spare = np.maximum(width - height, 0.0)
    beside = np.where(
        spare >= rules.narrowest_course_nm + rules.rip_kerf_nm,
        rules.rip_kerf_nm + _BESIDE_KEPT * spare,
        spare,
    )
    waste = ends + beside * need
    return np.where(rest >= 0, np.where(hidden, _BLEMISHED * waste, waste), np.inf)


def _cut(run: Run, path: _Path, height: Nm, sticks: Sequence[Stick], rules: Rules) -> Filled:
    """Cut the pieces of a path, the longest first; one that finds no stick any more is left bare."""
    free, pieces, bare, price = list(sticks), [], [], path.price
    for start, end, is_bare in sorted(path.moves, key=lambda move: (move[0] - move[1], move[0])):
        fit = [stick for stick in free if not stick.hidden_only or run.hides(start, end)]
        stick = None if is_bare else _best(fit, end - start, height, rules)
        if stick is None:
            price += 0.0 if is_bare else _BARE_PRICE * height * (end - start)
            bare.append((start, end))
            continue
        part = cut_from(stick, stick.along_from, end - start, stick.across_from, min(height, stick.width))
        pieces.append(PlannedPiece(part, start, end))
        at = free.index(stick)
        free[at : at + 1] = [
            rest for rest in remainders(stick, part, rules) if rest.makes(height, rules.width_tolerance_nm)
        ]
    return Filled(price, tuple(sorted(pieces, key=lambda piece: piece.start)), tuple(sorted(bare)))


def _best(sticks: Sequence[Stick], length: Nm, height: Nm, rules: Rules) -> Stick | None:
    if not sticks:
        return None
    waste = _waste(np.array([float(length)]), sticks, height, rules)[0]
    index = int(waste.argmin())
    return sticks[index] if np.isfinite(waste[index]) else None
