"""The step in which lengths are counted."""

import pytest

from builders import board, nm, wall
from choosing import plain, sticks_of
from plankwright.layout.grid import grid_for
from plankwright.layout.strips import Strips
from plankwright.measure import INCH, MILLIMETRE, System
from plankwright.model import EdgeTrim, Framing

WALL = wall(96, 12, framing=Framing(solid=True))


@pytest.mark.parametrize(
    ("width", "step"),
    [(5.25, INCH // 16), (5 + 1 / 32, INCH // 32), (5 + 1 / 64, INCH // 64), (5.3, INCH // 64)],
)
def test_widths_on_the_tape_lose_nothing_to_the_step(width: float, step: int) -> None:
    """The coarsest of sixteenths, 32nds and 64ths that measures them; lengths need not be on it."""
    rules = plain()
    stock = sticks_of([board("A", 96, 6), board("B", 70.3, width)], rules)
    assert grid_for(Strips(WALL, rules), stock, System.IMPERIAL) == step


def test_the_height_to_cover_is_measured_too() -> None:
    """Eleven inches and a 32nd below a trim."""
    rules, surface = plain(), wall(96, 12, framing=Framing(solid=True), trim=EdgeTrim(top=nm(1 - 1 / 32)))
    assert (
        grid_for(Strips(surface, rules), sticks_of([board("A", 96, 6)], rules), System.IMPERIAL) == INCH // 32
    )


def test_metric_tapes_are_counted_in_millimetres() -> None:
    """A wall of 300 mm, and boards of 120 and of 120.5 mm."""
    mm = MILLIMETRE / INCH
    rules, surface = plain(), wall(2000 * mm, 300 * mm, framing=Framing(solid=True))
    whole, half = board("A", 2000 * mm, 120 * mm), board("B", 2000 * mm, 120.5 * mm)
    assert grid_for(Strips(surface, rules), sticks_of([whole], rules), System.METRIC) == MILLIMETRE
    assert grid_for(Strips(surface, rules), sticks_of([whole, half], rules), System.METRIC) == MILLIMETRE // 2
