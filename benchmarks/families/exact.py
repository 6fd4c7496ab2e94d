"""Nothing to spare: a wall of 12 by 8 ft and 20 to 30 boards that just cover it, joints behind fixtures only.

Every board is used from trim to trim and from edge to edge; some give two pieces, sawn apart along or
across. So full cover with no joint in sight is possible, and there is nothing better.
"""

from itertools import pairwise
from random import Random

from benchmarks.instance import TAPE, Instance, inches
from benchmarks.lumber import Clear, Lane, SawnBoard, Sort, saw_together
from benchmarks.planting import Key, Row, boards_of, planted_layout, shuffled
from plankwright.layout.strips import Strips
from plankwright.measure import FOOT, INCH, Nm
from plankwright.model import (
    ConcealedZone,
    Framing,
    FramingMember,
    Job,
    JointPolicy,
    Rectangle,
    Rules,
    Surface,
)

RULES = Rules(joints=JointPolicy.NEVER, expansion_gap_nm=0)
WIDTH: Nm = 12 * FOOT
HEIGHT: Nm = 8 * FOOT
FEWEST, MOST = 20, 30
"""Boards in a pile."""

_EIGHTH: Nm = INCH // 8
_NARROWEST, _WIDEST = 26, 54
"""Course heights, in eighths of an inch."""

_SORTS = 6
"""How many heights a wall has, besides the two that make up its rest."""

_JOINTED = 0.75
"""How many of the courses that a fixture hides over their height are jointed."""

_ALONG, _ACROSS = 0.2, 0.12
"""How many pieces share a board with one that lies beyond them, and with one beside them."""

_CABINETS = 0.5
"""How many of the walls have one."""

_LONGEST: Nm = 14 * FOOT
_LOT = Sort("", inches(0.75))


def instance(seed: int) -> Instance:
    """Give the wall with a pile that just covers it."""
    chance = Random(f"exact {seed}")  # noqa: S311 - chance, not secrecy
    while True:
        surface = _wall(chance)
        rows = _rows(surface, chance)
        boards = _boards(rows, chance)
        if FEWEST <= len(boards) <= MOST:
            break
    pile = shuffled(boards, chance)
    job = Job(name=f"exact {seed}", tape=TAPE, surfaces=(surface,), boards=boards_of(pile), rules=RULES)
    return Instance(
        family="exact",
        seed=seed,
        job=job,
        planted=planted_layout(job, Strips(surface, RULES), rows, pile),
    )


def _wall(chance: Random) -> Surface:
    first = chance.randint(8, 16)
    centres = [inches(0.75), *(at * INCH for at in range(first, 142, 16)), WIDTH - inches(0.75)]
    return Surface(
        id="wall",
        outline=((0, 0), (WIDTH, 0), (WIDTH, HEIGHT), (0, HEIGHT)),
        framing=Framing(members=tuple(FramingMember(centre_nm=at, width_nm=inches(1.5)) for at in centres)),
        concealed=tuple(_fixtures(chance)),
    )


def _fixtures(chance: Random) -> list[ConcealedZone]:
    """Draw a bench, a mirror above it and, on some walls, a cabinet."""
    sizes = [("bench", (48, 72), (16, 20), (0, 0)), ("mirror", (36, 60), (24, 40), (34, 44))]
    if chance.random() < _CABINETS:
        sizes.append(("cabinet", (30, 48), (14, 16), (80, 80)))
    zones = []
    for name, widths, heights, bottoms in sizes:
        width, height, bottom = chance.randint(*widths), chance.randint(*heights), chance.randint(*bottoms)
        left = chance.randint(2, 142 - width)
        place = Rectangle(
            left=left * INCH,
            bottom=bottom * INCH,
            right=(left + width) * INCH,
            top=(bottom + height) * INCH,
        )
        zones.append(ConcealedZone(id=name, place=place))
    return zones


def _rows(surface: Surface, chance: Random) -> tuple[Row, ...]:
    rows, low = [], 0
    for height in _heights(chance):
        ends = tuple(pairwise((0, *_joints(surface, low, low + height, chance), WIDTH)))
        rows.append(Row(low, low + height, ends, height, (0,) * len(ends)))
        low += height
    return tuple(rows)


def _heights(chance: Random) -> list[Nm]:
    """Draw heights of a few sorts, and two that make up the rest. [nm]"""
    sorts = chance.sample(range(_NARROWEST, _WIDEST + 1), _SORTS)
    heights, rest = [], HEIGHT // _EIGHTH
    while rest > 2 * _WIDEST:
        heights.append(chance.choice(sorts))
        rest -= heights[-1]
    heights += [rest // 2, rest - rest // 2]
    chance.shuffle(heights)
    return [height * _EIGHTH for height in heights]


def _joints(surface: Surface, low: Nm, high: Nm, chance: Random) -> list[Nm]:
    """Draw the joint of a course, on a stud behind a fixture, if there is one to hide it. [nm]"""
    hidden = [
        member.centre_nm
        for member in surface.crossing_members
        for zone in surface.concealed
        if zone.place.bottom <= low and high <= zone.place.top
        if zone.place.left < member.centre_nm < zone.place.right
        if 2 * FOOT <= member.centre_nm <= WIDTH - 2 * FOOT
    ]
    return [chance.choice(hidden)] if hidden and chance.random() < _JOINTED else []


def _boards(rows: tuple[Row, ...], chance: Random) -> list[SawnBoard]:
    pieces: dict[Key, Lane] = {
        (number, place): Lane((number, place), end - start, row.width)
        for number, row in enumerate(rows)
        for place, (start, end) in enumerate(row.ends)
    }
    left = list(pieces)
    chance.shuffle(left)
    boards = []
    while left:
        lane = pieces[left.pop()]
        draw = chance.random()
        parts = [Clear((lane,))]
        if draw < _ALONG:
            beyond = [
                key
                for key in left
                if pieces[key].width == lane.width and pieces[key].length + lane.length <= _LONGEST
            ]
            parts += [Clear((pieces[key],)) for key in beyond[:1]]
            left = [key for key in left if key not in beyond[:1]]
        elif draw < _ALONG + _ACROSS:
            beside = [key for key in left if pieces[key].length == lane.length]
            parts = [Clear((lane, *(pieces[key] for key in beside[:1])))]
            left = [key for key in left if key not in beside[:1]]
        boards.append(saw_together(parts, _LOT, RULES))
    return boards
