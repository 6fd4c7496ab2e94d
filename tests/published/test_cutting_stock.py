"""The whole program against published cutting-stock instances, laid out as runs to cover."""

import random
from pathlib import Path

import pytest

from plankwright.check import check_layout, faults
from plankwright.layout import Effort, Verdict, lay_out, verdict
from published.runs import stairs

_EFFORT = Effort(name="published", seconds=5)

# Widths [mm] and how many of each, to be cut from rolls of 5600 mm: the worked example of the encyclopedia
# article "Cutting stock problem", seen as quoted at graphsearch.epfl.ch/en/concept/826868, which adds the
# widths up to 407,160 mm and so to at least 72.7 rolls. That 73 are enough is from memory of the article.
_ROLLS = {
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
_ITEMS = [width for width, count in _ROLLS.items() for _ in range(count)]

_BENCH = Path(__file__).resolve().parents[3] / "shared" / "bench"
"""Published instances that may not be handed on, read where somebody has put them beside the project."""


def test_the_worked_example_adds_up_as_published() -> None:
    """219 items of 407,160 mm together: the figures were copied right."""
    assert (len(_ITEMS), sum(_ITEMS)) == (219, 407_160)


def test_73_rolls_of_5600_mm_are_enough() -> None:
    """The published optimum is found, and the checker finds no fault with it."""
    job = stairs(_ITEMS, 5600, 73)
    layout = lay_out(job, effort=_EFFORT).layout
    assert layout.covers_everything
    assert not faults(check_layout(job, layout))


def test_72_rolls_are_proven_too_few() -> None:
    """Below the published lower bound the answer is a proven no."""
    job = stairs(_ITEMS, 5600, 72)
    result = lay_out(job, effort=_EFFORT)
    assert verdict(result.layout.surfaces[0]) is Verdict.NOT_ENOUGH
    assert not faults(check_layout(job, result.layout))
    assert result.closing is not None
    closing_job, closing = result.closing
    assert closing.covers_everything
    assert not faults(check_layout(closing_job, closing))


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_triplets_fill_every_board(seed: int) -> None:
    """Sixty items of which every three fill a board exactly need twenty boards, and no wood is left.

    The recipe is that of Falkenauer (1996), "A hybrid grouping genetic algorithm for bin packing", from
    memory: boards of 1000, a first item of 380 to 490, a second that leaves at least 250 for the third.
    """
    chance = random.Random(seed)  # noqa: S311 - chance, not secrecy
    items = []
    for _ in range(20):
        first = chance.randint(380, 490)
        second = chance.randint(250, (1000 - first) // 2)
        items += [first, second, 1000 - first - second]
    job = stairs(items, 1000, 20)
    layout = lay_out(job, effort=_EFFORT).layout
    assert layout.covers_everything
    assert not faults(check_layout(job, layout))


@pytest.mark.parametrize(
    ("name", "optimum"),
    [
        # Optima as published with BPPLIB (Delorme, Iori, Martello 2018).
        ("Falkenauer_u120_00", 48),
        ("Falkenauer_u120_02", 46),
        ("Falkenauer_t60_00", 20),
        ("Falkenauer_t60_02", 20),
    ],
)
def test_published_bin_packing_is_solved_to_its_optimum(name: str, optimum: int) -> None:
    """As many boards as the published optimum are enough."""
    path = _BENCH / "falkenauer" / f"{name}.txt"
    if not path.exists():
        pytest.skip(f"{name} is not beside the project; it may not be handed on with it")
    _, capacity, *items = (int(line) for line in path.read_text(encoding="ascii").split())
    job = stairs(items, capacity, optimum)
    layout = lay_out(job, effort=_EFFORT).layout
    assert layout.covers_everything
    assert not faults(check_layout(job, layout))
