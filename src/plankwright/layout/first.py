"""A first layout, within a moment: course by course from the start side, many times over with a little chance.

Each course takes the height that wastes least wood for the area it covers. A run is filled by a shortest path over
its joint places (dynamic programming), a step being one piece cut from the stick that wastes least.
"""

import random
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import numpy.typing as npt

from plankwright.layout.plan import Plan, PlannedCourse, PlannedPiece, Stick
from plankwright.layout.sticks import cut_from
from plankwright.layout.strips import JointPlace, Run, Strips
from plankwright.measure import Nm
from plankwright.model import EdgeProfile, JointPolicy, Rules

_Floats = npt.NDArray[np.float64]

_BARE_PRICE = 1e3
"""Price of bare area against wasted wood of equal area: far above any waste that covers it."""

_HEIGHTS_TRIED = 10
"""How many heights are tried for a course."""

_JOINT_PRICE_IN = 0.5
"""A joint in sight costs as much as wasting a course over this many times the shortest piece."""


@dataclass(frozen=True, slots=True)
class _Filled:
    """A run filled as well as the sticks allow."""

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


def build(strips: Strips, sticks: Sequence[Stick], chance: random.Random) -> Plan:
    """Lay out a whole surface once, from its start side.

    Parameters
    ----------
    strips
        The surface.
    sticks
        The wood at hand.
    chance
        Perturbs the choice of heights; the same state gives the same plan.

    Returns
    -------
    Plan
        Covers the surface from start to end; what no stick could cover is marked bare.
    """
    return extend(strips, sticks, (), chance)


def extend(strips: Strips, sticks: Sequence[Stick], below: Plan, chance: random.Random) -> Plan:
    """Lay out what is left of a surface above the courses given.

    Parameters
    ----------
    strips
        The surface.
    sticks
        The wood that the courses given have left.
    below
        Courses from the start side that stay as they are.
    chance
        Perturbs the choice of heights.
    """
    left, courses = list(sticks), list(below)
    low = below[-1].high if below else strips.start
    spread = chance.choice((0.0, 0.1, 0.3, 0.6))
    while low < strips.must_end:
        best: tuple[float, PlannedCourse] | None = None
        for height in _some(_heights(strips, left, low), chance):
            course, price = _course(strips, left, low, low + height, courses)
            area = height * max(1, sum(run.length for run in strips.runs(low, low + height)))
            figure = (price / area + 0.02) * (1 + spread * chance.random())
            if best is None or figure < best[0]:
                best = (figure, course)
        if best is None:
            break
        courses.append(best[1])
        left = without(left, best[1], strips.rules)
        low = best[1].high
    return tuple(courses)


def fill_course(
    strips: Strips, sticks: Sequence[Stick], low: Nm, high: Nm, near: Sequence[PlannedCourse]
) -> PlannedCourse:
    """Fill one strip as well as the sticks allow.

    Parameters
    ----------
    strips, sticks
        The surface and the wood at hand.
    low, high
        The strip. [nm]
    near
        Courses already there; the joints in sight of those that touch the strip are kept clear of.
    """
    return _course(strips, sticks, low, high, near)[0]


def without(sticks: Sequence[Stick], course: PlannedCourse, rules: Rules) -> list[Stick]:
    """Give the sticks left once a course is cut from them, a cut stick giving its useful remainders."""
    left = list(sticks)
    # Every piece is cut from the corner of what is left of its stick, so in this order each comes before those
    # that were cut from its remainders.
    parts = sorted(
        (piece.stick for piece in course.pieces), key=lambda part: (part.along_from, part.across_from)
    )
    for part in parts:
        for index, stick in enumerate(left):
            if (
                stick.board == part.board
                and stick.along_from <= part.along_from
                and part.along_to <= stick.along_to
                and stick.across_from <= part.across_from
                and part.across_to <= stick.across_to
            ):
                left[index : index + 1] = _remainders(stick, part, rules)
                break
    return left


def _remainders(stick: Stick, part: Stick, rules: Rules) -> list[Stick]:
    along = part.along_to + rules.crosscut_kerf_nm
    across = part.across_to + rules.rip_kerf_nm
    beyond = cut_from(stick, along, stick.along_to - along, stick.across_from, stick.width)
    beside = cut_from(stick, part.along_from, part.length, across, stick.across_to - across)
    return [
        rest
        for rest in (beyond, beside)
        if rest.length >= rules.shortest_piece_nm and rest.width >= rules.narrowest_course_nm
    ]


def _heights(strips: Strips, sticks: Sequence[Stick], low: Nm) -> list[Nm]:
    """Give the heights worth trying for the next course: the widths at hand, and what ends well."""
    rules = strips.rules
    narrowest = rules.narrowest_course_nm
    widths = {stick.width for stick in sticks if stick.width >= narrowest}
    widest = max(widths, default=narrowest)
    remaining = strips.may_end - low
    wanted = set(widths) | {remaining, strips.must_end - low, remaining // 2, remaining // 3}
    for hole in strips.must_holes:
        wanted |= {hole.high - low, hole.low - low}
    if not widths:
        wanted |= {min(remaining, narrowest)}
    return sorted(
        height
        for height in wanted
        if narrowest <= height <= widest
        and low + height <= strips.may_end
        and (low + height >= strips.must_end or strips.may_end - low - height >= narrowest)
    ) or [remaining]


def _some(heights: list[Nm], chance: random.Random) -> list[Nm]:
    """Give a few of the heights, so that a layout takes a moment only."""
    return heights if len(heights) <= _HEIGHTS_TRIED else sorted(chance.sample(heights, _HEIGHTS_TRIED))


def _course(
    strips: Strips, sticks: Sequence[Stick], low: Nm, high: Nm, near: Sequence[PlannedCourse]
) -> tuple[PlannedCourse, float]:
    left: list[Stick] = list(sticks)
    pieces: list[PlannedPiece] = []
    bare: list[tuple[Nm, Nm]] = []
    price = 0.0
    taken = joints_near(strips, low, high, near) if strips.rules.joints is JointPolicy.STAGGER else []
    for run in strips.runs(low, high):
        filled = _fill(strips, run, high - low, left, taken)
        pieces.extend(filled.pieces)
        bare.extend(filled.bare)
        price += filled.price
        left = without(left, PlannedCourse(low, high, filled.pieces), strips.rules)
    return PlannedCourse(low, high, tuple(pieces), tuple(bare)), price


def joints_near(strips: Strips, low: Nm, high: Nm, courses: Sequence[PlannedCourse]) -> list[Nm]:
    """Give the joints in sight of the courses that touch a strip. [nm]"""
    return [
        at
        for course in courses
        if course.high == low or course.low == high
        for at, hidden in joints_of(strips, course)
        if not hidden
    ]


def joints_of(strips: Strips, course: PlannedCourse) -> list[tuple[Nm, bool]]:
    """Give the joints of a course, each with whether a concealed zone hides it."""
    ends = {piece.end for piece in course.pieces}
    return [
        (piece.start, strips.hidden(piece.start, course.low, course.high))
        for piece in course.pieces
        if piece.start in ends
    ]


def _fill(strips: Strips, run: Run, height: Nm, sticks: Sequence[Stick], taken: Sequence[Nm]) -> _Filled:
    """Fill a run with the best of each set of sticks that may butt in sight, or across hidden joints only."""
    rules = strips.rules
    fit = [
        stick
        for stick in sticks
        if stick.width + rules.width_tolerance_nm >= height and (run.hidden or not stick.hidden_only)
    ]
    in_sight = rules.joints is not JointPolicy.NEVER
    open_joints = [
        joint
        for joint in run.joints
        if joint.hidden or (in_sight and all(abs(joint.at - at) >= rules.stagger_nm for at in taken))
    ]
    hidden = [joint for joint in open_joints if joint.hidden]
    groups = mate_groups(fit, rules)
    trials = [(mates, open_joints) for mates in groups] + ([(fit, hidden)] if len(groups) != 1 else [])
    paths = [_shortest_path(run, joints, height, mates, rules) for mates, joints in trials]
    best = min(range(len(trials)), key=lambda index: paths[index].price)
    return _cut(paths[best], height, trials[best][0], rules)


def mate_groups(sticks: Sequence[Stick], rules: Rules) -> list[list[Stick]]:
    """Give the sets of sticks whose pieces may all butt in sight: one profile, thickness within tolerance."""
    reach = max(rules.thickness_tolerance_nm, rules.shim_up_to_nm)
    by_profile: dict[EdgeProfile, list[Stick]] = {}
    for stick in sticks:
        by_profile.setdefault(stick.profile, []).append(stick)
    groups: list[list[Stick]] = []
    for alike in by_profile.values():
        thickest_yet = -1
        for thinnest in sorted({stick.thickness for stick in alike}):
            group = [stick for stick in alike if thinnest <= stick.thickness <= thinnest + reach]
            thickest = max(stick.thickness for stick in group)
            if thickest > thickest_yet:
                groups.append(group)
                thickest_yet = thickest
    return groups


def _shortest_path(
    run: Run, joints: Sequence[JointPlace], height: Nm, sticks: Sequence[Stick], rules: Rules
) -> _Path:
    places = (run.start, *(joint.at for joint in joints), run.end)
    steps = _steps(places, run.nails, rules)
    prices = _prices(steps, sticks, height, rules)
    in_sight = [0.0, *(0.0 if joint.hidden else 1.0 for joint in joints), 0.0]
    joint_price = _JOINT_PRICE_IN * float(rules.shortest_piece_nm) * height
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


@dataclass(frozen=True, slots=True)
class _Steps:
    """Every piece that a run could have, by its first place; `ends` and `lengths` are parallel."""

    ends: tuple[int, ...]
    lengths: _Floats
    starting_at: tuple[tuple[int, ...], ...]


@lru_cache(maxsize=20_000)
def _steps(places: tuple[Nm, ...], nail_places: tuple[Nm, ...], rules: Rules) -> _Steps:
    ends, lengths, starting_at = [], [], []
    last = len(places) - 1
    for i in range(last):
        first = len(ends)
        for j in range(i + 1, last + 1):
            length = places[j] - places[i]
            whole = i == 0 and j == last
            if whole or (
                length >= rules.shortest_piece_nm
                and nail_count(nail_places, places[i], places[j], rules) >= rules.nailing_points
            ):
                ends.append(j)
                lengths.append(length)
        starting_at.append(tuple(range(first, len(ends))))
    return _Steps(tuple(ends), np.array(lengths, dtype=np.float64), tuple(starting_at))


def nail_count(nail_places: Sequence[Nm], start: Nm, end: Nm, rules: Rules) -> int:
    """Count the places along a course at which a piece can be nailed. [members]"""
    reach = rules.nail_end_nm
    return sum(1 for at in nail_places if at in (start, end) or start + reach <= at <= end - reach)


def _prices(steps: _Steps, sticks: Sequence[Stick], height: Nm, rules: Rules) -> list[float]:
    """Price each step by the area it wastes on the stick that wastes least; infinite where none is long enough."""
    if not steps.ends or not sticks:
        return [float("inf")] * len(steps.ends)
    prices: list[float] = waste_table(steps.lengths, sticks, height, rules).min(axis=1).tolist()
    return prices


def waste_table(lengths: _Floats, sticks: Sequence[Stick], height: Nm, rules: Rules) -> _Floats:
    """Give the area that each piece would waste on each stick.

    Parameters
    ----------
    lengths
        Of the pieces. [nm]
    sticks
        All wide enough.
    height
        Face width of the pieces. [nm]
    rules
        For the kerfs and for what is worth keeping.

    Returns
    -------
    array
        Shape (n_lengths, n_sticks); infinite where the stick is too short. [nm²]
    """
    need = lengths[:, None]
    have = np.array([stick.length for stick in sticks], dtype=np.float64)[None, :]
    width = np.array([stick.width for stick in sticks], dtype=np.float64)[None, :]
    hidden = np.array([stick.hidden_only for stick in sticks])[None, :]
    rest = have - need
    kept = rest >= rules.shortest_piece_nm + rules.crosscut_kerf_nm
    ends = np.where(kept, rules.crosscut_kerf_nm + 0.05 * rest, rest) * width
    spare = np.maximum(width - height, 0.0)
    beside = np.where(
        spare >= rules.narrowest_course_nm + rules.rip_kerf_nm, rules.rip_kerf_nm + 0.3 * spare, spare
    )
    waste = ends + beside * need
    return np.where(rest >= 0, np.where(hidden, 0.5 * waste, waste), np.inf)


def _cut(path: _Path, height: Nm, sticks: Sequence[Stick], rules: Rules) -> _Filled:
    """Cut the pieces of a path, the longest first; one that finds no stick any more is left bare."""
    free, pieces, bare, price = list(sticks), [], [], path.price
    for start, end, is_bare in sorted(path.moves, key=lambda move: (move[0] - move[1], move[0])):
        stick = None if is_bare else _best(free, end - start, height, rules)
        if stick is None:
            price += 0.0 if is_bare else _BARE_PRICE * height * (end - start)
            bare.append((start, end))
            continue
        part = cut_from(stick, stick.along_from, end - start, stick.across_from, min(height, stick.width))
        pieces.append(PlannedPiece(part, start, end))
        at = free.index(stick)
        free[at : at + 1] = [
            rest
            for rest in _remainders(stick, part, rules)
            if rest.width + rules.width_tolerance_nm >= height
        ]
    return _Filled(price, tuple(sorted(pieces, key=lambda piece: piece.start)), tuple(sorted(bare)))


def _best(sticks: Sequence[Stick], length: Nm, height: Nm, rules: Rules) -> Stick | None:
    if not sticks:
        return None
    waste = waste_table(np.array([float(length)]), sticks, height, rules)[0]
    index = int(waste.argmin())
    return sticks[index] if np.isfinite(waste[index]) else None
