"""A yard of boards for many walls of `real`: a hundred boards to a wall, among them all that would cover it.

The seed says how the walls and boards are drawn; how many walls there are is part of the family.
"""

from collections.abc import Callable
from dataclasses import replace
from itertools import islice
from random import Random

from benchmarks.arriving import arriving
from benchmarks.families import real
from benchmarks.instance import TAPE, Instance
from benchmarks.lots import RULES, SAWS
from plankwright.model import Board, Job, Surface

BOARDS_PER_WALL = 100


def yard_of(walls: int) -> Callable[[int], Instance]:
    """Give what makes a yard for so many walls out of a seed."""

    def instance(seed: int) -> Instance:
        chance = Random(f"yard {walls} {seed}")  # noqa: S311 - chance, not secrecy
        surfaces: list[Surface] = []
        boards: list[Board] = []
        while len(surfaces) < walls:
            drawn = real.draw(chance, "", 0.0)
            if drawn is not None and len(drawn[0].boards) <= BOARDS_PER_WALL:
                surfaces.append(replace(drawn[0].surfaces[0], id=f"wall-{len(surfaces) + 1}"))
                boards += drawn[0].boards
        boards += islice(arriving(chance), walls * BOARDS_PER_WALL - len(boards))
        chance.shuffle(boards)
        name = f"yard-{walls}"
        job = Job(
            name=f"{name} {seed}",
            tape=TAPE,
            surfaces=tuple(surfaces),
            boards=tuple(replace(board, id=f"B{number:04d}") for number, board in enumerate(boards, start=1)),
            rules=RULES,
            saws=SAWS,
        )
        return Instance(family=name, seed=seed, job=job)

    return instance
