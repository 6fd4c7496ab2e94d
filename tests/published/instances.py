"""Published instances of cutting stock: a worked example, a recipe for hard ones, files kept elsewhere."""

import os
import random
from pathlib import Path

import pytest

ROLL = 5600
ROLLS = {
    1380: 22,
    1520: 25,
    1560: 12,
    1710: 14,
    1820: 18,
    1880: 18,
    1930: 20,
    2000: 10,
    2050: 12,
    2100: 14,
    2140: 16,
    2150: 18,
    2200: 20,
}
"""Widths [mm] and how many of each, to be cut from rolls of 5600 mm.

The worked example of the encyclopedia article "Cutting stock problem", seen as copied at
hitchhikersgui.de/Cutting_stock_problem ("The optimal answer requires 73 master rolls") and at
graphsearch.epfl.ch/en/concept/826868 (407,160 mm together, so at least 72.7 rolls).
"""

_BENCH = Path(os.environ.get("PLANKWRIGHT_BENCH") or Path(__file__).parents[3] / "shared" / "bench")
"""Published files that may not be handed on, read where somebody has put them."""


def rolls() -> list[int]:
    """Give every item of the worked example. [mm]"""
    return [width for width, count in ROLLS.items() for _ in range(count)]


def triplets(seed: int, bins: int = 20) -> list[int]:
    """Draw items of which every three fill a bin of 1000 exactly, so that no bin can be saved.

    The recipe is that of Falkenauer (1996), "A hybrid grouping genetic algorithm for bin packing", from
    memory: a first item of 380 to 490, a second that leaves at least 250 for the third.
    """
    chance = random.Random(seed)  # noqa: S311 - chance, not secrecy
    items = []
    for _ in range(bins):
        first = chance.randint(380, 490)
        second = chance.randint(250, (1000 - first) // 2)
        items += [first, second, 1000 - first - second]
    return items


def numbers_of(name: str) -> list[int]:
    """Read the numbers of a published file, or skip the test where it is not at hand."""
    path = _BENCH / f"{name}.txt"
    if not path.is_file():
        pytest.skip(
            f"{name} may not be handed on with the project; "
            "put it in shared/bench beside it, or say in PLANKWRIGHT_BENCH where it is"
        )
    return [int(word) for word in path.read_text(encoding="ascii").split()]
