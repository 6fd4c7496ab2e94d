"""Walls of 12 by 8 ft and piles that just cover them, with joints behind a bench and a mirror only.

Each is made the other way round: a wall is covered with courses of a few widths, some of them jointed on a
stud behind a fixture, and the pieces, with what trimming and straightening will take, are the pile.
"""

from itertools import pairwise
from random import Random

from builders import board, job, nm, rectangle, studs, wall
from plankwright.model import Board, ConcealedZone, Job, JointPolicy, Rules

RULES = Rules(
    joints=JointPolicy.NEVER, expansion_gap_nm=0, end_trim_nm=nm(0.5), straight_edge_loss_nm=nm(0.125)
)

FIXTURES = {"bench": (12, 0, 76, 20), "mirror": (70, 40, 134, 76)}
STUDS = (0.75, *range(16, 144, 16), 143.25)
WALL = wall(
    144,
    96,
    framing=studs(*STUDS),
    concealed=[ConcealedZone(id=name, place=rectangle(*place)) for name, place in FIXTURES.items()],
)

_WIDTHS = (3.5, 4.25, 4.75, 5.25, 5.5, 6, 7.25)


def benched(seed: int) -> Job:
    """Give the wall with a pile that just covers it."""
    chance = Random(seed)  # noqa: S311 - chance, not secrecy
    boards: list[Board] = []
    low = 0.0
    for height in _heights(chance):
        for start, end in pairwise((0, *_joints(chance, low, low + height), 144)):
            boards.append(board(f"B{len(boards)}", 0.5 + end - start + 0.5, 0.125 + height + 0.125))
        low += height
    chance.shuffle(boards)
    return job(WALL, boards, RULES)


def _heights(chance: Random) -> list[float]:
    """Draw heights of four widths, and two that fill the rest; together they are the wall's."""
    widths = chance.sample(_WIDTHS, 4)
    heights: list[float] = []
    while 96 - sum(heights) > 2 * max(_WIDTHS):
        heights.append(chance.choice(widths))
    rest = 96 - sum(heights)
    heights += [rest / 2 - 0.5, rest / 2 + 0.5]
    chance.shuffle(heights)
    return heights


def _joints(chance: Random, low: float, high: float) -> list[float]:
    """Draw the joint of a course, most times when there is a fixture to hide it, on a stud behind that."""
    for left, bottom, right, top in FIXTURES.values():
        if bottom <= low and high <= top and chance.random() < 0.8:
            return [chance.choice([stud for stud in STUDS if left <= stud <= right])]
    return []
