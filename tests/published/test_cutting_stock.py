"""The whole program against published cutting-stock instances, laid out as runs to cover."""

import pytest

from plankwright.check import check_layout, faults
from plankwright.layout import Effort, Verdict, lay_out, verdict
from published.instances import ROLL, numbers_of, rolls, triplets
from published.runs import stairs

_EFFORT = Effort(name="published", seconds=5)


def test_the_worked_example_adds_up_as_published() -> None:
    """219 items of 407,160 mm together: the figures were copied right."""
    assert (len(rolls()), sum(rolls())) == (219, 407_160)


def test_73_rolls_of_5600_mm_are_enough() -> None:
    """The published optimum is found, and the checker finds no fault with it."""
    job = stairs(rolls(), ROLL, 73)
    layout = lay_out(job, effort=_EFFORT).layout
    assert layout.covers_everything
    assert not faults(check_layout(job, layout))


def test_72_rolls_are_proven_too_few() -> None:
    """Below the published lower bound the answer is a proven no."""
    job = stairs(rolls(), ROLL, 72)
    result = lay_out(job, effort=_EFFORT)
    assert verdict(result.layout.surfaces[0]) is Verdict.NOT_ENOUGH
    assert not faults(check_layout(job, result.layout))
    assert result.closing is not None
    closing_job, closing = result.closing
    assert closing.covers_everything
    assert not faults(check_layout(closing_job, closing))


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_triplets_fill_every_board(seed: int) -> None:
    """Sixty items of which every three fill a board exactly need twenty boards, and no wood is left."""
    job = stairs(triplets(seed), 1000, 20)
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
    _, capacity, *items = numbers_of(f"falkenauer/{name}")
    job = stairs(items, capacity, optimum)
    layout = lay_out(job, effort=_EFFORT).layout
    assert layout.covers_everything
    assert not faults(check_layout(job, layout))
