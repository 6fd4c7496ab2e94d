"""As `real`, with too little wood: all that is not lost of it is 3 to 10 % less than what must be covered.

So no layout can cover everything. Boards are taken away from the pile of a planted layout, at random, until
so much is wanting.
"""

from dataclasses import replace
from random import Random

from benchmarks.families import real
from benchmarks.instance import Instance
from benchmarks.lots import RULES
from benchmarks.usable import clear_area
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
        job, _, _ = drawn
        area = Strips(job.surfaces[0], RULES).must.area
        for _ in range(_TRIES):
            left = list(job.boards)
            clear = sum(clear_area(board, RULES) for board in left)
            while clear > (1 - wanting) * area:
                clear -= clear_area(left.pop(chance.randrange(len(left))), RULES)
            if clear >= (1 - MOST) * area:
                return Instance(family="short", seed=seed, job=replace(job, boards=tuple(left)))
