"""Nothing planted: boards arrive one by one, and the question is how many it takes to cover a wall."""

from dataclasses import replace
from itertools import islice
from random import Random

from benchmarks.arriving import arriving
from benchmarks.instance import TAPE, Instance
from benchmarks.lots import RULES, SAWS
from benchmarks.usable import usable_area
from benchmarks.walls import draw_wall
from plankwright.layout.strips import Strips
from plankwright.model import Job

MOST_SHARE = 3.0
"""So many times the area of the wall arrives in all."""


def instance(seed: int) -> Instance:
    """Give a wall and all the boards that arrive, in order."""
    chance = Random(f"pile {seed}")  # noqa: S311 - chance, not secrecy
    surface = draw_wall(chance)
    area = Strips(surface, RULES).must.area
    boards = []
    usable = 0.0
    stream = arriving(chance)
    while usable < MOST_SHARE * area:
        boards.append(next(stream))
        usable += usable_area(boards[-1], RULES)
    return Instance(
        family="pile",
        seed=seed,
        job=Job(
            name=f"pile {seed}", tape=TAPE, surfaces=(surface,), boards=tuple(boards), rules=RULES, saws=SAWS
        ),
    )


def first_boards(job: Job, count: int) -> Job:
    """Give the job as it is when so many boards have arrived."""
    return replace(job, boards=tuple(islice(job.boards, count)))
