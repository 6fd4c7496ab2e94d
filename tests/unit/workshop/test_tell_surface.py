"""A surface in words: its size, what it is nailed to, and what stands on it."""

import pytest

from builders import TAPE, box_outline, nm, opening, outline, rectangle, socket, studs, wall
from plankwright.model import (
    ConcealedZone,
    CutOut,
    Direction,
    Edge,
    Framing,
    KeepOut,
    Surface,
    SurfaceKind,
)
from plankwright.workshop.tell_surface import tell_places, tell_surface

GABLE = outline((0, 0), (144, 0), (144, 96), (72, 120), (0, 96))


@pytest.mark.parametrize(
    ("surface", "said"),
    [
        (wall(144, 96), "Wall, 12' 0\" wide, 8' 0\" high: 96.0 sq ft."),
        (wall(144, 96, outline=GABLE), "Wall, 12' 0\" wide, up to 10' 0\" high: 108.0 sq ft."),
        (wall(144, 96, kind=SurfaceKind.FLOOR), "Floor, 12' 0\" wide, 8' 0\" deep: 96.0 sq ft."),
    ],
)
def test_the_size_comes_first(surface: Surface, said: str) -> None:
    """With the area inside the outline."""
    assert tell_surface(surface, TAPE)[0] == said


@pytest.mark.parametrize(
    ("framing", "said"),
    [
        (Framing(solid=True), "Solid backing: a nail holds anywhere that nothing runs behind."),
        (studs(16, 32, 48), '3 studs, centres from 16" to 48" from the left.'),
        (studs(16), 'One stud, its centre 16" from the left.'),
        (
            studs(10, 30, runs=Direction.HORIZONTAL),
            '2 strips or joists, centres from 10" to 30" from the bottom.',
        ),
    ],
)
def test_what_the_nails_go_into_is_told(framing: Framing, said: str) -> None:
    """As it was read, so that a slip shows."""
    level = framing.solid or framing.members[0].runs is Direction.VERTICAL
    run = {} if level else {"courses_run": Direction.VERTICAL, "start": Edge.LEFT}
    assert tell_surface(wall(144, 96, framing=framing, **run), TAPE)[2] == said


def test_everything_on_it_is_named() -> None:
    """By its own name, else by what it is, else by its number."""
    surface = wall(
        144,
        96,
        openings=(opening("door", 20, 0, 52, 80), opening("opening-2", 80, 30, 100, 60)),
        cut_outs=(CutOut(id="cut-out-1", place=rectangle(60, 10, 63, 14), what="socket"),),
        concealed=(ConcealedZone(id="concealed-1", place=rectangle(100, 0, 120, 20)),),
        keep_outs=(KeepOut(id="pipe", place=rectangle(70, 0, 72, 96), what="water pipe"),),
    )
    assert tell_surface(surface, TAPE)[3:] == (
        "Left open: door; opening 2.",
        "Notched around: socket.",
        "Hidden later by: fixture 1.",
        "No nails at: water pipe.",
    )


def test_places_are_told_as_they_were_read() -> None:
    """Sizes and distances, for whoever typed them."""
    surface = wall(144, 96, outline=box_outline(144, 96), cut_outs=(socket(60, 10, 62.25, 13.75),))
    assert tell_places(surface, TAPE) == ('socket: 2-1/4" wide, 3-3/4" high, 60" from the left, 10" up.',)
    assert surface.width_nm == nm(144)
