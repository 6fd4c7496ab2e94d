"""Framing that is probably missing at the ends of a surface is asked for."""

import pytest

from builders import TAPE, studs, wall
from plankwright.model import Direction, Edge, Framing, Surface, SurfaceKind
from plankwright.workshop.jobs.hint_surface import hint_surface

ADD = "Measure it and add it to “Centres as measured”."
LEFT = (
    'Nothing is there to nail to within 15-1/4" of the left end: most walls have a stud in the corner. ' + ADD
)
RIGHT = (
    'Nothing is there to nail to within 23-1/4" of the right end: most walls have a stud in the corner. '
    + ADD
)


@pytest.mark.parametrize(
    ("surface", "hints"),
    [
        (wall(144, 96, framing=studs(16, 32, 144)), (LEFT,)),
        (wall(144, 96, framing=studs(0.75, 16, 120)), (RIGHT,)),
        (wall(144, 96, framing=studs(16, 120)), (LEFT, RIGHT)),
        (wall(144, 96, framing=studs(8, 136)), ()),
        (wall(144, 96, framing=Framing(solid=True)), ()),
    ],
)
def test_an_end_without_anything_to_nail_to_is_told(surface: Surface, hints: tuple[str, ...]) -> None:
    """Unless it is near enough."""
    assert hint_surface(surface, TAPE) == hints


def test_boards_that_run_up_have_their_ends_below_and_above() -> None:
    """And what is not a wall has joists."""
    framing = studs(10, 30, runs=Direction.HORIZONTAL)
    upright = {"framing": framing, "courses_run": Direction.VERTICAL, "start": Edge.LEFT}
    (below, above) = hint_surface(wall(144, 96, **upright), TAPE)
    assert below.startswith('Nothing is there to nail to within 9-1/4" of the lower end: most walls have a')
    assert "of the upper end" in above
    (left, _) = hint_surface(wall(144, 96, framing=studs(16, 32), kind=SurfaceKind.CEILING), TAPE)
    assert "most have a joist or strip there" in left
