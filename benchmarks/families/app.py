"""What somebody has in the app who has tallied for days: one wall, and five hundred boards as they arrive."""

from itertools import islice
from random import Random

from benchmarks.arriving import arriving
from benchmarks.instance import TAPE, Instance
from benchmarks.lots import RULES, SAWS
from benchmarks.walls import draw_wall
from plankwright.model import Job

BOARDS = 500


def instance(seed: int) -> Instance:
    """Give a wall and five hundred boards."""
    chance = Random(f"app {seed}")  # noqa: S311 - chance, not secrecy
    surface = draw_wall(chance)
    boards = tuple(islice(arriving(chance), BOARDS))
    name = f"app {seed}"
    return Instance(
        family="app",
        seed=seed,
        job=Job(name=name, tape=TAPE, surfaces=(surface,), boards=boards, rules=RULES, saws=SAWS),
    )
