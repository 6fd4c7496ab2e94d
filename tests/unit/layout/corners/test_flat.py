"""Linked walls laid flat: one surface, with a strip where each corner is."""

from dataclasses import replace

import pytest
import shapely
from shapely.geometry.base import BaseGeometry

from builders import box_outline, nm, opening, outline, rectangle, socket, studs, wall
from plankwright.layout.corners.flat import flat_surface
from plankwright.model import ConcealedZone, Edge, Framing, KeepOut, Rectangle, Surface

APART = nm(100)
NORTH = wall(96, 90, id="north", openings=(opening("door", 30, 0, 60, 80, trim=2),))
EAST = wall(60, 90, id="east", cut_outs=(socket(10, 12, 12, 16),))


def covered(flat: Surface) -> BaseGeometry:
    """Give what of a surface no opening takes."""
    holes = [
        shapely.box(place.left, place.bottom, place.right, place.top)
        for place in (each.place for each in flat.openings)
    ]
    return shapely.Polygon(flat.outline).difference(shapely.union_all(holes))


def test_walls_of_one_height_are_one_rectangle() -> None:
    """With everything that is on them shifted, and a strip from bottom to top between."""
    pipe = KeepOut(id="pipe", place=rectangle(20, 0, 22, 90))
    bench = ConcealedZone(id="bench", place=rectangle(0, 0, 30, 20))
    flat = flat_surface([NORTH, replace(EAST, keep_outs=(pipe,), concealed=(bench,))], APART)
    assert flat.corners == ((0, 0), (nm(196), 0))
    assert flat.surface.id == "north and east"
    assert flat.surface.outline == box_outline(256, 90)
    door, corner = flat.surface.openings
    assert (door.place, door.trim_nm) == (rectangle(30, 0, 60, 80), nm(2))
    assert (corner.place, corner.trim_nm) == (rectangle(96, 0, 196, 90), 0)
    assert [part.place for part in flat.surface.cut_outs] == [rectangle(206, 12, 208, 16)]
    assert [part.place for part in flat.surface.keep_outs] == [rectangle(216, 0, 218, 90)]
    assert [part.place for part in flat.surface.concealed] == [rectangle(196, 0, 226, 20)]


def test_framing_is_shifted_as_well() -> None:
    """Stud after stud; walls with solid backing have none."""
    some = replace(EAST, framing=studs(4, 20))
    (*north, one, other) = flat_surface([NORTH, some], APART).surface.framing.members
    assert [one.centre_nm, other.centre_nm] == [nm(200), nm(216)]
    assert len(north) == len(NORTH.framing.members)
    backed = replace(EAST, framing=Framing(solid=True))
    assert flat_surface([NORTH, backed], APART).surface.framing.members == NORTH.framing.members
    assert flat_surface([backed, replace(backed, id="other")], APART).surface.framing.solid


@pytest.mark.parametrize(
    ("east", "whole", "gone"),
    [
        (wall(60, 80, id="east"), (256, 90), rectangle(196, 80, 256, 90)),
        (wall(60, 90, id="east", raised_nm=nm(4)), (256, 94), rectangle(196, 0, 256, 4)),
    ],
)
def test_what_a_wall_is_lower_or_raised_by_is_an_opening(
    east: Surface, whole: tuple[float, float], gone: Rectangle
) -> None:
    """So that level walls stay a level surface."""
    flat = flat_surface([NORTH, east], APART).surface
    assert flat.outline == box_outline(*whole)
    assert gone in [part.place for part in flat.openings]


def test_walls_are_raised_from_the_lowest_of_them() -> None:
    """Whatever all are raised by."""
    raised = [replace(each, raised_nm=nm(by)) for each, by in ((NORTH, 7), (EAST, 5))]
    assert [y for _, y in flat_surface(raised, APART).corners] == [nm(2), 0]


def test_walls_of_any_shape_are_joined_where_they_meet() -> None:
    """A gable stands between a low wall and one with a floor out of level; nothing else is covered."""
    low = wall(60, 40, id="low")
    gable = wall(96, 1, id="gable", outline=outline((0, 0), (96, 0), (96, 50), (48, 90), (0, 50)))
    sunk = wall(50, 1, id="sunk", outline=outline((0, 1), (50, 0), (50, 60), (0, 60)), raised_nm=nm(2))
    walls = [low, gable, sunk]
    flat = flat_surface(walls, APART)
    assert flat.corners == ((0, 0), (nm(160), 0), (nm(356), nm(2)))
    apart = shapely.union_all(
        [
            shapely.Polygon([(x + at_x, y + at_y) for x, y in each.outline])
            for each, (at_x, at_y) in zip(walls, flat.corners, strict=True)
        ]
    )
    assert covered(flat.surface).symmetric_difference(apart).area == 0
    assert flat.surface.start is Edge.BOTTOM
