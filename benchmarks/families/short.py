"""As `real`, with too little wood: all that is not lost of it is 3 to 10 % less than what must be covered.

So no layout can cover everything. Boards are taken away from the pile of a planted layout, at random, until
so much is wanting. What is left of that layout is known.
"""

from contextlib import suppress
from dataclasses import replace
from random import Random

from benchmarks.families import real
from benchmarks.instance import Instance, PlantingError
from benchmarks.lots import RULES
from benchmarks.lumber import SawnBoard
from benchmarks.planting import boards_of, planted_layout
from benchmarks.usable import clear_area
from plankwright.layout.capacity import capacity_of
from plankwright.layout.strips import Strips

LEAST, MOST = 0.03, 0.10
"""Share of the area that is wanting."""

_TRIES = 200
"""How often an order to take boards away in is drawn."""


def instance(seed: int) -> Instance:
    """Give a wall and a pile that cannot cover it."""
    chance = Random(f"short {seed}")  # noqa: S311 - chance, not secrecy
    wanting = chance.uniform(LEAST, MOST)
    while True:
        drawn = real.draw(chance, f"short {seed}", 0.0)
        if drawn is None:
            continue
        job, rows, pile = drawn
        strips = Strips(job.surfaces[0], RULES, capacity_of(job))
        left = _taken_away(pile, (1 - wanting) * strips.must.area, (1 - MOST) * strips.must.area, chance)
        if left is None:
            continue
        job = replace(job, boards=boards_of(left))
        # A cover that leaves a sliver or asks for blocking somewhere is no perfect one.
        with suppress(PlantingError):
            planted = planted_layout(job, strips, rows, left)
            return Instance(family="short", seed=seed, job=job, planted=planted)


def _taken_away(pile: list[SawnBoard], most: float, least: float, chance: Random) -> list[SawnBoard] | None:
    """Take boards away until their clear area lies between two areas; nothing when none can be had. [nm²]"""
    for _ in range(_TRIES):
        left = list(pile)
        clear = sum(clear_area(sawn.board, RULES) for sawn in left)
        while clear > most:
            clear -= clear_area(left.pop(chance.randrange(len(left))).board, RULES)
        if clear >= least:
            return left
    return None
